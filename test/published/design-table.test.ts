import { describe, expect, it } from "vitest";
import { shearStress } from "../../src/mechanics/stress.ts";
import type { Design } from "../../src/model.ts";
import { expectPrinted } from "./print.ts";
import { inch, kpsi, poundForce, poundMass } from "./print-units.ts";
import { stockOf, sweepBrief } from "./run.ts";

// Shigley, Mechanical Engineering Design, 8th edition and later, Example 10-2: music wire, squared and ground ends, 20 lbf at 2 in,
// overrun 15 %, 1.2 against the fit of Table 10-4 at solid. The book sets the factor at solid to exactly 1.2 and finds D. In the
// program 1.2 is a lower limit; at a given rate the free length falls and the stress at solid grows with D, so the shortest spring
// stands on 1.2. Limits that the book screens by afterwards are off here. For .063 in wire the book takes G 11.85 Mpsi, as Table
// 10-5 has it and as shipped, for the others 11.75.
const wires = ["0.063 in", "0.067 in", "0.071 in", "0.075 in", "0.080 in", "0.085 in", "0.090 in", "0.095 in"];
const design = `
practice: handbook
load: { force: 20 lbf, deflection: 2 in }
sweep: { wires: [./stock.csv], materials: [astm-a228], ends: [squared-ground], turns: any, meanDiameter: exact }
service: { seats: parallel plates, set: as wound, strength: fit }
`;
const screensOff =
  "limits: { index: off, turns: off, clash: { ofDeflection: 0.15 }, solidStress: { safety: 1.2 }, buckling: off }\n";
const beside = { "stock.csv": stockOf(wires) };
const table = sweepBrief(`${design}${screensOff}rank: freeLength\n`, beside).designs;

function ofWire(wire: string): Design {
  const found = table.find((candidate) => candidate.wire === wire);
  if (found === undefined) throw new Error(`no design in ${wire} wire`);
  return found;
}

/** The book's figure of merit: minus relative cost times volume of wire, in³. */
const merit = ({ relativeCost, density }: Design) => -relativeCost / density / inch ** 3;

/** A column of the table in the unit of the print. */
const columns: Readonly<Record<string, (spring: Design) => number>> = {
  "D, in": (spring) => spring.meanDiameter / inch,
  C: (spring) => spring.index,
  "OD, in": (spring) => spring.outsideDiameter / inch,
  Na: (spring) => spring.activeTurns,
  "Ls, in": (spring) => spring.solidLength / inch,
  "L0, in": (spring) => spring.freeLength / inch,
  // With the book's 2.63 for steels; what the exact factor gives stands in buckling.test.ts.
  "(L0)cr, in": (spring) => (2.63 * spring.meanDiameter) / 0.5 / inch,
  fom: merit,
};

// D of all wires and the column of .080 in were seen in a copy, the rest is from memory.
describe.each([
  ["D, in", ["0.391", "0.479", "0.578", "0.688", "0.843", "1.017", "1.211", "1.427"]],
  ["C", ["6.205", "7.153", "8.143", "9.178", "10.53", "11.96", "13.46", "15.02"]],
  ["OD, in", ["0.454", "0.546", "0.649", "0.763", "0.923", "1.102", "1.301", "1.522"]],
  ["Na", ["39.1", "26.9", "19.3", "14.2", "10.1", "7.3", "5.4", "4.1"]],
  ["Ls, in", ["2.587", "1.936", "1.513", "1.219", "0.964", "0.790", "0.668", "0.581"]],
  ["L0, in", ["4.887", "4.236", "3.813", "3.519", "3.264", "3.090", "2.968", "2.881"]],
  ["(L0)cr, in", ["2.06", "2.52", "3.04", "3.62", "4.43", "5.35", "6.37", "7.51"]],
  ["fom", ["-0.409", "-0.399", "-0.398", "-0.404", "-0.417", "-0.438", "-0.467", "-0.505"]],
] as const)("Shigley Example 10-2, row %s, by the program", (column, printed) => {
  it.each(wires.map((wire, i) => [wire, column === "D, in" || wire === "0.080 in" ? "" : ", from memory", printed[i] as string]))(
    "wire %s%s: %s",
    (wire, _, figure) => expectPrinted((columns[column] as (spring: Design) => number)(ofWire(wire)), figure),
  );
});

describe("Shigley Example 10-2, the working of .080 in wire, by the program", () => {
  const spring = ofWire("0.080 in");
  const allowable = spring.solidSafety * spring.stressAtSolid;
  const bookForce = 1.15 * 20 * poundForce;
  it.each([
    ["Ssy, kpsi", "130.455", allowable / kpsi],
    ["β = 8 (1 + ξ) F / (π d²), kpsi", "9.1514", shearStress(bookForce, spring.wireDiameter, spring.wireDiameter, 1) / kpsi],
    ["KB", "1.128", spring.stressFactor],
    ["stress at solid, kpsi", "108.7", spring.stressAtSolid / kpsi],
    ["Na", "10.05", spring.activeTurns],
  ])("%s is the printed %s", (_, printed, ours) => expectPrinted(ours, printed));

  it("α = Ssy / ns is the printed 108.713 kpsi", () => {
    // The book divides its rounded 130.455: one unit of the last digit.
    expectPrinted(allowable / 1.2 / kpsi, "108.713", 1);
  });

  it("D is the printed 0.8424 in", () => {
    // The book multiplies its rounded index 10.53 by .080: three units of the last digit.
    expectPrinted(spring.meanDiameter / inch, "0.8424", 3);
  });

  it("the weight that the figure of merit leaves out is that of .284 lb/in³ wire", () => {
    expectPrinted(spring.density / (poundMass / inch ** 3), "0.284");
  });
});

describe("Shigley Example 10-2, the choice, by the program with every screen of the book on", () => {
  const screens = `
envelope: { freeLength: { max: 4 in }, solidLength: { max: 1 in } }
limits:
  index: { min: 4, max: 12 }
  turns: { min: 3, max: 15 }
  clash: { ofDeflection: 0.15 }
  solidStress: { safety: 1.2 }
rank: relativeCost
`;
  const [best, next] = sweepBrief(`${design}${screens}`, beside).designs;
  it("wire .080 in is chosen and .085 in comes next", () => {
    expect([best?.wire, next?.wire]).toEqual(["0.080 in", "0.085 in"]);
  });

  it("with the printed figure of merit, -0.417", () => expectPrinted(merit(best as Design), "-0.417"));
});
