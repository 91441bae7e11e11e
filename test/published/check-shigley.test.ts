import { describe, expect, it } from "vitest";
import { checkBrief } from "./check-run.ts";
import { expectPrinted } from "./print.ts";
import { inch, kpsi, MPa, millimetre, newtonPerMillimetre, poundForce, poundForcePerInch } from "./print-units.ts";

// Shigley, Mechanical Engineering Design; a worked example as a person would have it judged, by the built program.

describe("Example 10-1 (8th edition and later, from memory): no. 16 music wire, OD 7/16 in, squared, 12.5 turns, 2.06 in", () => {
  const { design, disagreements, quotedRate, entries } = checkBrief(`
practice: handbook
load: { rate: 4.13 lbf/in ± 1 %, largestForce: 6.46 lbf }
design: { wire: us-music 16, material: astm-a228, ends: squared, outsideDiameter: 0.4375 in, totalTurns: 12.5, freeLength: 2.06 in, rate: 4.13 lbf/in }
service: { strength: fit }
limits: { clash: off, solidStress: { safety: 1 } }
`);

  it.each([
    ["KB", "1.124", design.stressFactor],
    ["Sut, kpsi", "324", design.tensileStrength / kpsi],
    ["Ssy, kpsi", "146", (design.solidSafety * design.stressAtSolid) / kpsi],
    ["active turns", "10.5", design.activeTurns],
    ["solid length, in", "0.50", design.solidLength / inch],
    ["deflection to solid, in", "1.56", (design.freeLength - design.solidLength) / inch],
    ["pitch, in", "0.186", design.pitch / inch],
  ])("the program gives the printed %s, %s", (_, printed, ours) => expectPrinted(ours, printed));

  it("the program gives the printed rate, 4.13 lbf/in, and force at solid, 6.46 lbf, but for the book's rounding of D", () => {
    // The book goes on with D = 0.400 in where OD less wire is 0.4005 in: 0.4 % of the rate.
    expectPrinted(design.rate / poundForcePerInch, "4.13", 1.5);
    expectPrinted(design.forceAtSolid / poundForce, "6.46", 4);
  });

  it("takes the printed rate as agreeing with wire, diameter and turns", () => {
    expect(disagreements).toEqual([]);
    expect(Math.abs(quotedRate?.difference as number)).toBeLessThan(0.005);
  });

  it("holds the safety at solid to the 1 that the example sets: it is solid at yield", () => {
    const solid = entries.find(({ limit }) => limit === "solidStress");
    expect(solid?.bound).toBe(1);
    expectPrinted(solid?.value as number, "1.0");
  });
});

describe("Problem 10-3 (10th and 11th edition): music wire 2.5 mm, OD 31 mm, plain and ground, 14 turns", () => {
  // Tables 10-4 and 10-5 in their metric columns, whose A is rounded: 2211 MPa mm^m.
  const material = `name: music-wire
source: Shigley Tables 10-4 and 10-5, metric columns
class: cold drawn
density: 7861 kg/m^3
moduli: { youngsModulus: 196.5 GPa, shearModulus: 81.0 GPa }
strength: { fit: { at: 1 mm, value: 2211 MPa, exponent: 0.145, diameter: { min: 0.1 mm, max: 6.5 mm } } }
relativeCost: 2.6
temperature: { max: 120 degC }
`;
  const judged = (quoted: string) =>
    checkBrief(
      `
practice: handbook
load: { rate: 1.314 N/mm ± 1 %, largestForce: 130 N }
design: { wire: 2.5 mm, material: ./music.yaml, ends: plain-ground, outsideDiameter: 31 mm, totalTurns: 14, freeLength: 162.8 mm${quoted} }
service: { strength: fit }
limits: { solidStress: { safety: 1.2 } }
`,
      { "music.yaml": material },
    );
  const { design, entries, passes } = judged("");

  it.each([
    ["index", "11.4", design.index],
    ["rate, N/mm", "1.314", design.rate / newtonPerMillimetre],
    ["solid length, mm", "35", design.solidLength / millimetre],
    ["Sut, MPa", "1936", design.tensileStrength / MPa],
    ["KB", "1.117", design.stressFactor],
  ])("the program gives the printed %s, %s", (_, printed, ours) => expectPrinted(ours, printed));

  it("the program gives the printed force at solid, 167.9 N, but for the rounding of the free length", () => {
    // Half a unit of the printed 162.8 mm is 0.07 N.
    expectPrinted(design.forceAtSolid, "167.9", 1.2);
  });

  it("problem 10-4: the spring is not safe at solid by 1.2, as printed, so the check fails there", () => {
    const solid = entries.find(({ limit }) => limit === "solidStress");
    expect(passes).toBe(false);
    expect(solid).toMatchObject({ passes: false, bound: 1.2 });
    expectPrinted(solid?.value as number, "1.00");
  });

  it("problem 10-3: the critical free length, printed 149.9 mm, is below the 162.8 mm, so it may buckle, and the design says at what deflection", () => {
    expect(design.bucklingDeflection).not.toBeNull();
  });

  it("a maker's rate 8 % above the printed one is a contradiction", () => {
    const { disagreements } = judged(", rate: 1.419 N/mm");
    expect(disagreements.map(({ figure }) => figure)).toEqual(["rate"]);
    expectPrinted((disagreements[0]?.follows as number) / newtonPerMillimetre, "1.314");
  });
});
