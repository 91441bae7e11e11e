import type { Design, Dimension, NestedResult, NestedRole, Pair, SweepResult, Units } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { inUnits, unitLabel } from "../../units/show.ts";
import { type ColumnNames, type FigureColumn, figureColumns } from "./figure-columns.ts";

/** One column: its head, and the cell of one row. */
interface CsvColumn<Row = Design> {
  readonly head: string;
  readonly cell: (row: Row) => string;
}

/**
 * The designs of a sweep as CSV (RFC 4180): one row for each, every figure, units of the brief in the heads.
 *
 * A text that a spreadsheet would run as a formula is written with an apostrophe before it, control characters but tabs and line
 * breaks are made visible; numbers stay numbers, and a figure that does not exist is an empty cell.
 *
 * @param result  a finished sweep
 * @returns a head and one line for each design, lines ended by CR LF; does not throw
 */
export function designsCsv({ designs, brief }: SweepResult): string {
  return springsCsv(designs, brief.units);
}

/**
 * Springs as CSV, as `designsCsv` writes those of a sweep; one of rank 0 has an empty rank.
 *
 * @param designs  in the order of their lines
 * @param units    the reader's units
 */
export function springsCsv(designs: readonly Design[], units: Units): string {
  const rank: CsvColumn = { head: "rank", cell: ({ rank }) => numberCell(rank > 0 ? rank : null) };
  return csvText([rank, ...designColumns(designs, units)], designs);
}

/** Heads and rows as lines of CSV. */
function csvText<Row>(columns: readonly CsvColumn<Row>[], rows: readonly Row[]): string {
  const lines = [columns.map(({ head }) => head), ...rows.map((row) => columns.map(({ cell }) => cell(row)))];
  return lines.map((cells) => `${cells.join(",")}\r\n`).join("");
}

/**
 * Every figure of a design but its rank.
 *
 * @param designs  those that rows may hold: only limits that one of them has a margin for get a column
 * @param units    the reader's units
 */
function designColumns(designs: readonly Design[], units: Units): CsvColumn[] {
  return figureColumns(designs, HEADS).map((column) => csvColumn(column, units));
}

/** Point by point, and every limit under `margin`. */
const HEADS: ColumnNames = {
  point: (_, index, figure) => `point${index + 1}.${figure}`,
  pointName: (index) => `point${index + 1}.name`,
  margin: (limit) => `margin.${limit}`,
};

function csvColumn({ name, dimension, value }: FigureColumn, units: Units): CsvColumn {
  if (dimension === null) return { head: name, cell: (design) => textCell(value(design)) };
  return { head: headCell(name, dimension, units), cell: (design) => shownCell(value(design), dimension, units) };
}

/** `mass (g)`: a head with the unit that its cells are in. */
function headCell(name: string, dimension: Dimension, units: Units): string {
  const unit = unitLabel(dimension, units);
  return unit === "" ? name : `${name} (${unit})`;
}

/** An SI value as a cell in the reader's units; empty where it does not exist. */
function shownCell(value: number | null, dimension: Dimension, units: Units): string {
  return numberCell(value === null ? null : inUnits(value, dimension, units));
}

/** Ten digits: more than any figure is known to, fewer than binary noise. */
function numberCell(value: number | null): string {
  return value === null || !Number.isFinite(value) ? "" : String(Number(value.toPrecision(10)));
}

function textCell(text: string): string {
  // Where lines are parted at semicolons, what stands behind one begins a cell too.
  const shown = text.replace(/[^\t\r\n]+/g, oneLine).replace(/;(\s*[=+\-@＝＋－＠])/g, ";'$1");
  const safe = /^\s*[=+\-@＝＋－＠]|^[\t\r]/.test(shown) ? `'${shown}` : shown;
  return /[",;\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}

/** The figures of a pair itself, by the names of the model. */
const OF_PAIR: readonly (readonly [
  name: "rank" | "share" | "mass" | "relativeCost" | "rate" | "clearance" | "toleranceRoom",
  Dimension,
])[] = [
  ["rank", "number"],
  ["share", "share"],
  ["mass", "mass"],
  ["relativeCost", "number"],
  ["rate", "rate"],
  ["clearance", "length"],
  ["toleranceRoom", "length"],
];

/**
 * Nested pairs as CSV (RFC 4180): one row for each, the figures of the pair, then every figure of the outer and of the inner
 * spring; units of the brief in the heads.
 *
 * @param result  a finished sweep of nested pairs
 * @returns a head and one line for each pair, lines ended by CR LF; does not throw
 */
export function pairsCsv({ pairs, brief: { units } }: NestedResult): string {
  const columns = [
    ...OF_PAIR.map(
      ([name, dimension]): CsvColumn<Pair> => ({
        head: headCell(name, dimension, units),
        cell: (pair) => shownCell(pair[name], dimension, units),
      }),
    ),
    ...springColumns("outer", pairs, units),
    ...springColumns("inner", pairs, units),
  ];
  return csvText(columns, pairs);
}

function springColumns(role: NestedRole, pairs: readonly Pair[], units: Units): CsvColumn<Pair>[] {
  const figures = designColumns(
    pairs.map((pair) => pair[role]),
    units,
  );
  return [
    { head: `${role}.hand`, cell: (pair) => pair[role].hand },
    ...figures.map(({ head, cell }): CsvColumn<Pair> => ({ head: `${role}.${head}`, cell: (pair) => cell(pair[role]) })),
  ];
}
