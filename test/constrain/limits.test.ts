import { describe, expect, it } from "vitest";
import type { Candidate } from "../../src/constrain/candidate/candidate.ts";
import { LIMIT_ORDER, type Limit, limitsFor, limitWithin } from "../../src/constrain/limits/limits.ts";
import { type FatigueRequirement, resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import type { LimitName } from "../../src/model.ts";
import { type Change, placed, plainBrief } from "./plain.ts";

const CYCLIC = { cycles: 1e6 };
const safety = (value: number) => ({ safety: value });

/** Each bound of each limit: the figure that it judges, and the brief that bounds it at a value. */
const SIDES: readonly (readonly [LimitName, "least" | "most", string, (c: Candidate) => number, (bound: number) => Change])[] = [
  ["turns", "least", "turns", (c) => c.activeTurns, (min) => ({ limits: { turns: { min } } })],
  ["turns", "most", "turns", (c) => c.activeTurns, (max) => ({ limits: { turns: { max } } })],
  ["solidLength", "least", "solid length", (c) => c.solidLength, (min) => ({ envelope: { solidLength: { min } } })],
  ["solidLength", "most", "solid length", (c) => c.solidLength, (max) => ({ envelope: { solidLength: { max } } })],
  ["index", "least", "index", (c) => c.index, (min) => ({ limits: { index: { min } } })],
  ["index", "most", "index", (c) => c.index, (max) => ({ limits: { index: { max } } })],
  ["outsideDiameter", "least", "diameter", (c) => c.outsideDiameter, (min) => ({ envelope: { outsideDiameter: { min } } })],
  ["outsideDiameter", "most", "diameter", (c) => c.outsideDiameter, (max) => ({ envelope: { outsideDiameter: { max } } })],
  ["outsideDiameter", "most", "diameter at solid in a bore", (c) => c.outsideDiameterAtSolid, (bore) => ({ envelope: { bore } })],
  ["insideDiameter", "least", "diameter", (c) => c.insideDiameter, (min) => ({ envelope: { insideDiameter: { min } } })],
  ["insideDiameter", "most", "diameter", (c) => c.insideDiameter, (max) => ({ envelope: { insideDiameter: { max } } })],
  ["insideDiameter", "least", "diameter on a rod", (c) => c.insideDiameter, (rod) => ({ envelope: { rod } })],
  ["clash", "least", "room before solid", (c) => c.clashRoom, (length) => ({ limits: { clash: { length } } })],
  [
    "clash",
    "least",
    "share of the deflection",
    (c) => c.clashRoom / c.workingDeflection,
    (ofDeflection) => ({ limits: { clash: { ofDeflection } } }),
  ],
  [
    "clash",
    "least",
    "share of the solid length",
    (c) => c.clashRoom / c.solidLength,
    (ofSolidLength) => ({ limits: { clash: { ofSolidLength } } }),
  ],
  [
    "workingStress",
    "most",
    "stress at the shortest length",
    (c) => c.stress(c.workingForce, "wahl"),
    (max) => ({ limits: { workingStress: { max, factor: "wahl" } } }),
  ],
  [
    "workingStress",
    "least",
    "safety at the shortest length",
    (c) => (0.45 * 2000e6) / c.stress(c.workingForce, "none"),
    (bound) => ({ limits: { workingStress: { ...safety(bound), factor: "none" } } }),
  ],
  ["solidStress", "most", "stress at solid", (c) => c.stressAtSolid, (max) => ({ limits: { solidStress: { max } } })],
  [
    "solidStress",
    "least",
    "safety at solid",
    (c) => (0.45 * 2000e6) / c.stressAtSolid,
    (bound) => ({ limits: { solidStress: safety(bound) } }),
  ],
  [
    "fatigue",
    "least",
    "safety by Sines",
    // 35 kpsi endured over half of what the stress moves between the two lengths.
    (c) => (35 * 6894757.293168361) / ((c.stress(c.workingForce, "bergstrasser") - c.stress(c.leastForce, "bergstrasser")) / 2),
    (bound) => ({ service: CYCLIC, limits: { fatigue: { ...safety(bound), line: "sines" } } }),
  ],
  [
    "buckling",
    "least",
    "multiple of the working deflection",
    (c) => c.bucklingDeflection / c.workingDeflection,
    (bound) => ({ service: { seats: "clamped and free" }, limits: { buckling: safety(bound) } }),
  ],
  [
    "surge",
    "least",
    "multiple of the frequency",
    (c) => c.surgeFrequency / 10,
    (multiple) => ({ service: { frequency: 10 }, limits: { surge: { multiple } } }),
  ],
];

const named = (limits: readonly Limit[], name: LimitName): Limit => {
  const found = limits.find((limit) => limit.name === name);
  if (found === undefined) throw new Error(`${name} is not asked`);
  return found;
};

describe("a limit", () => {
  it.each(SIDES)("%s, %s %s: its margin is the share of the bound that is left", (name, sense, _, figureOf, change) => {
    const figure = figureOf(placed(change(1e-3)));
    expect(figure).toBeGreaterThan(0);
    /** The margin where the figure is so many times its bound. */
    const marginAt = (times: number) => {
      const candidate = placed(change(figure / times));
      const limit = named(limitsFor(candidate.requirements), name);
      const margin = limit.margin(candidate);
      expect(limit.passes(candidate)).toBe(margin >= -1e-9);
      return margin;
    };
    expect(marginAt(1)).toBeCloseTo(0, 9);
    const [inside, outside] = sense === "most" ? [0.8, 1.25] : [1.25, 0.8];
    expect(marginAt(inside)).toBeGreaterThan(0.15);
    expect(marginAt(inside)).toBeLessThan(0.26);
    expect(marginAt(outside)).toBeLessThan(-0.15);
    expect(marginAt(outside)).toBeGreaterThan(-0.26);
  });

  it.each(SIDES)(
    "%s, %s %s: says what it is and what it would have to be, as a brief writes it",
    (name, _sense, _, figureOf, change) => {
      const figure = figureOf(placed(change(1e-3)));
      const candidate = placed(change(figure * 1.1));
      const limit = named(limitsFor(candidate.requirements), name);
      const tight = limit.tightest(candidate);
      const { limitValue, needed } = tight.terms(candidate);
      const bound = tight.dimension === "frequency" ? 10 * figure : figure;
      expect(limitValue / bound).toBeCloseTo(1.1, 9);
      expect(needed / bound).toBeCloseTo(1, 9);
      expect(tight.senseInBrief).toBe(_sense);
    },
  );

  it.each(SIDES)("%s, %s %s: is asked only where a brief asks it", (name, _sense, _, _figureOf, change) => {
    const asked = (one: Change) => limitsFor(resolveRequirements(plainBrief(one))).find((limit) => limit.name === name);
    const plain = asked({});
    if (name === "index" || name === "clash") {
      expect([plain?.reported, asked(change(3))?.reported]).toEqual([false, true]);
    } else {
      expect(plain).toBeUndefined();
      expect(asked(change(3))).toMatchObject({ reported: true });
    }
  });

  it("on surge judges a far end that is free by a quarter of √(k/m), any other by a half", () => {
    const frequency = (service: NonNullable<Change["service"]>) => placed({ service }).surgeFrequency;
    const seated = frequency({ seats: "parallel plates" });
    expect(frequency({ seats: "clamped and free", farEnd: "on a seat" })).toBe(seated);
    expect(frequency({ seats: "clamped and free", farEnd: "free" })).toBeCloseTo(seated / 2, 12);
  });

  it("has a margin of no more than all of its bound, and of all where nothing binds", () => {
    const candidate = placed({ limits: { turns: { min: 0.1 } } });
    expect(named(limitsFor(candidate.requirements), "turns").margin(candidate)).toBe(1);
  });

  it("of a window has the smaller margin of its ends, and the tighter of them to say why", () => {
    const candidate = placed({ limits: { turns: { min: 4, max: 10 } } });
    const turns = named(limitsFor(candidate.requirements), "turns");
    // 8 active turns: a fifth inside 10, and as many again as 4.
    expect(turns.margin(candidate)).toBeCloseTo(0.2, 12);
    expect(turns.tightest(candidate).sense).toBe("most");
  });

  it("passes with its bounds moved outwards by a share, and no further", () => {
    const candidate = placed({ limits: { turns: { max: 6.4 } } });
    const turns = named(limitsFor(candidate.requirements), "turns");
    expect([turns.passes(candidate), turns.relaxedBy(0.24).passes(candidate), turns.relaxedBy(0.26).passes(candidate)]).toEqual([
      false,
      false,
      true,
    ]);
    expect(turns.relaxation).toBe(0);
  });

  it("stands in one order, whatever a brief asks", () => {
    const all = limitsFor(
      resolveRequirements(plainBrief({ limits: { turns: { max: 9 }, solidStress: safety(1) }, envelope: { bore: 1 } })),
    );
    const places = all.map(({ name }) => LIMIT_ORDER.indexOf(name));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(LIMIT_ORDER.slice(0, 3)).toEqual(["turns", "solidLength", "index"]);
  });

  it("with ends of its own judges every candidate by them, an open end not at all", () => {
    const candidate = placed();
    const bounds = (min: number, max: number) => limitWithin("turns", candidate.requirements, { min, max }).bounds.length;
    expect([bounds(0, 9), bounds(2, 9), bounds(2, Number.POSITIVE_INFINITY)]).toEqual([1, 2, 1]);
    const own = limitWithin("turns", candidate.requirements, { min: 10, max: 20 });
    expect([own.margin(candidate), own.reported, own.bounds[0]?.byConstruction]).toEqual([
      expect.closeTo(-0.2, 12),
      false,
      false,
    ]);
  });
});

describe("cyclic duty of the handbook", () => {
  const asking: Change = { service: CYCLIC, limits: { fatigue: { safety: 0.1, line: "goodman" } } };
  const fatigue = (change: Change = {}) => {
    const candidate = placed({ ...asking, ...change });
    return { candidate, limit: named(limitsFor(candidate.requirements), "fatigue") };
  };

  it("also holds the greatest stress under what yields, and the wire under the thickest of the data", () => {
    const { candidate, limit } = fatigue();
    const [, yielding, size] = limit.bounds;
    expect(yielding?.margin(candidate)).toBeCloseTo(1 - candidate.stress(candidate.workingForce, "bergstrasser") / 900e6, 12);
    expect(size?.margin(candidate)).toBeCloseTo(1 - 2e-3 / 10e-3, 12);
    expect(limit.bounds.map(({ figure }) => figure)).toEqual([null, "stressAtGreatestLoad", "wireDiameter"]);
  });

  it("is not asked without cycles", () => {
    expect(resolveRequirements(plainBrief({ ...asking, service: {} })).fatigue).toBeNull();
  });

  it("takes what peened springs endured where they are peened", () => {
    const [unpeened, peened] = [fatigue(), fatigue({ service: { ...CYCLIC, surface: "peened" } })];
    expect(peened.candidate.fatigueSafety).toBeGreaterThan(unpeened.candidate.fatigueSafety);
  });

  it.each(["goodman", "gerber", "sines"] as const)("by the line of %s is the formula's safety, and all differ", (line) => {
    const by = (one: typeof line) => fatigue({ limits: { fatigue: { safety: 0.1, line: one } } }).candidate.fatigueSafety;
    const all = (["goodman", "gerber", "sines"] as const).map(by);
    expect(new Set(all).size).toBe(3);
    expect(by(line)).toBeGreaterThan(0);
  });

  it("by the share for a life falls with the cycles, and not with the wire beyond 10 mm", () => {
    const at = (cycles: number, surface: "unpeened" | "peened" = "unpeened") =>
      fatigue({ service: { ...CYCLIC, cycles, surface }, limits: { fatigue: { safety: 0.1, line: "life" } } });
    const safeties = [1e4, 1e5, 3e5, 1e6, 1e7, 1e8].map((cycles) => at(cycles).candidate.fatigueSafety);
    const [before, first, between, middle, last, beyond] = safeties as [number, number, number, number, number, number];
    expect([before, beyond]).toEqual([first, last]);
    expect(first > between && between > middle && middle > last).toBe(true);
    expect(at(1e6, "peened").candidate.fatigueSafety).toBeGreaterThan(middle);
    expect(at(1e6).limit.bounds.map(({ figure }) => figure)).toEqual([null, "stressAtGreatestLoad"]);
  });

  it("by the share for a life is one where a spring goes from nothing to that share of its strength", () => {
    const { candidate } = fatigue({ service: { ...CYCLIC, cycles: 1e6 }, limits: { fatigue: { safety: 0.1, line: "life" } } });
    const ask = candidate.requirements.fatigue as FatigueRequirement;
    const upper = candidate.stress(candidate.workingForce, ask.factor);
    // Whatever its least load, a spring on the Goodman line through amplitude = mean = half the share has a safety of one.
    const half = (0.33 * candidate.tensileStrength) / 2;
    const ultimate = 0.67 * candidate.tensileStrength;
    const lower = candidate.stress(candidate.leastForce, ask.factor);
    const endurance = half / (1 - half / ultimate);
    const expected = 1 / ((upper - lower) / 2 / endurance + (upper + lower) / 2 / ultimate);
    expect(candidate.fatigueSafety).toBeCloseTo(expected, 12);
  });

  it("by the diagram of the material's own data in EN 13906-1, without yielding or a thickest wire", () => {
    const rows: readonly (readonly [number, number])[] = [
      [0, 600e6],
      [600e6, 900e6],
    ];
    const { candidate, limit } = fatigue({
      practice: "en13906",
      material: { fatigue: { source: "invented", cycles: 1e7, unpeened: rows } },
    });
    expect(limit.bounds).toHaveLength(1);
    const [lower, upper] = [candidate.leastForce, candidate.workingForce].map((force) => candidate.stress(force, "bergstrasser"));
    const allowed = 600e6 + 0.5 * (lower as number);
    expect(candidate.fatigueSafety).toBeCloseTo((allowed - (lower as number)) / ((upper as number) - (lower as number)), 9);
  });
});
