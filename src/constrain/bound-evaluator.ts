import type { Monotonicity } from "../enumerate/domain.ts";
import type { Candidate } from "./candidate/candidate.ts";
import type { FreeLengthRange } from "./free-length-range.ts";
import { type Bound, PASSES, type Scope } from "./limits/bound.ts";
import type { Limit } from "./limits/limits.ts";
import { slotOf } from "./rejection-counts.ts";

/** Evaluates the margin of one bound of a limit for a candidate, at a position of the domain. */
export class BoundEvaluator {
  readonly monotonicity: Monotonicity;
  readonly scope: Scope;
  readonly slot: number;
  private readonly limit: Limit;
  private readonly bound: Bound;
  private readonly candidate: Candidate;
  private readonly step: number;
  private readonly lengths: FreeLengthRange;

  /**
   * @param lengths  the free lengths that the limits leave, for a bound whose best is not at the shortest
   * @param step     what positions are multiples of, m
   */
  constructor(limit: Limit, bound: Bound, candidate: Candidate, lengths: FreeLengthRange, step: number) {
    this.monotonicity = bound.monotonicity;
    this.scope = bound.scope;
    this.slot = slotOf(limit.name);
    this.limit = limit;
    this.bound = bound;
    this.candidate = candidate;
    this.step = step;
    this.lengths = lengths;
  }

  get exactMargin(): number {
    return -this.limit.relaxation;
  }

  get passMargin(): number {
    return PASSES - this.limit.relaxation;
  }

  marginAt(position: number): number {
    this.candidate.setMeanDiameter(position * this.step);
    if (this.bound.overFreeLength === "concave") this.lengths.settleForConcaveBounds();
    return this.bound.margin(this.candidate);
  }
}

/**
 * Evaluators of all bounds that a search must evaluate, in order, for a candidate.
 *
 * @param lengths  the free lengths that all limits of the search leave
 * @param step     m; 1 where positions are lengths themselves
 */
export function boundEvaluators(
  limits: readonly Limit[],
  candidate: Candidate,
  lengths: FreeLengthRange,
  step: number,
): BoundEvaluator[] {
  return limits.flatMap((limit) =>
    limit.bounds
      .filter(({ byConstruction }) => !byConstruction)
      .map((bound) => new BoundEvaluator(limit, bound, candidate, lengths, step)),
  );
}
