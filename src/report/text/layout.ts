import type { Dimension, Units } from "../../model.ts";
import { inUnits } from "../../units/show.ts";

/** How a terminal shows text. */
export interface Terminal {
  /** Characters in a line. */
  readonly width: number;
  /** True where bold heads may be written. */
  readonly colour: boolean;
}
/**
 * Text broken at spaces into lines of a terminal.
 *
 * @param text    one line of text
 * @param width   characters in a line; a longer word is cut
 * @param indent  spaces before every line but the first
 * @returns at least one line, none wider than the width
 */
export function wrap(text: string, width: number, indent: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/ +/).flatMap((word) => cut(word, width - indent))) {
    if (line !== "" && line.length + 1 + word.length > width) {
      lines.push(line);
      line = " ".repeat(indent) + word;
    } else {
      line = line === "" ? word : `${line} ${word}`;
    }
  }
  return [...lines, line];
}

function cut(word: string, width: number): string[] {
  const pieces = Math.max(1, Math.ceil(word.length / width));
  return Array.from({ length: pieces }, (_, i) => word.slice(i * width, (i + 1) * width));
}

/** A sentence as the rest of another one. */
export function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

/** What becomes a sentence by its first letter. */
export function upperFirst(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/**
 * The numbers of one column, written to the same number of decimals so that they line up: four significant digits in the
 * largest, fewer where every one ends in noughts.
 *
 * @param values     SI; null and infinite values are written as a dash
 * @param dimension  what the numbers measure
 * @param units      the reader's units
 * @returns one text for each value, without unit
 */
export function columnNumbers(values: readonly (number | null)[], dimension: Dimension, units: Units): string[] {
  const shown = values.map((value) => (value === null || !Number.isFinite(value) ? null : inUnits(value, dimension, units)));
  const largest = greatestOf(shown.map((value) => Math.abs(value ?? 0)));
  const whole = largest > 0 ? Math.floor(Math.log10(largest)) + 1 : 1;
  const most = Math.min(8, Math.max(0, 4 - whole));
  const texts = shown.map((value) => (value === null ? "–" : value.toFixed(most)));
  const needed = greatestOf(texts.map(decimalsNeeded));
  return texts.map((text) => (text === "–" ? text : Number(text).toFixed(needed)));
}

/** The greatest of any count of numbers, of which none is negative; a call takes no more arguments than the stack holds. */
export function greatestOf(values: readonly number[]): number {
  return values.reduce((greatest, value) => Math.max(greatest, value), 0);
}

function decimalsNeeded(text: string): number {
  return (text.split(".")[1] ?? "").replace(/0+$/, "").length;
}

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
    const violated = row.map((cell, i) => wrap(cell, widths[i] as number, 0));
    const height = Math.max(...violated.map(({ length }) => length));
    return Array.from({ length: height }, (_, line) =>
      columns
        .map(({ align }, i) => {
          const text = violated[i]?.[line] ?? "";
          return align === "right" ? text.padStart(widths[i] as number) : text.padEnd(widths[i] as number);
        })
        .join("  ")
        .trimEnd(),
    );
  });
}
