import type { CheckEntry, CheckResult, Units } from "../model.ts";
import { show, showNumber } from "../units/show.ts";
import { entryLabel } from "./check-words.ts";

/** One line of the table of a check. */
export interface CheckRow {
  readonly label: string;
  readonly value: string;
  readonly bound: string;
  readonly margin: string;
  readonly passes: boolean;
  readonly source: string;
}

/**
 * The entries of a check as they are read: both ends of a window on one line, with the margin of the nearer one.
 *
 * @param result  a finished check
 * @returns in the order of the entries, in the brief's units
 */
export function checkRows({ entries, brief: { units } }: CheckResult): CheckRow[] {
  const rows: CheckRow[] = [];
  for (let i = 0; i < entries.length; i++) {
    const entry = entries[i] as CheckEntry;
    const next = entries[i + 1];
    const other = next !== undefined && isOtherEnd(entry, next) ? next : undefined;
    if (other !== undefined) i++;
    rows.push(rowOf(entry, other, units));
  }
  return rows;
}

function isOtherEnd(entry: CheckEntry, next: CheckEntry): boolean {
  const same = entry.limit === next.limit && entry.point === next.point && entry.figure === next.figure;
  return (
    same && entry.dimension === next.dimension && entry.value === next.value && entry.sense === "least" && next.sense === "most"
  );
}

function rowOf(entry: CheckEntry, other: CheckEntry | undefined, units: Units): CheckRow {
  const ends = other === undefined ? [entry] : [entry, other];
  return {
    label: entryLabel(entry),
    value: Number.isNaN(entry.value) ? "none" : show(entry.value, entry.dimension, units),
    bound: other === undefined ? boundWords(entry, units) : windowWords(entry, other, units),
    margin: marginWords(Math.min(...ends.map(({ margin }) => margin))),
    passes: ends.every(({ passes }) => passes),
    source: [...new Set(ends.map(sourceWords))].join("; "),
  };
}

function boundWords({ bound, sense, dimension }: CheckEntry, units: Units): string {
  return `${sense === "most" ? "at most" : "at least"} ${show(bound, dimension, units)}`;
}

function windowWords(least: CheckEntry, most: CheckEntry, units: Units): string {
  const { dimension } = least;
  if (least.bound === most.bound) return `exactly ${show(least.bound, dimension, units)}`;
  return `${showNumber(least.bound, dimension, units)} to ${show(most.bound, dimension, units)}`;
}

function marginWords(margin: number): string {
  if (!Number.isFinite(margin)) return "none";
  if (margin === 0) return "0 %";
  const share = 100 * margin;
  // A margin that fails must not be rounded to one that holds.
  return Math.abs(share) < 0.05 ? `${share < 0 ? "-" : ""}<0.1 %` : `${share.toFixed(1)} %`;
}

function sourceWords({ source: { from, text } }: CheckEntry): string {
  switch (from) {
    case "brief":
      return "brief";
    case "material":
      return "material's data";
    default:
      return text;
  }
}
