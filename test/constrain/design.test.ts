import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import { springRate } from "../../src/mechanics/rate.ts";
import type { Brief, Design } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { shipped } from "../catalog/shipped.ts";

const read = (service: string, rest = "", practice = "handbook", material = "astm-a228", point = "force: 60 N ± 10 %"): Brief =>
  readBrief(
    `
practice: ${practice}
load:
  points:
    - { name: open, length: 50 mm, force: 30 N ± 10 % }
    - { name: shut, length: 40 mm, ${point} }
envelope: { bore: 25 mm, rod: 8 mm }
sweep: { wires: [iso-r20], materials: [${material}], ends: [squared-ground, squared], turns: quarter }
service: { seats: parallel plates${service} }
${rest}
`,
    "brief.yaml",
    shipped,
  );

function best(brief: Brief): Design {
  const [design] = sweep(brief).designs;
  if (design === undefined) throw new Error("nothing fits");
  return design;
}

describe("the cost proxy", () => {
  it("is the wire alone where no weight is stated", () => {
    const { relativeCost, mass, costParts } = best(read(""));
    expect(relativeCost).toBe(mass * 2.6);
    expect(costParts).toEqual({ wire: relativeCost, grind: 0, set: 0, peen: 0, relieve: 0 });
  });

  it("adds the operations that a spring gets, and its parts add up to it", () => {
    const cost = "cost: { grind: 0.02, set: 0.01, peen: 0.03, relieve: 0.005 }\nrank: relativeCost";
    for (const { ends, relativeCost, costParts } of sweep(read(", set: removed", cost)).designs) {
      const { wire, grind, set, peen, relieve } = costParts;
      expect([grind, set, peen, relieve]).toEqual([ends === "squared-ground" ? 0.02 : 0, 0.01, 0, 0.005]);
      expect(relativeCost).toBeCloseTo(wire + grind + set + peen + relieve, 15);
    }
    expect(best(read(", surface: peened", cost)).costParts.peen).toBe(0.03);
  });

  it("ranks by them: grinding that costs more than all wire leaves no ground end in front", () => {
    const result = sweep(read("", "cost: { grind: 10 }\nrank: relativeCost"));
    expect(result.designs.every(({ ends }) => ends === "squared")).toBe(true);
  });
});

describe("set removal", () => {
  it("raises the allowable share and takes the direct-shear factor", () => {
    const [wound, removed] = [best(read("")), best(read(", set: removed"))];
    expect(wound.stressFactor).toBeCloseTo((4 * wound.index + 2) / (4 * wound.index - 3), 12);
    expect(removed.stressFactor).toBeCloseTo(1 + 0.5 / removed.index, 12);
    expect((removed.solidSafety * removed.stressAtSolid) / removed.tensileStrength).toBeCloseTo(0.6, 12);
    expect((wound.solidSafety * wound.stressAtSolid) / wound.tensileStrength).toBeCloseTo(0.45, 12);
    expect(removed.mass).toBeLessThan(wound.mass);
  });
});

describe("heat", () => {
  it("rejects a material above its highest service temperature at `temperature`, a family at a time", () => {
    const { feasible, rejected, walked } = sweep(read(", temperature: 130 degC"));
    expect(feasible).toBe(0);
    expect((rejected.temperature ?? 0) + (rejected.wire ?? 0)).toBe(walked);
  });

  it("lowers moduli, rate and forces by the loss of the material", () => {
    const { hot, rate, shearModulus, points } = best(read(", temperature: 100 degC", "", "en13906", "en-sm"));
    expect(hot?.shearModulus).toBeCloseTo(shearModulus * (1 - 0.25e-3 * 80), 0);
    expect(hot?.rate).toBeCloseTo(rate * (1 - 0.25e-3 * 80), 9);
    for (const [i, force] of (hot?.forces ?? []).entries()) expect(force).toBeCloseTo((points[i]?.force as number) * 0.98, 9);
    expect(hot?.forces).toHaveLength(2);
  });

  it("lowers them alike under either practice, and of drawn 17-7PH as of a stainless steel, whatever its class", () => {
    for (const practice of ["handbook", "en13906"]) {
      const { hot, rate } = best(read(", temperature: 100 degC", "", practice, "en-1.4568"));
      expect((hot?.rate as number) / rate).toBeCloseTo(1 - 0.4e-3 * 80, 12);
      expect(hot?.modulusSource).toContain("EN 10270-3, from memory");
    }
  });

  it("knows no relaxation where none is published", () => {
    expect(best(read(", temperature: 100 degC", "", "en13906", "en-sm")).hot?.relaxation).toBeNull();
    expect(best(read("")).hot).toBeNull();
  });
});

describe("tolerances", () => {
  it("worst case: every dimension, the turns and the modulus at the wrong end at once", () => {
    const { tolerance, points, ...spring } = best(read("", "", "en13906", "en-sm"));
    const { wireDiameter, coilDiameter, freeLength } = tolerance;
    const worst = (sign: number) =>
      springRate(
        spring.shearModulus * (1 + sign * 0.02),
        spring.wireDiameter + sign * (wireDiameter as number),
        spring.meanDiameter - sign * (coilDiameter as number),
        spring.activeTurns - sign * 0.25,
      );
    points.forEach(({ deflection, force }, i) => {
      const { leastForce, greatestForce } = tolerance.points[i] as { leastForce: number; greatestForce: number };
      expect(leastForce).toBeCloseTo(worst(-1) * (deflection - (freeLength as number)), 9);
      expect(greatestForce).toBeCloseTo(worst(1) * (deflection + (freeLength as number)), 9);
      expect(leastForce).toBeLessThan(force);
      expect(greatestForce).toBeGreaterThan(force);
    });
  });

  it("the coarsest grade is the coarsest whose deviation stays in every window", () => {
    const { tolerance, points } = best(read("", "", "en13906", "en-sm"));
    const share = (grade: 1 | 2 | 3) =>
      Math.max(
        ...tolerance.points.map(({ force: grade2 }, i) => {
          const asked = [30, 60][i] as number;
          const off = Math.abs((points[i]?.force as number) - asked);
          return (off + (grade2 as number) * { 1: 0.63, 2: 1, 3: 1.6 }[grade]) / (0.1 * asked);
        }),
      );
    const holds = ([3, 2, 1] as const).find((grade) => share(grade) <= 1) ?? null;
    expect(tolerance.grade).toBe(2);
    expect(tolerance.coarsestGrade).toBe(holds);
  });

  it("whether a grade holds is not known where the practice's tables do not reach, as for plain ends", () => {
    const asked = read("");
    const plain = shipped.ends("plain", "brief.yaml");
    const { tolerance, cautions } = best({ ...asked, sweep: { ...asked.sweep, ends: [plain] } });
    expect(tolerance.points.map(({ force }) => force)).toEqual([null, null]);
    expect(tolerance.coarsestGrade).toBe("notKnown");
    expect(cautions).toContain("tolerancesNotKnown");
    expect(cautions).not.toContain("noGradeHolds");
    const closed = best(asked);
    expect(closed.cautions).not.toContain("tolerancesNotKnown");
  });

  it("the limit loadTolerance rejects what its grade cannot hold, and only that", () => {
    const every = sweep(read("", "", "en13906", "en-sm"), { top: 1e6 }).designs;
    const held = sweep(read("", "limits: { loadTolerance: { grade: 1 } }", "en13906", "en-sm"), { top: 1e6 });
    const could = every.filter(({ tolerance }) => tolerance.coarsestGrade !== null);
    expect(held.designs.map(({ meanDiameter }) => meanDiameter)).toEqual(could.map(({ meanDiameter }) => meanDiameter));
    expect(held.rejected.loadTolerance).toBe(every.length - could.length);
    expect(could.length).toBeGreaterThan(0);
    expect(could.length).toBeLessThan(every.length);
  });

  it("takes the wire's tolerance from the EN 10270-1 class where the material states none, and says whose it is", () => {
    const { tolerance, solidLength, totalTurns, wireDiameter } = best(read("", "", "en13906", "en-1.4310-ns"));
    expect(tolerance.wireSource).toContain("EN 10270-1");
    expect(solidLength).toBeGreaterThan((totalTurns * wireDiameter) as number);
  });
});

describe("cyclic duty", () => {
  it("is judged and reported only where cycles are given", () => {
    const still = best(read(""));
    expect([still.cyclic, still.fatigueSafety, still.margins.fatigue]).toEqual([null, null, undefined]);
    const cyclic = best(read(", cycles: 1e6"));
    expect(cyclic.fatigueSafety).toBeGreaterThanOrEqual(1.5 * (1 - 1e-9));
    const [open, shut] = cyclic.points.map(({ force }) => force);
    expect([cyclic.cyclic?.leastForce, cyclic.cyclic?.greatestForce]).toEqual([
      expect.closeTo(open as number, 9),
      expect.closeTo(shut as number, 9),
    ]);
  });

  it("with fatigue off says that it was not judged, and keeps the corrected stress", () => {
    const result = sweep(read(", cycles: 1e6", "limits: { fatigue: off }", "en13906", "en-sm"));
    expect(result.warnings).toContain("fatigueNotJudged");
    const { fatigueSafety, points, meanDiameter, wireDiameter, index } = result.designs[0] as Design;
    expect(fatigueSafety).toBeNull();
    const { force, stress } = points[1] as { force: number; stress: number };
    const plain = (8 * force * meanDiameter) / (Math.PI * wireDiameter ** 3);
    expect(stress / plain).toBeCloseTo((index + 0.5) / (index - 0.75), 12);
  });

  it("warns of more cycles than fatigue data come from", () => {
    expect(sweep(read(", cycles: 1e9")).warnings).toContain("beyondFatigueLife");
    expect(sweep(read(", cycles: 1e7")).warnings).not.toContain("beyondFatigueLife");
  });
});
