import type { Design, Dimension, NestedResult, Pair } from "../model.ts";
import { oneLine } from "../problem.ts";
import { unitLabel } from "../units/show.ts";
import { columnNumbers } from "./column.ts";
import { type Column, tableLines } from "./ranked-columns.ts";

/** A line for each pair, as a terminal shows it. */
export interface PairsLines {
  readonly heads: readonly string[];
  readonly rows: readonly string[];
  /** What letters in a column stand for. */
  readonly key: readonly string[];
}

/** A column of letters, and what they stand for. */
interface Lettered {
  readonly column: Column;
  readonly key: string;
}

/**
 * The ranked pairs in columns. Materials and end styles are two letters, the outer's and the inner's, where they differ among the
 * pairs and there is room; the best pair is shown in full elsewhere.
 *
 * @param result  a finished sweep of nested pairs
 * @param width   characters in a line
 */
export function pairsLines({ pairs, brief: { units } }: NestedResult, width: number): PairsLines {
  const column = (above: string, label: string, dimension: Dimension, read: (pair: Pair) => number): Column => ({
    head: [above, label, unitLabel(dimension, units)],
    cells: columnNumbers(pairs.map(read), dimension, units),
    align: "right",
  });
  const figures = [
    column("", "rank", "number", ({ rank }) => rank),
    column("outer", "wire", "length", ({ outer }) => outer.wireDiameter),
    column("inner", "wire", "length", ({ inner }) => inner.wireDiameter),
    column("outer", "turns", "number", ({ outer }) => outer.totalTurns),
    column("inner", "turns", "number", ({ inner }) => inner.totalTurns),
    column("outer", "dia", "length", ({ outer }) => outer.outsideDiameter),
    column("outer", "share", "share", ({ share }) => share),
    column("outer", "safety", "number", ({ outer }) => outer.solidSafety),
    column("inner", "safety", "number", ({ inner }) => inner.solidSafety),
    column("total", "mass", "mass", ({ mass }) => mass),
  ];
  const names = [lettered("Material", pairs, ({ material }) => material), lettered("Ends", pairs, ({ ends }) => ends)];
  let shown = names.filter((name) => name !== null);
  const lines = () => tableLines([...figures, ...shown.map((name) => name.column)]);
  while (
    shown.length > 0 &&
    Math.max(
      ...lines()
        .flat()
        .map(({ length }) => length),
    ) > width
  )
    shown = shown.slice(0, -1);
  const [heads, rows] = lines();
  return { heads, rows, key: shown.map(({ key }) => key) };
}

/** null where every spring has the same, or where letters run out. */
function lettered(label: string, pairs: readonly Pair[], read: (spring: Design) => string): Lettered | null {
  const names = [...new Set(pairs.flatMap(({ outer, inner }) => [read(outer), read(inner)]))];
  if (names.length < 2 || names.length > 26) return null;
  const letter = (name: string) => String.fromCharCode(97 + names.indexOf(name));
  const cells = pairs.map(({ outer, inner }) => `${letter(read(outer))} ${letter(read(inner))}`);
  const meanings = names.map((name) => `${letter(name)} ${oneLine(name)}`);
  return {
    column: { head: ["", label.slice(0, 3).toLowerCase(), ""], cells, align: "left" },
    key: `${label} of outer and inner: ${meanings.join(", ")}.`,
  };
}
