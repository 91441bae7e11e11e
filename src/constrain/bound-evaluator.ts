import type { Shape } from "../enumerate/domain.ts";
import type { Candidate } from "./candidate/candidate.ts";
import type { FreeLengthRange } from "./free-length-range.ts";
import { PASSES, type Scope, type Side } from "./limits/bound.ts";
import type { Limit } from "./limits/limits.ts";
import { slotOf } from "./rejection-counts.ts";

/** One side of a limit bound to the record it judges: what the walk cuts by. */
export class JudgedSide {
  readonly shape: Shape;
  readonly scope: Scope;
  readonly slot: number;
  private readonly limit: Limit;
  private readonly side: Side;
  private readonly candidate: Candidate;
  private readonly step: number;
  private readonly lengths: FreeLengthRange;

  /**
   * @param lengths  the free lengths that the limits leave, for a side whose best is not at the shortest
   * @param step     what positions are multiples of, m
   */
  constructor(limit: Limit, side: Side, candidate: Candidate, lengths: FreeLengthRange, step: number) {
    this.shape = side.shape;
    this.scope = side.scope;
    this.slot = slotOf(limit.name);
    this.limit = limit;
    this.side = side;
    this.candidate = candidate;
    this.step = step;
    this.lengths = lengths;
  }

  get stands(): number {
    return -this.limit.eased;
  }

  get passes(): number {
    return PASSES - this.limit.eased;
  }

  marginAt(position: number): number {
    this.candidate.place(position * this.step);
    if (this.side.overFreeLength === "concave") this.lengths.settleForBands();
    return this.side.margin(this.candidate);
  }
}

/**
 * The sides of limits that a walk must ask, in order, bound to a candidate.
 *
 * @param lengths  the free lengths that all limits of the walk leave
 * @param step     m; 1 where positions are lengths themselves
 */
export function judgedSides(
  limits: readonly Limit[],
  candidate: Candidate,
  lengths: FreeLengthRange,
  step: number,
): JudgedSide[] {
  return limits.flatMap((limit) =>
    limit.sides.filter(({ kept }) => !kept).map((side) => new JudgedSide(limit, side, candidate, lengths, step)),
  );
}
