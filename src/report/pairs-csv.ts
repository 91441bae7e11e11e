import type { Dimension, NestedResult, NestedRole, Pair, Units } from "../model.ts";
import { type CsvColumn, csvText, designColumns, headCell, shownCell } from "./csv.ts";

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
