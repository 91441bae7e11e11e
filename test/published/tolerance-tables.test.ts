import { describe, expect, it } from "vitest";
import { loadShareDeviation } from "../../src/mechanics/tolerance.ts";
import type { EndStyle, ToleranceGrade } from "../../src/model.ts";
import type { TolerancedSpring } from "../../src/practice/choices.ts";
import { en15800 } from "../../src/practice/en-tolerances.ts";
import { inchTolerances } from "../../src/practice/inch-tolerances.ts";
import { shipped } from "../catalog/shipped.ts";
import { expectPrinted } from "./print.ts";
import { inch, millimetre } from "./print-units.ts";

const squaredGround: EndStyle = shipped.ends("squared-ground", "");

function spring(meanDiameter: number, index: number, rest: Partial<TolerancedSpring> = {}): TolerancedSpring {
  const wireDiameter = meanDiameter / index;
  return { wireDiameter, meanDiameter, activeTurns: 8, freeLength: 0.05, rate: 1000, ends: squaredGround, ...rest };
}

// EN 15800 (DIN 2095), coil diameter, as transcribed by spring makers; grade 2 above 63 mm from DIN 2097, which prints the same.
// Mean diameter and index are taken inside each band; plus-minus in mm for index 4 to 8, 8 to 14, 14 to 20.
const COIL: readonly (readonly [ToleranceGrade, number, readonly string[]])[] = [
  [1, 0.9, ["0.05", "0.07", "0.10"]],
  [1, 3, ["0.10", "0.10", "0.15"]],
  [1, 12, ["0.15", "0.20", "0.25"]],
  [1, 20, ["0.20", "0.25", "0.30"]],
  [1, 45, ["0.30", "0.40", "0.50"]],
  [1, 60, ["0.40", "0.50", "0.60"]],
  [2, 0.9, ["0.07", "0.10", "0.15"]],
  [2, 1.5, ["0.08", "0.10", "0.15"]],
  [2, 8, ["0.25", "0.30", "0.35"]],
  [2, 16, ["0.30", "0.35", "0.40"]],
  [2, 25, ["0.35", "0.45", "0.50"]],
  [2, 35, ["0.50", "0.60", "0.70"]],
  [2, 63, ["0.80", "1.00", "1.10"]],
  [2, 90, ["1.20", "1.50", "1.70"]],
  [2, 150, ["1.80", "2.30", "2.70"]],
  [2, 199, ["2.10", "2.90", "3.30"]],
  [3, 2, ["0.20", "0.30", "0.40"]],
  [3, 14, ["0.60", "0.70", "0.80"]],
  [3, 30, ["0.80", "1.00", "1.20"]],
  [3, 55, ["1.50", "2.00", "2.30"]],
];

describe("EN 15800, coil diameter", () => {
  // Only where a wire of the standard's sizes, .07 to 16 mm, makes that index.
  const rows = COIL.flatMap(([grade, diameter, printed]) =>
    printed.map((text, i) => [grade, diameter, [6, 11, 17][i] as number, text] as const),
  ).filter(([, diameter, index]) => diameter / index >= 0.07 && diameter / index <= 16);
  it.each(rows)("grade %s, mean diameter %s mm, index %s: %s mm", (grade, diameter, index, printed) => {
    const ours = en15800.coilDiameter(grade, spring(diameter * millimetre, index));
    expectPrinted((ours as number) / millimetre, printed);
  });

  it.each([
    ["an index above 20", spring(20 * millimetre, 21)],
    ["an index below 4", spring(20 * millimetre, 3.9)],
    ["fewer than 2 active turns", spring(20 * millimetre, 10, { activeTurns: 1.9 })],
    ["a free length above 630 mm", spring(20 * millimetre, 10, { freeLength: 0.631 })],
    ["a mean diameter above 200 mm", spring(201 * millimetre, 13)],
  ])("gives nothing outside its scope: %s", (_, outside) => {
    expect(en15800.coilDiameter(2, outside)).toBeNull();
    expect(en15800.force(2, outside, 100, 0.01)).toBeNull();
    expect(en15800.freeLength(2, outside)).toBeNull();
  });

  it("leaves grades 1 and 3 blank where no copy was read", () => {
    expect(en15800.coilDiameter(1, spring(90 * millimetre, 10))).toBeNull();
    expect(en15800.coilDiameter(3, spring(90 * millimetre, 10))).toBeNull();
  });
});

// Machinery's Handbook, 31st edition, springs, Table 7, after the Spring Manufacturers Institute.
const INCH_COIL: readonly (readonly [number, readonly string[]])[] = [
  [0.015, ["0.002", "0.002", "0.003", "0.004", "0.005", "0.006", "0.007"]],
  [0.035, ["0.002", "0.004", "0.006", "0.007", "0.009", "0.011", "0.013"]],
  [0.076, ["0.004", "0.007", "0.010", "0.013", "0.016", "0.019", "0.022"]],
  [0.171, ["0.008", "0.012", "0.017", "0.023", "0.028", "0.033", "0.038"]],
  [0.5, ["0.021", "0.030", "0.040", "0.062", "0.080", "0.100", "0.125"]],
];
const INDICES = [4, 6, 8, 10, 12, 14, 16];

describe("Machinery's Handbook, 31st edition, Table 7: coil diameter", () => {
  const rows = INCH_COIL.flatMap(([wire, printed]) => printed.map((text, i) => [wire, INDICES[i] as number, text] as const));
  it.each(rows)("wire %s in, index %s: %s in", (wire, index, printed) => {
    const ours = inchTolerances.coilDiameter("commercial", spring(wire * index * inch, index));
    expectPrinted((ours as number) / inch, printed);
  });
});

// Machinery's Handbook, 31st edition, springs, Table 8: inches for each inch of free length, squared and ground.
const LENGTH: readonly (readonly [number, readonly string[]])[] = [
  [0.5, ["0.010", "0.011", "0.012", "0.013", "0.015", "0.016", "0.016"]],
  [4, ["0.016", "0.018", "0.021", "0.023", "0.024", "0.026", "0.027"]],
  [12, ["0.021", "0.024", "0.027", "0.030", "0.032", "0.034", "0.036"]],
  [20, ["0.023", "0.027", "0.031", "0.034", "0.036", "0.038", "0.040"]],
];

describe("Machinery's Handbook, 31st edition, Table 8: free length", () => {
  const rows = LENGTH.flatMap(([coils, printed]) => printed.map((text, i) => [coils, INDICES[i] as number, text] as const));
  it.each(rows)("%s coils in an inch, index %s: %s", (coils, index, printed) => {
    const two = spring(0.5 * inch, index, { activeTurns: 2 * coils, freeLength: 2 * inch });
    expectPrinted((inchTolerances.freeLength("commercial", two) as number) / inch / 2, printed);
  });

  it("a spring under half an inch gets what half an inch gets", () => {
    const short = spring(0.5 * inch, 10, { activeTurns: 4.8, freeLength: 0.4 * inch });
    expectPrinted((inchTolerances.freeLength("commercial", short) as number) / inch, "0.015");
  });

  it("squared ends that are not ground get 1.7 times that", () => {
    const squared = spring(0.5 * inch, 10, { activeTurns: 24, freeLength: 2 * inch, ends: shipped.ends("squared", "") });
    expectPrinted((inchTolerances.freeLength("commercial", squared) as number) / inch, "0.102");
  });
});

// Associated Spring, Design Handbook, load tolerance table, from memory: per cent of load by length tolerance (rows, in) and
// deflection (in). The rule that stands for it gives these within 0.8 %.
const LOADS: readonly (readonly [number, number, string])[] = [
  [0.005, 0.05, "12"],
  [0.005, 0.2, "5"],
  [0.01, 0.1, "12"],
  [0.01, 0.4, "5"],
  [0.02, 0.1, "22"],
  [0.02, 0.2, "12"],
  [0.02, 0.5, "6"],
  [0.03, 0.15, "22"],
  [0.03, 0.3, "12"],
  [0.04, 0.2, "22"],
  [0.05, 0.5, "12"],
  [0.06, 1, "8"],
  [0.07, 0.75, "11"],
  [0.08, 0.4, "22"],
  [0.1, 1, "12"],
  [0.2, 2, "12"],
  [0.3, 3, "12"],
  [0.4, 4, "12"],
];

describe("load tolerance by the rule for the Associated Spring table (from memory)", () => {
  it.each(LOADS)("length ± %s in, deflection %s in: %s %%", (length, deflection, printed) => {
    expectPrinted(100 * loadShareDeviation(length * inch, deflection * inch), printed, 0.8);
  });

  it.each([
    [0.06, 0.25, "25", "26"],
    [0.4, 2, "21", "22"],
    [0.5, 2, "25", "27"],
  ])("length ± %s in, deflection %s in: the table has %s %%, the rule %s %%", (length, deflection, printed, written) => {
    const ours = 100 * loadShareDeviation(length * inch, deflection * inch);
    expectPrinted(ours, written);
    expect(Math.abs(ours - Number(printed))).toBeGreaterThan(0.8);
  });
});
