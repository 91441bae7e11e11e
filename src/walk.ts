import { isSolved, WOUND_INDEX } from "./constrain/asks.ts";
import type { Candidate } from "./constrain/candidate.ts";
import type { Ground } from "./constrain/ground.ts";
import { judgedSides } from "./constrain/judged.ts";
import type { Limit } from "./constrain/limits.ts";
import { isSold } from "./constrain/stock.ts";
import { walkFamilies } from "./enumerate/families.ts";
import { BestHarvest, GridHarvest, LeastHarvest, MissHarvest, type Visiting } from "./enumerate/harvest.ts";
import { SolvedWalk } from "./enumerate/solved.ts";
import { type Diameters, type Harvest, Walk } from "./enumerate/walk.ts";
import type { Brief } from "./model.ts";
import { ProblemError } from "./problem.ts";

/** What a walk does with those that pass every limit. */
export interface Gathering {
  /** Told of each survivor; the record is reused, so what is to be kept must be copied. */
  readonly survive: (candidate: Candidate) => void;
  /** Over the reals, where there is no every: take the one of each family with the least of this figure. */
  readonly least: (candidate: Candidate) => number;
  /** On the grid too, take only the one of each family with the least of that figure, which has one valley. */
  readonly leastOnly?: true;
  /** On the grid, take only those of each family that come nearest to passing this limit, which is not among those cut by. */
  readonly missing?: Limit;
}

/**
 * Walk the space of a brief by the walk that fits it: D solved, on the grid, or over the reals.
 *
 * @param brief      a resolved brief
 * @param ground     where candidates are made and counted; its tally is filled
 * @param limits     the limits to cut by, in order
 * @param gathering  what becomes of survivors
 * @throws ProblemError `stepTooFine` where more diameters survive, or need a visit, than can be looked at one by one, or where
 *   the candidates are more than can be counted exactly
 */
export function walk(brief: Brief, ground: Ground, limits: readonly Limit[], gathering: Gathering): void {
  const { candidate } = ground;
  const { asks } = candidate;
  const solved = isSolved(asks);
  const step = solved ? null : stepOf(brief);
  const sides = judgedSides(limits, candidate, step ?? 1);
  const reject = (slot: number, candidates: number) => ground.reject(slot, candidates);
  const place = (position: number) => candidate.place(position * (step ?? 1));
  const survive = (position: number) => {
    place(position);
    gathering.survive(candidate);
  };
  const figureAt = (position: number) => {
    place(position);
    return gathering.least(candidate);
  };

  if (solved) {
    const solve = () => {
      candidate.placeForRate();
      return candidate.meanDiameter;
    };
    walkFamilies(brief, asks.turns, isSold, new SolvedWalk(ground, sides, solve, survive));
    return;
  }
  const visiting = countVisits();
  const gridHarvest = (size: number): Harvest => {
    const { missing, leastOnly } = gathering;
    if (missing !== undefined) return new MissHarvest(survive, judgedSides([missing], candidate, size), visiting);
    return leastOnly ? new LeastHarvest(survive, figureAt, visiting) : new GridHarvest(survive, reject, visiting);
  };
  const harvest = step === null ? new BestHarvest(survive, reject, figureAt) : gridHarvest(step);
  walkFamilies(brief, asks.turns, isSold, new Walk(ground, step === null ? REALS : grid(step), sides, harvest));
  if (!Number.isSafeInteger(ground.tally.walked)) throw beyondCounting();
}

/**
 * Mean diameters looked at one by one at most, of one wire, count of turns and end style and in a whole walk: what is cut costs
 * next to nothing however fine the step, but each survivor is ranked. More is minutes, and mostly a slip of the pen.
 */
const MOST_VISITED = { ofFamily: 1e6, inAll: 5e8 };

/** Counts visits; throws `stepTooFine`. */
function countVisits(): Visiting {
  let visited = 0;
  const fail = (got: string): never => {
    const want = "write a coarser step, or meanDiameter: exact";
    throw new ProblemError([{ code: "stepTooFine", key: "sweep.meanDiameter", got, want }]);
  };
  return (positions) => {
    visited += positions;
    if (positions > MOST_VISITED.ofFamily)
      fail(`leaves ${positions.toLocaleString("en")} diameters of one wire and turns to rank`);
    if (visited > MOST_VISITED.inAll) fail(`leaves more than ${MOST_VISITED.inAll.toLocaleString("en")} springs to rank`);
  };
}

/** The step of the grid that a brief walks, m; null over the reals. */
function stepOf({ sweep }: Brief): number | null {
  return sweep.meanDiameter === "exact" ? null : sweep.meanDiameter.step;
}

/** Past 2^53 neighbouring whole numbers are one double: neither positions nor the tally would be exact. */
function beyondCounting(): ProblemError {
  const got = "makes more candidates than can be counted exactly";
  return new ProblemError([{ code: "stepTooFine", key: "sweep.meanDiameter", got, want: "write a coarser step" }]);
}

/** Whole multiples of the step from the least index that is wound to the greatest, with slack for rounding. */
function grid(step: number): Diameters {
  return {
    whole: true,
    range: (wireDiameter) => {
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
  range: (wireDiameter) => ({ low: WOUND_INDEX.min * wireDiameter, high: WOUND_INDEX.max * wireDiameter }),
};
