import type { Candidate } from "./candidate.ts";
import type { Limit } from "./limits.ts";
import { PASSES, type Scope, type Shape, type Side } from "./side.ts";
import { slotOf } from "./tally.ts";

/** One side of a limit bound to the record it judges: what the walk cuts by. */
export class JudgedSide {
  readonly shape: Shape;
  readonly scope: Scope;
  readonly slot: number;
  private readonly limit: Limit;
  private readonly side: Side;
  private readonly candidate: Candidate;
  private readonly step: number;

  /** @param step  what positions are multiples of, m */
  constructor(limit: Limit, side: Side, candidate: Candidate, step: number) {
    this.shape = side.shape;
    this.scope = side.scope;
    this.slot = slotOf(limit.name);
    this.limit = limit;
    this.side = side;
    this.candidate = candidate;
    this.step = step;
  }

  get stands(): number {
    return -this.limit.eased;
  }

  get passes(): number {
    return PASSES - this.limit.eased;
  }

  marginAt(position: number): number {
    this.candidate.place(position * this.step);
    return this.side.margin(this.candidate);
  }
}

/**
 * The sides of limits that a walk must ask, in order, bound to a candidate.
 *
 * @param step  m; 1 where positions are lengths themselves
 */
export function judgedSides(limits: readonly Limit[], candidate: Candidate, step: number): JudgedSide[] {
  return limits.flatMap((limit) =>
    limit.sides.filter(({ kept }) => !kept).map((side) => new JudgedSide(limit, side, candidate, step)),
  );
}
