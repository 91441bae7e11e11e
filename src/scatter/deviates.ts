import { randomNormal } from "d3-random";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { mersenne } from "pure-rand/generator/mersenne";
import type { Scatter, ScatterTolerances } from "../model.ts";

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
