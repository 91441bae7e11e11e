import type { NamedRange } from "hucre";
import { type Cell, type CellStyle, type WriteSheet, writeXlsx } from "hucre/xlsx";
import type { Brief, Design } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { calculationOf } from "./calculation.ts";
import { tokensOf } from "./expression.ts";
import { stepsBySymbol } from "./printed.ts";
import type { Calculation, Chapter, Derived, Reading, Step, Table } from "./steps.ts";

const BOLD: CellStyle = { font: { bold: true } };
const WRAPPED: CellStyle = { alignment: { wrapText: true, vertical: "top" } };
const INPUT: CellStyle = { fill: { type: "pattern", pattern: "solid", fgColor: { rgb: "E7F0F3" } } };
const SHEET = "Working";
/** The same brief gives the same bytes, so no workbook says when it was written; this is the first day that its archive knows. */
const NO_TIME = new Date("1980-01-01T00:00:00Z");
/** The column of figures, whose cells are named. */
const FIGURE = 2;

/**
 * The calculation sheet of one design as a spreadsheet with live formulas: each figure in a cell with a name, each given one
 * marked, tables of strength and moduli read by formula, so that a changed wire changes every figure.
 *
 * @param brief   the brief that the design answers
 * @param design  one of its designs
 * @returns an Office Open XML workbook, the same bytes at any time; texts of the brief are texts in it, never formulas
 * @throws Error where the design is none of the brief's
 */
export async function calculationWorkbook(brief: Brief, design: Design): Promise<Uint8Array> {
  const working = calculationOf(brief, design);
  const out = new Cells();
  head(out, working);
  const known = stepsBySymbol(working);
  const places = tablePlaces(working, out.rows);
  for (const chapter of working.chapters) chapterRows(out, chapter, working.tables, places, known);
  for (const table of working.tables) tableRows(out, table);
  for (const caution of working.cautions) out.line(0, caution);
  const sheet: WriteSheet = {
    name: SHEET,
    columns: [8, 44, 16, 9, 48, 60].map((width) => ({ width })),
    cells: out.cells,
    pageSetup: { paperSize: "a4", orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
  };
  return writeXlsx({ sheets: [sheet], namedRanges: out.names, properties: { modified: NO_TIME } });
}

/** A sheet as it is filled, cell by cell; rows and columns from 0. */
class Cells {
  readonly cells = new Map<string, Partial<Cell>>();
  readonly names: NamedRange[] = [];
  rows = 0;

  /** A text on a row of its own. */
  line(column: number, text: string, style: CellStyle = {}): void {
    this.text(column, text, style);
    this.rows++;
  }

  text(column: number, text: string, style: CellStyle = {}): void {
    this.cells.set(`${this.rows},${column}`, { value: oneLine(text), type: "string", style });
  }

  number(column: number, value: number, style: CellStyle = {}): void {
    this.cells.set(`${this.rows},${column}`, { value, type: "number", style });
  }

  formula(column: number, formula: string, result: number): void {
    this.cells.set(`${this.rows},${column}`, { value: result, type: "formula", formula, formulaResult: result });
  }
}

function head(out: Cells, { title, subject: worked }: Calculation): void {
  out.line(0, `Working: ${title}`, BOLD);
  out.line(
    0,
    `${worked} Tinted cells are given: change them and the others follow. What was read in a band of a table is to be read again then.`,
  );
  out.rows++;
}

function chapterRows(
  out: Cells,
  { title, steps, notes }: Chapter,
  tables: readonly Table[],
  places: ReadonlyMap<string, number>,
  known: ReadonlyMap<string, Step>,
): void {
  out.line(0, title, BOLD);
  for (const step of steps) {
    stepRow(out, step, tables, places, known);
    out.names.push({ name: step.name, range: `${SHEET}!$C$${out.rows + 1}` });
    out.rows++;
  }
  for (const note of notes) out.line(1, note);
  out.rows++;
}

function stepRow(
  out: Cells,
  step: Step,
  tables: readonly Table[],
  places: ReadonlyMap<string, number>,
  known: ReadonlyMap<string, Step>,
): void {
  out.text(0, step.symbol);
  out.text(1, step.label, WRAPPED);
  out.text(3, step.unit);
  out.text(5, step.source, WRAPPED);
  if (step.kind === "derived") {
    out.text(4, step.expression, WRAPPED);
    out.formula(FIGURE, equationFormula(step, known), Math.min(step.value, ENDLESS));
  } else if (step.reading !== undefined) {
    const { reading } = step;
    const table = tables.find(({ name }) => name === reading.table) as Table;
    out.text(4, `read from table ${table.name}`);
    out.formula(FIGURE, readingFormula(reading, table, columnOf(table, places), known), step.value);
  } else {
    out.text(4, "given");
    out.number(FIGURE, step.value, INPUT);
  }
}

/** The number of the first row of cells of each table, from 1; they stand below the chapters, each with a title and heads. */
function tablePlaces({ chapters, tables }: Calculation, headRows: number): ReadonlyMap<string, number> {
  let row = chapters.reduce((sum, { steps, notes }) => sum + steps.length + notes.length + 2, headRows);
  return new Map(
    tables.map(({ name, rows }) => {
      const first = row + 3;
      row += rows.length + 3;
      return [name, first];
    }),
  );
}

/** Cells of a column of a table, which begins under the names of figures. */
function columnOf({ name, rows }: Table, places: ReadonlyMap<string, number>): (column: number) => string {
  const first = places.get(name) as number;
  return (column) => {
    const letter = "BCDE".charAt(column);
    return `$${letter}$${first}:$${letter}$${first + rows.length - 1}`;
  };
}

function tableRows(out: Cells, { name, heads, rows }: Table): void {
  out.line(0, `Table ${name}`, BOLD);
  for (const [i, head] of heads.entries()) out.text(i + 1, head);
  out.rows++;
  for (const row of rows) {
    for (const [i, value] of row.entries()) {
      if (Number.isFinite(value)) out.number(i + 1, value);
      else out.text(i + 1, "and beyond");
    }
    out.rows++;
  }
  out.rows++;
}

/** What stands in a cell for a figure without end, since a cell cannot hold one. */
const ENDLESS = 1e99;

/**
 * The equation of a step as a spreadsheet's formula.
 *
 * @param step   a step of the sheet
 * @param known  its steps by symbol
 * @returns such as `shearModulus*wireDiameter^4/(8*meanDiameter^3*activeTurns)`, without the sign of equality
 */
function equationFormula({ expression, endlessBelow }: Derived, known: ReadonlyMap<string, Step>): string {
  const formula = formulaOf(expression, known);
  return endlessBelow === undefined ? formula : `IF(${nameOf(endlessBelow, known)}<0,1E+99,${formula})`;
}

function formulaOf(expression: string, known: ReadonlyMap<string, Step>): string {
  return tokensOf(expression)
    .map(({ kind, text }) => {
      if (kind === "symbol") return nameOf(text, known);
      if (kind === "pi") return "PI()";
      if (kind === "function") return text === "log" ? "LN" : text.toUpperCase();
      return text;
    })
    .join("");
}

function nameOf(symbol: string, known: ReadonlyMap<string, Step>): string {
  return (known.get(symbol) as Step).name;
}

/**
 * A reading of a table as a spreadsheet's formula, so that it follows the figure that it goes by.
 *
 * @param reading  where it stands
 * @param table    the table
 * @param column   the cells of a column of it, by number, such as `$A$3:$A$9`
 * @param known    the steps of the sheet by symbol
 */
function readingFormula(
  reading: Reading,
  table: Table,
  column: (number: number) => string,
  known: ReadonlyMap<string, Step>,
): string {
  // Rows say "up to and including", the same size to a billionth counting as it.
  const atOrAbove = `COUNTIF(${column(0)},"<"&${nameOf(reading.by, known)}*(1-1E-9))+1`;
  const upper = `MIN(MAX(${atOrAbove},2),${table.rows.length})`;
  const row = { atOrAbove, upper, lower: `${upper}-1` }[reading.row];
  return `INDEX(${column(reading.column)},${row})`;
}
