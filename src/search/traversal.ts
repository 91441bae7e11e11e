import { boundEvaluators } from "../constrain/bound-evaluator.ts";
import type { Candidate } from "../constrain/candidate/candidate.ts";
import { isSold } from "../constrain/candidate/wire-properties.ts";
import type { Evaluator } from "../constrain/evaluator.ts";
import { FreeLengthRange } from "../constrain/free-length-range.ts";
import type { Limit } from "../constrain/limits/limits.ts";
import { isSolved, WOUND_INDEX } from "../constrain/requirements/requirements.ts";
import {
  BestCollector,
  FirstCollector,
  GridBestCollector,
  GridCollector,
  NearMissCollector,
  type Visiting,
} from "../enumerate/collector.ts";
import { Families, type FamilyVisitor } from "../enumerate/combinations.ts";
import { type Collector, type Diameters, PruningSearch, SolvedSearch } from "../enumerate/prune.ts";
import type { Brief } from "../model.ts";
import { ProblemError } from "../problem.ts";

/** How a traversal treats candidates that pass every limit. */
export interface TraversalOptions {
  /** Called with each feasible candidate and the index of its family. The record is reused: copy what is kept. */
  readonly onFeasible: (candidate: Candidate, family: number) => void;
  /** Over the reals, report the one candidate of each family with the least value of this figure. */
  readonly objective: (candidate: Candidate) => number;
  /** On the grid too, report only the candidate of each family with the least objective, which has one minimum. */
  readonly bestOnly?: true;
  /**
   * Report one candidate for each combination that may contain a feasible design: the first that passes all limits of known
   * monotonicity.
   */
  readonly firstOnly?: true;
  /** Compute the figures at the reported free length, also where that is not the shortest. */
  readonly asReported?: true;
  /** True for families to skip, by their material and wire, ends and total turns. */
  readonly skip?: (pair: number, ends: number, totalTurns: number) => boolean;
  /** On the grid, report only the candidates of each family that come nearest to this limit, which does not prune. */
  readonly violatedLimit?: Limit;
}

/** A traversal of the space, slice by slice. A slice is one material and wire with one row of turns. */
export interface Traversal {
  readonly slices: number;
  /** The current slice. */
  readonly slice: number;
  /** Search the slices from `from` up to but not including `to`; throws as `traverse`. */
  run(from: number, to: number): void;
  /** Mean diameters looked at one by one so far. */
  readonly visited: number;
  /** Add the positions that other runners of the task visited; throws as `traverse`. */
  addVisited(positions: number): void;
}

/**
 * Traverse the space of a brief: the mean diameter is solved for, on the grid, or over the reals.
 *
 * @param brief      a resolved brief
 * @param evaluator  sets, evaluates and counts candidates
 * @param limits     the limits that prune, in order
 * @param options    how feasible candidates are treated
 * @throws ProblemError `stepTooFine` where more diameters survive, or need a visit, than can be looked at one by one, or where
 *   the candidates are more than can be counted exactly
 */
export function traverse(brief: Brief, evaluator: Evaluator, limits: readonly Limit[], options: TraversalOptions): void {
  const whole = createTraversal(brief, evaluator, limits, options);
  whole.run(0, whole.slices);
}

/** The same traversal, run slice by slice by the caller. */
export function createTraversal(
  brief: Brief,
  evaluator: Evaluator,
  limits: readonly Limit[],
  options: TraversalOptions,
): Traversal {
  const { requirements } = evaluator.candidate;
  const families = new Families(brief, requirements.turns, isSold);
  const visits = new VisitCounter();
  const visitor = visitorOf(brief, evaluator, limits, options, families, visits.count);
  return {
    slices: families.slices,
    get slice() {
      return families.slice;
    },
    run: (from, to) => {
      families.visit(visitor, from, to, options.skip);
      if (!Number.isSafeInteger(evaluator.rejections.walked)) throw beyondCounting();
    },
    get visited() {
      return visits.counted;
    },
    addVisited: (positions) => visits.add(positions),
  };
}

/** The visitor that evaluates each family: diameter solved, on the grid, or over the reals. */
function visitorOf(
  brief: Brief,
  evaluator: Evaluator,
  limits: readonly Limit[],
  options: TraversalOptions,
  families: Families,
  visiting: Visiting,
): FamilyVisitor {
  const { candidate } = evaluator;
  const { requirements } = candidate;
  const solved = isSolved(requirements);
  const step = solved ? null : stepOf(brief);
  const { violatedLimit } = options;
  const lengths = new FreeLengthRange(candidate, violatedLimit === undefined ? limits : [...limits, violatedLimit]);
  const bounds = boundEvaluators(limits, candidate, lengths, step ?? 1);
  const reject = (slot: number, candidates: number) => evaluator.reject(slot, candidates);
  const setPosition = (position: number) => {
    candidate.setMeanDiameter(position * (step ?? 1));
    if (options.asReported && (requirements.freeLengthAim.kind === "nominal" || lengths.hasConcaveBound)) lengths.settle();
    else if (lengths.hasConcaveBound) lengths.settleAtLeast(options.objective);
  };
  const onFeasible = (position: number) => {
    setPosition(position);
    options.onFeasible(candidate, families.index);
  };
  const figureAt = (position: number) => {
    setPosition(position);
    return options.objective(candidate);
  };

  if (solved) {
    const solve = () => {
      candidate.setMeanDiameterForRate();
      return candidate.meanDiameter;
    };
    return new SolvedSearch(evaluator, bounds, solve, onFeasible);
  }
  const collectorOf = (): Collector => {
    const { bestOnly, firstOnly } = options;
    if (firstOnly) return new FirstCollector(onFeasible);
    if (step === null) return new BestCollector(onFeasible, reject, figureAt);
    if (violatedLimit !== undefined)
      return new NearMissCollector(onFeasible, boundEvaluators([violatedLimit], candidate, lengths, step), visiting);
    return bestOnly ? new GridBestCollector(onFeasible, figureAt, visiting) : new GridCollector(onFeasible, reject, visiting);
  };
  return new PruningSearch(evaluator, step === null ? REALS : grid(step), bounds, collectorOf());
}

/**
 * Mean diameters looked at one by one at most, of one wire, count of turns and end style and in a whole search: what is cut costs
 * next to nothing however fine the step, but each feasible spring is ranked. More is minutes, and mostly a slip of the pen.
 */
const MOST_VISITED = { ofFamily: 1e6, inAll: 5e8 };

/** Counts visits; throws `stepTooFine`. */
class VisitCounter {
  counted = 0;

  readonly count: Visiting = (positions) => {
    if (positions > MOST_VISITED.ofFamily)
      throw tooFine(`leaves ${positions.toLocaleString("en")} diameters of one wire and turns to rank`);
    this.add(positions);
  };

  add(positions: number): void {
    this.counted += positions;
    if (this.counted > MOST_VISITED.inAll)
      throw tooFine(`leaves more than ${MOST_VISITED.inAll.toLocaleString("en")} springs to rank`);
  }
}

function tooFine(got: string): ProblemError {
  const want = "write a coarser step, or meanDiameter: exact";
  return new ProblemError([{ code: "stepTooFine", key: "sweep.meanDiameter", got, want }]);
}

/** The step of the grid that a brief walks, m; null over the reals. */
function stepOf({ sweep }: Brief): number | null {
  return sweep.meanDiameter === "exact" ? null : sweep.meanDiameter.step;
}

/** Past 2^53 neighbouring whole numbers are one double: neither positions nor the rejection counts would be exact. */
function beyondCounting(): ProblemError {
  const got = "makes more candidates than can be counted exactly";
  return new ProblemError([{ code: "stepTooFine", key: "sweep.meanDiameter", got, want: "write a coarser step" }]);
}

/** Whole multiples of the step from the least index that is wound to the greatest, with slack for rounding. */
function grid(step: number): Diameters {
  return {
    whole: true,
    domain: (wireDiameter) => {
      // Beside a vast step the slack alone would let in a diameter of nothing.
      const low = Math.max(1, Math.ceil((WOUND_INDEX.min * wireDiameter) / step - 1e-9));
      const high = Math.floor((WOUND_INDEX.max * wireDiameter) / step + 1e-9);
      if (Number.isSafeInteger(high)) return { low, high };
      throw beyondCounting();
    },
  };
}

const REALS: Diameters = {
  whole: false,
  domain: (wireDiameter) => ({ low: WOUND_INDEX.min * wireDiameter, high: WOUND_INDEX.max * wireDiameter }),
};
