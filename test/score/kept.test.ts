import { describe, expect, it } from "vitest";
import type { Choice, MeritName, SweepOptions, Wire } from "../../src/model.ts";
import { compareKeys, type Figures, MERITS, orderKeys } from "../../src/score/merit.ts";
import { BestPairs, type NestingSpring, pairKeys } from "../../src/score/pairs.ts";
import { type FeasibleSpring, Score, topOf } from "../../src/score/score.ts";

const FIGURES: Figures = {
  mass: 1,
  outsideDiameter: 2,
  relativeCost: 3,
  freeLength: 4,
  solidSafety: 5,
  wireDiameter: 6,
  totalTurns: 7,
  meanDiameter: 8,
  materialOrder: 0,
  endsOrder: 0,
};
const wire = (label: string, series = "one"): Wire => ({ label, diameter: 1, series });
let made = 0;
const feasibleSpring = (change: Partial<FeasibleSpring>): FeasibleSpring => {
  const choice: Choice = { material: 0, wire: wire("w"), ends: 0, totalTurns: made++, meanDiameter: 1 };
  return { ...FIGURES, wire: wire("w"), choice, ...change };
};

/** Offers survivors, each a family of its own, to a score. */
function scored(
  feasibleSprings: readonly FeasibleSpring[],
  options: SweepOptions = {},
  axes: [MeritName, MeritName] = ["mass", "freeLength"],
) {
  const score = new Score(["mass"], axes, options);
  for (const [family, one] of feasibleSprings.entries()) score.offer(one, family);
  return score;
}
const choices = (list: readonly FeasibleSpring[]) => list.map(({ choice }) => choice);
const bests = (score: Score) => score.best.map(({ item }) => item);

describe("the order of springs", () => {
  it("is by less of every merit, but more of the safety at solid", () => {
    for (const name of Object.keys(MERITS) as MeritName[]) {
      const more = MERITS[name]({ ...FIGURES, [name]: FIGURES[name] + 1 });
      expect(more - MERITS[name](FIGURES)).toBe(name === "solidSafety" ? -1 : 1);
    }
  });

  it("is by the merits asked, then mass, wire, turns, the places in the brief's lists, and the mean diameter", () => {
    const after: readonly (readonly [keyof Figures, number])[] = [
      ["freeLength", 9],
      ["mass", 9],
      ["wireDiameter", 9],
      ["totalTurns", 9],
      ["materialOrder", 1],
      ["endsOrder", 1],
      ["meanDiameter", 9],
    ];
    const keys = (figures: Figures) => orderKeys(figures, ["freeLength"]);
    for (const [i, [name, more]] of after.entries()) {
      // What comes later may be better by far and changes nothing.
      const later = Object.fromEntries(after.slice(i + 1).map(([one]) => [one, -9]));
      expect(compareKeys(keys({ ...FIGURES, ...later, [name]: more }), keys(FIGURES))).toBeGreaterThan(0);
      expect(compareKeys(keys(FIGURES), keys({ ...FIGURES, ...later, [name]: more }))).toBeLessThan(0);
    }
    expect(compareKeys(keys(FIGURES), keys({ ...FIGURES }))).toBe(0);
  });
});

describe("how many designs are kept", () => {
  it.each<[SweepOptions, number]>([
    [{}, 20],
    [{ top: 3 }, 3],
    [{ each: "wire" }, Number.POSITIVE_INFINITY],
    [{ each: "wire", top: 2 }, 2],
  ])("with %o it is %d", (options, top) => expect(topOf(options)).toBe(top));
});

describe("a score", () => {
  const light = feasibleSpring({ mass: 1, freeLength: 9 });
  const short = feasibleSpring({ mass: 5, freeLength: 2 });
  const neither = feasibleSpring({ mass: 6, freeLength: 9 });

  it("keeps the best and the front, of which a spring may be on one and not the other", () => {
    const score = scored([neither, short, light], { top: 1 });
    expect(bests(score)).toEqual(choices([light]));
    expect(score.frontMembers.map(({ item }) => item)).toEqual(choices([light, short]));
  });

  it("keeps a spring of the front that comes after the best are full", () => {
    const many = Array.from({ length: 200 }, (_, i) => feasibleSpring({ mass: 1 + i / 1000, freeLength: 9 }));
    const score = scored([...many, short], { top: 1 });
    expect(bests(score)).toEqual(choices(many.slice(0, 1)));
    expect(score.frontMembers.map(({ item }) => item)).toEqual(choices([many[0] as FeasibleSpring, short]));
  });

  it("does not take rounding in a figure of the front for a difference", () => {
    const rounded = feasibleSpring({ mass: 2, freeLength: 9 - 1e-15 });
    expect(scored([light, rounded]).frontMembers.map(({ item }) => item)).toEqual(choices([light]));
    const shorter = feasibleSpring({ mass: 2, freeLength: 9 - 1e-9 });
    expect(scored([light, shorter]).frontMembers.map(({ item }) => item)).toEqual(choices([light, shorter]));
  });

  it.each<[NonNullable<SweepOptions["each"]>, Partial<FeasibleSpring>]>([
    ["material", { materialOrder: 1 }],
    ["ends", { endsOrder: 1 }],
    ["wire", { wire: wire("other") }],
    ["wire", { wire: wire("w", "other") }],
  ])("keeps the best of each %s: one with %o is another", (each, other) => {
    const [first, worse, another] = [feasibleSpring({}), feasibleSpring({ mass: 2 }), feasibleSpring({ mass: 3, ...other })];
    expect(bests(scored([worse, another, first], { each }))).toEqual(choices([first, another]));
    expect(bests(scored([worse, another, first], { each, top: 1 }))).toEqual(choices([first]));
  });

  it("samples only where it is asked, with the first of each material and wire as far as there is room", () => {
    expect(scored([light]).sample).toBeUndefined();
    const [thin, thick] = [wire("thin"), wire("thick")];
    const many = Array.from({ length: 100 }, () => feasibleSpring({ wire: thin }));
    const last = feasibleSpring({ wire: thick });
    const next = feasibleSpring({ wire: thick, materialOrder: 1 });
    const { sample } = scored([...many, last, next], { sample: 5 });
    expect(sample).toHaveLength(5);
    expect(sample).toEqual(expect.arrayContaining(choices([many[0] as FeasibleSpring, last, next])));
  });

  it("of parts is that of the whole", () => {
    const all = [neither, light, short, feasibleSpring({ mass: 9, wire: wire("other") })];
    for (const options of [{ top: 2, sample: 9 }, { top: 2, sample: 2 }, { top: 2 }, { each: "wire" as const }]) {
      for (const others of [[0], [1], [2, 3], [0, 1, 2, 3]]) {
        const [whole, first, second] = [scored(all, options), scored([], options), scored([], options)];
        for (const [family, one] of all.entries()) (others.includes(family) ? second : first).offer(one, family);
        first.merge(second.partial);
        expect([bests(first), first.frontMembers, first.sample]).toEqual([bests(whole), whole.frontMembers, whole.sample]);
      }
    }
  });
});

const spring = (change: Partial<NestingSpring>): NestingSpring => ({
  ...FIGURES,
  insideDiameter: 10,
  outsideDiameterAtSolid: 9,
  choice: feasibleSpring({}).choice,
  ...change,
});

describe("pairs", () => {
  it("are put in order by the merits asked, then mass, wires, turns, the brief's lists, and the share", () => {
    const better = { share: 0.5, outer: spring({}), inner: spring({}) };
    const keys = (pair: typeof better) => pairKeys(pair, ["outsideDiameter", "freeLength"]);
    const steps: ["outer" | "inner", Partial<NestingSpring>][] = [
      ["outer", { outsideDiameter: 3 }],
      ["inner", { mass: 2 }],
      ["outer", { wireDiameter: 7 }],
      ["inner", { wireDiameter: 7 }],
      ["outer", { totalTurns: 8 }],
      ["inner", { totalTurns: 8 }],
      ["outer", { materialOrder: 1 }],
      ["inner", { materialOrder: 1 }],
      ["outer", { endsOrder: 1 }],
      ["inner", { endsOrder: 1 }],
    ];
    const places = steps.map(([role, change]) => {
      const worse = keys({ ...better, [role]: spring(change) });
      const place = worse.findIndex((key, i) => key !== keys(better)[i]);
      expect(worse[place]).toBeGreaterThan(keys(better)[place] as number);
      return place;
    });
    expect(places).toEqual([...steps.keys()]);
    expect(keys({ ...better, share: 0.6 }).at(-1)).toBe(0.6);
    expect(keys(better)).toHaveLength(11);
  });

  it.each<[MeritName, number]>([
    ["mass", 3],
    ["relativeCost", 3],
    ["outsideDiameter", 1],
    ["solidSafety", -1],
  ])("have a %s of both, of the outer, or of the weaker: of 1 and 2 it is %d", (name, merit) => {
    expect(pairKeys({ share: 0.5, outer: spring({ [name]: 1 }), inner: spring({ [name]: 2 }) }, [name])[0]).toBe(merit);
  });

  const pairsOf = (rank: MeritName[], outers: NestingSpring[], inners: NestingSpring[], top = 9) => {
    const pairs = new BestPairs(rank, (inside) => inside - 1, top);
    pairs.offer(0.5, outers, inners);
    return pairs;
  };

  it("fit where the inner at solid leaves the clearance, exactly that included", () => {
    const pairs = pairsOf(
      ["mass"],
      [spring({})],
      [9, 9.1, 8].map((outsideDiameterAtSolid) => spring({ outsideDiameterAtSolid })),
    );
    expect(pairs.fitting).toBe(2);
    expect(pairs.best.map(({ item }) => item.inner.outsideDiameterAtSolid).sort()).toEqual([8, 9]);
  });

  it("lack what the narrowest inner misses of the widest outer, and nothing is lacking to say where there are none", () => {
    const outers = [spring({ insideDiameter: 5 }), spring({ insideDiameter: 7 })];
    expect(pairsOf(["mass"], outers, [spring({}), spring({ outsideDiameterAtSolid: 8 })]).lacking).toBe(2);
    expect(pairsOf(["mass"], outers, []).lacking).toBe(Number.POSITIVE_INFINITY);
    expect(pairsOf(["mass"], [], [spring({})]).lacking).toBe(Number.POSITIVE_INFINITY);
  });

  it("are kept best first, as many as asked, the lighter before the heavier of either role", () => {
    const [light, heavy] = [spring({ mass: 1 }), spring({ mass: 4 })];
    const { best, fitting } = pairsOf(["mass"], [heavy, light], [heavy, light], 3);
    expect(best.map(({ item: { outer, inner } }) => outer.mass + inner.mass)).toEqual([2, 5, 5]);
    expect(fitting).toBe(4);
  });

  it("are the best of many, in whatever order springs come", () => {
    const falling = Array.from({ length: 100 }, (_, i) => spring({ mass: 100 - i }));
    const { best, fitting } = pairsOf(["mass"], falling, falling, 1);
    expect([best[0]?.item.outer.mass, best[0]?.item.inner.mass, fitting]).toEqual([1, 1, 10_000]);
  });

  it("rank by mass where free length alone is asked, which is one in every pair", () => {
    const { best } = pairsOf(["freeLength"], [spring({ mass: 4 }), spring({ mass: 1 })], [spring({})], 1);
    expect(best[0]?.item.outer.mass).toBe(1);
  });
});
