import { describe, expect, it } from "vitest";
import { drawnAbout } from "./drawn.ts";

/**
 * The law of propagation of uncertainty, first order: relative variances of a product of powers add, each with the square of its
 * power (JCGM 100:2008, GUM, 5.1.2 and 5.1.6). The rate goes with d⁴, 1/D³, 1/n and G.
 */
const draws = 20_000;
/** Of a uniform distribution, in its half width. */
const UNIFORM = 1 / Math.sqrt(3);
/** Sampling error of a standard deviation, as a share, four times over. */
const sampling = 4 / Math.sqrt(2 * draws);

/** The sound spring of `quoted.ts`: wire 2 mm, mean diameter 16 mm, 8 active turns, free length 44 mm, points at 36 and 26 mm. */
const tolerances = { wireDiameter: "0.004 mm", coilDiameter: "0.04 mm", turns: "0.02", freeLength: "0.05 mm", modulus: "0.3 %" };
const terms = {
  wireDiameter: (4 * 0.004) / 2,
  coilDiameter: (3 * 0.04) / 16,
  turns: 0.02 / 8,
  freeLength: 0,
  modulus: 0.003,
};
const rootSumSquare = (values: readonly number[]) => Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));

describe("drawn springs against first-order propagation", () => {
  it("the relative standard deviation of the rate is the root of the sum of squares of its terms", () => {
    const { rate } = drawnAbout({ ...tolerances, draws: `${draws}`, shape: "uniform" });
    const expected = UNIFORM * rootSumSquare(Object.values(terms));
    expect(Math.abs(rate.standardDeviation / rate.mean / expected - 1)).toBeLessThan(sampling);
  });

  it.each(Object.keys(terms) as (keyof typeof terms)[])("%s alone moves the rate by its own term", (name) => {
    const { rate } = drawnAbout({ [name]: tolerances[name], draws: `${draws}`, shape: "uniform" });
    const relative = rate.standardDeviation / rate.mean;
    if (terms[name] === 0) expect(rate.least).toBe(rate.greatest);
    else expect(Math.abs(relative / (UNIFORM * terms[name]) - 1)).toBeLessThan(sampling);
  });

  it("the force at a length adds the rate times the spread of the free length", () => {
    const { rate, forces } = drawnAbout({ ...tolerances, draws: `${draws}`, shape: "uniform" });
    for (const [i, deflection] of [0.008, 0.018].entries()) {
      const expected = UNIFORM * rate.mean * rootSumSquare([deflection * rootSumSquare(Object.values(terms)), 0.05e-3]);
      expect(Math.abs((forces[i]?.standardDeviation ?? 0) / expected - 1)).toBeLessThan(sampling);
    }
  });
});
