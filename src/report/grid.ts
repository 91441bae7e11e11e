import { greatestOf } from "./column.ts";
import { wrap } from "./paragraph.ts";

/** A column of a terminal table whose cells may take several lines. */
export interface GridColumn {
  readonly head: string;
  readonly cells: readonly string[];
  readonly align: "left" | "right";
  /** Characters a cell may take in one line. */
  readonly most: number;
}

/**
 * Columns side by side, two spaces apart, cells broken at spaces.
 *
 * @param columns  all with as many cells; the last one takes what the others leave of the width, where its `most` allows
 * @param width    characters in a line
 * @returns the heads' line, then the lines of the rows
 */
export function gridLines(columns: readonly GridColumn[], width: number): string[] {
  const widths: number[] = [];
  for (const [i, { head, cells, most }] of columns.entries()) {
    const left = width - widths.reduce((sum, taken) => sum + taken + 2, 0);
    const longest = greatestOf([head, ...cells].map((cell) => cell.length));
    widths.push(Math.min(longest, most, i === columns.length - 1 ? left : Number.POSITIVE_INFINITY));
  }
  const rows = [
    columns.map(({ head }) => head),
    ...(columns[0]?.cells ?? []).map((_, row) => columns.map(({ cells }) => cells[row] ?? "")),
  ];
  return rows.flatMap((row) => {
    const broken = row.map((cell, i) => wrap(cell, widths[i] as number, 0));
    const height = Math.max(...broken.map(({ length }) => length));
    return Array.from({ length: height }, (_, line) =>
      columns
        .map(({ align }, i) => {
          const text = broken[i]?.[line] ?? "";
          return align === "right" ? text.padStart(widths[i] as number) : text.padEnd(widths[i] as number);
        })
        .join("  ")
        .trimEnd(),
    );
  });
}
