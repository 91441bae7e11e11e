import { describe, expect, it } from "vitest";
import { resultJson } from "../../../src/report/files/json.ts";
import { reportPage } from "../../../src/report/page/springs-page.ts";
import { checkTable } from "../../../src/report/terminal/check-table.ts";
import { relaxTable } from "../../../src/report/terminal/relax-table.ts";
import { sweepTable } from "../../../src/report/terminal/sweep-table.ts";
import { tableEndsWords } from "../../../src/report/text/material-data.ts";
import { proofWords } from "../../../src/report/text/verdict.ts";
import { relax } from "../../../src/studies/relax.ts";
import { briefText, read } from "../../brief/reading.ts";
import { checkOf } from "../../studies/check/quoted.ts";
import { brief, result } from "../fixture.ts";

const steel = { material: "steel", end: "thickest", size: 0.004, next: 0.0045, because: "rows" } as const;

describe("the ends of the tables, in words", () => {
  it("of a best design say which material, which end and why", () => {
    expect(tableEndsWords([steel], true, brief.units)).toBe(
      "What is best here stands where the tables at hand end, so a better spring may lie beyond: " +
        "steel was not tried above 4 mm, where the rows of its strength end (the next size is 4.5 mm).",
    );
  });

  it("of nothing that fits name each material with both of its ends", () => {
    const thin = { material: "brass", end: "thinnest", size: 0.0005, next: 0.0004, because: "soldIn" } as const;
    const none = { material: "bronze", end: "all", size: 0.003, next: 0.005, because: "stated" } as const;
    expect(tableEndsWords([thin, steel, none], false, brief.units)).toBe(
      "Nothing fits among the sizes that the tables at hand cover: " +
        "brass was not tried below 0.5 mm, where no series is said to be sold in it (the next size is 0.4 mm); " +
        "steel was not tried above 4 mm, where the rows of its strength end (the next size is 4.5 mm); " +
        "bronze was not tried at all, for the sizes that its file states end at 3 mm (the next size is 5 mm).",
    );
  });

  it("of one material take one clause where the same ends at both", () => {
    const thin = { ...steel, end: "thinnest", size: 0.0003, next: 0.00025 } as const;
    expect(tableEndsWords([thin, steel], false, brief.units)).toContain(
      ": steel was not tried below 0.3 mm or above 4 mm, where the rows of its strength end.",
    );
  });

  it("stand in the table, the prices, the page and the check", async () => {
    const told = "steel was not tried above 4 mm, where the rows of its strength end";
    const terminal = { width: 1000, colour: false };
    const ended = { ...result, tableEnds: [steel] };
    expect(sweepTable(ended, terminal)).toContain(
      `What is best here stands where the tables at hand end, so a better spring may lie beyond: ${told}`,
    );
    expect(await reportPage(ended, "1;")).toMatch(
      new RegExp(`<p class="soft proof" id="table-ends">What is best here stands .*${told}`),
    );
    expect(await reportPage(result, "1;")).toContain('<p class="soft proof" id="table-ends" hidden></p>');
    expect(JSON.parse(resultJson(ended)).tableEnds).toEqual([steel]);
    const limited = relax(
      read(
        briefText({
          sweep: "sweep: { wires: [us-steel], materials: [astm-a313-302], ends: [squared-ground] }",
          load: "load: { force: 130 N, deflection: 25 mm }",
        }),
      ),
    );
    expect(limited.best).toBeNull();
    expect(relaxTable(limited, terminal)).toContain("astm-a313-302 was not tried below 0.2286 mm or above 2.032 mm, where");
    const quoted = checkOf({
      design: "design: { wire: 20 mm, material: en-sh, ends: squared, meanDiameter: 150 mm, totalTurns: 10 }",
    });
    expect(checkTable(quoted, terminal)).toContain(
      "20 mm is the thickest size at hand of en-sh, where the rows of its strength end.",
    );
  });

  it("are nothing where no table took part", () => {
    expect(tableEndsWords([], true, brief.units)).toBe("");
  });

  it("a proof never claims more than the tables cover", () => {
    const proof = { families: 10, empty: { index: 10 }, merit: "mass", optimum: null, runnerUp: null, gap: null } as const;
    const words = proofWords({ ...proof, nearestEmpty: null, caveats: [] }, brief);
    expect(words).toBe(
      "Proof, among the sizes that the tables at hand cover: all 10 combinations of material, wire, ends and turns were optimised over mean diameter and free length; none has a feasible design.",
    );
  });
});
