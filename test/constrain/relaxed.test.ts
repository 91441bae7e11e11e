import { describe, expect, it } from "vitest";
import { isConstructed, REMOVED, relaxableLimits, relaxed, violationOf, withRelaxable } from "../../src/constrain/relaxed.ts";
import { resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import type { LimitName, Load } from "../../src/model.ts";
import { type Change, placed, plainBrief } from "./plain.ts";

const ATDEFLECTION: Load = { kind: "forceAtDeflection", force: { nominal: 20, min: 20, max: 20 }, deflection: 0.01 };
const LARGEST: Load = { kind: "rateAndLargestForce", rate: { min: 5e3, max: 9e3 }, largestForce: 30 };
const LIMITS: Change = {
  limits: { index: { min: 4, max: 12 }, turns: { min: 4, max: 6 }, clash: { length: 0.001 }, solidStress: { max: 500e6 } },
  envelope: { freeLength: { min: 0.04, max: 0.06 }, outsideDiameter: { max: 0.021 } },
};
const requirements = (change: Change = {}) => resolveRequirements(plainBrief({ ...LIMITS, ...change }));

describe("a limit that springs are made to meet", () => {
  it.each<[string, Change, boolean, boolean]>([
    ["points", {}, false, true],
    ["a deflection", { load: ATDEFLECTION }, true, true],
    ["a largest force", { load: LARGEST }, true, true],
  ])("for %s: the clash allowance, the least free length", (_, change, clash, freeLength) => {
    expect([isConstructed(requirements(change), "clash"), isConstructed(requirements(change), "freeLength")]).toEqual([
      clash,
      freeLength,
    ]);
  });

  it("for points with windows and a temperature: the forces there", () => {
    const hot = { service: { temperature: 390 } };
    expect([isConstructed(requirements(hot), "hotForce"), isConstructed(requirements(), "hotForce")]).toEqual([true, false]);
    const deflection: Load = { kind: "forceAtDeflection", force: { min: 18, max: 24 }, deflection: 0.01 };
    expect(isConstructed(requirements({ ...hot, load: deflection }), "hotForce")).toBe(false);
  });

  it("is none where it asks nothing", () => {
    const open = requirements({ load: ATDEFLECTION, envelope: { freeLength: { max: 1 } }, limits: {} });
    expect([isConstructed(open, "clash"), isConstructed(open, "freeLength")]).toEqual([false, false]);
    expect(isConstructed(requirements({ load: ATDEFLECTION }), "outsideDiameter")).toBe(false);
  });
});

describe("the limits that may give", () => {
  it("are those that a brief asks, in the order in which a candidate falls", () => {
    expect(relaxableLimits(requirements())).toEqual([
      "turns",
      "index",
      "outsideDiameter",
      "rate",
      "freeLength",
      "clash",
      "solidStress",
    ]);
  });

  it("have the clash among them where springs are made by it, and not where its allowance is nothing", () => {
    expect(relaxableLimits(requirements({ load: LARGEST }))).toContain("clash");
    expect(relaxableLimits(requirements({ limits: { clash: { length: 0 } } }))).not.toContain("clash");
    expect(relaxableLimits(requirements({ limits: {} }))).not.toContain("clash");
  });
});

describe("a limit eased by a share", () => {
  const by = (name: LimitName, share: number, change: Change = {}) => relaxed(requirements(change), name, share);
  const limit = (name: LimitName, share: number, change: Change = {}) =>
    by(name, share, change)?.limits.find((one) => one.name === name);

  it("that only judges passes from minus that share, and is not there once it is gone", () => {
    expect(limit("outsideDiameter", 0.1)?.relaxation).toBe(0.1);
    expect(by("outsideDiameter", 0.1)?.limits.filter(({ relaxation }) => relaxation > 0)).toHaveLength(1);
    expect(limit("outsideDiameter", REMOVED)).toBeUndefined();
    expect(by("outsideDiameter", REMOVED)?.limits.length).toBe((by("outsideDiameter", 0)?.limits.length as number) - 1);
  });

  it("cannot be the wire, nor a temperature by a share, nor the rate or counted turns altogether", () => {
    const hot: Change = { service: { temperature: 390 } };
    expect([
      by("wire", 0.1),
      by("wire", REMOVED),
      by("temperature", 0.1, hot),
      by("rate", REMOVED),
      by("turns", REMOVED),
    ]).toEqual(Array(5).fill(null));
    const cool = by("temperature", REMOVED, hot);
    expect([cool?.requirements.temperature, cool?.requirements.lifted.has("temperature")]).toEqual([null, true]);
    expect(limit("rate", 0.1)?.relaxation).toBe(0.1);
  });

  it("widens the window of the index, but not beyond what can be wound", () => {
    expect(by("index", 0.5)?.requirements.index).toEqual({ min: 2, max: 18 });
    expect([by("index", 2)?.requirements.index, by("index", REMOVED)?.requirements.index]).toEqual([
      { min: 2, max: 25 },
      { min: 2, max: 25 },
    ]);
    expect([by("index", 0.5)?.requirements.lifted.has("index"), by("index", REMOVED)?.requirements.lifted.has("index")]).toEqual([
      false,
      true,
    ]);
  });

  it("moves the ends of the windows that hold at temperature, or leaves them out", () => {
    const hot: Change = { service: { temperature: 390 } };
    const [first] = requirements(hot).windowsAtTemperature;
    const [wider] = by("hotForce", 0.1, hot)?.requirements.windowsAtTemperature ?? [];
    expect(wider).toMatchObject({ min: 0.9 * (first?.min as number), max: expect.closeTo(1.1 * (first?.max as number), 9) });
    expect(by("hotForce", REMOVED, hot)?.requirements.windowsAtTemperature).toEqual([]);
  });

  it("makes the clash allowance less, or nothing", () => {
    expect(by("clash", 0.25)?.requirements.clash).toEqual({ length: 0.00075 });
    expect([by("clash", REMOVED)?.requirements.clash, by("clash", 0.5, { limits: {} })?.requirements.clash]).toEqual([
      null,
      null,
    ]);
  });

  it("widens the window of counted turns, and only judges where they follow from the diameter", () => {
    expect(by("turns", 0.5)?.requirements.turns).toEqual({ min: 2, max: 9 });
    expect(by("turns", 2)?.requirements.turns).toEqual({ min: 0, max: 18 });
    const following: Change = { load: ATDEFLECTION, turns: "any" };
    expect(by("turns", 0.5, following)?.requirements.turns).toEqual({ min: 4, max: 6 });
    expect([limit("turns", 0.5, following)?.relaxation, limit("turns", REMOVED, following)]).toEqual([0.5, undefined]);
  });

  it("widens the free length where springs are drawn out to it, and only judges where no least one is asked", () => {
    const length = (share: number, change: Change = {}) => by("freeLength", share, change)?.requirements.freeLength;
    expect(length(0.5, { load: ATDEFLECTION })).toEqual({ min: 0.02, max: expect.closeTo(0.09, 12) });
    expect(length(REMOVED, { load: ATDEFLECTION })).toEqual({ min: 0, max: Number.POSITIVE_INFINITY });
    expect(length(0.5)).toEqual({ min: 0.02, max: expect.closeTo(0.09, 12) });
    const most: Change = { envelope: { freeLength: { max: 0.06 } } };
    expect(length(0.5, most)).toEqual({ min: 0, max: 0.06 });
    expect(limit("freeLength", 0.5, most)?.relaxation).toBe(0.5);
  });
});

describe("limits that give by any share", () => {
  it("are among the others, and pass whatever they judge until the share is lowered", () => {
    const { limits, relaxable } = withRelaxable(requirements(), ["outsideDiameter", "solidStress"]);
    expect(relaxable.map(({ name, relaxation }) => [name, relaxation])).toEqual([
      ["outsideDiameter", REMOVED],
      ["solidStress", REMOVED],
    ]);
    expect(relaxable.every((one) => limits.includes(one))).toBe(true);
    expect(limits.filter(({ relaxation }) => relaxation > 0)).toHaveLength(2);
  });

  it("are the clash down to no allowance, without the monotonicity that rests on it", () => {
    const { requirements: open, relaxable } = withRelaxable(requirements(), ["clash"]);
    expect([open.lifted.has("clash"), relaxable[0]?.relaxation]).toEqual([true, 1]);
    expect(withRelaxable(requirements(), ["index"]).requirements.lifted.has("clash")).toBe(false);
  });

  it("are the index between what can be wound", () => {
    const { limits } = withRelaxable(requirements(), ["index"]);
    const bound = limits.at(-1);
    const wide = placed(LIMITS, 0.052);
    expect([bound?.name, bound?.relaxation, bound?.passes(wide), bound?.passes(placed(LIMITS, 0.03))]).toEqual([
      "index",
      0,
      false,
      true,
    ]);
    expect(withRelaxable(requirements(), ["clash"]).limits.at(-1)?.name).not.toBe("index");
  });

  it("are counted turns up to twice as many, judged by the window that is asked", () => {
    const { requirements: open, relaxable } = withRelaxable(requirements(), ["turns"]);
    expect(open.turns).toEqual({ min: 0, max: 12 });
    expect(relaxable[0]?.margin(placed(LIMITS))).toBeCloseTo(1 - 8 / 6, 12);
    const following = withRelaxable(requirements({ load: ATDEFLECTION, turns: "any" }), ["turns"]);
    expect(following.requirements.turns).toEqual({ min: 4, max: 6 });
  });

  it("must give the most that any of them lacks, and nothing where all pass", () => {
    const candidate = placed(LIMITS);
    const { relaxable } = withRelaxable(candidate.requirements, ["outsideDiameter", "turns"]);
    // 22 mm outside for 21 asked, 8 turns for 6.
    expect(violationOf(relaxable, candidate)).toBeCloseTo(1 / 3, 12);
    expect(violationOf([], candidate)).toBe(0);
    const fitting = placed({ limits: { turns: { max: 9 } } });
    expect(violationOf(withRelaxable(fitting.requirements, ["turns"]).relaxable, fitting)).toBe(0);
  });
});
