import { describe, expect, it, vi } from "vitest";
import { calculationOf } from "../../../src/report/calculation/calculation.ts";
import { inSheetUnits, type Step } from "../../../src/report/calculation/steps.ts";
import { calculationWorkbook } from "../../../src/report/calculation/workbook.ts";
import { series } from "../fixture.ts";
import { cases, designOf } from "./designs.ts";
import { recalculated } from "./recalculated.ts";

const near = (a: number, b: number) => a === b || Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b)) + 1e-12;

/** What stands for a figure without end. */
const ENDLESS = 1e99;

const stepsOf = (one: (typeof cases)[number]): readonly Step[] =>
  calculationOf(one.brief, designOf(one)).chapters.flatMap(({ steps }) => steps);

/** Figures that a person must read anew from a table that the workbook does not hold, and all that follows from them. */
function readAnew(before: readonly Step[], after: readonly Step[]): ReadonlySet<string> {
  const stale = new Set<string>();
  for (const [i, step] of before.entries()) {
    const other = after[i] as Step;
    if (step.kind === "given") {
      if (step.reading === undefined && step.name !== "wireDiameter" && step.value !== other.value) stale.add(step.symbol);
    } else if ((step.expression.match(/\p{L}[\p{L}\d]*/gu) ?? []).some((symbol) => stale.has(symbol))) stale.add(step.symbol);
  }
  return stale;
}

describe.each(cases)("the workbook of $name", (one) => {
  const design = designOf(one);
  const steps = stepsOf(one);

  it("gives the engine's figure in every cell when another engine works it out", async () => {
    const book = await recalculated(await calculationWorkbook(one.brief, design));
    expect(book.names).toEqual(steps.map(({ name }) => name));
    const off = steps.filter(({ name, value }) => !near(book.valueOf(name), Math.min(value, ENDLESS)));
    expect(off.map(({ name, value }) => `${name} ${book.valueOf(name)} is not ${value}`)).toEqual([]);
    const live = steps.filter((step) => step.kind === "derived" || step.reading !== undefined);
    expect(live.filter(({ name }) => !book.isFormula(name))).toEqual([]);
  });

  it("is the same bytes at any time", async () => {
    vi.useFakeTimers({ toFake: ["Date"], now: new Date("2031-05-06T07:08:09Z") });
    try {
      const then = await calculationWorkbook(one.brief, design);
      vi.setSystemTime(new Date("2042-01-02T03:04:05Z"));
      expect(await calculationWorkbook(one.brief, design)).toEqual(then);
    } finally {
      vi.useRealTimers();
    }
  });

  it.each([1, 3, 4])("follows a change to wire %i of the series as the engine does", async (index) => {
    const wire = series.wires[index] as (typeof series.wires)[number];
    const diameter = inSheetUnits(wire.diameter, "length", one.brief.units);
    const book = await recalculated(await calculationWorkbook(one.brief, design), { wireDiameter: diameter });
    const rewound = { ...one, choice: { ...one.choice, wire } };
    // Where the other wire passes at no free length, the engine takes the shortest; the sheet keeps the rule of its own spring.
    const freeLength = book.valueOf("freeLength") / inSheetUnits(1, "length", one.brief.units);
    const changed =
      designOf(rewound).freeLengthRange === null && one.choice.freeLength === undefined
        ? { ...rewound, choice: { ...rewound.choice, freeLength } }
        : rewound;
    const after = stepsOf(changed);
    // A thicker wire may leave no room to solid; then the engine works nothing more out.
    const same = after.map(({ name }) => name);
    const before = steps.filter(({ name }) => same.includes(name));
    const stale = readAnew(
      before,
      after.filter(({ name }) => before.some((step) => step.name === name)),
    );
    const held = after.filter(({ name, symbol }) => book.names.includes(name) && !stale.has(symbol));
    const off = held.filter(({ name, value }) => !near(book.valueOf(name), Math.min(value, ENDLESS)));
    expect(off.map(({ name, value }) => `${name} ${book.valueOf(name)} is not ${value}`)).toEqual([]);
    expect(held.length).toBeGreaterThan(after.length / 2);
  });
});

describe("a workbook", () => {
  const [first] = cases;
  if (first === undefined) throw new Error("there is no case");

  it("names its cells so that no spreadsheet takes a name for a cell or a row", () => {
    const names = cases.flatMap((one) => stepsOf(one).map(({ name }) => name));
    expect(names.filter((name) => !/^[a-z][A-Za-z0-9]{3,}$/.test(name) || /^[a-z]{1,3}\d+$/i.test(name))).toEqual([]);
  });

  it("holds text of the brief as text, never as a formula", async () => {
    const title = '=HYPERLINK("http://example.org","x")';
    const book = await recalculated(await calculationWorkbook({ ...first.brief, title: `${title}\u0007` }, designOf(first)));
    const written = book.texts.filter(({ value }) => String(value).includes("HYPERLINK"));
    expect(written.map(({ value, formula }) => [value, formula])).toEqual([[`Working: ${title}\\x07`, undefined]]);
    const named = await recalculated(
      await calculationWorkbook({ ...first.brief, title: "plain" }, { ...designOf(first), cautions: [] }),
    );
    expect(named.texts.some(({ formula }) => formula !== undefined)).toBe(false);
  });

  it("ends with the cautions", async () => {
    const book = await recalculated(await calculationWorkbook(first.brief, designOf(first)));
    expect(book.texts.some(({ value }) => /^Screening only/.test(String(value)))).toBe(true);
  });
});
