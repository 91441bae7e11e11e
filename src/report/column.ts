import type { Dimension, Units } from "../model.ts";
import { inUnits } from "../units/show.ts";

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
