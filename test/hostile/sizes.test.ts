import { describe, expect, it, vi } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { readWireSeries } from "../../src/catalog/wires.ts";
import type { Brief, Design, Lookup, SweepResult, Wire } from "../../src/model.ts";
import { ProblemError } from "../../src/problem.ts";
import { sweepTable } from "../../src/report/terminal/sweep-table.ts";
import { wrap } from "../../src/report/text/layout.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { lookup, problemsOf, read, runs, sweepText } from "./answer.ts";

// Good time, ms. What takes a second at most has this long, so that no machine is too slow for it; what hangs, or grows out of all
// proportion to its text, takes longer on every one.
vi.setConfig({ testTimeout: 120_000 });

const windows =
  "{ points: [{ length: 46 mm, force: { min: 18 N, max: 24 N } }, { length: 32 mm, force: { min: 40 N, max: 55 N } }] }";
const pinned = "{ force: 30 N, deflection: 10 mm }";

function briefText(load: string, sweep: string, rest = ""): string {
  const lists = "wires: [iso-r20, en-10270], materials: [en-sm, astm-a228], ends: [squared-ground, squared]";
  return `practice: handbook\nload: ${load}\nsweep: { ${lists}${sweep} }\n${rest}`;
}

const step = (size: string) => `, meanDiameter: { step: ${size} }`;

describe("a window of turns", () => {
  it.each(["1e4", "1e9", "9e14"])("up to %s is refused at once, with its line", (max) => {
    const text = briefText(windows, "", `limits: { turns: { min: 1, max: ${max} } }\n`);
    expect(problemsOf(() => sweepText(text))).toMatchObject([{ code: "tooMany", line: 3, key: "sweep" }]);
  });

  it("up to a thousand is walked", () => {
    expect(sweepText(briefText(windows, "", "limits: { turns: { min: 1, max: 1000 } }\n")).feasible).toBeGreaterThan(0);
  });
});

describe("a tiny step", () => {
  it.each(["1e-9 mm", "1e-7 mm", "1e-11 m"])("of %s still answers where what passes is found by cutting", (size) => {
    const text = briefText(pinned, `, turns: any${step(size)}`, "envelope: { freeLength: { max: 12 mm } }\n");
    expect(sweepText(text)).toMatchObject({ feasible: 0 });
  });

  it("is refused at once where it leaves more springs than can be ranked", () => {
    const text = briefText(windows, step("1e-9 mm"));
    expect(problemsOf(() => sweepText(text))).toMatchObject([{ code: "stepTooFine", key: "sweep.meanDiameter" }]);
  });

  it("is refused where its candidates are more than whole numbers can count", () => {
    const text = briefText(pinned, `, turns: any${step("1e-12 mm")}`, "envelope: { freeLength: { max: 12 mm } }\n");
    expect(problemsOf(() => sweepText(text))).toMatchObject([{ code: "stepTooFine", got: /counted exactly/ }]);
  });

  it("moves no border: a grid a hundred times finer has a hundred times the springs", () => {
    const coarse = sweepText(briefText(windows, step("0.1 mm"))).feasible;
    const fine = sweepText(briefText(windows, step("0.001 mm"))).feasible;
    expect(fine / coarse / 100).toBeCloseTo(1, 1);
  });
});

describe("a step larger than every spring", () => {
  it("leaves nothing to walk but what no wire is made for", () => {
    const { walked, rejected, feasible } = sweepText(briefText(windows, step("1e6 mm")));
    expect([rejected, feasible]).toEqual([{ wire: walked }, 0]);
  });
});

describe("thousands of wires", () => {
  const wires = Array.from({ length: 5000 }, (_, i): Wire => {
    return { label: `w${i}`, diameter: 0.0005 + i * 5e-7, series: "many" };
  });

  it("are walked in good time", () => {
    const brief = read(briefText(windows, ", turns: whole"));
    const many: Brief = { ...brief, sweep: { ...brief.sweep, wires: [{ name: "many", source: "invented", wires }] } };
    expect(sweep(many).feasible).toBeGreaterThan(0);
  });

  it("are read from a table in good time", () => {
    const rows = wires.map(({ label, diameter }) => `${label},${diameter} m`);
    const text = `label,diameter\n${rows.join("\n")}`;
    expect(readWireSeries({ file: "many.csv", text }, "many").wires).toHaveLength(5000);
  });
});

describe("a table of wires that is wrong in every row", () => {
  const rows = (count: number, row: (i: number) => string) => Array.from({ length: count }, (_, i) => row(i)).join("\n");

  it.each([
    ["sizes that all are one", `label,diameter\n${rows(50_000, (i) => `w${i},1 mm`)}`, "duplicateSize"],
    [
      "one size in as many materials",
      `label,diameter,materials\n${rows(50_000, (i) => `w${i},1 mm,m${i >> 1}`)}`,
      "duplicateSize",
    ],
    ["300,000 rows of one cell", `label,diameter\n${rows(300_000, () => "x")}`, "cells"],
    ["a header of 100,000 columns", `label,diameter,${rows(100_000, (i) => `c${i}`).replaceAll("\n", ",")}\n`, "unknownColumn"],
    ["a header that says one column 100,000 times", `label${",diameter".repeat(100_000)}\n`, "duplicateColumn"],
    ["a label of a million characters", `label,diameter\n${"x".repeat(1_000_000)},1 mm`, "longLabel"],
  ])("%s: told in good time, fifty of them and how many more there are", (_title, text, code) => {
    const stock = { file: "stock.csv", text };
    const named: Lookup = { ...lookup, series: () => readWireSeries(stock, "stock") };
    const act = () => readBrief(briefText(pinned, "").replace("iso-r20", "./stock.csv"), "b.yaml", named);
    const problems = problemsOf(act);
    expect(problems.some((problem) => problem.code === code)).toBe(true);
    const lines = new ProblemError(problems).message.split("\n");
    expect(lines.length).toBeLessThanOrEqual(51);
    for (const line of lines) expect(line.length).toBeLessThan(400);
    if (problems.length > 50) {
      expect(lines.at(-1)).toBe(`stock.csv: ${(problems.length - 50).toLocaleString("en")} more problems like these`);
    }
  });
});

describe("a table of 130,000 designs", () => {
  const result = sweepText(briefText(pinned, "")) as SweepResult;
  const [best] = result.designs as [Design];
  const wires = Array.from({ length: 130_000 }, (_, i) => ({ ...best, rank: i + 1, wire: `w${i}` }));

  it("is written in good time", () => {
    const act = () => expect(sweepTable({ ...result, designs: wires }, { width: 80, colour: false }).length).toBeGreaterThan(1e6);
    act();
  });

  it("breaks a word of a million characters into lines", () => {
    expect(wrap("x".repeat(1_000_000), 80, 0)).toHaveLength(12_500);
  });
});

/** Texts that take a reader of YAML long, or that grow when they are read; a long search takes longer ones. */
const length = Math.min(240_000, 1000 * runs);
const repeated = (text: string, before = "", after = "") => before + text.repeat(length / text.length) + after;
const costly: readonly (readonly [string, string])[] = [
  [
    "an alias bomb",
    `a: &a [x, x]\n${Array.from({ length: 40 }, (_, i) => `b${i}: &b${i} [*${i ? `b${i - 1}` : "a"}, *a]`).join("\n")}`,
  ],
  ["keys without end", Array.from({ length: 20_000 }, (_, i) => `key${i}: 1`).join("\n")],
  ["one key again and again", repeated("title: x\n")],
  ["brackets without end", repeated("[", "title: ")],
  ["braces without end", repeated("{a: ", "title: ")],
  ["sections in sections", Array.from({ length: 600 }, (_, i) => `${" ".repeat(i)}a:`).join("\n")],
  ["dashes without end", repeated("- ")],
  ["commas without end", repeated(",", "title: [", "]")],
  ["tags without end", repeated("! ")],
  ["tabs on every line", repeated("a:\n\t- x\n")],
  ["a fault on every line", repeated("a: b: c\n")],
  ["an open quote", repeated("\\", 'title: "')],
  ["one long line", repeated("x", "title: ")],
  ["a key of a long line", repeated("x", "", ": 1")],
  ["spaces", repeated(" ")],
  ["documents", repeated("---\n")],
  ["more than is read", "x".repeat(5_000_000)],
];

describe.each(costly)("%s", (_title, text) => {
  it.each([
    ["a brief", () => read(text)],
    ["a material", () => readMaterial({ file: "m.yaml", text })],
    ["a table of wires", () => readWireSeries({ file: "w.csv", text }, "w")],
  ])("in %s are problems in good time", (_kind, act) => {
    expect(problemsOf(act)).not.toEqual([]);
  });
});
