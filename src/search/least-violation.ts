import type { Candidate } from "../constrain/candidate/candidate.ts";
import { isSold } from "../constrain/candidate/wire-properties.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import { type Relaxable, violationOf, withRelaxable } from "../constrain/relaxed.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import { Families } from "../enumerate/combinations.ts";
import type { Brief } from "../model.ts";
import type { TaskRunner } from "./tasks.ts";
import { createTraversal, type Traversal } from "./traversal.ts";

/** Slices that are searched first, spread over the space by the golden section. */
const FIRST_SLICES = 64;
/** Share of itself to which closer looks must take what a family needs for looks closer still. */
const WORTH_REFINING = 1 - 1e-3;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Finds the least violation of all families without a feasible design: the least fraction by which all their limits must be
 * relaxed.
 *
 * Families with a feasible design are skipped. The others are pruned at the least violation so far. A family that remains is
 * searched alone, with its limits fully relaxed, so its violation does not depend on the families before it.
 */
export class LeastViolationSearch implements TaskRunner<number | null> {
  private readonly evaluator: Evaluator;
  private readonly traversal: Traversal;
  private begun = false;
  private least = Number.POSITIVE_INFINITY;

  /** @param nonEmpty  indices of the families with a feasible design */
  constructor(brief: Brief, requirements: Requirements, nonEmpty: readonly number[]) {
    const judging = limitsFor(requirements).filter(
      ({ reported, bounds }) => reported && bounds.some(({ byConstruction }) => !byConstruction),
    );
    const names = judging.map(({ name }) => name);
    const open = withRelaxable(requirements, names);
    const leastIn = violationOfFamily(brief, withRelaxable(requirements, names));
    const asked = new Families(brief, requirements.turns, isSold);
    const indexOf = asked.indexing();
    const isNonEmpty = new Uint8Array(asked.count);
    for (const index of nonEmpty) isNonEmpty[index] = 1;
    const searched = new Set<number>();
    this.evaluator = new Evaluator(brief, open.requirements);
    this.traversal = createTraversal(brief, this.evaluator, open.limits, {
      firstOnly: true,
      objective: (candidate) => violationOf(open.relaxable, candidate),
      skip: (pair, ends, totalTurns) => {
        const index = indexOf(pair, ends, totalTurns);
        return index !== undefined && isNonEmpty[index] === 1;
      },
      onFeasible: (candidate, family) => {
        if (searched.has(family)) return;
        searched.add(family);
        const violation = leastIn(this.traversal.slice, candidate.endsOrder);
        if (violation <= -PASSES || violation >= this.least) return;
        this.least = violation;
        for (const limit of open.relaxable) limit.relaxation = Math.min(limit.relaxation, violation);
      },
    });
  }

  get slices(): number {
    return this.traversal.slices;
  }

  get counted(): number {
    return this.evaluator.rejections.walked;
  }

  run(from: number, to: number): void {
    if (!this.begun) this.begin();
    this.traversal.run(from, to);
  }

  /** Searches a few slices from the whole space first: a small violation among them prunes most other families at once. */
  private begin(): void {
    this.begun = true;
    const spread = Array.from({ length: FIRST_SLICES }, (_, i) => Math.floor(((i * GOLDEN) % 1) * this.slices));
    for (const slice of new Set(spread)) this.traversal.run(slice, Math.min(this.slices, slice + 1));
  }

  get partial(): number | null {
    return Number.isFinite(this.least) ? this.least : null;
  }

  merge(found: number | null): void {
    this.least = Math.min(this.least, found ?? Number.POSITIVE_INFINITY);
  }
}

/** The least violation of one family, by its slice and ends. */
function violationOfFamily(
  brief: Brief,
  { requirements, limits, relaxable }: Relaxable,
): (slice: number, ends: number) => number {
  const widest = relaxable.map(({ relaxation }) => relaxation);
  const sampled = limits.some(({ bounds }) =>
    bounds.some(({ byConstruction, monotonicity }) => !byConstruction && monotonicity === "unknown"),
  );
  let wanted = 0;
  let violation = Number.POSITIVE_INFINITY;
  const violationAt = (candidate: Candidate) => violationOf(relaxable, candidate);
  const family = createTraversal(brief, new Evaluator(brief, requirements), limits, {
    objective: violationAt,
    skip: (_pair, ends) => ends !== wanted,
    onFeasible: (candidate) => {
      violation = Math.min(violation, violationAt(candidate));
    },
  });
  return (slice, ends) => {
    wanted = ends;
    violation = Number.POSITIVE_INFINITY;
    relaxable.forEach((limit, i) => {
      limit.relaxation = widest[i] as number;
    });
    // Where a limit is looked at by samples, closer looks at what stands nearer to it may find less; the last digits creep for
    // ever.
    let before: number;
    do {
      before = violation;
      family.run(slice, slice + 1);
      for (const limit of relaxable) limit.relaxation = Math.min(limit.relaxation, violation);
    } while (sampled && violation < before * WORTH_REFINING);
    return violation;
  };
}
