import { describe, expect, it } from "vitest";
import { fatigueSafety } from "../../src/constrain/candidate/fatigue.ts";
import { stressFactorNamed } from "../../src/constrain/candidate/stress-factor.ts";
import { toleranceFigures } from "../../src/constrain/candidate/tolerances.ts";
import { describer } from "../../src/constrain/design.ts";
import { Evaluator } from "../../src/constrain/evaluator.ts";
import { limitsFor } from "../../src/constrain/limits/limits.ts";
import { slotOf } from "../../src/constrain/rejection-counts.ts";
import { resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import { fatigueSafetyGerber, fatigueSafetyGoodman } from "../../src/mechanics/fatigue.ts";
import { stressFactorBergstrasser, stressFactorDirect, stressFactorWahl } from "../../src/mechanics/stress.ts";
import type { Confidence, Load, Material } from "../../src/model.ts";
import { type Change, placed, plainBrief, STEEL, WIRE } from "./plain.ts";

const PINNED: Load = { kind: "forceAtDeflection", force: { nominal: 200, min: 180, max: 220 }, deflection: 0.02 };

describe("a stress factor by its name", () => {
  it("is the formula's, and one where none is asked", () => {
    const names = ["none", "direct", "bergstrasser", "wahl"] as const;
    expect(names.map((name) => stressFactorNamed(name, 8))).toEqual([
      1,
      stressFactorDirect(8),
      stressFactorBergstrasser(8),
      stressFactorWahl(8),
    ]);
  });
});

describe("safety in cyclic duty", () => {
  it("is by the line that is asked, of half the range about its middle", () => {
    const ask = (line: "goodman" | "gerber"): Change => ({
      service: { cycles: 1e6 },
      limits: { fatigue: { safety: 1, line } },
    });
    for (const [line, formula] of [
      ["goodman", fatigueSafetyGoodman],
      ["gerber", fatigueSafetyGerber],
    ] as const) {
      const candidate = placed(ask(line));
      const asked = candidate.requirements.fatigue as Exclude<typeof candidate.requirements.fatigue, null>;
      if (asked.kind !== "endured") throw new Error("the handbook judges by what springs endured");
      const at = (force: number) => candidate.stress(force, "bergstrasser");
      const [lower, upper] = [at(candidate.leastForce), at(candidate.workingForce)];
      const ultimate = 0.67 * candidate.tensileStrength;
      const safety = formula((upper - lower) / 2, (upper + lower) / 2, asked.amplitude, asked.mean, ultimate);
      expect(fatigueSafety(candidate, asked) / safety).toBeCloseTo(1, 12);
    }
  });
});

describe("a candidate of a pinned rate", () => {
  it("is placed where its turns give that rate", () => {
    const candidate = placed({ load: PINNED });
    candidate.setMeanDiameterForRate();
    expect(candidate.rate).toBeCloseTo(200 / 0.02, 6);
    expect(candidate.choice).toEqual({ material: 0, wire: WIRE, ends: 0, totalTurns: 10, meanDiameter: candidate.meanDiameter });
  });

  it("pressed solid in the European practice takes its wire at its largest", () => {
    const material = { wireTolerance: [{ upTo: 3e-3, plusMinus: 1e-4 }] };
    expect(placed({ practice: "en13906", material }).solidLength).toBeCloseTo(10 * 2.1e-3, 12);
  });
});

describe("what a brief asks of turns and diameters", () => {
  it("is a diameter over the reals only where it says so", () => {
    const brief = plainBrief();
    expect(resolveRequirements(brief).exact).toBe(false);
    expect(resolveRequirements({ ...brief, sweep: { ...brief.sweep, meanDiameter: "exact" } }).exact).toBe(true);
  });
});

describe("the evaluator of candidates", () => {
  it("sets what it is told on its candidate, and counts on its tally", () => {
    const brief = plainBrief({ load: PINNED, turns: "any" });
    const evaluator = new Evaluator(brief, resolveRequirements(brief));
    evaluator.setActiveTurns(7.5);
    evaluator.reject(slotOf("surge"), 3);
    expect([evaluator.candidate.activeTurns, evaluator.rejections.rejected]).toEqual([7.5, { surge: 3 }]);
  });
});

describe("the free length of a cut", () => {
  it("hangs on turns alone where points set it and turns are counted, else on the whole family", () => {
    const scope = (change: Change) =>
      limitsFor(resolveRequirements(plainBrief({ envelope: { freeLength: { max: 0.09 } }, ...change }))).find(
        ({ name }) => name === "freeLength",
      )?.bounds[0]?.scope;
    const two: Load = {
      kind: "points",
      points: [
        { name: "open", length: 0.05, force: { nominal: 40, min: 30, max: 50 } },
        { name: "shut", length: 0.04, force: { nominal: 80, min: 70, max: 90 } },
      ],
    };
    expect([scope({}), scope({ load: two, turns: "any" }), scope({ load: PINNED })]).toEqual(["turns", "family", "family"]);
  });
});

describe("the monotonicity of a limit that rests on another", () => {
  it("is claimed where that one is asked, and not where it is lifted", () => {
    const monotonicity = (limits: NonNullable<Change["limits"]>) =>
      limitsFor(resolveRequirements(plainBrief({ load: PINNED, turns: "any", limits }))).find(
        ({ name }) => name === "solidStress",
      )?.bounds[0]?.monotonicity;
    const asked = { solidStress: { safety: 1 }, index: { min: 4 }, clash: { ofDeflection: 0.1 } } as const;
    expect([monotonicity(asked), monotonicity({ ...asked, index: "off" }), monotonicity({ ...asked, clash: "off" })]).toEqual([
      "decreasing",
      "unknown",
      "unknown",
    ]);
  });
});

describe("a clash allowance of nothing", () => {
  it("is a spring that must still not be solid in work, its terms lengths", () => {
    const candidate = placed({ limits: { clash: { ofDeflection: 0 } } });
    const clash = limitsFor(candidate.requirements).find(({ name }) => name === "clash");
    const [bound] = clash?.bounds ?? [];
    expect(bound).toMatchObject({ threshold: null, dimension: "length" });
    candidate.setDimensions(0.02, 0.06);
    // 40 mm long in work, of which 20 mm are wire.
    expect(bound?.terms(candidate)).toEqual({ limitValue: candidate.solidLength, needed: expect.closeTo(0.04, 12) });
    expect(placed({ limits: { clash: { ofDeflection: 0.1 } } }).requirements.clash).toEqual({ ofDeflection: 0.1 });
  });
});

describe("cautions of a design", () => {
  const choice = { material: 0, wire: WIRE, ends: 0, totalTurns: 10, meanDiameter: 0.02, freeLength: 0.06 };
  const windowed = (halfWidth: number, meanDiameter = 0.02, more: Change = {}) => {
    const candidate = placed({ practice: "en13906" });
    candidate.setDimensions(0.02, 0.06);
    const force = candidate.rate * 0.02;
    const load: Load = {
      kind: "rateAndPoint",
      rate: { min: 1, max: 1e6 },
      point: { name: "loaded", length: 0.04, force: { min: force - halfWidth, max: force + halfWidth } },
    };
    return describer(plainBrief({ practice: "en13906", load, ...more }))({ ...choice, meanDiameter }).cautions;
  };
  const about = (cautions: readonly string[]) => cautions.filter((one) => /rade|olerances|emory/.test(one));

  it("say that no grade holds its windows, that it is not known, or nothing where one does", () => {
    expect(about(windowed(1e-3))).toEqual(["noGradeHolds"]);
    expect(about(windowed(1e3))).toEqual([]);
    expect(about(windowed(1e3, 0.06))).toEqual(["tolerancesNotKnown"]);
  });

  it("say that its strength is from memory, where it is", () => {
    const rows = [
      { diameter: 1e-3, strength: 2000e6 },
      { diameter: 4e-3, strength: 1600e6 },
    ];
    const strength = (confidence: Confidence): Material["strength"] => ({
      minimum: { between: "next-row", rows, confidence },
    });
    expect(about(windowed(1e3, 0.02, { material: { strength: strength("memory") } }))).toEqual(["strengthFromMemory"]);
    expect(about(windowed(1e3, 0.02, { material: { strength: strength("low") } }))).toEqual([]);
  });
});

describe("the worst case of a made spring", () => {
  it("is not known where any of its dimensions is not: here the wire's, then the coil's and the length's", () => {
    const points = [{ name: "loaded", deflection: 0.02, force: 50 }];
    const handbook = toleranceFigures(placed(), STEEL, points);
    expect([handbook.wireDiameter, handbook.points[0]?.leastForce, handbook.points[0]?.greatestForce]).toEqual([
      null,
      null,
      null,
    ]);
    expect(handbook.coilDiameter).not.toBeNull();
    const wireTolerance = [{ upTo: 3e-3, plusMinus: 5e-5 }];
    const plain = toleranceFigures(placed({ material: { wireTolerance }, ends: { closed: false } }), STEEL, points);
    expect([plain.freeLength, plain.points[0]?.leastForce]).toEqual([null, null]);
    const wide = toleranceFigures(placed({ material: { wireTolerance } }, 0.045), STEEL, points);
    expect([wide.coilDiameter, wide.points[0]?.greatestForce]).toEqual([null, null]);
  });
});
