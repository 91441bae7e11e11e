import { describe, expect, it } from "vitest";
import { strengthInterpolated, strengthNextRow, strengthPowerLaw } from "../../src/mechanics/strength.ts";
import {
  bandOf,
  forceDeviation,
  forceDeviationBase,
  lengthDeviation,
  loadShareDeviation,
  turnsInfluence,
} from "../../src/mechanics/tolerance.ts";

const DIAMETERS = [1, 4, 9];
const STRENGTHS = [2000, 1600, 1000];

describe("strength between rows", () => {
  it("is a row's own at its diameter", () => {
    for (const [i, diameter] of DIAMETERS.entries()) {
      expect(strengthInterpolated(DIAMETERS, STRENGTHS, diameter)).toBe(STRENGTHS[i]);
    }
  });

  it("is half way where the diameter is, on a logarithmic scale", () => {
    expect(strengthInterpolated(DIAMETERS, STRENGTHS, 2)).toBeCloseTo(1800, 10);
    expect(strengthInterpolated(DIAMETERS, STRENGTHS, 6)).toBeCloseTo(1300, 10);
  });

  it("is the first row's below it, and no less than the last row's a billionth above it", () => {
    expect(strengthInterpolated(DIAMETERS, STRENGTHS, 0.9)).toBe(2000);
    expect(strengthInterpolated(DIAMETERS, STRENGTHS, 9 * (1 + 5e-10))).toBe(1000);
    expect(strengthInterpolated(DIAMETERS, STRENGTHS, 12)).toBe(1000);
  });
});

describe("strength of rows that say up to and including", () => {
  it.each([
    ["at a row is that row's", 4, 1600],
    ["above a row is the next one's", 4.001, 1000],
    ["of the same size to a billionth is that row's", 4 * (1 + 5e-10), 1600],
    ["of a size beyond a billionth is the next one's", 4 * (1 + 5e-9), 1000],
    ["below the first row is the first row's", 0.5, 2000],
    ["above the last row is the last row's", 10, 1000],
  ])("%s", (_, diameter, strength) => expect(strengthNextRow(DIAMETERS, STRENGTHS, diameter)).toBe(strength));
});

describe("strength by a power law", () => {
  it("is the value at its reference, and falls by the exponent", () => {
    expect(strengthPowerLaw(1500, 2e-3, 0.5, 2e-3)).toBe(1500);
    expect(strengthPowerLaw(1500, 2e-3, 0.5, 8e-3)).toBeCloseTo(750, 9);
  });
});

describe("a table read by its bands", () => {
  const rows = [1, 2];
  const columns = [10, 20];
  const values = [
    [11, 12],
    [21, null],
  ];
  it.each([
    ["takes the first band at its head", 1, 10, 11],
    ["takes the next row above a head", 1.1, 10, 21],
    ["takes the next column above a head", 1, 10.1, 12],
    ["takes the same size to a billionth as the head", 1 + 5e-10, 10 + 5e-9, 11],
    ["takes the next band from a few billionths on", 1 + 5e-9, 10, 21],
    ["and in columns too", 1, 10 + 5e-8, 12],
    ["has nothing where it is blank", 2, 20, null],
    ["has nothing beyond its last row", 2.1, 10, null],
    ["has nothing beyond its last column", 1, 20.1, null],
  ])("%s", (_, row, column, value) => expect(bandOf(rows, columns, values, row, column)).toBe(value));
});

describe("the formulas of EN 15800, from memory, as it prints them", () => {
  it("aF of a spring of index 10 is 65.92 d^3.3 / D^1.6 times the sum of its coefficients", () => {
    // -0.84 + 3.781 - 4.244 + 2.274 = 0.971; d = 1 mm, D = 10 mm.
    expect(forceDeviationBase(1e-3, 10e-3)).toBeCloseTo((65.92 / 10 ** 1.6) * 0.971, 9);
  });

  it("aF of a spring of index 20 takes each power of w/10", () => {
    // -0.84 × 8 + 3.781 × 4 - 4.244 × 2 + 2.274 = 2.19; d = 2 mm, D = 40 mm.
    expect(forceDeviationBase(2e-3, 40e-3)).toBeCloseTo(((65.92 * 2 ** 3.3) / 40 ** 1.6) * 2.19, 9);
  });

  it("kF of one turn is -1/3 + 8/5 + 0.803, of two -1/12 + 8/10 + 0.803", () => {
    expect(turnsInfluence(1)).toBeCloseTo(-1 / 3 + 1.6 + 0.803, 12);
    expect(turnsInfluence(2)).toBeCloseTo(-1 / 12 + 0.8 + 0.803, 12);
  });

  it("a force may miss by aF kF and 1.5 % of itself, times the grade's factor", () => {
    expect(forceDeviation(2, 1.5, 100, 0.63)).toBeCloseTo((3 + 1.5) * 0.63, 12);
  });

  it("a free length may miss by what makes up that force without its share, at the rate", () => {
    expect(lengthDeviation(2, 1.5, 1000, 1.6)).toBeCloseTo((3 * 1.6) / 1000, 15);
  });
});

describe("the load tolerance of the inch trade, from memory", () => {
  it("is the length tolerance over the deflection and 2 %, and no finer than 5 %", () => {
    expect(loadShareDeviation(1, 10)).toBeCloseTo(0.12, 14);
    expect(loadShareDeviation(1, 1000)).toBe(0.05);
  });
});
