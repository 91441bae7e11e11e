import type { Design, SweepResult, Units } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { type FigureName, figureWords, figureWordsIn } from "../text/labels.ts";
import { columnNumbers, greatestOf, upperFirst } from "../text/layout.ts";
import { freeLengthRangeNumbers } from "../text/spring-summary.ts";
import { yieldColumn, yieldTexts } from "../text/yield.ts";

/** One column of the ranked table, ready to print. */
export interface Column {
  /** Head, at most three lines. */
  readonly head: readonly string[];
  readonly cells: readonly string[];
  readonly align: "left" | "right";
}

/** The ranked table at one width. */
export interface RankedTable {
  readonly columns: readonly Column[];
  /** What every row shares, said once instead of in a column: label and value. */
  readonly shared: readonly (readonly [string, string])[];
  /** What letters in a column stand for, where names would not fit. */
  readonly key: readonly string[];
}

/** Heads short enough for a column, above the unit. */
const SHORT: Readonly<Partial<Record<FigureName, readonly string[]>>> = {
  wireDiameter: ["wire", "dia"],
  totalTurns: ["total", "turns"],
  outsideDiameter: ["outside", "dia"],
  freeLength: ["free", "length"],
  rate: ["", "rate"],
  solidSafety: ["solid", "safety"],
  fatigueSafety: ["fatigue", "safety"],
  mass: ["", "mass"],
  relativeCost: ["relative", "cost"],
};

/**
 * The columns of the ranked table that fit a width. What every row shares is no column; where names do not fit they become
 * letters with a key, the longest column first, the label of the wire last.
 *
 * @param result  a sweep with at least one design
 * @param width   characters in a line
 */
export function columnsOf(result: SweepResult, width: number): RankedTable {
  const { designs, brief } = result;
  const figure = (name: FigureName) => figureColumn(name, designs, result);
  const words = [
    textColumn("wire", designs, (design) => design.wire),
    textColumn("series", designs, (design) => design.series),
    textColumn("material", designs, (design) => design.material),
    textColumn("ends", designs, (design) => design.ends),
  ];
  // Of one spring alone nothing is shared: it has its figures.
  const isShared = ({ cells }: Column) => designs.length > 1 && new Set(cells).size === 1;
  const shared = words.filter(isShared).map(({ head, cells }) => [head[1] as string, cells[0] as string] as const);
  const [wire, ...others] = words.filter((column) => !isShared(column));
  const merit = brief.rank[0] ?? "mass";
  const cyclic: FigureName[] = designs.some(({ fatigueSafety }) => fatigueSafety !== null) ? ["fatigueSafety"] : [];
  const names: FigureName[] = ["totalTurns", "outsideDiameter", "freeLength", "rate", "solidSafety", ...cyclic];
  const figures = [...names, ...(names.includes(merit) ? [] : [merit])].map(figure);
  const yields = yieldTexts(designs, brief.units);
  const drawn: Column[] = yields ? [{ head: ["", yieldColumn.label, "%"], cells: yields, align: "right" }] : [];
  const range = rangeColumns(designs, brief.units);
  let columns = [figure("rank"), ...(wire ? [wire] : []), figure("wireDiameter"), ...others, ...figures, ...drawn];
  const key: string[] = [];
  while (tableWidth(columns) > width) {
    const widest =
      columns.filter((column) => column !== wire && isLettered(column)).sort((a, b) => columnWidth(b) - columnWidth(a))[0] ??
      wire;
    if (!widest || !isLettered(widest) || !columns.includes(widest)) break;
    const short = lettered(widest);
    key.push(short.key);
    columns = columns.map((column) => (column === widest ? short.column : column));
  }
  // Beside a yield what is still too wide goes: these stand in every file.
  for (const name of yields ? (["rate", "solidSafety"] as const) : []) {
    if (tableWidth(columns) <= width || name === merit) continue;
    columns = columns.filter((column) => column !== figures[names.indexOf(name)]);
  }
  const length = columns.findIndex(({ head }) => head.join(" ").startsWith("free length"));
  const wide = [...columns.slice(0, length + 1), ...range, ...columns.slice(length + 1)];
  return { columns: tableWidth(wide) <= width ? wide : columns, shared, key };
}

/** From which free length to which every limit holds; none where the load leaves no choice. */
function rangeColumns(designs: readonly Design[], units: Units): Column[] {
  if (designs.every((design) => freeLengthRangeNumbers(design, units) === null)) return [];
  return (["min", "max"] as const).map((end) => ({
    head: [end === "min" ? "from" : "to", "length", units.length],
    cells: columnNumbers(
      designs.map(({ freeLengthRange }) => freeLengthRange?.[end] ?? null),
      "length",
      units,
    ),
    align: "right",
  }));
}

/** "Every design: material astm-a228, ends squared." or nothing. */
export function sharedWords(shared: RankedTable["shared"]): string {
  return shared.length === 0 ? "" : `Every design: ${shared.map(([label, value]) => `${label} ${value}`).join(", ")}.`;
}

/** Heads and rows as lines of text, numbers to the right. */
export function tableLines(columns: readonly Column[]): [heads: string[], rows: string[]] {
  const height = Math.max(...columns.map(({ head }) => head.length));
  const widths = columns.map(columnWidth);
  const line = (cell: (column: Column) => string) =>
    columns
      .map((column, i) => {
        const width = widths[i] as number;
        return column.align === "right" ? cell(column).padStart(width) : cell(column).padEnd(width);
      })
      .join("  ")
      .trimEnd();
  const heads = Array.from({ length: height }, (_, i) => line(({ head }) => head[i - height + head.length] ?? ""));
  const rows = Array.from({ length: columns[0]?.cells.length ?? 0 }, (_, i) => line(({ cells }) => cells[i] ?? ""));
  return [heads, rows];
}

function figureColumn(name: FigureName, designs: readonly Design[], { brief }: SweepResult): Column {
  const { label, dimension, unit } = figureWordsIn(name, brief);
  const cells = columnNumbers(
    designs.map((design) => design[name]),
    dimension,
    brief.units,
  );
  const short = label === figureWords[name].label ? SHORT[name] : undefined;
  return { head: [...(short ?? ["", label]), unit], cells, align: "right" };
}

function textColumn(label: string, designs: readonly Design[], read: (design: Design) => string): Column {
  return { head: ["", label, ""], cells: designs.map((design) => oneLine(read(design))), align: "left" };
}

function isLettered({ align, cells }: Column): boolean {
  return align === "left" && cells.some((cell) => cell.length > 2);
}

/** a, b, … z, aa, ab, … in the order in which the names come. */
function lettered(column: Column): { readonly column: Column; readonly key: string } {
  const letter = (i: number): string => (i < 26 ? "" : letter(Math.floor(i / 26) - 1)) + String.fromCharCode(97 + (i % 26));
  const letters = new Map([...new Set(column.cells)].map((name, i) => [name, letter(i)]));
  const label = column.head[1] as string;
  return {
    column: { ...column, head: ["", label.slice(0, 3), ""], cells: column.cells.map((name) => letters.get(name) as string) },
    key: `${upperFirst(label)}: ${[...letters].map(([name, short]) => `${short} ${name}`).join(", ")}.`,
  };
}

function columnWidth({ head, cells }: Column): number {
  return greatestOf([...head, ...cells].map(({ length }) => length));
}

function tableWidth(columns: readonly Column[]): number {
  return columns.reduce((sum, column) => sum + columnWidth(column), 2 * (columns.length - 1));
}
