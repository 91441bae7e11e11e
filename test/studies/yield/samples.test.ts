import { deviation, mean } from "d3-array";
import { describe, expect, it } from "vitest";
import { unitDeviates, VARYING } from "../../../src/studies/samples.ts";

const draws = 20_000;

/** Standard deviation of a normal distribution of 1/3 that is cut at 1: 1 - 2 · 3 φ(3) / (2 Φ(3) - 1) of its variance is left. */
const density = Math.exp(-4.5) / Math.sqrt(2 * Math.PI);
const inside = 0.99730020393674;
const CUT_NORMAL = Math.sqrt(1 - (6 * density) / inside) / 3;

describe("deviations of drawn springs", () => {
  it.each([
    ["normal", CUT_NORMAL],
    ["uniform", 1 / Math.sqrt(3)],
  ] as const)("%s ones lie within the tolerance, about its middle, with the spread of their distribution", (shape, sigma) => {
    const all = unitDeviates({ draws, shape, seed: 7 });
    expect(all).toHaveLength(draws * VARYING.length);
    expect(all.every((deviate) => Math.abs(deviate) <= 1)).toBe(true);
    for (let place = 0; place < VARYING.length; place++) {
      const one = all.filter((_, i) => i % VARYING.length === place);
      expect(Math.abs(mean(one) as number)).toBeLessThan((4 * sigma) / Math.sqrt(draws));
      expect(Math.abs((deviation(one) as number) / sigma - 1)).toBeLessThan(4 / Math.sqrt(2 * draws));
    }
  });

  it("fewer of one seed are the first of more", () => {
    for (const shape of ["normal", "uniform"] as const) {
      const few = unitDeviates({ draws: 10, shape, seed: 3 });
      expect(unitDeviates({ draws: 1000, shape, seed: 3 }).slice(0, few.length)).toEqual(few);
    }
  });

  it("another seed draws others", () => {
    const of = (seed: number) => unitDeviates({ draws: 10, shape: "uniform", seed });
    expect(of(1)).toEqual(of(1));
    expect(new Set([0, 1, 2, 2 ** 31, 2 ** 32 - 1].map((seed) => of(seed)[0])).size).toBe(5);
  });
});
