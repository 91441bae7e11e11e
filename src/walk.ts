import { WOUND_INDEX } from "./constrain/asks.ts";
import type { Candidate } from "./constrain/candidate.ts";
import type { Ground } from "./constrain/ground.ts";
import { judgedSides } from "./constrain/judged.ts";
import type { Limit } from "./constrain/limits.ts";
import { isSold } from "./constrain/stock.ts";
import { walkFamilies } from "./enumerate/families.ts";
import { BestHarvest, GridHarvest, MissHarvest } from "./enumerate/harvest.ts";
import { SolvedWalk } from "./enumerate/solved.ts";
import { type Diameters, Walk } from "./enumerate/walk.ts";
import type { Brief } from "./model.ts";

/** What a walk does with those that pass every limit. */
export interface Gathering {
  /** Told of each survivor; the record is reused, so what is to be kept must be copied. */
  readonly survive: (candidate: Candidate) => void;
  /** Over the reals, where there is no every: take the one of each family with the least of this figure. */
  readonly least: (candidate: Candidate) => number;
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
 */
export function walk(brief: Brief, ground: Ground, limits: readonly Limit[], gathering: Gathering): void {
  const { candidate } = ground;
  const { asks } = candidate;
  const solved = asks.pinnedRate !== null && !asks.turnsAny;
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
  const harvest =
    step === null
      ? new BestHarvest(survive, reject, figureAt)
      : gathering.missing === undefined
        ? new GridHarvest(survive, reject)
        : new MissHarvest(survive, judgedSides([gathering.missing], candidate, step));
  walkFamilies(brief, asks.turns, isSold, new Walk(ground, step === null ? REALS : grid(step), sides, harvest));
}

/** The step of the grid that a brief walks, m; null over the reals. */
function stepOf({ sweep }: Brief): number | null {
  return sweep.meanDiameter === "exact" ? null : sweep.meanDiameter.step;
}

/** Whole multiples of the step from the least index that is wound to the greatest, with slack for rounding. */
function grid(step: number): Diameters {
  return {
    whole: true,
    range: (wireDiameter) => ({
      low: Math.ceil((WOUND_INDEX.min * wireDiameter) / step - 1e-9),
      high: Math.floor((WOUND_INDEX.max * wireDiameter) / step + 1e-9),
    }),
  };
}

const REALS: Diameters = {
  whole: false,
  range: (wireDiameter) => ({ low: WOUND_INDEX.min * wireDiameter, high: WOUND_INDEX.max * wireDiameter }),
};
