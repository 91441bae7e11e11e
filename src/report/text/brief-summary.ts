import type { Brief, Clearance, Load, Quantity, Units, Window } from "../../model.ts";
import { show } from "../../units/show.ts";
import { practiceWords } from "./labels.ts";

/**
 * What a brief asks, in one sentence.
 *
 * @param brief  a resolved brief
 * @returns such as "45 N (40.5 to 49.5 N) at 62 mm, in a bore of 26 mm, by EN 13906-1."; in the brief's units, does not throw
 */
export function askedSentence(brief: Brief): string {
  const { load, envelope, units } = brief;
  const clauses = [loadClause(load, units)];
  if (envelope.bore !== undefined) clauses.push(`in a bore of ${show(envelope.bore, "length", units)}`);
  if (envelope.rod !== undefined) clauses.push(`over a rod of ${show(envelope.rod, "length", units)}`);
  if (envelope.bore !== undefined || envelope.rod !== undefined) clauses.push(clearanceClause(envelope.clearance, units));
  const windows = [
    ["outside diameter", envelope.outsideDiameter],
    ["inside diameter", envelope.insideDiameter],
    ["free length", envelope.freeLength],
    ["solid length", envelope.solidLength],
  ] as const;
  for (const [label, window] of windows) {
    if (window) clauses.push(`${label} ${windowWords(window, units)}`);
  }
  return `${clauses.join(", ")}; judged by ${practiceWords[brief.practice]}.`;
}

function loadClause(load: Load, units: Units): string {
  switch (load.kind) {
    case "forceAtDeflection":
      return `${quantityWords(load.force, "force", units)} at a deflection of ${show(load.deflection, "length", units)}`;
    case "points":
      return load.points
        .map((point) => `${quantityWords(point.force, "force", units)} at ${show(point.length, "length", units)}`)
        .join(" and ");
    case "rateAndPoint":
      return (
        `A rate of ${quantityWords(load.rate, "rate", units)} and ` +
        `${quantityWords(load.point.force, "force", units)} at ${show(load.point.length, "length", units)}`
      );
    case "rateAndLargestForce":
      return (
        `A rate of ${quantityWords(load.rate, "rate", units)} and ` +
        `a largest working force of ${show(load.largestForce, "force", units)}`
      );
  }
}

/**
 * A quantity as it is asked.
 *
 * @param quantity   SI
 * @param dimension  what it measures
 * @param units      the reader's units
 * @returns such as `45 N`, `45 N ± 4.5 N`, `40 N to 50 N`, `at least 40 N`
 */
export function quantityWords(quantity: Quantity, dimension: "force" | "rate", units: Units): string {
  const { nominal, min, max } = quantity;
  if (nominal === undefined) {
    if (min === undefined) return `at most ${show(max as number, dimension, units)}`;
    if (max === undefined) return `at least ${show(min, dimension, units)}`;
    return `${show(min, dimension, units)} to ${show(max, dimension, units)}`;
  }
  const nominalWords = show(nominal, dimension, units);
  if (max === undefined || max === nominal) return nominalWords;
  return `${nominalWords} ± ${show(max - nominal, dimension, units, 3)}`;
}

function clearanceClause(clearance: Clearance | undefined, units: Units): string {
  if (clearance === undefined) return "with no clearance asked";
  const words = "length" in clearance ? show(clearance.length, "length", units) : show(clearance.share, "share", units);
  return `with a diametral clearance of ${words}`;
}

function windowWords({ min, max }: Window, units: Units): string {
  if (min === undefined) return `at most ${show(max as number, "length", units)}`;
  if (max === undefined) return `at least ${show(min, "length", units)}`;
  return `${show(min, "length", units)} to ${show(max, "length", units)}`;
}
