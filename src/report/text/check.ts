import type { CheckNoteName, CheckResult, Dimension, Disagreement, JudgedFigure, Units } from "../../model.ts";
import { show } from "../../units/show.ts";
import { limitWords } from "./labels.ts";

/** Figures that limits judge beside those they are named after. */
export const judgedFigureWords: Readonly<Record<JudgedFigure, string>> = {
  outsideDiameterAtSolid: "outside diameter at solid",
  stressAtGreatestLoad: "stress at greatest load",
  wireDiameter: "wire diameter of the fatigue data",
};

/** What to know of how a given spring was judged. */
export const checkNoteWords: Readonly<Record<CheckNoteName, string>> = {
  freeLengthByLoad: "No free length is given, so it is taken as the load sets it.",
  turnsFromRate: "No turns are given, so they follow from the rate.",
  notSold: "The series of this wire is not sold in this material; ask the maker whether it can be had.",
  exactLoad: "Part of the load is asked exactly, so any difference fails there; a tolerance (± 5 %) allows one.",
};

/** What an entry judges, such as "force at closed". */
export function entryLabel({ limit, point, figure }: CheckResult["entries"][number]): string {
  if (limit === "load") return `force at ${point}`;
  if (figure !== undefined) return judgedFigureWords[figure];
  return limitWords[limit].label;
}

const disagreeing: Readonly<Record<Exclude<Disagreement["figure"], "rate" | "freeLength">, readonly [string, Dimension]>> = {
  outsideDiameter: ["outside diameter", "length"],
  insideDiameter: ["inside diameter", "length"],
  activeTurns: ["active turns", "number"],
};

/**
 * Two data that cannot both hold, with the numbers that disagree.
 *
 * @param disagreement  one of the result
 * @param result        the check
 * @returns one sentence, in the brief's units
 */
export function disagreementWords(disagreement: Disagreement, result: CheckResult): string {
  const { figure, given, follows } = disagreement;
  const { units } = result.brief;
  switch (figure) {
    case "rate":
      return quotedRateWords(result);
    case "freeLength":
      return (
        `The free length, ${show(given, "length", units)}, leaves no room above the solid length, ` +
        `${show(follows, "length", units)}: there is no such spring.`
      );
    default: {
      const [label, dimension] = disagreeing[figure];
      const [stated, other] = apart(given, follows, dimension, units);
      return `The ${label} given, ${stated}, is not the ${other} that the other data give.`;
    }
  }
}

/** How the quoted rate lies to the one that wire, diameter and turns give; empty where none is quoted beside turns. */
export function quotedRateWords({ quotedRate, design, brief: { units } }: CheckResult): string {
  const digits = 3;
  if (quotedRate === null) return "";
  const { rate, difference, activeTurns } = quotedRate;
  const off = `${(100 * Math.abs(difference)).toFixed(1)} % ${difference < 0 ? "below" : "above"}`;
  return (
    `Quoted rate ${off} what wire, diameter and turns give: ${show(rate, "rate", units, digits)} against ` +
    `${show(design.rate, "rate", units, digits)}; active turns that would give it: ` +
    `${show(activeTurns, "number", units, digits)} instead of ${show(design.activeTurns, "number", units, digits)}.`
  );
}

/** Two numbers with as many digits as it takes to tell them apart. */
function apart(one: number, other: number, dimension: Dimension, units: Units): readonly [string, string] {
  for (let digits = 4; digits < 12; digits++) {
    const [a, b] = [show(one, dimension, units, digits), show(other, dimension, units, digits)];
    if (a !== b) return [a, b];
  }
  return [show(one, dimension, units, 12), show(other, dimension, units, 12)];
}

/** The last line of a check. */
export function verdictWords({ passes, entries, disagreements }: CheckResult): string {
  if (passes) return "Passes: every limit holds.";
  const failed = [...new Set(entries.filter((entry) => !entry.passes).map(entryLabel))];
  const reasons = [...failed, ...(disagreements.length === 0 ? [] : ["data that disagree"])];
  return `Fails: ${reasons.join(", ")}.`;
}
