import { isFeasible } from "../../constrain/evaluator.ts";
import type { Brief, Choice } from "../../model.ts";

/** A spring by its names and sizes, so that it can be found again in another brief. */
export interface SpringKey {
  readonly material: string;
  readonly series: string;
  readonly wire: string;
  readonly ends: string;
  readonly totalTurns: number;
  /** m */
  readonly meanDiameter: number;
}

/** A spring of a brief by its names and sizes. */
export function springKeyOf({ material, wire, ends, totalTurns, meanDiameter }: Choice, { sweep }: Brief): SpringKey {
  return {
    material: sweep.materials[material]?.name ?? "",
    series: wire.series,
    wire: wire.label,
    ends: sweep.ends[ends]?.name ?? "",
    totalTurns,
    meanDiameter,
  };
}

const STEPS_OF_A_TURN = { quarter: 4, half: 2, whole: 1 } as const;

/**
 * A kept spring as a choice of a brief; undefined where the brief does not walk it or it breaks a limit. A sample of the feasible
 * springs may leave out a spring that fits as well as it did before. Where turns or diameter follow from the load there is no such
 * spring but those that the search finds.
 *
 * @param key    a spring of this or another brief
 * @param brief  the brief that is swept now
 */
export function choiceOfKey(key: SpringKey, brief: Brief): Choice | undefined {
  const { materials, wires, ends, turns, meanDiameter } = brief.sweep;
  if (turns === "any" || meanDiameter === "exact") return undefined;
  const material = materials.findIndex(({ name }) => name === key.material);
  const wire = wires.find(({ name }) => name === key.series)?.wires.find(({ label }) => label === key.wire);
  const style = ends.findIndex(({ name }) => name === key.ends);
  if (material < 0 || wire === undefined || style < 0) return undefined;
  if (!isWhole(key.totalTurns * STEPS_OF_A_TURN[turns]) || !isWhole(key.meanDiameter / meanDiameter.step)) return undefined;
  const choice = { material, wire, ends: style, totalTurns: key.totalTurns, meanDiameter: key.meanDiameter };
  return isFeasible(brief, choice) ? choice : undefined;
}

function isWhole(steps: number): boolean {
  return Math.abs(steps - Math.round(steps)) <= 1e-9 * Math.max(1, Math.abs(steps));
}
