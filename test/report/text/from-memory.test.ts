import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Brief } from "../../../src/model.ts";
import { practices } from "../../../src/practice/practices.ts";
import { calculationOf } from "../../../src/report/calculation/calculation.ts";
import { dataSheet } from "../../../src/report/datasheet/datasheet.ts";
import { resultJson } from "../../../src/report/files/json.ts";
import { reportPage } from "../../../src/report/page/springs-page.ts";
import { sweepTable } from "../../../src/report/terminal/sweep-table.ts";
import { fromMemory, memoryWords } from "../../../src/report/text/material-data.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { read } from "../../brief/reading.ts";
import { shipped } from "../../catalog/shipped.ts";
import { brief } from "../fixture.ts";

/** Every text below a value, at any depth. */
function textsOf(value: unknown): readonly string[] {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(textsOf) : [];
}

/** Sources in the docstrings of a folder. */
function sourcesIn(folder: string): readonly string[] {
  const files = readdirSync(`src/${folder}`).map((file) => readFileSync(`src/${folder}/${file}`, "utf8"));
  return files.flatMap((text) => [...text.matchAll(/@source (.*(?:\n \* {3}.*)*)/g)].map(([, source = ""]) => source));
}

const clausesFromMemory = (texts: readonly string[]) =>
  texts
    .filter((text) => text.includes("from memory"))
    .flatMap((text) => [...text.matchAll(/EN 13906-1,? clause (\d+(?:\.\d+)*)/g)].map(([, clause]) => clause));

describe("what a result rests on that is from memory", () => {
  it("has every clause of EN 13906-1 that the practice or a formula marks so", () => {
    const { fromMemory: listed, ...practice } = practices.en13906;
    const marked = new Set(clausesFromMemory([...textsOf(practice), ...sourcesIn("mechanics")]));
    const told = listed.flatMap(({ what }) => [...what.matchAll(/\((\d[\d.]*)\)/g)].map(([, clause]) => clause));
    expect(told.toSorted()).toEqual([...marked].sort());
  });

  it("has the tolerances of both practices, whose formulas are marked so", () => {
    expect(practices.en13906.tolerance.source).toContain("from memory");
    expect(practices.handbook.tolerance.source).toContain("from memory");
    const whats = Object.values(practices).map(({ fromMemory: parts }) => parts.map(({ what }) => what).join());
    for (const what of whats) expect(what).toMatch(/tolerance/);
  });

  it("names a part only where a brief asks for it", () => {
    const european: Brief = { ...brief, practice: "en13906" };
    const words = memoryWords(european);
    expect(words).toContain("EN 15800: tolerances of force and length");
    for (const part of ["(6.4)", "(9.12)"]) expect(words).not.toContain(part);
    const moving = { ...european, service: { ...european.service, temperature: 353.15, frequency: 5 } };
    for (const part of ["(6.4)", "(9.12)"]) expect(memoryWords(moving)).toContain(part);
    expect(memoryWords({ ...european, service: { ...european.service, seats: "guided" } })).not.toContain("(9.14)");
  });

  it("names the materials whose strength is, of the rows or the fit that the brief asks", () => {
    const of = (names: readonly string[], strength: "minimum" | "fit" = "minimum") => {
      const materials = names.map((name) => shipped.material(name, ""));
      const asked = { ...brief, service: { ...brief.service, strength }, sweep: { ...brief.sweep, materials } };
      return fromMemory(asked).filter((part) => part.startsWith("strength of"));
    };
    const all = ["astm-a228", "astm-a401", "astm-b159", "astm-a313-631", "en-sl", "astm-a232", "en-sh"];
    expect(of(all)).toEqual(["strength of astm-a401, astm-b159, astm-a313-631, en-sl"]);
    expect(of(["astm-a232", "astm-a228"], "fit")).toEqual(["strength of astm-a232"]);
    expect(of(["astm-a228"])).toEqual([]);
  });

  it("stands once at the head of table, page, sheet and calculation, and in JSON", async () => {
    const asked = read(`
practice: en13906
load: { force: 40 N, deflection: 12 mm }
sweep: { wires: [en-10270], materials: [en-sl, en-sm], ends: [squared-ground], turns: half }
service: { seats: parallel plates }
`);
    const result = sweep(asked, { top: 3 });
    const [design] = result.designs;
    if (design === undefined) throw new Error("nothing fits");
    const words = memoryWords(asked);
    const own = memoryWords(
      asked,
      asked.sweep.materials.filter(({ name }) => name === design.material),
    );
    const times = (text: string, what: string) => text.replace(/\s+/g, " ").split(what).length - 1;
    const page = await reportPage(result, "");
    expect(words).toContain("strength of en-sl; EN 13906-1: ");
    expect(times(sweepTable(result, { width: 80, colour: false }), words)).toBe(1);
    expect(times(page.slice(0, page.indexOf('id="warnings"')), words)).toBe(1);
    expect(times(dataSheet(asked, design), own)).toBe(1);
    expect(calculationOf(asked, design).subject).toContain(own);
    expect(JSON.parse(resultJson(result)).brief.fromMemory).toEqual(fromMemory(asked));
  });
});
