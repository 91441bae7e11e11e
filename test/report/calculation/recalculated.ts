import FormulaParser from "fast-formula-parser";
import { type Cell, readXlsx } from "hucre/xlsx";

/** What a cell holds. */
type Held = Pick<Cell, "value" | "formula">;

/** A workbook read back from its bytes and worked out anew, none of its stored results believed. */
export interface Recalculated {
  /** Names of cells, in the order of the file. */
  readonly names: readonly string[];
  readonly isFormula: (name: string) => boolean;
  /** The value of a named cell. */
  readonly valueOf: (name: string) => number;
  /** Every cell that holds text. */
  readonly texts: readonly Held[];
}

/**
 * Works a workbook out by an engine that is not ours.
 *
 * @param bytes    the file
 * @param changed  values put into named cells before it is worked out
 */
export async function recalculated(bytes: Uint8Array, changed: Readonly<Record<string, number>> = {}): Promise<Recalculated> {
  const { sheets, namedRanges = [] } = await readXlsx(bytes);
  const cells = new Map<string, Held>();
  for (const { name, rows, cells: own } of sheets) {
    for (const [row, values] of rows.entries()) {
      for (const [col, value] of values.entries()) cells.set(`${name}!${row},${col}`, { value });
    }
    for (const [place, cell] of own ?? []) cells.set(`${name}!${place}`, cell);
  }
  const places = new Map(
    namedRanges.map(({ name, range }) => {
      const [, sheet = "", column = "", row = ""] = /^(\w+)!\$([A-Z])\$(\d+)$/.exec(range) ?? [];
      return [name, { sheet, row: Number(row), col: column.charCodeAt(0) - 64 }];
    }),
  );
  const known = new Map<string, unknown>();
  for (const [name, value] of Object.entries(changed)) {
    const place = places.get(name);
    if (place !== undefined) known.set(keyOf(place), value);
  }

  const numbers = (values: readonly { readonly value: unknown }[]) => values.map(({ value }) => value as number);
  const parser = new FormulaParser({
    functions: { MIN: (...values) => Math.min(...numbers(values)), MAX: (...values) => Math.max(...numbers(values)) },
    onCell: valueAt,
    onRange: ({ sheet, from, to }) =>
      Array.from({ length: to.row - from.row + 1 }, (_, i) =>
        Array.from({ length: to.col - from.col + 1 }, (_, j) => valueAt({ sheet, row: from.row + i, col: from.col + j })),
      ),
    onVariable: (name) => places.get(name),
  });

  function valueAt(place: Place): unknown {
    const key = keyOf(place);
    return known.has(key) ? known.get(key) : cells.get(key)?.value;
  }

  // The parser does not bear to be called within itself; each formula only needs cells above it, and tables without formulas.
  for (const name of places.keys()) {
    const place = places.get(name) as Place;
    const formula = cells.get(keyOf(place))?.formula;
    if (formula !== undefined && !known.has(keyOf(place))) known.set(keyOf(place), parser.parse(formula, place));
  }

  const at = (name: string) => places.get(name) as Place;
  return {
    names: [...places.keys()],
    isFormula: (name) => cells.get(keyOf(at(name)))?.formula !== undefined,
    valueOf: (name) => valueAt(at(name)) as number,
    texts: [...cells.values()].filter(({ value }) => typeof value === "string"),
  };
}

interface Place {
  readonly sheet: string;
  readonly row: number;
  readonly col: number;
}

function keyOf({ sheet, row, col }: Place): string {
  return `${sheet}!${row - 1},${col - 1}`;
}
