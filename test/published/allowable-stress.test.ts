import { describe, expect, it } from "vitest";
import { practices } from "../../src/practice/practices.ts";
import { expectDisagreement, expectPrinted } from "./print.ts";

// Shigley Table 10-6, per cent of tensile strength in static torsion; shares before set is removed are confirmed by worked examples,
// those after it are from memory, and the practice takes the lower end.
describe("static shares of strength, Shigley Table 10-6", () => {
  const { asWound, setRemoved } = practices.handbook.allowable;
  it.each([
    ["music wire and cold-drawn carbon steel", "cold drawn", 45],
    ["hardened and tempered carbon and low-alloy steel", "hardened and tempered", 50],
    ["austenitic stainless steel", "austenitic", 35],
    ["nonferrous alloys", "non-ferrous", 35],
  ] as const)("before set is removed, %s (%s): %d %", (_, kind, printed) => {
    expect(100 * asWound[kind]).toBe(printed);
  });

  it.each([
    ["music wire and cold-drawn carbon steel", "cold drawn", 60, 70],
    ["hardened and tempered carbon and low-alloy steel", "hardened and tempered", 65, 75],
    ["austenitic stainless steel", "austenitic", 55, 65],
    ["nonferrous alloys", "non-ferrous", 55, 65],
  ] as const)("after set is removed, from memory, %s (%s): the lower end of %d to %d %", (_, kind, least, most) => {
    expect(100 * setRemoved[kind]).toBeCloseTo(least, 12);
    expect(least).toBeLessThan(most);
  });
});

// Jiang, Analysis and Design of Machine Elements, Table 14.3: allowable static shear stress of compression springs over tensile strength.
describe("static shares of strength, Jiang Table 14.3, beside those of the practice as wound", () => {
  const { asWound } = practices.handbook.allowable;
  it("oil-tempered wire: 0.50", () => expectPrinted(asWound["hardened and tempered"], "0.50"));
  it.each([
    ["high-carbon wire", "0.55", "cold drawn", "0.45"],
    ["stainless wire", "0.45", "austenitic", "0.35"],
    ["copper wire", "0.40", "non-ferrous", "0.35"],
  ] as const)("disagrees: %s is printed %s", (_, printed, kind, ours) => expectDisagreement(asWound[kind], printed, ours));
});

it("EN 13906-1 clause 10.1.1, from memory: 0.56 of the least strength, uncorrected, for cold coiled wire pressed solid", () => {
  const { allowable, stressFactor } = practices.en13906;
  expect(allowable.asWound["cold drawn"]).toBe(0.56);
  expect(stressFactor.asWound.value).toBe("none");
});

describe("design rules, Shigley eqs. 10-18 to 10-21", () => {
  const { index, turns, clash, solidSafety } = practices.handbook;
  it("index from 4 to 12", () => expect(index.value).toEqual({ min: 4, max: 12 }));
  it("active turns from 3 to 15", () => expect(turns.value).toEqual({ min: 3, max: 15 }));
  it("overrun of at least 0.15", () => expect(clash.value).toEqual({ ofDeflection: 0.15 }));
  it("factor at solid of at least 1.2", () => expect(solidSafety.value).toBe(1.2));
});
