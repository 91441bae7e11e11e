import { describe, expect, it } from "vitest";
import { cautionSentence } from "../../../src/report/text/spring-summary.ts";
import { brief, spring } from "../fixture.ts";

const { units } = brief;
/** Work presses the fixture's spring 20 mm. */
const buckling = (millimetres: number) => spring({ bucklingDeflection: millimetres / 1000 });

describe("the caution of buckling", () => {
  it("says at what deflection, and that work does not press it as far", () => {
    expect(cautionSentence("bucklesBeforeSolid", [buckling(24.5)], units)).toBe(
      "The spring would buckle before it is solid, though not in work: at 24.5 mm, where work presses it 20 mm.",
    );
  });

  it("says so of a spring that buckles in work", () => {
    expect(cautionSentence("bucklesInWork", [buckling(4.07)], units)).toBe(
      "The spring buckles in work: at 4.07 mm, where work presses it 20 mm.",
    );
  });

  it("of several springs has the figures of the one that buckles first in its work", () => {
    expect(cautionSentence("bucklesInWork", [buckling(12), buckling(5), buckling(9)], { ...units, length: "in" })).toBe(
      "The spring buckles in work: the first of them at 0.1969 in, where work presses it 0.7874 in.",
    );
  });

  it("any other caution has no figure", () => {
    expect(cautionSentence("mayTouchRod", [spring()], units)).toMatch(/may touch the rod with its clearance\.$/);
  });
});
