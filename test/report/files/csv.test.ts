import { csvParse } from "d3-dsv";
import { describe, expect, it } from "vitest";
import { designsCsv, springsCsv } from "../../../src/report/files/csv.ts";
import { figureWords } from "../../../src/report/text/labels.ts";
import { result, spring } from "../fixture.ts";

describe("designs as CSV", () => {
  const text = designsCsv(result);
  const rows = csvParse(text);

  it("has one row for each design and every line ends with CR LF", () => {
    expect(rows.length).toBe(result.designs.length);
    expect(text.split("\r\n").length).toBe(result.designs.length + 2);
    expect(text.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });

  it("has a column for every figure, with its unit in the head", () => {
    const names = rows.columns.map((head) => head.split(" ")[0]);
    for (const name of Object.keys(figureWords)) expect(names).toContain(name);
    expect(rows.columns).toContain("freeLength (mm)");
    expect(rows.columns).toContain("rate (N/mm)");
    expect(rows.columns).toContain("index");
  });

  it("writes numbers as numbers in the brief's units and nothing for a figure that does not exist", () => {
    expect(rows[0]?.["freeLength (mm)"]).toBe("58");
    expect(rows[0]?.["bucklingDeflection (mm)"]).toBe("");
    expect(rows[0]?.["point2.force (N)"]).toBe(String(Number(spring().points[1]?.force.toPrecision(10))));
  });

  it("quotes commas, quotation marks and line breaks as RFC 4180 asks", () => {
    const odd = 'a "b", c\nd';
    const text = designsCsv({ ...result, designs: [spring({ material: odd })] });
    expect(text).toContain('"a ""b"", c\nd"');
    expect(csvParse(text)[0]?.material).toBe(odd);
  });

  it.each(["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1"])("keeps a spreadsheet from running the text %j", (material) => {
    expect(csvParse(designsCsv({ ...result, designs: [spring({ material })] }))[0]?.material).toBe(`'${material}`);
  });

  it("leaves a negative number a number", () => {
    const design = spring({ margins: { index: -0.25 } });
    expect(csvParse(designsCsv({ ...result, designs: [design] }))[0]?.["margin.index"]).toBe("-0.25");
  });

  it("writes only its head where nothing fits", () => {
    expect(designsCsv({ ...result, designs: [] }).split("\r\n").length).toBe(2);
  });
});

describe("springs as CSV", () => {
  it("are those of the sweep in the sweep's own form", () => {
    expect(springsCsv(result.designs, result.brief.units)).toBe(designsCsv(result));
  });

  it("have an empty rank where they have none", () => {
    expect(springsCsv([spring({ rank: 0 })], result.brief.units).split("\r\n")[1]).toMatch(/^,shop-steel,/);
  });
});
