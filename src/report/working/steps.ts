import type { Dimension, Units } from "../../model.ts";
import { evaluate } from "./expression.ts";
import { inSheetUnits, sheetLabel } from "./sheet-units.ts";
import type { Chapter, Derived, Given, Reading, Step, Table } from "./step.ts";

/** What a step is called: its symbol, the name of its cell, and words. */
export type Called = readonly [symbol: string, name: string, label: string];

/** The steps of one sheet as they are written down, chapter by chapter. */
export class Steps {
  readonly units: Units;
  readonly chapters: { title: string; steps: Step[]; notes: string[] }[] = [];
  readonly tables: Table[] = [];
  private readonly bySymbol = new Map<string, Step>();

  constructor(units: Units) {
    this.units = units;
  }

  /** Begin a chapter. */
  chapter(title: string): void {
    this.chapters.push({ title, steps: [], notes: [] });
  }

  /** Chapters that hold something. */
  get written(): Chapter[] {
    return this.chapters.filter(({ steps, notes }) => steps.length + notes.length > 0);
  }

  note(text: string): void {
    this.chapters.at(-1)?.notes.push(text);
  }

  has(symbol: string): boolean {
    return this.bySymbol.has(symbol);
  }

  /** Put in a figure, SI; one that stands already is left as it is. */
  given(called: Called, dimension: Dimension, value: number, source: string, reading?: Reading): void {
    if (this.has(called[0])) return;
    // What a change of unit leaves behind the fifteenth digit is nothing.
    const shown = Number(inSheetUnits(value, dimension, this.units).toPrecision(15));
    const step: Given = { kind: "given", ...this.line(called, dimension, shown, source), ...(reading ? { reading } : {}) };
    this.add(step);
  }

  /**
   * Work out a figure.
   *
   * @param expression  in the sheet's symbols and units
   * @param engine      the figure as the sweep has it, SI; absent for a step on the way to one
   */
  derived(
    called: Called,
    dimension: Dimension,
    expression: string,
    source: string,
    engine?: number,
    endlessBelow?: string,
  ): void {
    const shown =
      engine === undefined ? evaluate(expression, (symbol) => this.value(symbol)) : inSheetUnits(engine, dimension, this.units);
    const endless = endlessBelow === undefined ? {} : { endlessBelow };
    const step: Derived = { kind: "derived", ...this.line(called, dimension, shown, source), expression, ...endless };
    this.add(step);
  }

  /** Write down a table that figures are read from: heads with their dimension, rows in SI. */
  table(name: string, heads: readonly (readonly [string, Dimension])[], rows: readonly (readonly number[])[]): void {
    this.tables.push({
      name,
      heads: heads.map(([label, dimension]) => [label, sheetLabel(dimension, this.units)].filter(Boolean).join(", ")),
      rows: rows.map((cells) =>
        cells.map((cell, i) => inSheetUnits(cell, (heads[i] as readonly [string, Dimension])[1], this.units)),
      ),
    });
  }

  private value(symbol: string): number {
    const step = this.bySymbol.get(symbol);
    if (step === undefined) throw new Error(`${symbol} is used before it is known`);
    return step.value;
  }

  private line([symbol, name, label]: Called, dimension: Dimension, value: number, source: string) {
    return { symbol, name, label, value, unit: sheetLabel(dimension, this.units), source };
  }

  private add(step: Step): void {
    if (this.has(step.symbol)) throw new Error(`${step.symbol} stands twice`);
    this.bySymbol.set(step.symbol, step);
    this.chapters.at(-1)?.steps.push(step);
  }
}
