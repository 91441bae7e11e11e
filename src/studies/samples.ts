import { randomNormal } from "d3-random";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { mersenne } from "pure-rand/generator/mersenne";
import type { Candidate } from "../constrain/candidate/candidate.ts";
import { dimensionTolerances } from "../constrain/candidate/tolerances.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import { type Limit, limitsFor } from "../constrain/limits/limits.ts";
import type { LoadWindow } from "../constrain/requirements/load.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, DesignPoint, LimitName, Load, Scatter, ScatterTolerances } from "../model.ts";
import { ProblemError } from "../problem.ts";

/** What varies, in the order in which a drawn spring takes its deviates. */
export const VARYING = [
  "wireDiameter",
  "coilDiameter",
  "turns",
  "freeLength",
  "modulus",
] as const satisfies readonly (keyof ScatterTolerances)[];

/**
 * Standard deviations in a tolerance (common practice, no source); what lies beyond is drawn again, as a maker sorts it out.
 */
const SIGMAS = 3;

/**
 * Deviations of drawn springs as shares of their tolerances, one after the other for each spring.
 *
 * Numbers are of the Mersenne Twister MT19937 (Matsumoto and Nishimura, 1998), as `pure-rand` has it; normal ones are made of them
 * by Marsaglia's polar method, as `d3-random` has it. Fewer draws of one seed are the first of more.
 *
 * @param scatter  how many springs, by what shape and seed
 * @returns between -1 and 1; as many for each spring as there are things that vary
 */
export function unitDeviates({ draws, shape, seed }: Pick<Scatter, "draws" | "shape" | "seed">): Float64Array {
  const generator = mersenne(seed);
  const uniform = () => uniformFloat64(generator);
  const normal = randomNormal.source(uniform)(0, 1 / SIGMAS);
  const draw = shape === "normal" ? () => within(normal) : () => 2 * uniform() - 1;
  return Float64Array.from({ length: draws * VARYING.length }, draw);
}

/** The next number that lies between -1 and 1. */
function within(next: () => number): number {
  for (;;) {
    const deviate = next();
    if (Math.abs(deviate) <= 1) return deviate;
  }
}

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

/**
 * Rules by which a design is chosen, and the combined figure of what scatter works out from dimensions: no made spring breaks them.
 */
const RULES_OF_DESIGN: readonly LimitName[] = ["turns", "index", "loadTolerance"];

/** The limits that a drawn spring is held to, in the order in which it falls. */
export function acceptanceLimits({ load }: Brief, requirements: Requirements): Limit[] {
  const limits = limitsFor(requirements).filter(({ name }) => !RULES_OF_DESIGN.includes(name));
  return hasRateWindow(load) ? limits : limits.filter(({ name }) => name !== "rate");
}

/** A rate that only follows from forces is held by their windows, and one that is asked exactly holds no made spring. */
function hasRateWindow(load: Load): boolean {
  return "rate" in load && load.rate.min !== load.rate.max;
}

/** The window of a load point; undefined where its force is asked exactly, or not at all. */
export function windowAt({ name, length }: DesignPoint, { loadWindows }: Requirements): LoadWindow | undefined {
  return loadWindows.find((window) => window.name === name && ("deflection" in window || window.length === length));
}

/** Below zero where a force lies below a window, above zero where it lies above; with the slack that every limit has. */
export function sideOf(force: number, { min, max }: LoadWindow): -1 | 0 | 1 {
  if (force < min * (1 + PASSES)) return -1;
  return force > max * (1 - PASSES) ? 1 : 0;
}

/** The first limit that a drawn spring breaks; undefined where it meets all. */
export function firstViolated(limits: readonly Limit[], candidate: Candidate): LimitName | undefined {
  return limits.find((limit) => !limit.passes(candidate))?.name;
}
