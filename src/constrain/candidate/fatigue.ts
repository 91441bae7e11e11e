import {
  allowedUpperStress,
  fatigueSafetyGerber,
  fatigueSafetyGoodman,
  fatigueSafetyRange,
  fatigueSafetySines,
} from "../../mechanics/fatigue.ts";
import type { StressFactorName } from "../../model.ts";
import type { FatigueRequirement } from "../requirements/requirements.ts";

/** What the safety of a candidate depends on; SI. */
interface Cycled {
  readonly leastForce: number;
  readonly workingForce: number;
  readonly tensileStrength: number;
  /** Largest stress from nothing that is endured for the life asked, as a share of tensile strength. */
  readonly lifeFraction: number;
  readonly diagramLowers: readonly number[];
  readonly diagramUppers: readonly number[];
  stress(force: number, factor: StressFactorName): number;
}

/**
 * Safety of a candidate in cyclic duty.
 *
 * @param candidate  placed
 * @param ask        the line through what springs endured, for ever or for a life, or the diagram of the material's own data
 * @returns pure number; below one it does not last, below zero its least stress alone is beyond the diagram
 */
export function fatigueSafety(candidate: Cycled, ask: FatigueRequirement): number {
  const lower = candidate.stress(candidate.leastForce, ask.factor);
  const upper = candidate.stress(candidate.workingForce, ask.factor);
  if (ask.kind === "diagram") {
    const allowedUpper = allowedUpperStress(lower, candidate.diagramLowers, candidate.diagramUppers);
    return fatigueSafetyRange(lower, upper, allowedUpper);
  }
  const amplitude = (upper - lower) / 2;
  const mean = (upper + lower) / 2;
  const ultimateShear = ask.ultimateShear * candidate.tensileStrength;
  if (ask.kind === "life") {
    // From nothing to the stress endured, amplitude and mean are each half of it.
    const half = (candidate.lifeFraction * candidate.tensileStrength) / 2;
    return fatigueSafetyGoodman(amplitude, mean, half, half, ultimateShear);
  }
  if (ask.line === "sines") return fatigueSafetySines(amplitude, ask.amplitude);
  const safety = ask.line === "goodman" ? fatigueSafetyGoodman : fatigueSafetyGerber;
  return safety(amplitude, mean, ask.amplitude, ask.mean, ultimateShear);
}

/** Cycles beyond which springs have been seen to lose strength that a test to ten million did not show. */
const TESTED_LIFE = 1e7;

/** Whether more cycles are asked than fatigue data come from. */
export function isBeyondTests(cycles: number): boolean {
  return cycles > TESTED_LIFE;
}
