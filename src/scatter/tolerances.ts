import type { Candidate } from "../constrain/candidate.ts";
import { dimensionTolerances } from "../constrain/tolerances.ts";
import type { Scatter, ScatterTolerances } from "../model.ts";
import { ProblemError } from "../problem.ts";

/**
 * What springs of one design are drawn within: what the brief states, else the standard of the wire and the grade.
 *
 * @param candidate  set to the design
 * @param scatter    as the brief asks it
 * @returns plus-minus, SI; null where the tables do not reach a tolerance that the brief leaves to them
 * @throws ProblemError `toleranceTooWide`, without a file, where a drawn spring might have no wire, hole, turns or length
 */
export function scatterTolerances(candidate: Candidate, scatter: Scatter): ScatterTolerances | null {
  const known = dimensionTolerances(candidate, scatter.grade);
  const wireDiameter = scatter.wireDiameter ?? known.wireDiameter;
  const coilDiameter = scatter.coilDiameter ?? known.coilDiameter;
  const freeLength = scatter.freeLength ?? known.freeLength;
  if (wireDiameter === null || coilDiameter === null || freeLength === null) return null;
  const { turns, modulus } = scatter;
  refuse("wireDiameter", wireDiameter >= candidate.wireDiameter, "wire");
  refuse("coilDiameter", coilDiameter + wireDiameter >= candidate.insideDiameter, "hole");
  refuse("turns", turns >= candidate.activeTurns, "active turns");
  refuse("freeLength", freeLength >= candidate.freeLength, "length");
  return { wireDiameter, coilDiameter, turns, freeLength, modulus };
}

function refuse(name: keyof ScatterTolerances, isTooWide: boolean, what: string): void {
  if (!isTooWide) return;
  const got = `is so wide that a spring that fits might be drawn without ${what}`;
  throw new ProblemError([
    { code: "toleranceTooWide", key: `service.scatter.${name}`, got, want: "write a tolerance that a maker would give" },
  ]);
}
