import type { Dimension, Units } from "../../model.ts";
import { inUnits, unitLabel } from "../../units/show.ts";
import { evaluate } from "./expression.ts";

interface Line {
  /** As a person writes it: `k`, `Na`, `τ1`; one in a sheet. */
  readonly symbol: string;
  /** As a spreadsheet names its cell: `springRate`; one in a sheet. */
  readonly name: string;
  /** In words: `rate`. */
  readonly label: string;
  /** In the unit beside it; infinite where there is no end to the figure. */
  readonly value: number;
  /** A unit of the sheet; empty for a pure number. */
  readonly unit: string;
  /** Book or standard with its place, the brief's key, or the catalog entry's source. */
  readonly source: string;
}

/** A figure that is put in: asked by the brief, chosen by the walk, or read from a catalog or a table. */
interface Given extends Line {
  readonly kind: "given";
  /** Where in a table of the sheet it was read. */
  readonly reading?: Reading;
}

/** A figure that follows from those above it. */
export interface Derived extends Line {
  readonly kind: "derived";
  /** In symbols of the sheet: + - * / ^, parentheses, sqrt atan log abs min max, pi. */
  readonly expression: string;
  /** The figure has no end where this symbol is below zero. */
  readonly endlessBelow?: string;
}

export type Step = Given | Derived;

/** A cell of a table: of the first row whose head is not below a figure, or of one of the two rows that enclose it. */
export interface Reading {
  readonly table: string;
  readonly column: number;
  /** Symbol of the figure that the first column is held against. */
  readonly by: string;
  readonly row: "atOrAbove" | "lower" | "upper";
}

/** Rows that figures of the sheet were read from, rising in the first column, in the sheet's units. */
export interface Table {
  readonly name: string;
  readonly heads: readonly string[];
  /** An infinite head stands for "and beyond". */
  readonly rows: readonly (readonly number[])[];
}

export interface Chapter {
  readonly title: string;
  readonly steps: readonly Step[];
  /** What a person should know who follows the steps. */
  readonly notes: readonly string[];
}

/** The calculation sheet of one design, step by step in the order in which a person would work. */
export interface Calculation {
  readonly title: string;
  /** Which spring it is. */
  readonly subject: string;
  readonly units: Units;
  readonly chapters: readonly Chapter[];
  readonly tables: readonly Table[];
  readonly cautions: readonly string[];
}

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

/**
 * An SI value in the sheet's units. They are the reader's, but for stress, which goes by force over length squared, so that
 * equations of lengths, forces and stresses need no factor.
 *
 * @param value      SI unit of the dimension
 * @param dimension  what the number measures
 * @param units      the reader's units
 * @returns in the unit that `sheetLabel` names
 */
export function inSheetUnits(value: number, dimension: Dimension, units: Units): number {
  if (dimension !== "stress") return inUnits(value, dimension, units);
  return inUnits(value, "force", units) / inUnits(1, "length", units) ** 2;
}

/** Name of the sheet's unit of a dimension; empty for a pure number. */
function sheetLabel(dimension: Dimension, units: Units): string {
  if (dimension !== "stress") return unitLabel(dimension, units);
  const label = `${units.force}/${units.length}²`;
  return { "N/mm²": "MPa", "lbf/in²": "psi" }[label] ?? label;
}

/** What the product of density and volume is multiplied by to be a mass. */
export function massFactor(units: Units): number {
  return rounded(inUnits(1, "mass", units) / (inUnits(1, "density", units) * inUnits(1, "length", units) ** 3));
}

/** What rate over mass is multiplied by to be the square of a frequency in 1/s. */
export function swingFactor(units: Units): number {
  return rounded(inUnits(1, "mass", units) / inUnits(1, "rate", units));
}

/** Kilograms in the sheet's unit of mass. */
export function kilograms(units: Units): number {
  return rounded(1 / inUnits(1, "mass", units));
}

/** Millimetres in the sheet's unit of length. */
export function millimetres(units: Units): number {
  return rounded(1000 / inUnits(1, "length", units));
}

/** Newtons in the sheet's unit of force. */
export function newtons(units: Units): number {
  return rounded(1 / inUnits(1, "force", units));
}

/**
 * A factor in front of the rest of a product.
 *
 * @param factor  pure number, above zero
 * @returns such as `10^-6 * `; empty for 1
 */
export function times(factor: number): string {
  if (factor === 1) return "";
  const power = Math.round(Math.log10(factor));
  return `${rounded(factor / 10 ** power) === 1 ? `10^${power}` : factor} * `;
}

/** What multiplying and dividing factors of units leaves behind the fifteenth digit is nothing. */
function rounded(factor: number): number {
  return Number(factor.toPrecision(15));
}
