import { describe, it } from "vitest";
import { shipped } from "../catalog/shipped.ts";
import { expectPrinted } from "./print.ts";
import { inch, millimetre } from "./print-units.ts";

/** Plus-minus on a wire diameter by the catalog, in the unit of the diameter: a row serves up to and including its size. */
function toleranceOf(material: string, diameter: number, unit: number): number {
  const rows = shipped.material(material, "").wireTolerance ?? [];
  return (rows.find(({ upTo }) => diameter * unit <= upTo * (1 + 1e-9))?.plusMinus ?? Number.NaN) / unit;
}

// As printed by wire merchants, edition not stated, a zero added to .001 and the like; sizes at the ends of the printed classes.
describe("tolerance on wire diameter, in", () => {
  it.each([
    ["ASTM A228", "astm-a228", 0.004, "0.0002"],
    ["ASTM A228", "astm-a228", 0.01, "0.0002"],
    ["ASTM A228", "astm-a228", 0.011, "0.0003"],
    ["ASTM A228", "astm-a228", 0.028, "0.0003"],
    ["ASTM A228", "astm-a228", 0.03, "0.0004"],
    ["ASTM A228", "astm-a228", 0.063, "0.0004"],
    ["ASTM A228", "astm-a228", 0.067, "0.0005"],
    ["ASTM A228", "astm-a228", 0.08, "0.0005"],
    ["ASTM A228", "astm-a228", 0.085, "0.0010"],
    ["ASTM A228", "astm-a228", 0.25, "0.0010"],
    ["ASTM A227", "astm-a227", 0.028, "0.0008"],
    ["ASTM A227", "astm-a227", 0.075, "0.0010"],
    ["ASTM A227", "astm-a227", 0.375, "0.0020"],
    ["ASTM A227", "astm-a227", 0.625, "0.0030"],
    ["ASTM A229", "astm-a229", 0.028, "0.0008"],
    ["ASTM A229", "astm-a229", 0.075, "0.0010"],
    ["ASTM A229", "astm-a229", 0.375, "0.0020"],
    ["ASTM A229", "astm-a229", 0.625, "0.0030"],
  ])("%s (%s), %d in: ± %s", (_, material, diameter, printed) => {
    expectPrinted(toleranceOf(material, diameter, inch), printed);
  });
});

// EN 10270-1 as printed on wire makers' pages, edition not stated. The pages print 0,25 for 0.025 mm (1.80 to 2.60 mm) and 1,00 for
// 0.100 mm (19 and 20 mm), both out of sequence: taken as slips.
describe("tolerance on wire diameter, EN 10270-1, mm", () => {
  it.each([
    ["en-dh", 0.05, "0.003"],
    ["en-dh", 0.09, "0.003"],
    ["en-dh", 0.1, "0.004"],
    ["en-dh", 0.16, "0.004"],
    ["en-dh", 0.18, "0.005"],
    ["en-dh", 0.25, "0.005"],
    ["en-sm", 0.3, "0.008"],
    ["en-sm", 0.63, "0.008"],
    ["en-sm", 0.7, "0.010"],
    ["en-sm", 0.8, "0.015"],
    ["en-sm", 1, "0.015"],
    ["en-sm", 1.1, "0.020"],
    ["en-sm", 1.7, "0.020"],
    ["en-sm", 1.8, "0.025"],
    ["en-sm", 2.6, "0.025"],
    ["en-sm", 2.8, "0.030"],
    ["en-sm", 4, "0.030"],
    ["en-sm", 4.5, "0.035"],
    ["en-sm", 6, "0.040"],
    ["en-sm", 7, "0.040"],
    ["en-sm", 7.5, "0.045"],
    ["en-sm", 9.5, "0.045"],
    ["en-sm", 10, "0.050"],
    ["en-sm", 11, "0.050"],
    ["en-sm", 12, "0.080"],
    ["en-sm", 14, "0.080"],
    ["en-sm", 16, "0.090"],
    ["en-sm", 18, "0.090"],
    ["en-sm", 20, "0.100"],
  ])("%s, %d mm: ± %s", (material, diameter, printed) => {
    expectPrinted(toleranceOf(material, diameter, millimetre), printed);
  });
});
