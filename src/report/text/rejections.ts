import type { LimitName, Miss, SweepResult, Units } from "../../model.ts";
import { show } from "../../units/show.ts";
import { limitWords } from "./labels.ts";

/** What one limit took from the walk. */
export interface Bite {
  readonly limit: LimitName;
  readonly label: string;
  readonly count: number;
  /** Share of all candidates walked. */
  readonly fraction: number;
}

/**
 * The rejections of a sweep, the limit that bites most first.
 *
 * @param result  a finished sweep, or the counts of one
 * @returns one row for each limit that rejected something; equal counts stay in the order in which candidates fall
 */
export function bites({ rejected, walked }: Pick<SweepResult, "rejected" | "walked">): Bite[] {
  return (Object.keys(limitWords) as LimitName[])
    .map((limit) => ({ limit, label: limitWords[limit].label, count: rejected[limit] ?? 0 }))
    .filter(({ count }) => count > 0)
    .sort((a, b) => b.count - a.count)
    .map((bite) => ({ ...bite, fraction: bite.count / walked }));
}

/** `48,210`: a count as pages and tables print it. */
export function countWords(count: number): string {
  return String(count).replace(/\B(?=(\d{3})+$)/g, ",");
}

/** A share of a count in per cent; `< 0.1 %` rather than a nought that is not one. */
export function percentText(fraction: number): string {
  const percent = 100 * fraction;
  if (percent > 0 && percent < 0.1) return "< 0.1 %";
  if (percent < 100 && percent > 99.9) return "> 99.9 %";
  return `${percent.toFixed(1)} %`;
}

/**
 * How many candidates a sweep walked and how many fit, in one sentence.
 *
 * @param result  a finished sweep
 */
export function walkedSentence({ walked, feasible }: Pick<SweepResult, "walked" | "feasible">): string {
  const percent = walked > 0 && feasible > 0 ? ` (${percentText(feasible / walked)})` : "";
  const verb = feasible === 1 ? "fits" : "fit";
  return `${countWords(walked)} candidates walked, ${feasible === 0 ? "none" : countWords(feasible)} ${verb}${percent}.`;
}

/**
 * What a near miss would need, and what else it breaks.
 *
 * @param miss   the candidate nearest to a limit
 * @param units  the reader's units
 * @param name   how a limit is called: its label on a page, its key where people type
 * @returns such as "needs 68 mm (limit 60 mm), nothing else broken"
 */
export function missWords(miss: Miss, units: Units, name: (limit: LimitName) => string): string {
  const { dimension } = miss;
  const others = miss.breaks.filter((limit) => limit !== miss.limit).map(name);
  const rest = others.length === 0 ? "nothing else broken" : `also breaks ${others.join(", ")}`;
  // Digits enough that a near miss does not print as none.
  const digits =
    [4, 5, 6, 8].find((n) => show(miss.needed, dimension, units, n) !== show(miss.limitValue, dimension, units, n)) ?? 10;
  return `needs ${show(miss.needed, dimension, units, digits)} (limit ${show(miss.limitValue, dimension, units, digits)}), ${rest}`;
}
