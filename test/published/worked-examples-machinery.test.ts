import { describe, expect, it } from "vitest";
import { springRate } from "../../src/mechanics/rate.ts";
import { shearStress } from "../../src/mechanics/stress.ts";
import { bookMaterial } from "./book-material.ts";
import { expectDisagreement, expectPrinted } from "./print.ts";
import { inch, kpsi, Mpsi, poundForce } from "./print-units.ts";
import { springForForce } from "./spring-for-force.ts";

// Machinery's Handbook, 31st edition, springs, Table 5: load and deflection of one coil at an uncorrected 100 000 psi, by outside
// diameter and wire. G is not stated on the pages seen; 11.2 Mpsi is inferred, for 28 of 29 rows agree with it within 0.25 %.
// Wires are taken as printed, also .0938 to .2188, which may stand for 3/32 to 7/32 in: the exact fractions mend some and break others.
const stress = 100 * kpsi;

/** Load in lbf and deflection of a coil in in. */
function coil(outside: number, wire: number): { load: number; deflection: number } {
  const [mean, diameter] = [(outside - wire) * inch, wire * inch];
  const load = stress / shearStress(1, mean, diameter, 1);
  return { load: load / poundForce, deflection: load / springRate(11.2 * Mpsi, diameter, mean, 1) / inch };
}

describe("Table 5, load at 100 000 psi", () => {
  it.each([
    [1, 0.072, "15.8"],
    [1, 0.08, "21.9"],
    [1, 0.0915, "33.1"],
    [1, 0.0938, "35.8"],
    [1, 0.1205, "78.1"],
    [1, 0.135, "111.7"],
    [1, 0.1483, "150.4"],
    [1, 0.1875, "319"],
    [1, 0.192, "344"],
    [1, 0.207, "439"],
    [1, 0.2253, "580"],
    [0.875, 0.125, "102.3"],
  ])("outside diameter %d in, wire %d in: %s lb", (outside, wire, printed) => {
    expectPrinted(coil(outside, wire).load, printed);
  });
});

describe("Table 5, deflection of a coil at 100 000 psi, G 11.2 Mpsi inferred", () => {
  it.each([
    [1, 0.072, "0.336"],
    [1, 0.08, "0.297"],
    [1, 0.0915, "0.253"],
    [1, 0.0938, "0.246"],
    [1, 0.1055, "0.213"],
    [1, 0.1205, "0.1801"],
    [1, 0.125, "0.1718"],
    [1, 0.135, "0.1555"],
    [1, 0.1483, "0.1372"],
    [1, 0.162, "0.1216"],
    [1, 0.192, "0.0954"],
    [1, 0.207, "0.0852"],
    [1, 0.2253, "0.0747"],
    [0.875, 0.072, "0.251"],
    [0.875, 0.0915, "0.1882"],
    [0.875, 0.125, "0.1262"],
  ])("outside diameter %d in, wire %d in: %s in", (outside, wire, printed) => {
    expectPrinted(coil(outside, wire).deflection, printed);
  });
});

describe("Table 5, load at 100 000 psi, disagrees beyond its print by at most 0.25 %: the handbook was reckoned by hand", () => {
  it.each([
    [1, 0.1055, "51.5", "51.55"],
    [1, 0.125, "87.6", "87.66"],
    [1, 0.1563, "177.6", "177.7"],
    [1, 0.2188, "526", "526.5"],
    [1, 0.162, "198.8", "199.2"],
    [1, 0.177, "264", "264.6"],
    [0.875, 0.072, "18.26", "18.253"],
  ])("outside diameter %d in, wire %d in: printed %s lb, ours %s", (outside, wire, printed, ours) => {
    const { load } = coil(outside, wire);
    expectDisagreement(load, printed, ours);
    expect(Math.abs(load / Number(printed) - 1)).toBeLessThan(0.0025);
  });
});

describe("Table 5, deflection of a coil, disagrees beyond its print by at most 0.25 %: the handbook was reckoned by hand", () => {
  it.each([
    [1, 0.1563, "0.1278", "0.12775"],
    [1, 0.177, "0.1074", "0.10734"],
    [1, 0.2188, "0.0783", "0.07824"],
    [1, 0.1875, "0.0986", "0.09876"],
  ])("outside diameter %d in, wire %d in: printed %s in, ours %s", (outside, wire, printed, ours) => {
    const { deflection } = coil(outside, wire);
    expectDisagreement(deflection, printed, ours);
    expect(Math.abs(deflection / Number(printed) - 1)).toBeLessThan(0.0025);
  });
});

it("disagrees: Table 5 prints 39.4 lb for outside diameter .875 in, wire .0915 in, a slip for 38.4: deflection and next row fit", () => {
  expectDisagreement(coil(0.875, 0.0915).load, "39.4", "38.4");
  expectPrinted(coil(0.9063, 0.0915).load, "36.9");
});

// Machinery's Handbook, 31st edition, springs, Fig. 14: 36 lb at 1 1/4 in, outside diameter 13/16 in, wire .0915 in, closed and
// ground, 2.5 in long.
describe("the example of Fig. 14, by the program", () => {
  const spring = springForForce({
    material: bookMaterial("Machinery's Handbook, 31st edition, springs, Table 5", "11.2 Mpsi"),
    wire: "0.0915 in",
    meanDiameter: "0.721 in",
    force: "36 lbf",
    deflection: "1.25 in",
    clash: "off",
  });
  const { load, deflection } = coil(0.8125, 0.0915);
  it.each([
    ["load at 100 000 psi, lb", "41.7", load],
    ["deflection of a coil at 100 000 psi, in", "0.1594", deflection],
    ["share of it that 36 lb take", "0.863", 36 / load],
    ["deflection of a coil at 36 lb, in", "0.1375", 1.25 / spring.activeTurns],
    ["active coils", "9.1", spring.activeTurns],
    ["total coils, in whole ones", "11", spring.totalTurns],
    ["solid height, in", "1.0", spring.solidLength / inch],
    ["deflection to solid of the 2.5 in spring, in", "1.5", 2.5 - spring.solidLength / inch],
    ["index, from memory", "7.9", spring.index],
  ])("%s is the printed %s", (_, printed, ours) => expectPrinted(ours, printed));
});
