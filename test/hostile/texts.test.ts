import { readXlsx } from "hucre/xlsx";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { designToBrief } from "../../src/brief/design-to-brief.ts";
import { writeBrief } from "../../src/brief/write.ts";
import type { Brief, Design, EndStyle, SweepResult } from "../../src/model.ts";
import { oneLine } from "../../src/problem.ts";
import { calculationWorkbook } from "../../src/report/calculation/workbook.ts";
import { dataSheet } from "../../src/report/datasheet/datasheet.ts";
import { springDrawing } from "../../src/report/drawing/spring.ts";
import { designsCsv } from "../../src/report/files/csv.ts";
import { resultJson, survivorLine } from "../../src/report/files/json.ts";
import { reportPage } from "../../src/report/page/springs-page.ts";
import { sweepTable } from "../../src/report/terminal/sweep-table.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { read } from "./answer.ts";

/** What must stay text wherever a person's own words go. */
const markup = "</script><script>alert(1)</script><img src=x onerror=alert(1)>&amp;\"'";
const hostile: readonly (readonly [string, string])[] = [
  ["markup", markup],
  ["an escape to the terminal", "red\u001b[31m\u001b]0;title\u0007\u009b2J"],
  ["marks that turn the writing", "abc\u202edcba\u2066x\u2069\u200f"],
  ["a formula", "=cmd|'/C calc'!A0"],
  ["a formula behind a space", " @SUM(1)"],
  ["a formula in wide signs", "＝1+1"],
  ["a formula behind a semicolon", "a;=cmd|'/C calc'!A0"],
  ["a bell", "ding\u0007dong\u0000"],
  ["what no XML holds", "a\ufffeb\uffffc\ud800d\udc00e"],
  ["line breaks", "one\ntwo\r\nthree\u2028four"],
  ["the end of a comment", "--> ]]> */ <!--"],
  ["names of an object's own", "__proto__"],
  ["a replacement pattern", "$& $1 $` $'"],
];

/** A result whose every name and label is the text. */
function resultWith(text: string): SweepResult {
  const quoted = JSON.stringify(text);
  const brief = read(`practice: handbook
title: ${quoted}
load: { points: [{ name: ${quoted}, length: 46 mm, force: 20 N ± 4 N }, { name: loaded, length: 32 mm, force: 48 N }] }
sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared-ground] }
`);
  const named: Brief = {
    ...brief,
    sweep: {
      ...brief.sweep,
      wires: brief.sweep.wires.map((series) => ({
        name: text,
        source: text,
        wires: series.wires.map((wire) => ({ ...wire, label: `${text}${wire.label}`, series: text })),
      })),
      materials: brief.sweep.materials.map((material) => ({ ...material, name: text, source: text, notes: [text] })),
      ends: brief.sweep.ends.map((ends) => ({ ...ends, name: text })),
    },
  };
  return sweep(named, { sample: 50 });
}

/** Control characters but line breaks, and marks that turn the writing. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const acting = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

describe.each(hostile)("%s in a title, names and labels", (_kind, text) => {
  const result = resultWith(text);

  it("has springs to show", () => {
    expect(result.feasible).toBeGreaterThan(0);
  });

  it("does not act on a terminal", () => {
    const table = sweepTable(result, { width: 80, colour: false });
    expect(table).not.toMatch(acting);
    // Wrapping may fall inside the text.
    expect(table.replace(/\s+/g, "")).toContain(oneLine(text.trim()).replace(/\s+/g, "").slice(0, 10));
  });

  it("stays one cell of CSV that no spreadsheet runs", () => {
    const csv = designsCsv(result);
    expect(csv).not.toMatch(/(^|,|;|\n)"?\s*[=@＝]/);
    expect(csv.replaceAll("\r\n", "\n").replaceAll("\r", "")).not.toMatch(acting);
  });

  it("comes back from JSON as it was, and acts on no terminal there", () => {
    for (const text of [resultJson(result), survivorLine(bestOf(result))]) expect(text).not.toMatch(acting);
    const { brief, designs } = JSON.parse(resultJson(result));
    expect(brief.title).toBe(text.trim());
    expect(designs[0].material).toBe(text);
    expect(designs[0].points[0].name).toBe(text.trim());
  });

  it("comes back from a pinned brief as it was, and acts on no terminal there", () => {
    const pinned = writeBrief(designToBrief(result.brief, bestOf(result)));
    expect(pinned).not.toMatch(acting);
    expect(pinned).not.toMatch(unfit);
    const document = parse(pinned, { schema: "failsafe" });
    expect([document.title, document.design.material]).toEqual([text.trim(), text]);
  });

  it("holds nothing that no page, picture or sheet may hold", async () => {
    const { brief } = result;
    const best = bestOf(result);
    const { sheets } = await readXlsx(await calculationWorkbook(brief, best));
    const sheet = (sheets[0]?.rows ?? []).flat().join("\n");
    for (const written of [await reportPage(result, "void 0;"), dataSheet(brief, best), drawn(brief, best), sheet]) {
      expect(written).not.toMatch(unfit);
    }
  });

  it("opens no element in the page, the data sheet and the drawing", async () => {
    const plain = resultWith("plain");
    expect(elements(await reportPage(result, "void 0;"))).toEqual(elements(await reportPage(plain, "void 0;")));
    for (const draw of [dataSheet, drawn]) {
      expect(elements(draw(result.brief, bestOf(result)))).toEqual(elements(draw(plain.brief, bestOf(plain))));
    }
  });
});

/** Characters that XML has none of. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const unfit = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|\p{Surrogate}/u;

const bestOf = ({ designs }: SweepResult): Design => designs[0] as Design;
const drawn = ({ sweep: { ends }, units }: Brief, design: Design) => springDrawing(design, ends[0] as EndStyle, units);

/** How many of each element a page opens, whatever text stands between; a script's own text is no element. */
function elements(html: string): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  const withoutScripts = html.replace(/(<script[^>]*>)[\s\S]*?<\/script>/g, "$1");
  for (const [, name = ""] of withoutScripts.matchAll(/<([a-z!][\w-]*)/gi)) counts.set(name, (counts.get(name) ?? 0) + 1);
  // Lines that a text is broken into are as many as it is long.
  for (const name of ["tspan", "text", "br"]) counts.delete(name);
  return counts;
}
