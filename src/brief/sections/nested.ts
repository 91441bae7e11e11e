import type { Load, Sweep } from "../../model.ts";
import type { Section } from "../section.ts";

const NEEDED = "nested springs have one rate and one free length: give two points, or a rate and one point, each with a nominal";

/** The key `nested` -> 2; undefined where it is left out or wrong. */
export function readNested(brief: Section): 2 | undefined {
  return brief.word("nested") === undefined ? undefined : 2;
}

/**
 * Notes what a load or a sweep leaves open that two nested springs must have in common.
 *
 * @param brief         the whole brief
 * @param load          undefined where it is wrong already
 * @param sweepSection  where `turns` stands
 * @param sweep         undefined where it is wrong already
 */
export function checkNested(
  brief: Section,
  load: Load | undefined,
  sweepSection: Section | undefined,
  sweep: Sweep | undefined,
): void {
  const open = load && leftOpen(load);
  if (open !== undefined) brief.problem("load", "nestedLoad", open, NEEDED);
  if (sweep?.turns === "any") {
    sweepSection?.problem(
      "turns",
      "nestedTurns",
      "any, where springs are nested",
      "their turns are counted: quarter, half or whole",
    );
  }
}

/** What keeps a load from fixing both rate and free length, in words; undefined where nothing does. */
function leftOpen(load: Load): string | undefined {
  switch (load.kind) {
    case "forceAtDeflection":
      return "a force at a deflection fixes no free length";
    case "rateAndLargestForce":
      return "a rate with a largest force fixes no free length";
    case "rateAndPoint": {
      const without = [
        ...(load.rate.nominal === undefined ? ["the rate"] : []),
        ...(load.point.force.nominal === undefined ? [`the force at ${load.point.name}`] : []),
      ];
      return without.length === 0 ? undefined : `${without.join(" and ")} is a window without a nominal`;
    }
    case "points": {
      if (load.points.length !== 2) return `${load.points.length} points leave the rate a window`;
      const without = load.points.filter(({ force }) => force.nominal === undefined).map(({ name }) => name);
      return without.length === 0 ? undefined : `the force at ${without.join(" and ")} is a window without a nominal`;
    }
  }
}
