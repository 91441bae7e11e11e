import { describe, expect, it } from "vitest";
import { bites, countWords, percentText } from "../../../src/report/text/rejections.ts";
import { result } from "../fixture.ts";

describe("counts and shares", () => {
  it("groups thousands", () => {
    expect([0, 999, 1000, 529_075_536].map(countWords)).toEqual(["0", "999", "1,000", "529,075,536"]);
  });

  it("never rounds a few to none nor most to all", () => {
    expect([0.00001, 0.5, 0.99999, 1].map(percentText)).toEqual(["< 0.1 %", "50.0 %", "> 99.9 %", "100.0 %"]);
  });

  it("shares of all limits and of what fits make the whole walk", () => {
    const rejected = bites(result).reduce((sum, { fraction }) => sum + fraction, 0);
    expect(rejected + result.feasible / result.walked).toBeCloseTo(1, 12);
  });
});
