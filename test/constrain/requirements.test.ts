import { describe, expect, it } from "vitest";
import { clashAllowance, clashRuleOf, scaledAllowance } from "../../src/constrain/candidate/free-length.ts";
import {
  freeLengthAimOf,
  freeLengthRuleOf,
  loadWindowsOf,
  rateAllowed,
  rateAsked,
  situationOf,
} from "../../src/constrain/requirements/load.ts";
import { clearanceOf, isSolved, resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import type { Brief, ClashAllowance, Load, Quantity } from "../../src/model.ts";
import { placed, plainBrief } from "./plain.ts";

const OPEN = { min: 0, max: Number.POSITIVE_INFINITY };
const point = (length: number, force: Quantity, name = `${length}`) => ({ name, length, force });
const points = (...list: ReturnType<typeof point>[]): Load => ({ kind: "points", points: list });
const asking = (load: Load) => plainBrief({ load });
const within = (nominal: number, by: number) => ({ nominal, min: nominal - by, max: nominal + by });

const ATDEFLECTION: Load = { kind: "forceAtDeflection", force: { min: 18, max: 24 }, deflection: 2 };
const EXACT: Load = { kind: "forceAtDeflection", force: within(20, 2), deflection: 2 };
const LARGEST: Load = { kind: "rateAndLargestForce", rate: { min: 5, max: 9 }, largestForce: 30 };
const ONE = (force: Quantity): Load => ({ kind: "rateAndPoint", rate: { min: 5, max: 9 }, point: point(4, force) });

describe("the rate that a load asks", () => {
  it("lies between the ends of a force over its deflection", () => {
    expect(rateAsked(asking(ATDEFLECTION))).toEqual({ pinned: null, span: { min: 9, max: 12 } });
    expect(rateAllowed(asking(EXACT))).toEqual({ min: 9, max: 11 });
  });

  it("is pinned by a nominal force at a deflection, whatever the maker may miss by", () => {
    expect(rateAsked(asking(EXACT))).toEqual({ pinned: 10, span: { min: 10, max: 10 } });
  });

  it("is the window that is stated", () => {
    expect(rateAsked(asking(LARGEST))).toEqual({ pinned: null, span: { min: 5, max: 9 } });
  });

  it("is what every pair of points allows: the most that the nearest ends differ by, and the least", () => {
    const far = points(point(10, { min: 1, max: 3 }), point(6, { min: 9, max: 15 }));
    // Between 9 - 3 and 15 - 1 over a travel of 4.
    expect(rateAsked(asking(far)).span).toEqual({ min: 1.5, max: 3.5 });
    const reversed = points(point(6, { min: 9, max: 15 }), point(10, { min: 1, max: 3 }));
    expect(rateAsked(asking(reversed)).span).toEqual({ min: 1.5, max: 3.5 });
    const three = points(point(10, { min: 1, max: 3 }), point(8, { min: 6, max: 7 }), point(6, { min: 9, max: 15 }));
    expect(rateAsked(asking(three)).span).toEqual({ min: 1.5, max: 3 });
  });

  it("of two points that aim at nominals is pinned by these, and allowed what their tolerances allow", () => {
    const two = asking(points(point(10, within(2, 1)), point(6, within(12, 3))));
    expect(rateAsked(two)).toEqual({ pinned: 2.5, span: { min: 2.5, max: 2.5 } });
    expect(rateAllowed(two)).toEqual({ min: 1.5, max: 3.5 });
  });

  it("of three points takes the tolerance for the window, since they need not lie on a line", () => {
    const three = asking(points(point(10, within(2, 1)), point(8, within(6, 2)), point(6, within(12, 3))));
    expect(rateAsked(three)).toEqual({ pinned: null, span: { min: 1.5, max: 3.5 } });
    expect(freeLengthRuleOf(three)).toEqual({ kind: "points", lengths: [10, 8, 6], low: [1, 4, 9], high: [3, 8, 15] });
  });

  it("is of any size where two points are at one length", () => {
    expect(rateAsked(asking(points(point(6, { min: 1, max: 3 }), point(6, { min: 2, max: 4 })))).span).toEqual(OPEN);
  });
});

describe("how a load sets the free length", () => {
  it.each<[string, Load, unknown]>([
    ["a force at a deflection", ATDEFLECTION, { kind: "clearsAtDeflection", deflection: 2 }],
    ["a largest force", LARGEST, { kind: "clearsAtForce", force: 30 }],
    ["one point of a nominal with a tolerance", ONE(within(7, 2)), { kind: "points", lengths: [4], low: [5], high: [9] }],
    ["one point of a window", ONE({ min: 5, max: 9 }), { kind: "points", lengths: [4], low: [5], high: [9] }],
  ])("%s", (_, load, rule) => expect(freeLengthRuleOf(asking(load))).toEqual(rule));

  const situation = (load: Load, pinned: number | null = null) => situationOf(asking(load), pinned);
  it("says what the load leaves free", () => {
    expect([situation(ATDEFLECTION), situation(EXACT, 10)]).toEqual(["freeForceAtDeflection", "pinnedShortest"]);
    expect([situation(LARGEST), situation(LARGEST, 7)]).toEqual(["freeRateAndLargestForce", "pinnedShortest"]);
    expect([situation(ONE({ min: 5, max: 9 })), situation(ONE(within(7, 2)))]).toEqual(["freePoints", "freePoints"]);
    expect(situation(ONE(within(7, 0)))).toBe("freeRateAndPoint");
    expect(situation(ONE(within(7, 2)), 6)).toBe("pinnedPoints");
    const two = points(point(10, { min: 1, max: 3 }), point(6, { min: 9, max: 15 }));
    expect([situation(two), situation(two, 2)]).toEqual(["freePoints", "pinnedPoints"]);
  });
});

describe("which free length is reported", () => {
  const aim = (load: Load, rank: Brief["rank"] = ["mass"]) => freeLengthAimOf({ ...asking(load), rank });
  const windows = points(point(10, { min: 1, max: 3 }), point(6, { min: 9, max: 15 }));

  it("is the shortest that clears under a force at a deflection, or a largest force", () => {
    expect([aim(ATDEFLECTION), aim(LARGEST)]).toEqual([{ kind: "shortest" }, { kind: "shortest" }]);
  });

  it("is the middle under windows, and the shortest where a ranked figure depends on it", () => {
    expect([aim(windows), aim(windows, ["mass", "outsideDiameter", "relativeCost"])]).toEqual([
      { kind: "middle" },
      { kind: "middle" },
    ]);
    expect([aim(windows, ["freeLength"]), aim(windows, ["mass", "solidSafety"])]).toEqual([
      { kind: "shortest" },
      { kind: "shortest" },
    ]);
  });

  it("aims at the nominal of one or two points that leave a tolerance, whatever is ranked", () => {
    const nominal = { kind: "nominal", length: 10, force: 2 };
    expect(aim(points(point(10, within(2, 1)), point(6, within(12, 3))), ["freeLength"])).toEqual(nominal);
    expect(aim(points(point(6, { min: 9, max: 15 }), point(10, within(2, 1))))).toEqual(nominal);
    expect(aim(ONE(within(7, 2)))).toEqual({ kind: "nominal", length: 4, force: 7 });
    expect(aim(points(point(10, within(2, 1)), point(8, within(6, 2)), point(6, within(12, 3))))).toEqual({ kind: "middle" });
  });

  it("is the only one where a force is exact", () => {
    expect([aim(ONE(within(7, 0))), aim(points(point(10, within(2, 0)), point(6, within(12, 3))))]).toEqual([
      { kind: "shortest" },
      { kind: "shortest" },
    ]);
  });
});

describe("the windows that a maker must hit", () => {
  it("are those with room, at their lengths or at the one deflection", () => {
    expect(loadWindowsOf(asking(ATDEFLECTION))).toEqual([{ name: "loaded", deflection: 2, min: 18, max: 24 }]);
    expect(loadWindowsOf(asking({ ...ATDEFLECTION, force: within(20, 0) } as Load))).toEqual([]);
    const two = points(point(10, within(2, 0), "open"), point(6, within(12, 3), "shut"));
    expect(loadWindowsOf(asking(two))).toEqual([{ name: "shut", length: 6, min: 9, max: 15 }]);
    expect(loadWindowsOf(asking(ONE({ min: 5, max: 9 })))).toEqual([{ name: "4", length: 4, min: 5, max: 9 }]);
    expect(loadWindowsOf(asking(LARGEST))).toEqual([]);
  });
});

describe("what a brief asks", () => {
  it("leaves open what it does not say", () => {
    const requirements = resolveRequirements(plainBrief());
    const { turns, solidLength, outsideDiameter, insideDiameter, freeLength } = requirements;
    expect([turns, solidLength, outsideDiameter, insideDiameter, freeLength]).toEqual([OPEN, OPEN, OPEN, OPEN, OPEN]);
    expect([requirements.bore, requirements.rod, requirements.temperature, requirements.surge]).toEqual([
      Number.POSITIVE_INFINITY,
      0,
      null,
      null,
    ]);
    expect([
      requirements.clash,
      requirements.workingStress,
      requirements.solidStress,
      requirements.bucklingSafety,
      requirements.fatigue,
    ]).toEqual(Array(5).fill(null));
  });

  it("takes a clearance from the bore, and adds it to the rod", () => {
    const share = resolveRequirements(plainBrief({ envelope: { bore: 0.03, rod: 0.01, clearance: { share: 0.1 } } }));
    expect([share.bore, share.rod, share.insideDiameter.min]).toEqual([0.027, 0.011, 0.011]);
    const length = resolveRequirements(plainBrief({ envelope: { bore: 0.03, rod: 0.01, clearance: { length: 0.002 } } }));
    expect([length.bore, length.rod]).toEqual([0.03 - 0.002, 0.012]);
    expect([clearanceOf(undefined, 5), clearanceOf({ share: 0.5 }, 8), clearanceOf({ length: 3 }, 8)]).toEqual([0, 4, 3]);
  });

  it("asks the larger of a rod and a least inside diameter", () => {
    const inside = (min: number) =>
      resolveRequirements(plainBrief({ envelope: { rod: 0.01, insideDiameter: { min, max: 0.02 } } }));
    expect([inside(0.005).insideDiameter, inside(0.015).insideDiameter]).toEqual([
      { min: 0.01, max: 0.02 },
      { min: 0.015, max: 0.02 },
    ]);
  });

  it("asks nothing of an envelope whose limit is lifted", () => {
    const window = { min: 0.01, max: 0.02 };
    const envelope = { bore: 0.03, rod: 0.01, outsideDiameter: window, insideDiameter: window, freeLength: window };
    const lifted = ["solidLength", "outsideDiameter", "insideDiameter", "freeLength", "temperature"] as const;
    const all = { envelope: { ...envelope, solidLength: window }, service: { temperature: 350 } };
    const requirements = resolveRequirements(plainBrief({ ...all, limits: { lifted } }));
    expect([requirements.solidLength, requirements.outsideDiameter, requirements.freeLength]).toEqual([OPEN, OPEN, OPEN]);
    expect([requirements.bore, requirements.rod, requirements.temperature]).toEqual([Number.POSITIVE_INFINITY, 0, null]);
    expect(requirements.insideDiameter.max).toBe(Number.POSITIVE_INFINITY);
    const asked = resolveRequirements(plainBrief(all));
    expect([asked.solidLength, asked.outsideDiameter, asked.freeLength, asked.temperature]).toEqual([
      window,
      window,
      window,
      350,
    ]);
  });

  it("knows every limit that is off as lifted, and no other", () => {
    const off = ["index", "turns", "clash", "workingStress", "solidStress", "fatigue", "buckling", "surge", "loadTolerance"];
    expect([...resolveRequirements(plainBrief()).lifted].sort()).toEqual([...off].sort());
    const requirements = resolveRequirements(plainBrief({ limits: { index: { min: 4 }, lifted: ["freeLength"] } }));
    expect([requirements.lifted.has("index"), requirements.lifted.has("freeLength")]).toEqual([false, true]);
  });

  it("keeps the index between what can be wound, whatever the brief says", () => {
    const index = (limits: Brief["limits"]["index"]) => resolveRequirements(plainBrief({ limits: { index: limits } })).index;
    expect([index("off"), index({ min: 1, max: 99 }), index({ min: 4, max: 12 })]).toEqual([
      { min: 2, max: 25 },
      { min: 2, max: 25 },
      { min: 4, max: 12 },
    ]);
  });

  it("is not asked of buckling where the spring is guided, nor of surge without a frequency", () => {
    const limits = { buckling: { safety: 1.5 }, surge: { multiple: 15 } };
    const requirements = resolveRequirements(plainBrief({ limits, service: { frequency: 4 } }));
    expect([requirements.bucklingSafety, requirements.surge, requirements.fixity]).toEqual([1.5, 60, 0.5]);
    const guided = resolveRequirements(plainBrief({ limits, service: { seats: "guided" } }));
    expect([guided.bucklingSafety, guided.surge]).toEqual([null, null]);
    expect(resolveRequirements(plainBrief({ service: { frequency: 4 } })).surge).toBeNull();
  });

  it("takes the factor of its practice and of set removal, and in cyclic duty that of fatigue at the points", () => {
    const factors = (set: "as wound" | "removed", cycles?: number) => {
      const requirements = resolveRequirements(plainBrief({ service: cycles === undefined ? { set } : { set, cycles } }));
      return [requirements.setRemoved, requirements.stressFactor, requirements.workingFactor, requirements.pointFactor];
    };
    expect(factors("as wound")).toEqual([false, "bergstrasser", "bergstrasser", "bergstrasser"]);
    expect(factors("removed")).toEqual([true, "direct", "direct", "direct"]);
    expect(factors("removed", 1e5)).toEqual([true, "direct", "direct", "bergstrasser"]);
    const own = resolveRequirements(plainBrief({ limits: { workingStress: { max: 1, factor: "wahl" } } }));
    expect(own.workingFactor).toBe("wahl");
  });

  it("has the shortest and the longest length of its points; with one the load goes back to nothing", () => {
    const requirements = resolveRequirements(plainBrief());
    expect([requirements.shortestLength, requirements.longestLength]).toEqual([0.04, 0.05]);
    const one = resolveRequirements(asking(ONE({ min: 5, max: 9 })));
    expect([one.shortestLength, one.longestLength]).toEqual([4, Number.NaN]);
    const none = resolveRequirements(asking(LARGEST));
    expect([none.shortestLength, none.longestLength]).toEqual([Number.NaN, Number.NaN]);
  });

  it("has one diameter for a family where the rate is pinned and turns are counted", () => {
    const solved = (load: Load, turns: Brief["sweep"]["turns"]) => isSolved(resolveRequirements(plainBrief({ load, turns })));
    expect([solved(EXACT, "whole"), solved(EXACT, "any"), solved(ATDEFLECTION, "whole")]).toEqual([true, false, false]);
  });

  it("of one given spring takes its own turns, and any rate that the load allows", () => {
    const requirements = resolveRequirements(plainBrief({ load: EXACT, turns: "any" }), true);
    expect([requirements.given, requirements.turnsAny, requirements.pinnedRate, requirements.rate]).toEqual([
      true,
      false,
      null,
      { min: 9, max: 11 },
    ]);
    expect(resolveRequirements(plainBrief({ load: EXACT, turns: "any" })).turnsAny).toBe(true);
  });

  it("does not change the brief", () => {
    const brief = plainBrief({ envelope: { bore: 1, clearance: { share: 0.1 } } });
    const copy = structuredClone(brief);
    resolveRequirements(brief);
    expect(brief).toEqual(copy);
  });
});

describe("the room before solid", () => {
  const spring = { workingDeflection: 20, solidLength: 30, activeTurns: 4, meanDiameter: 20, wireDiameter: 2 };
  const room = (allowance: ClashAllowance | null) => clashAllowance(spring, clashRuleOf(allowance));
  it.each<[string, ClashAllowance | null, number]>([
    ["of a deflection", { ofDeflection: 0.15 }, 3],
    ["of the solid length", { ofSolidLength: 0.1 }, 3],
    ["of a length", { length: 1.5 }, 1.5],
    ["of the least gap between coils", { minimumGap: 1.5 }, 1.5 * 2],
    ["of nothing where it is lifted", null, 0],
  ])("is a share %s", (_, allowance, value) => {
    expect(room(allowance)).toBeCloseTo(value, 12);
    if (allowance !== null) expect(room(scaledAllowance(allowance, 0.5))).toBeCloseTo(value / 2, 12);
  });
});

describe("a candidate", () => {
  it("is as short as it may be at a deflection, or as long as the least free length", () => {
    const at = (min: number) => {
      const limits = { clash: { ofDeflection: 0.15 } } as const;
      return placed({ load: { ...ATDEFLECTION, deflection: 0.01 } as Load, limits, envelope: { freeLength: { min } } });
    };
    expect(at(0).freeLength).toBeCloseTo(0.02 + 0.01 + 0.0015, 12);
    expect(at(0.05).freeLength).toBe(0.05);
  });

  it("is as short as it may be at a largest force", () => {
    const candidate = placed({ load: LARGEST, limits: { clash: { length: 0.001 } } });
    expect(candidate.freeLength).toBeCloseTo(0.02 + 30 / candidate.rate + 0.001, 12);
    expect([candidate.workingForce, candidate.leastForce]).toEqual([expect.closeTo(30, 9), 0]);
  });

  it("shorter than a point's length is not pressed there", () => {
    const candidate = placed();
    candidate.setDimensions(0.02, 0.03);
    expect([candidate.workingDeflection, candidate.leastForce]).toEqual([0, 0]);
    candidate.setDimensions(0.02, 0.06);
    expect(candidate.workingDeflection).toBeCloseTo(0.02, 12);
    expect(candidate.leastForce).toBeCloseTo(0.01 * candidate.rate, 9);
  });

  it("whose turns follow has the pinned rate at every diameter, and ends that add their dead turns", () => {
    const candidate = placed({ load: EXACT, turns: "any" }, 0.02, Number.NaN);
    expect(candidate.rate).toBe(10);
    expect(candidate.totalTurns).toBeCloseTo(candidate.activeTurns + 2, 12);
    expect(candidate.solidLength).toBeCloseTo(candidate.totalTurns * 2e-3, 12);
  });

  it("costs by its wire's price where it has one, else by its material, and by the operations that it gets", () => {
    const cost = { grind: 1, set: 20, peen: 300, relieve: 4000 };
    const all = placed({ cost, service: { set: "removed", surface: "peened" } });
    expect(all.relativeCost).toBeCloseTo(all.mass * 2 + 4321, 9);
    const few = placed({ cost, ends: { ground: false } });
    expect(few.relativeCost).toBeCloseTo(few.mass * 2 + 4000, 9);
    const priced = placed({ wire: { price: 7 } });
    expect(priced.relativeCost).toBeCloseTo(priced.mass * 7, 12);
    const own = placed({ material: { operations: { grind: 5, relieve: 6 } }, cost: { relieve: 9 } });
    expect(own.operations).toEqual({ grind: 5, set: 0, peen: 0, relieve: 9 });
  });

  it("takes the share of strength that its material states, else its class's, before or after set is removed", () => {
    const share = (set: "as wound" | "removed", allowable?: { asWound: number; setRemoved: number }) =>
      placed({ service: { set }, material: allowable === undefined ? {} : { allowable } }).allowableFraction;
    const stated = { asWound: 0.4, setRemoved: 0.7 };
    expect([share("as wound"), share("removed"), share("as wound", stated), share("removed", stated)]).toEqual([
      0.45, 0.6, 0.4, 0.7,
    ]);
  });

  it("weighs all its turns, and swings with the active ones alone", () => {
    const candidate = placed();
    expect(candidate.surgeFrequency).toBeCloseTo(0.5 * Math.sqrt(candidate.rate / (candidate.mass * 0.8)), 9);
  });
});
