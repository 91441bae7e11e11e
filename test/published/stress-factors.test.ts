import { describe, it } from "vitest";
import { stressFactorBergstrasser, stressFactorDirect, stressFactorWahl } from "../../src/mechanics/stress.ts";
import { expectDisagreement, expectPrinted } from "./print.ts";

describe("Kw lies above KB by (Shigley, Mechanical Engineering Design, 10th and 11th edition, problem 10-1)", () => {
  it.each([
    ["1.36", 4],
    ["0.743", 12],
  ])("%s % of Kw at index %d", (printed, index) => {
    const wahl = stressFactorWahl(index);
    expectPrinted((100 * (wahl - stressFactorBergstrasser(index))) / wahl, printed);
  });
});

describe("Bergsträsser factor KB in Shigley's worked examples, at the index printed there", () => {
  it.each([
    ["Example 10-1, from memory", 10.8, "1.124"],
    ["Example 10-2, wire .080 in", 10.53, "1.128"],
    ["Example 10-4, from memory", 5.11, "1.287"],
    ["problem 10-3, 10th edition", 11.4, "1.117"],
    ["problem 10-3, 8th edition", 10.67, "1.126"],
    ["problem 10-5, 11th edition", 10, "1.135"],
  ])("%s: index %d has %s", (_, index, printed) => expectPrinted(stressFactorBergstrasser(index), printed));
});

describe("Wahl factor in worked examples, at the index printed there", () => {
  it.each([
    ["Sadhu Singh, example 8.1", 8, "1.184"],
    ["Sadhu Singh, example 8.8", 4.84, "1.322"],
  ])("%s: index %d has %s", (_, index, printed) => expectPrinted(stressFactorWahl(index), printed));
});

it("disagrees: Jindal, example 8-1, as transcribed, has Ks 1.0 at index 6, an integer division; it is 1.0833", () => {
  expectDisagreement(stressFactorDirect(6), "1.0", "1.0833");
});

// EN 13906-1 clause 7, from memory: k = (w + 0.5) / (w - 0.75), the same expression as KB = (4C + 2) / (4C - 3).
describe("k of EN 13906-1 is the Bergsträsser factor", () => {
  it.each([2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25])("at index %d", (index) => {
    expectPrinted(stressFactorBergstrasser(index), ((index + 0.5) / (index - 0.75)).toFixed(12), 1);
  });
});
