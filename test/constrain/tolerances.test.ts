import { describe, expect, it } from "vitest";
import { figuresAtTemperature } from "../../src/constrain/candidate/at-temperature.ts";
import type { Candidate } from "../../src/constrain/candidate/candidate.ts";
import { isBeyondTests } from "../../src/constrain/candidate/fatigue.ts";
import { dimensionTolerances, toleranceFigures, worstWindowFraction } from "../../src/constrain/candidate/tolerances.ts";
import { moduliAt } from "../../src/constrain/candidate/wire-properties.ts";
import { describer } from "../../src/constrain/design.ts";
import { limitsFor } from "../../src/constrain/limits/limits.ts";
import type { Design, Load, Material, ToleranceFigures, ToleranceGrade } from "../../src/model.ts";
import { practices } from "../../src/practice/practices.ts";
import { type Change, placed, plainBrief, STEEL, WIRE } from "./plain.ts";

const EN: Change = { practice: "en13906" };
const { tolerance } = practices.en13906;

/** A spring of the standard's practice whose force at 40 mm has a window about its own force, so much to each side. */
function windowed(halfWidth: number, off = 0, change: Change = {}): Candidate {
  const plain = placed(EN);
  plain.setDimensions(0.02, 0.06);
  const force = plain.rate * 0.02;
  const load: Load = {
    kind: "rateAndPoint",
    rate: { min: 1, max: 1e6 },
    point: { name: "loaded", length: 0.04, force: { min: force + off - halfWidth, max: force + off + halfWidth } },
  };
  const candidate = placed({ ...EN, load, ...change });
  candidate.setDimensions(0.02, 0.06);
  return candidate;
}
const deviation = (grade: ToleranceGrade) => {
  const candidate = windowed(1);
  return tolerance.force(grade, candidate as never, candidate.rate * 0.02, 0.02) as number;
};

describe("the share of a load window that a maker needs", () => {
  it("is the grade's deviation over half the window where the force is in its middle", () => {
    expect(worstWindowFraction(windowed(10), 2)).toBeCloseTo(deviation(2) / 10, 9);
    expect(worstWindowFraction(windowed(10), 1)).toBeCloseTo(deviation(1) / 10, 9);
  });

  it("has what the force is off the middle added, to either side", () => {
    for (const off of [3, -3]) expect(worstWindowFraction(windowed(10, off), 2)).toBeCloseTo((deviation(2) + 3) / 10, 9);
  });

  it("is nothing without windows, and too much where the tables do not reach", () => {
    expect(
      worstWindowFraction(placed({ ...EN, load: { kind: "rateAndLargestForce", rate: { min: 1 }, largestForce: 9 } }), 2),
    ).toBe(0);
    const beyond = windowed(10);
    beyond.setDimensions(0.06, 0.06);
    expect(worstWindowFraction(beyond, 2)).toBe(2);
  });

  it("is taken at a deflection where the load gives one", () => {
    const load: Load = { kind: "forceAtDeflection", force: { min: 100, max: 160 }, deflection: 0.02 };
    const candidate = placed({ ...EN, load });
    const force = candidate.rate * 0.02;
    const by = tolerance.force(2, candidate as never, force, 0.02) as number;
    expect(worstWindowFraction(candidate, 2)).toBeCloseTo((Math.abs(force - 130) + by) / 30, 9);
  });

  it("is the limit loadTolerance, all of the window at most", () => {
    const candidate = windowed(deviation(2), 0, { limits: { loadTolerance: { grade: 2 } } });
    const limit = limitsFor(candidate.requirements).find(({ name }) => name === "loadTolerance");
    expect(limit?.margin(candidate)).toBeCloseTo(0, 9);
    expect(limitsFor(windowed(1).requirements).some(({ name }) => name === "loadTolerance")).toBe(false);
  });
});

const POINTS = [{ name: "loaded", deflection: 0.02, force: 50 }];
const figures = (candidate: Candidate, material: Material = STEEL): ToleranceFigures =>
  toleranceFigures(candidate, material, POINTS);

describe("what a maker may miss by", () => {
  it("is by the grade asked, or the practice's usual one", () => {
    expect(figures(windowed(10)).grade).toBe(2);
    const fine = figures(windowed(10, 0, { limits: { loadTolerance: { grade: 1 } } }));
    expect(fine.grade).toBe(1);
    expect(fine.points[0]?.force).toBeCloseTo((0.63 * (figures(windowed(10)).points[0]?.force as number)) as number, 9);
  });

  it.each<[string, number, ToleranceFigures["coarsestGrade"]]>([
    ["the coarsest that holds", 1.0001 * deviation(3), 3],
    ["the next finer where that one breaks", 0.9999 * deviation(3), 2],
    ["the finest", 1.0001 * deviation(1), 1],
    ["none where even that breaks", 0.9999 * deviation(1), null],
  ])("holds the windows by a grade: %s", (_, halfWidth, grade) => expect(figures(windowed(halfWidth)).coarsestGrade).toBe(grade));

  it("is not known to hold a window where the tables do not reach", () => {
    const beyond = windowed(10);
    beyond.setDimensions(0.06, 0.06);
    expect(figures(beyond)).toMatchObject({ coarsestGrade: "notKnown", coilDiameter: null, freeLength: null });
    expect(figures(beyond).points[0]).toMatchObject({ force: null, leastForce: null, greatestForce: null });
  });

  it("says of no grade where no window is asked", () => {
    const open = placed({ ...EN, load: { kind: "rateAndLargestForce", rate: { min: 1 }, largestForce: 9 } });
    expect(figures(open)).not.toHaveProperty("coarsestGrade");
  });

  it("has at worst the least and the greatest force with every dimension at its end", () => {
    const candidate = windowed(10);
    const { wireDiameter, coilDiameter, freeLength, points } = figures(candidate);
    const [d, D, L] = [wireDiameter as number, coilDiameter as number, freeLength as number];
    // The rate goes by G d⁴ / (D³ n).
    const rate = (sign: number) =>
      candidate.rate *
      (1 + sign * 0.02) *
      ((2e-3 + sign * d) / 2e-3) ** 4 *
      (0.02 / (0.02 - sign * D)) ** 3 *
      (8 / (8 - sign * 0.25));
    expect(points[0]?.leastForce).toBeCloseTo(rate(-1) * (0.02 - L), 6);
    expect(points[0]?.greatestForce).toBeCloseTo(rate(1) * (0.02 + L), 6);
  });

  it("never has a force below none", () => {
    const [point] = toleranceFigures(windowed(10), STEEL, [{ name: "barely", deflection: 1e-6, force: 0.01 }]).points;
    expect(point?.leastForce).toBe(0);
  });

  it("takes the wire's tolerance of the material's data before the practice's, and says whose it is", () => {
    const wireTolerance = [{ upTo: 3e-3, plusMinus: 5e-5 }];
    const own = windowed(10, 0, { material: { wireTolerance } });
    expect(figures(own, { ...STEEL, wireTolerance })).toMatchObject({ wireDiameter: 5e-5, wireSource: "invented" });
    expect(figures(windowed(10)).wireSource).toContain("EN 10270-1");
    const handbook = placed();
    expect(figures(handbook)).toMatchObject({ wireDiameter: null, wireSource: null });
    expect(dimensionTolerances(handbook, "commercial").wireDiameter).toBeNull();
  });

  it("has what is left of the bore and over the rod with the coil at its worst", () => {
    const inBore = windowed(10, 0, { envelope: { bore: 0.025, rod: 0.015 } });
    const { boreRoom, rodRoom, coilDiameter } = figures(inBore);
    expect(boreRoom).toBeCloseTo(0.025 - inBore.outsideDiameterAtSolid - (coilDiameter as number), 12);
    expect(rodRoom).toBeCloseTo(0.018 - (coilDiameter as number) - 0.015, 12);
    inBore.setDimensions(0.06, 0.06);
    expect(figures(inBore)).toMatchObject({ boreRoom: null, rodRoom: null });
    expect(figures(windowed(10))).not.toHaveProperty("boreRoom");
    expect(figures(windowed(10))).not.toHaveProperty("rodRoom");
  });
});

describe("a spring at temperature", () => {
  const at = (temperature: number, material: Partial<Material> = {}) => {
    const candidate = placed();
    const points = [
      { name: "a", length: 0, deflection: 0.01, force: 1, stress: 300e6, shareOfDeflection: 0 },
      { name: "b", length: 0, deflection: 0.02, force: 1, stress: 500e6, shareOfDeflection: 0 },
    ];
    return { candidate, hot: figuresAtTemperature(candidate, { ...STEEL, ...material }, points, temperature) };
  };

  it("loses of its moduli, its rate and its forces by the material's share", () => {
    const { candidate, hot } = at(393.15);
    expect(hot.shearModulus).toBeCloseTo(80e9 * (1 - 0.036), -3);
    expect(hot.youngsModulus).toBeCloseTo(206e9 * (1 - 0.036), -3);
    expect(hot.rate).toBeCloseTo(candidate.rate * (1 - 0.036), 6);
    expect(hot.forces).toEqual([expect.closeTo((hot.rate as number) * 0.01, 6), expect.closeTo((hot.rate as number) * 0.02, 6)]);
  });

  it("is not known of a material that states no loss, whatever its class", () => {
    const { modulusLoss: _, ...silent } = STEEL;
    const unknown = { shearModulus: null, youngsModulus: null, rate: null, modulusSource: null };
    expect(figuresAtTemperature(placed(), silent, [], 393.15)).toMatchObject(unknown);
    expect(moduliAt(silent, { youngsModulus: 206e9, shearModulus: 80e9 }, 393.15)).toBeNull();
  });

  it("loses the least load of the points published that are at least as hot and as stressed as it", () => {
    const published = [
      { temperature: 400, stress: 600e6, time: 1e5, loss: 0.07 },
      { temperature: 390, stress: 500e6, time: 1e5, loss: 0.05 },
      { temperature: 389, stress: 700e6, time: 1e5, loss: 0.01 },
      { temperature: 450, stress: 499e6, time: 1e5, loss: 0.02 },
    ];
    const relaxation = { source: "invented", points: published };
    expect(at(390, { relaxation }).hot.relaxation).toBe(0.05);
    expect(at(400, { relaxation }).hot.relaxation).toBe(0.07);
    const longer = { source: "invented", points: [...published, { temperature: 400, stress: 600e6, time: 2e5, loss: 0.08 }] };
    expect(at(390, { relaxation: longer }).hot).toMatchObject({ relaxation: 0.08, relaxationTime: 2e5 });
    expect([at(460, { relaxation }).hot.relaxation, at(390).hot.relaxation]).toEqual([null, null]);
  });
});

it("data of fatigue reach to ten million cycles, that included", () => {
  expect([isBeyondTests(1e7), isBeyondTests(1e7 + 1)]).toEqual([false, true]);
});

describe("a design", () => {
  const design = (change: Change = {}, meanDiameter = 0.02, freeLength?: number): Design => {
    const choice = { material: 0, wire: { ...WIRE, ...change.wire }, ends: 0, totalTurns: 10, meanDiameter };
    return describer(plainBrief(change))(freeLength === undefined ? choice : { ...choice, freeLength });
  };
  const cautions = (change: Change = {}, meanDiameter = 0.02, freeLength?: number) =>
    design(change, meanDiameter, freeLength).cautions;

  it("has its figures in agreement with each other", () => {
    const one = design();
    expect(one.outsideDiameter - one.insideDiameter).toBeCloseTo(4e-3, 15);
    expect(one.coilGap).toBeCloseTo(one.pitch - 2e-3, 15);
    expect(one.pitch * 8 + 2 * 2e-3).toBeCloseTo(one.freeLength, 12);
    expect(one.forceAtSolid).toBeCloseTo(one.rate * (one.freeLength - one.solidLength), 9);
    expect(one.solidSafety * one.stressAtSolid).toBeCloseTo(0.45 * 2000e6, -1);
    const [open, shut] = one.points;
    expect([open?.length, shut?.length]).toEqual([0.05, 0.04]);
    expect((open?.deflection as number) + 0.05).toBeCloseTo(one.freeLength, 12);
    expect(shut?.force).toBeCloseTo(one.rate * (shut?.deflection as number), 9);
    expect(shut?.shareOfDeflection).toBeCloseTo((shut?.force as number) / one.forceAtSolid, 12);
    expect(one.workingSafety / one.solidSafety).toBeCloseTo(one.stressAtSolid / (shut?.stress as number), 9);
    expect(one.costParts.wire).toBeCloseTo(one.mass * 2, 12);
  });

  it("is cautioned of a pitch steeper than 12°, and not of one a little less steep", () => {
    const steep = (degrees: number) => {
      const pitch = Math.tan((degrees * Math.PI) / 180) * Math.PI * 0.02;
      return cautions({}, 0.02, 8 * pitch + 4e-3).includes("steepPitch");
    };
    expect([steep(11.99), steep(12.01)]).toEqual([false, true]);
  });

  it("is cautioned of ground ends on wire under half a millimetre", () => {
    const thin = (diameter: number, ground: boolean) =>
      cautions({ wire: { diameter }, ends: { ground } }, diameter * 8).includes("thinGround");
    const strength = { constant: { value: 2000e6, diameter: { min: 0.1e-3, max: 5e-3 } } };
    const thinner = (diameter: number, ground: boolean) =>
      cautions({ wire: { diameter }, ends: { ground }, material: { strength } }, diameter * 8).includes("thinGround");
    expect([thin(0.5e-3, true), thinner(0.49e-3, true), thinner(0.49e-3, false)]).toEqual([false, true, false]);
  });

  it("is cautioned where it would buckle before it is solid, unless it is guided", () => {
    const buckles = (seats: "clamped and free" | "guided", freeLength: number) =>
      cautions({ service: { seats } }, 0.02, freeLength).includes("bucklesBeforeSolid");
    expect([buckles("clamped and free", 0.044), buckles("guided", 0.044), buckles("clamped and free", 0.022)]).toEqual([
      true,
      false,
      false,
    ]);
  });

  it("is cautioned that it buckles in work where it does, with the limit asked or off, and not one more place", () => {
    // Shut at 40 mm, the spring is pressed by its free length less that.
    const at = (freeLength: number, limits: Change["limits"] = {}) => {
      const one = design({ service: { seats: "clamped and free" }, limits }, 0.02, freeLength);
      const named = one.cautions.filter((name) => name.startsWith("buckles"));
      return [named, Math.sign((one.bucklingDeflection as number) - (freeLength - 0.04))];
    };
    expect(at(0.044)).toEqual([["bucklesBeforeSolid"], 1]);
    expect(at(0.15)).toEqual([["bucklesInWork"], -1]);
    expect(at(0.15, { buckling: { safety: 1 } })).toEqual([["bucklesInWork"], -1]);
    expect(cautions({ service: { seats: "guided" } }, 0.02, 0.15)).not.toContain("bucklesInWork");
  });

  it("says that it never buckles by a deflection of null", () => {
    expect(design({}, 0.02, 0.03).bucklingDeflection).toBeNull();
    expect(design({ service: { seats: "clamped and free" } }, 0.02, 0.15).bucklingDeflection).toBeGreaterThan(0);
  });

  it("has a margin for each limit that is asked or that it is made to meet, a wire being inside the sizes that are made", () => {
    const { margins } = design({ limits: { turns: { max: 10 } }, service: { temperature: 300 } });
    expect(Object.keys(margins)).toEqual(["wire", "temperature", "turns", "rate", "hotForce"]);
    expect(margins).toMatchObject({
      wire: expect.closeTo(0.6, 12),
      temperature: expect.closeTo(1 - 6.85 / 106.85, 12),
      turns: expect.closeTo(0.2, 12),
    });
    const pinned: Load = { kind: "forceAtDeflection", force: { nominal: 20, min: 20, max: 20 }, deflection: 0.01 };
    const made = design({ load: pinned, limits: { clash: { length: 0.002 } } }).margins;
    expect(made).toMatchObject({ rate: 0, clash: 0 });
    const drawnOut = { load: pinned, limits: { clash: { length: 0.002 } }, envelope: { freeLength: { min: 0.033 } } };
    // 20 mm solid and 10 mm of travel leave 3 mm where 2 are asked.
    expect(design(drawnOut).margins.clash).toBeCloseTo(0.5, 9);
    expect(design({ load: pinned, limits: { clash: { length: 0 } } }).margins.clash).toBe(0);
    expect(design({ load: pinned }).margins).not.toHaveProperty("clash");
  });

  it("has stresses of cyclic duty where cycles are asked, and figures of heat where a temperature is", () => {
    const plain = design();
    expect([plain.cyclic, plain.hot, plain.fatigueSafety]).toEqual([null, null, null]);
    const cyclic = design({ service: { cycles: 1e6, temperature: 350 } });
    expect(cyclic.hot?.temperature).toBe(350);
    const { leastForce, greatestForce, stressAmplitude, meanStress } = cyclic.cyclic as NonNullable<Design["cyclic"]>;
    const [open, shut] = cyclic.points as [Design["points"][number], Design["points"][number]];
    expect([leastForce, greatestForce]).toEqual([expect.closeTo(open.force, 9), expect.closeTo(shut.force, 9)]);
    expect(stressAmplitude).toBeCloseTo((shut.stress - open.stress) / 2, 0);
    expect(meanStress).toBeCloseTo((shut.stress + open.stress) / 2, 0);
    expect(cyclic.fatigueSafety).toBeNull();
  });

  it("is cautioned of a bore or a rod that a made coil may touch", () => {
    const { outsideDiameterAtSolid, insideDiameter } = design();
    const touching = cautions({ envelope: { bore: outsideDiameterAtSolid + 1e-5, rod: insideDiameter - 1e-5 } });
    expect(touching).toEqual(expect.arrayContaining(["mayTouchBore", "mayTouchRod"]));
    const roomy = cautions({ envelope: { bore: outsideDiameterAtSolid + 2e-3, rod: insideDiameter - 2e-3 } });
    expect(roomy.filter((one) => one.startsWith("mayTouch"))).toEqual([]);
  });
});
