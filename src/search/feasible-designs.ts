import { describer } from "../constrain/design.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import { resolveRequirements } from "../constrain/requirements/requirements.ts";
import type { Brief, Design, MeritName } from "../model.ts";
import { MERITS } from "../score/merit.ts";
import { createTraversal } from "./traversal.ts";

/**
 * Walk a brief and hand over every spring that fits, one after the other, each with every figure.
 *
 * It is the search of `sweep`, made once more: the search costs little beside the figures of what it finds, and nothing of it is
 * kept, so memory does not grow with what fits.
 *
 * @param brief  a resolved brief; left unchanged
 * @param take   told of each feasible spring in the order of the search, of rank 0 since nothing is ranked; what it throws ends the
 *   search. Over the reals, and where the diameter is solved, a family has one: its best by the first figure of the ranking
 * @throws ProblemError `stepTooFine`, as `sweep`
 */
export function survivors(brief: Brief, take: (design: Design) => void): void {
  const whole = feasibleDesignSearch(brief, take);
  whole.run(0, whole.slices);
}

/** The same search, run slice by slice by a caller that handles signals meanwhile. */
export interface FeasibleDesignSearch {
  readonly slices: number;
  /** Candidates counted so far. */
  readonly counted: number;
  /** Search the slices from `from` up to but not including `to`; throws as `survivors`. */
  run(from: number, to: number): void;
}

/** The search of `survivors`, not yet started. */
export function feasibleDesignSearch(brief: Brief, take: (design: Design) => void): FeasibleDesignSearch {
  const requirements = resolveRequirements(brief);
  const describe = describer(brief, requirements);
  const evaluator = new Evaluator(brief, requirements);
  const { slices, run } = createTraversal(brief, evaluator, limitsFor(requirements), {
    onFeasible: ({ choice }) => take(describe(choice)),
    objective: MERITS[brief.rank[0] as MeritName],
  });
  return {
    slices,
    run,
    get counted() {
      return evaluator.rejections.walked;
    },
  };
}
