import { describe, expect, it } from "vitest";
import type { SweepResult } from "../../../src/model.ts";
import { sweepTable } from "../../../src/report/terminal/sweep-table.ts";
import { nothing, result, spring } from "../fixture.ts";

const plain = (shown: SweepResult, width = 80) => sweepTable(shown, { width, colour: false });

describe("the terminal table", () => {
  it.each([80, 100, 120])("keeps every line within %i columns", (width) => {
    for (const shown of [result, nothing]) {
      for (const line of plain(shown, width).split("\n")) expect(line.length, line).toBeLessThanOrEqual(width);
    }
  });

  it("stays within 80 columns with the longest names of the catalogs, whose letters a key explains", () => {
    const names = ["astm-a313-302", "astm-a228", "en-sh"];
    const designs = names.map((material, i) =>
      spring({
        rank: i + 1,
        material,
        series: ["us-music", "us-steel", "en-10270"][i] as string,
        ends: ["plain", "squared-ground", "plain-ground"][i] as string,
      }),
    );
    const text = plain({ ...result, designs });
    for (const line of text.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    expect(text).toContain("Material: a astm-a313-302, b astm-a228, c en-sh.");
  });

  it("uses names instead of letters where they fit", () => {
    expect(plain(result, 140)).toContain("shop-steel-hard  squared-ground");
    expect(plain(result, 140)).not.toContain("Material: a");
  });

  it("says once what every row shares", () => {
    const designs = [spring(), spring({ rank: 2, freeLength: 0.06 })];
    const text = plain({ ...result, designs });
    expect(text.replace(/\n +/g, " ")).toContain(
      "Every design: wire W20, series shop-wire, material shop-steel, ends squared-ground.",
    );
    expect(text.split("\n").find((line) => line.startsWith("rank"))).not.toMatch(/material|ends/);
  });

  it("lists the limit that bites most first, with counts and shares of the walk", () => {
    const lines = plain(result)
      .split("\n")
      .map((line) => line.trim().replace(/ {2,}/g, " | "));
    const first = lines.indexOf("solidStress | 800,127 | 64.8 %");
    expect(first).toBeGreaterThan(0);
    expect(lines.slice(first + 1, first + 4)).toEqual([
      "index | 400,000 | 32.4 %",
      "outsideDiameter | 33,000 | 2.7 %",
      "wire | 1,200 | < 0.1 %",
    ]);
  });

  it("says with nothing feasible what each limit would need and what else the candidate breaks", () => {
    const text = plain(nothing).replace(/\n +/g, " ");
    expect(text).toContain("1,234,567 candidates walked, none fit.");
    expect(text).toContain("freeLength: needs 68 mm (limit 60 mm), nothing else broken.");
    expect(text).toContain("clash: needs 4 mm (limit 3.1 mm), also breaks solidStress.");
  });

  it("names the defaults that the practice supplied with their sources", () => {
    expect(plain(result).replace(/\n +/g, " ")).toContain("limits.solidStress { safety: 1.2 } (Shigley eq. 10-21)");
  });

  it("ends with the caution that it only screens", () => {
    expect(plain(result)).toMatch(/\nScreening only: verify with the spring maker and the governing standard\.\n$/);
  });

  it("shows control characters of a title instead of letting them act", () => {
    const text = plain({ ...result, brief: { ...result.brief, title: "a\u001b[31mred\nline" } });
    expect(text.split("\n")[0]).toBe("a\\x1b[31mred\\nline");
    expect(text).not.toContain("\u001b");
  });

  it("is bold in its heads only where the terminal takes colour", () => {
    expect(sweepTable(result, { width: 80, colour: true })).toContain("\u001b[1mLatch plunger (invented)\u001b[22m");
    expect(plain(result)).not.toContain("\u001b");
  });

  it("shows inches and pounds-force where the brief is written in them", () => {
    const text = plain({ ...result, brief: { ...result.brief, units: { length: "in", force: "lbf" } } });
    // 58 mm = 2.2835 in, by definition of the inch
    expect(text).toContain("2.283");
    expect(text).toMatch(/lbf\/in/);
  });
});
