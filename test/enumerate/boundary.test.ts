import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { boundary } from "../../src/enumerate/boundary.ts";
import { maximumByGoldenSection, maximumOfWhole } from "../../src/enumerate/unimodal-maximum.ts";

const RANDOM = { seed: 20261125, numRuns: 300 };

/** A margin that counts its looks, and the border found on it from a position that passes towards one that fails. */
function search(marginAt: (position: number) => number, pass: number, fail: number, whole: boolean, passes = 0) {
  let looks = 0;
  const looked: number[] = [];
  const margins = {
    marginAt(position: number) {
      looks++;
      looked.push(position);
      return marginAt(position);
    },
  };
  const found = boundary(margins, passes, pass, marginAt(pass) - passes, fail, marginAt(fail) - passes, whole);
  return { found, looks, looked };
}

/** A step at a place, with margins of any size on both sides: the worst that a straight line may be led astray by. */
const steps = fc.record({
  pass: fc.integer({ min: 0, max: 2000 }),
  away: fc.integer({ min: 1, max: 2000 }),
  share: fc.double({ min: 0, max: 1, noNaN: true }),
  inside: fc.double({ min: 0, max: 1, noNaN: true }),
  outside: fc.double({ min: 1e-6, max: 1, noNaN: true }),
  upwards: fc.boolean(),
});

describe("the border on whole positions", () => {
  it("is the last that passes, its neighbour failing, whatever the margins and whichever way it lies", () => {
    fc.assert(
      fc.property(steps, ({ pass, away, share, inside, outside, upwards }) => {
        const sign = upwards ? 1 : -1;
        const last = Math.min(away - 1, Math.floor(share * away));
        const marginAt = (position: number) => ((position - pass) * sign <= last ? inside : -outside);
        const { found, looks, looked } = search(marginAt, pass, pass + sign * away, true);
        expect(found).toBe(pass + sign * last);
        expect(looked.every((position) => Number.isInteger(position))).toBe(true);
        expect(looked.every((position) => (position - pass) * sign > 0 && (position - pass) * sign < away)).toBe(true);
        // Four looks for each halving, and a few to begin and end with.
        expect(looks).toBeLessThanOrEqual(4 * Math.ceil(Math.log2(away)) + 16);
      }),
      RANDOM,
    );
  });

  it("needs no look where the two are neighbours", () => {
    expect(search((position) => 0.5 - position, 0, 1, true)).toMatchObject({ found: 0, looks: 0 });
  });

  it("of a straight margin takes a look or two, not a bisection", () => {
    const { found, looks } = search((position) => 700.5 - position, 0, 1_000_000, true);
    expect(found).toBe(700);
    expect(looks).toBeLessThanOrEqual(3);
  });

  it("stands where the margin is that which passes, itself included", () => {
    expect(search((position) => 10 - position, 0, 100, true, 4).found).toBe(6);
  });
});

describe("the border over the reals", () => {
  it.each([
    ["straight", (x: number) => 0.3 - x],
    ["a cube", (x: number) => 0.3 ** 3 - x ** 3],
    ["steep", (x: number) => 1 - Math.exp(40 * (x - 0.3))],
    ["a step", (x: number) => (x <= 0.3 ? 1 : -1e-3)],
    ["level, then falling", (x: number) => Math.min(1e-9, 0.3 - x)],
  ])("is the last double that passes: %s", (_, marginAt) => {
    for (const [pass, fail] of [
      [0.1, 1],
      [0.2999, 0.9],
    ] as const) {
      const { found } = search(marginAt, pass, fail, false);
      expect(marginAt(found)).toBeGreaterThanOrEqual(0);
      expect(marginAt(found * (1 + Number.EPSILON))).toBeLessThan(0);
    }
  });

  it("is found from above as from below", () => {
    const { found } = search((x) => x - 0.3, 1, 0.1, false);
    expect(found).toBe(0.3);
  });

  it("of a smooth margin is found in a quarter of the looks that halving takes", () => {
    const margins: readonly ((x: number) => number)[] = [
      (x) => 0.3 - x,
      (x) => 0.3 ** 3 - x ** 3,
      (x) => 1 / x - 1 / 0.3,
      (x) => 1 - Math.exp(20 * (x - 0.3)),
      (x) => Math.log(0.3 / x),
      (x) => 1 - (x / 0.3) ** 8,
      (x) => 0.09 - x * x + 1e-3 * Math.sin(40 * (x - 0.3)),
    ];
    const looks = margins.flatMap((falls) => {
      const rises = (x: number) => -falls(x);
      const found = [search(falls, 0.05, 1, false), search(falls, 0.2999, 0.9, false)];
      return [...found, search(rises, 1, 0.05, false), search(rises, 0.31, 0.05, false)].map(({ looks }) => looks);
    });
    // Halving down to the last digit of a double takes 53.
    expect(looks.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual((53 * looks.length) / 4);
    expect(Math.max(...looks)).toBeLessThan(53 / 2);
  });
});

describe("the highest of a band at whole positions", () => {
  it("is its top, wherever that lies", () => {
    for (let top = 0; top <= 20; top++) {
      const found = maximumOfWhole((at) => -Math.abs(at - top), 0, 20, Number.POSITIVE_INFINITY);
      expect(found).toEqual({ position: top, figure: -0 });
    }
  });

  it("of a single position is that one", () => {
    expect(maximumOfWhole((at) => at * 2, 7, 7, Number.POSITIVE_INFINITY)).toEqual({ position: 7, figure: 14 });
  });

  it("is not climbed to where a lower figure is enough, which may be that figure exactly", () => {
    const looked: number[] = [];
    const figureAt = (at: number) => {
      looked.push(at);
      return at;
    };
    expect(maximumOfWhole(figureAt, 0, 100, 50)).toEqual({ position: 50, figure: 50 });
    expect(looked).toEqual([50]);
    expect(maximumOfWhole((at) => at, 0, 100, 51)).toEqual({ position: 51, figure: 51 });
  });
});

describe("the highest of a band over the reals", () => {
  it.each([0.1, 0.25, 1 / 3, 0.5, 0.9])("is at its top, %d", (top) => {
    const { position, figure } = maximumByGoldenSection((at) => -Math.abs(at - top), 0.05, 1, Number.POSITIVE_INFINITY);
    expect(position).toBeCloseTo(top, 12);
    expect(figure).toBeCloseTo(0, 12);
  });

  it("is an end, exactly, where the figure only rises or falls", () => {
    expect(maximumByGoldenSection((at) => at, 0.1, 0.9, Number.POSITIVE_INFINITY)).toEqual({ position: 0.9, figure: 0.9 });
    expect(maximumByGoldenSection((at) => -at, 0.1, 0.9, Number.POSITIVE_INFINITY)).toEqual({ position: 0.1, figure: -0.1 });
  });

  it("is not searched for where an end is enough", () => {
    let looks = 0;
    const rising = (at: number) => {
      looks++;
      return at;
    };
    expect(maximumByGoldenSection(rising, 0.1, 0.9, 0.9).position).toBe(0.9);
    expect(looks).toBe(4);
  });

  it("takes as many looks as golden sections to the thirteenth digit take", () => {
    let looks = 0;
    maximumByGoldenSection(
      (at) => {
        looks++;
        return -((at - 0.4) ** 2);
      },
      0.1,
      1,
      Number.POSITIVE_INFINITY,
    );
    // ln(0.9 / 0.4e-13) / ln(1.618) = 64, and four to begin with.
    expect(looks).toBeGreaterThan(60);
    expect(looks).toBeLessThan(72);
  });
});
