import { readBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf, readTextBeside } from "../../src/disk/files.ts";
import type { Brief, NestedResult, SweepResult } from "../../src/model.ts";
import { type Problem, ProblemError } from "../../src/problem.ts";
import { nestedSweep } from "../../src/studies/nested.ts";
import { sweep } from "../../src/studies/sweep.ts";

export const shelf = readShelf();
export const lookup = lookupOn(shelf, readTextBeside);

/** Runs are the same every time; SEED and RUNS in the environment make a longer search of them, as `npm run test:long` does. */
export const runs = Number(process.env.RUNS ?? 20);

export function random(share = 1): { readonly seed: number; readonly numRuns: number } {
  return { seed: Number(process.env.SEED ?? 20261125), numRuns: Math.max(1, Math.round(runs * share)) };
}

/** What an act gives: its value, or the problems that it threw. Anything else that is thrown goes on, and fails the test. */
export function answer<T>(act: () => T): { readonly value: T } | { readonly problems: readonly Problem[] } {
  try {
    return { value: act() };
  } catch (error) {
    if (error instanceof ProblemError) return { problems: error.problems };
    throw error;
  }
}

export function problemsOf(act: () => unknown): readonly Problem[] {
  const given = answer(act);
  return "problems" in given ? given.problems : [];
}

/** The codes of what is wrong with a brief. */
export function codesOf(text: string): string[] {
  return problemsOf(() => sweepText(text)).map(({ code }) => code);
}

export function read(text: string): Brief {
  return readBrief(text, "reports/hostile.yaml", lookup);
}

export function sweepText(text: string): SweepResult | NestedResult {
  const brief = read(text);
  return brief.nested === undefined ? sweep(brief) : nestedSweep(brief);
}

/** Paths of a plain value at which a number stands that is not finite. */
export function notFinite(value: unknown, path = ""): string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path} ${value}`];
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => notFinite(inner, `${path}.${key}`));
}
