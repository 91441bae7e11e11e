import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Front } from "../../src/score/front.ts";
import { compareKeys } from "../../src/score/merit.ts";
import { BestForEach, BestOf } from "../../src/score/rank.ts";
import { EvenSample } from "../../src/score/sample.ts";

const RANDOM = { seed: 20261125, numRuns: 300 };
const keyed = fc.array(fc.tuple(fc.integer({ min: 0, max: 9 }), fc.integer({ min: 0, max: 9 })), { maxLength: 300 });
const items = keyed.map((pairs) => pairs.map(([a, b], place) => ({ keys: [a, b, place], item: place })));

describe("the best of a stream", () => {
  it("are the head of the whole stream sorted, however much of it came", () => {
    fc.assert(
      fc.property(items, fc.integer({ min: 1, max: 30 }), (stream, capacity) => {
        const best = new BestOf<number>(capacity);
        for (const ranked of stream) if (best.mayKeep(ranked.keys[0] as number)) best.offer(ranked);
        const sorted = [...stream].sort((a, b) => compareKeys(a.keys, b.keys));
        expect(best.best).toEqual(sorted.slice(0, capacity));
      }),
      RANDOM,
    );
  });

  it("for each value are the first of that value in the whole stream sorted", () => {
    fc.assert(
      fc.property(items, (stream) => {
        const best = new BestForEach<number>();
        for (const ranked of stream) best.offer(`${ranked.item % 7}`, ranked);
        const sorted = [...stream].sort((a, b) => compareKeys(a.keys, b.keys));
        const firsts = sorted.filter(({ item }, i) => sorted.findIndex((other) => other.item % 7 === item % 7) === i);
        expect(best.best).toEqual(firsts);
      }),
      RANDOM,
    );
  });
});

describe("what may be among the best", () => {
  const offered = (capacity: number, ...firstKeys: number[]) => {
    const best = new BestOf<number>(capacity);
    for (const [place, key] of firstKeys.entries()) best.offer({ keys: [key, place], item: place });
    return best;
  };

  it("is anything while there is room, and then what is no worse than the last in its first key", () => {
    const best = offered(3, 5, 7);
    expect(best.best).toHaveLength(2);
    expect(best.mayKeep(99)).toBe(true);
    best.offer({ keys: [6, 2], item: 2 });
    expect(best.best).toHaveLength(3);
    expect([best.mayKeep(7), best.mayKeep(7.1)]).toEqual([true, false]);
  });

  it("is known of a long stream before its end, so that it need not be held", () => {
    const best = offered(1, ...Array.from({ length: 200 }, (_, i) => i));
    expect(best.mayKeep(150)).toBe(false);
  });
});

describe("the front", () => {
  it("keeps of equal points the one that ranks first, whichever comes first", () => {
    for (const order of [
      [1, 2],
      [2, 1],
    ]) {
      const front = new Front<number>();
      for (const item of order) if (!front.isDominated(3, 4)) front.offer(3, 4, { keys: [item], item });
      expect(front.members.map(({ item }) => item)).toEqual([1]);
    }
  });

  it("takes of another front only what it does not beat itself", () => {
    const front = new Front<string>();
    front.offer(3, 4, { keys: [1], item: "better" });
    const other = new Front<string>();
    other.offer(2, 9, { keys: [2], item: "narrower" });
    other.offer(5, 6, { keys: [3], item: "beaten" });
    front.merge(other.points);
    expect(front.members.map(({ item }) => item)).toEqual(["narrower", "better"]);
  });

  it("holds those that no other beats along both axes, and of equal points the one that ranks first", () => {
    fc.assert(
      fc.property(items, (stream) => {
        const front = new Front<number>();
        for (const ranked of stream) {
          const [across, up] = ranked.keys as [number, number, number];
          if (!front.isDominated(across, up)) front.offer(across, up, ranked);
        }
        const beats = (a: readonly number[], b: readonly number[]) =>
          (a[0] as number) <= (b[0] as number) &&
          (a[1] as number) <= (b[1] as number) &&
          (a[0] !== b[0] || a[1] !== b[1] || (a[2] as number) < (b[2] as number));
        const unbeaten = stream.filter(({ keys }) => !stream.some((other) => beats(other.keys, keys)));
        expect(front.members).toEqual(unbeaten.sort((a, b) => compareKeys(a.keys, b.keys)));
      }),
      RANDOM,
    );
  });
});

/** Offers a sample items of families, four families to a stretch, each stretch named by the first that comes. */
function offering(sample: EvenSample<string>): (family: number, i: number) => void {
  let last = "";
  return (family, i) => {
    const stretch = `${Math.floor(family / 4)}`;
    sample.offer(family, () => `${family} ${i}`, stretch === last ? undefined : stretch);
    last = stretch;
  };
}

describe("an even sample", () => {
  it("is the whole stream where there is room, and as many as there is room for where there is not", () => {
    for (const [length, capacity] of [
      [10, 20],
      [1000, 64],
      [5933, 5000],
      [39_530, 5000],
    ] as const) {
      const sample = new EvenSample<number>(capacity);
      for (let i = 0; i < length; i++) sample.offer(0, () => i);
      expect(sample.items).toHaveLength(Math.min(length, capacity));
      expect([...sample.items].sort((a, b) => a - b)).toEqual(sample.items);
      expect(new Set(sample.items).size).toBe(sample.items.length);
    }
  });

  it("leaves no stretch of the stream without its share", () => {
    const sample = new EvenSample<number>(500);
    for (let i = 0; i < 20_000; i++) sample.offer(0, () => i);
    const gaps = [...sample.items, 20_000].map((item, i) => item - (sample.items[i - 1] ?? 0));
    expect(Math.max(...gaps)).toBeLessThanOrEqual(2 * (20_000 / 500));
  });

  it("holds the first of every stretch of the stream that there is room for, however short", () => {
    const begins = (i: number) => i % 1000 === 0 || i === 7777;
    const sample = new EvenSample<number>(100);
    for (let i = 0; i < 20_000; i++) sample.offer(0, () => i, begins(i) ? `${i}` : undefined);
    expect(new Set(sample.items).size).toBe(100);
    expect(sample.items).toEqual(expect.arrayContaining([...Array.from({ length: 20 }, (_, i) => 1000 * i), 7777]));

    const small = new EvenSample<number>(8);
    for (let i = 0; i < 20_000; i++) small.offer(0, () => i, begins(i) ? `${i}` : undefined);
    expect(small.items).toHaveLength(8);
    expect(small.items.every(begins)).toBe(true);
  });

  it("of the parts of a stream is that of the whole, whoever takes which families", () => {
    fc.assert(
      fc.property(
        fc.array(fc.nat(40), { maxLength: 60 }),
        fc.integer({ min: 1, max: 30 }),
        fc.nat(2),
        (sizes, capacity, turn) => {
          const whole = new EvenSample<string>(capacity);
          const parts = [0, 1, 2].map(() => new EvenSample<string>(capacity));
          const offers = parts.map(offering);
          const offer = offering(whole);
          for (const [family, size] of sizes.entries()) {
            for (let i = 0; i < size; i++) {
              offer(family, i);
              offers[(family * family + turn) % 3]?.(family, i);
            }
          }
          const [first, ...others] = parts as [EvenSample<string>, ...EvenSample<string>[]];
          for (const { partial } of others) first.merge(partial);
          expect(first.items).toEqual(whole.items);
        },
      ),
      RANDOM,
    );
  });

  it("takes from many small families as evenly as from a large one", () => {
    const sample = new EvenSample<number>(500);
    for (let family = 0; family < 4000; family++) for (let i = 0; i < 5; i++) sample.offer(family, () => family);
    expect(sample.items).toHaveLength(500);
    const gaps = sample.items.map((item, i) => item - (sample.items[i - 1] ?? 0));
    expect(Math.max(...gaps)).toBeLessThanOrEqual(4 * (4000 / 500));
  });
});
