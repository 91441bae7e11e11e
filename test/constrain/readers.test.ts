import { describe, expect, it } from "vitest";
import { boundEvaluators } from "../../src/constrain/bound-evaluator.ts";
import { clashAllowanceOf, describer, pointNames } from "../../src/constrain/design.ts";
import { isFeasible } from "../../src/constrain/evaluator.ts";
import { figuresReader } from "../../src/constrain/figures.ts";
import { FreeLengthRange } from "../../src/constrain/free-length-range.ts";
import { limitsFor } from "../../src/constrain/limits/limits.ts";
import { RejectionCounts, RejectionCountsByWire, slotOf } from "../../src/constrain/rejection-counts.ts";
import { resolveRequirements } from "../../src/constrain/requirements/requirements.ts";

import type { Brief, Choice, Load, Material, Wire } from "../../src/model.ts";
import { type Change, GROUND, placed, plainBrief, STEEL, WIRE } from "./plain.ts";

const BRASS: Material = { ...STEEL, name: "brass", density: 8500, moduli: [{ youngsModulus: 100e9, shearModulus: 37e9 }] };
const THIN: Wire = { ...WIRE, label: "1 mm", diameter: 1e-3 };

/** A brief of two materials and two styles of ends. */
const several = (change: Change = {}): Brief => {
  const brief = plainBrief(change);
  const ends = [GROUND, { ...GROUND, name: "plain", deadTurns: 0, ground: false }];
  return { ...brief, sweep: { ...brief.sweep, materials: [STEEL, BRASS], ends } };
};
const choice = (change: Partial<Choice> = {}): Choice => ({
  material: 0,
  wire: WIRE,
  ends: 0,
  totalTurns: 10,
  meanDiameter: 0.02,
  ...change,
});

describe("the figures of springs", () => {
  it("are those of their designs, in whatever order they come", () => {
    const brief = several();
    const [figures, design] = [figuresReader(brief), describer(brief)];
    const choices = [
      choice(),
      choice({ meanDiameter: 0.018 }),
      choice({ material: 1 }),
      choice({ wire: THIN }),
      choice({ material: 1, wire: THIN, ends: 1 }),
      choice(),
    ];
    for (const one of choices) {
      const read = figures(one);
      expect(design(one)).toMatchObject(read);
      expect(Object.keys(read)).toHaveLength(8);
    }
  });
});

describe("whether a spring fits", () => {
  const within = (change: Change, one: Partial<Choice> = {}) => isFeasible(several(change), choice(one));

  it("is whether it passes every limit, its wire and its heat too", () => {
    const rate = { min: 1, max: 1e6 };
    const load: Load = { kind: "rateAndPoint", rate, point: { name: "loaded", length: 0.03, force: { min: 1, max: 99 } } };
    expect(within({ load })).toBe(true);
    expect(within({ load, limits: { turns: { max: 7 } } })).toBe(false);
    expect(within({ load, limits: { turns: { max: 8 } } })).toBe(true);
    expect(within({ load }, { wire: { ...WIRE, diameter: 6e-3 } })).toBe(false);
    expect(within({ load, service: { temperature: 500 } })).toBe(false);
  });
});

describe("a design of a choice", () => {
  it("with a free length of its own is that long", () => {
    expect(describer(several())(choice({ freeLength: 0.0654 })).freeLength).toBe(0.0654);
  });

  it("leaves the room before solid that its brief asks, given or walked", () => {
    const brief = several({ limits: { clash: { ofDeflection: 0.1 } } });
    expect(clashAllowanceOf(brief, choice({ freeLength: 0.06 }))).toBeCloseTo(0.002, 12);
    const { freeLength } = describer(brief)(choice());
    expect(clashAllowanceOf(brief, choice())).toBeCloseTo(0.1 * (freeLength - 0.04), 12);
    expect(clashAllowanceOf(several(), choice())).toBe(0);
  });

  it("has the points of its load by their names, or the one at its largest deflection", () => {
    const force = { min: 1, max: 2 };
    const loads: Load[] = [
      plainBrief().load,
      { kind: "rateAndPoint", rate: {}, point: { name: "held", length: 0.04, force } },
      { kind: "forceAtDeflection", force, deflection: 0.01 },
      { kind: "rateAndLargestForce", rate: { min: 1 }, largestForce: 9 },
    ];
    expect(loads.map(pointNames)).toEqual([["open", "shut"], ["held"], ["loaded"], ["largest force"]]);
    for (const load of loads) {
      const { points } = describer(several({ load }))(choice());
      expect(points.map(({ name }) => name)).toEqual(pointNames(load));
    }
    const [loaded] = describer(several({ load: loads[2] as Load }))(choice()).points;
    expect(loaded?.deflection).toBeCloseTo(0.01, 12);
    const [largest] = describer(several({ load: loads[3] as Load }))(choice()).points;
    expect(largest?.force).toBeCloseTo(9, 9);
  });

  it("shorter than a point does not push there", () => {
    expect(describer(several())(choice({ freeLength: 0.03 })).points[0]?.force).toBe(0);
  });
});

describe("the bounds that a search evaluates", () => {
  it("are those that its candidates are not made to meet, each at its place in the tally", () => {
    const candidate = placed({ limits: { turns: { min: 4, max: 9 } }, envelope: { outsideDiameter: { max: 0.023 } } });
    const limits = limitsFor(
      resolveRequirements(plainBrief({ limits: { turns: { min: 4, max: 9 } }, envelope: { outsideDiameter: { max: 0.023 } } })),
    );
    const bounds = boundEvaluators(limits, candidate, new FreeLengthRange(candidate, limits), 1e-3);
    expect(bounds.some(({ slot }) => slot === slotOf("turns"))).toBe(false);
    const outside = bounds.find(({ slot }) => slot === slotOf("outsideDiameter"));
    expect(outside).toMatchObject({ monotonicity: "decreasing", scope: "wire", passMargin: -1e-9 });
    expect(outside?.exactMargin).toBeCloseTo(0, 12);
    // At 20 steps of a millimetre the coil is 22 mm outside.
    expect(outside?.marginAt(20)).toBeCloseTo(1 - 22 / 23, 12);
  });

  it("of an eased limit stand and pass further out by its share", () => {
    const candidate = placed({ envelope: { outsideDiameter: { max: 0.02 } } });
    const limits = limitsFor(candidate.requirements).map((limit) => limit.relaxedBy(0.25));
    const [bound] = boundEvaluators(limits, candidate, new FreeLengthRange(candidate, limits), 1);
    expect([bound?.exactMargin, bound?.passMargin]).toEqual([-0.25, -1e-9 - 0.25]);
  });
});

describe("the tally of each material and wire", () => {
  const counted = (rejections: RejectionCounts, feasible: number) => {
    rejections.feasible += feasible;
    rejections.reject(slotOf("index"), 1);
  };

  it("is what the whole grew by from one to the next, in the order of the walk", () => {
    const [byWire, rejections] = [new RejectionCountsByWire(several()), new RejectionCounts()];
    byWire.enter(0, WIRE, rejections);
    counted(rejections, 2);
    byWire.enter(1, THIN, rejections);
    counted(rejections, 5);
    byWire.enter(0, THIN, rejections);
    const row = (material: string, wire: Wire, feasible: number, walked: number) => ({
      material,
      series: "invented",
      wire: wire.label,
      wireDiameter: wire.diameter,
      walked,
      rejected: walked > 0 ? { index: 1 } : {},
      feasible,
    });
    expect(byWire.finish(rejections)).toEqual([row("steel", THIN, 0, 0), row("steel", WIRE, 2, 3), row("brass", THIN, 5, 6)]);
  });

  it("of parts is that of the whole, one that two of them walked counted once for each", () => {
    const [one, other] = [new RejectionCountsByWire(several()), new RejectionCountsByWire(several())];
    const [ofOne, ofOther] = [new RejectionCounts(), new RejectionCounts()];
    one.enter(0, WIRE, ofOne);
    counted(ofOne, 2);
    other.enter(0, WIRE, ofOther);
    counted(ofOther, 3);
    other.enter(0, THIN, ofOther);
    counted(ofOther, 4);
    one.merge(other.partial(ofOther), ofOne);
    ofOne.add(ofOther.counts, ofOther.feasible);
    expect(one.finish(ofOne).map(({ wire, feasible, walked }) => [wire, feasible, walked])).toEqual([
      ["1 mm", 4, 5],
      ["2 mm", 5, 7],
    ]);
  });
});
