import { describe, expect, it } from "vitest";
import { activeTurnsForRate } from "../../../src/mechanics/rate.ts";
import { checkTable } from "../../../src/report/terminal/check-table.ts";
import { checkOfData, failing } from "./quoted.ts";

const settled = "meanDiameter: 16 mm, totalTurns: 10, freeLength: 44 mm";
const rateOfIt = checkOfData(settled).design.rate;
const quoting = (share: number) => checkOfData(`${settled}, rate: ${rateOfIt * share} N/m`);

describe("a quoted rate", () => {
  it("8 % off what wire, diameter and turns give is a contradiction with its numbers, and a failed check", () => {
    const result = quoting(1.08);
    expect(result.passes).toBe(false);
    expect(failing(result)).toEqual([]);
    expect(result.disagreements).toEqual([
      { figure: "rate", given: expect.closeTo(rateOfIt * 1.08, 6), follows: expect.closeTo(rateOfIt, 6) },
    ]);
    const text = checkTable(result, { width: 200, colour: false });
    expect(text).toContain("Quoted rate 8.0 % above what wire, diameter and turns give: 5.34 N/mm against 4.94 N/mm");
    expect(text).toContain("active turns that would give it: 7.41 instead of 8.");
    expect(text).toMatch(/^Fails: data that disagree\.$/m);
  });

  it.each([1.04, 0.96, 1.05, 0.95])(
    "%d of that passes, is noted with the difference, and does not move what is judged",
    (share) => {
      const result = quoting(share);
      expect(result.passes).toBe(true);
      expect(result.disagreements).toEqual([]);
      expect(result.design.rate).toBeCloseTo(rateOfIt, 9);
      expect(result.quotedRate?.difference).toBeCloseTo(share - 1, 9);
      expect(checkTable(result, { width: 200, colour: false })).toContain("Near enough");
    },
  );

  it("is shown with the turns that would give it and the force that it gives at each point", () => {
    const { quotedRate, design } = quoting(1.02);
    expect(quotedRate?.activeTurns).toBeCloseTo(activeTurnsForRate(design.shearModulus, 0.002, 0.016, rateOfIt * 1.02), 9);
    expect(quotedRate?.forces).toEqual(design.points.map(({ force }) => expect.closeTo(force * 1.02, 6)));
  });
});

describe("data beyond need", () => {
  it.each([
    ["an outside diameter", "outsideDiameter: 18.05 mm"],
    ["an inside diameter", "insideDiameter: 13.95 mm"],
    ["active turns", "activeTurns: 8.01"],
  ])("%s within what is written on a drawing agree", (_title, data) => {
    expect(checkOfData(`${settled}, ${data}`).disagreements).toEqual([]);
  });

  it.each([
    ["an outside diameter", "outsideDiameter: 18.1 mm", "outsideDiameter", 0.0181, 0.018],
    ["an inside diameter", "insideDiameter: 13.9 mm", "insideDiameter", 0.0139, 0.014],
    ["active turns", "activeTurns: 8.02", "activeTurns", 8.02, 8],
  ])("%s further off disagree, with both numbers", (_title, data, figure, given, follows) => {
    const result = checkOfData(`${settled}, ${data}`);
    expect(result.disagreements).toEqual([{ figure, given: expect.closeTo(given, 12), follows: expect.closeTo(follows, 12) }]);
    expect(result.passes).toBe(false);
  });

  it("outside and inside diameters that leave another wire between them disagree", () => {
    const { disagreements } = checkOfData("outsideDiameter: 18 mm, insideDiameter: 13.5 mm, totalTurns: 10, freeLength: 44 mm");
    expect(disagreements.map(({ figure }) => figure)).toEqual(["insideDiameter"]);
  });

  it("two numbers that round alike are written with the digits that tell them apart", () => {
    const result = checkOfData("meanDiameter: 16 mm, totalTurns: 12.3456, activeTurns: 10.3575, freeLength: 44 mm");
    expect(checkTable(result, { width: 200, colour: false })).toMatch(/active turns given, 10\.36, is not the 10\.35 /);
  });
});

describe("a spring that is solid before it is pressed", () => {
  it.each(["19 mm", "20 mm"])("is said to be none, at a free length of %s", (length) => {
    const result = checkOfData(`meanDiameter: 16 mm, totalTurns: 10, freeLength: ${length}`);
    expect(result.disagreements).toEqual([
      { figure: "freeLength", given: result.design.freeLength, follows: expect.closeTo(0.02, 12) },
    ]);
    expect(result.passes).toBe(false);
    const text = checkTable(result, { width: 80, colour: false });
    expect(text).toMatch(/solid\s+length,\s+20\s+mm:\s+there\s+is\s+no\s+such\s+spring/);
    expect(text).not.toMatch(/NaN|undefined|null/);
  });
});
