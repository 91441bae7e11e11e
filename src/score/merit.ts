import type { MeritName } from "../model.ts";

/** The figures of a feasible spring that merits and ties read, SI. */
export interface Figures {
  readonly mass: number;
  readonly outsideDiameter: number;
  readonly relativeCost: number;
  readonly freeLength: number;
  readonly solidSafety: number;
  readonly wireDiameter: number;
  readonly totalTurns: number;
  readonly meanDiameter: number;
  /** Places in the brief's lists. */
  readonly materialOrder: number;
  readonly endsOrder: number;
}

/** Each merit as a number of which less is better: all are sought small but the safety at solid. */
export const MERITS: Readonly<Record<MeritName, (figures: Pick<Figures, MeritName>) => number>> = {
  mass: ({ mass }) => mass,
  outsideDiameter: ({ outsideDiameter }) => outsideDiameter,
  relativeCost: ({ relativeCost }) => relativeCost,
  freeLength: ({ freeLength }) => freeLength,
  solidSafety: ({ solidSafety }) => -solidSafety,
};

/**
 * The numbers by which feasible springs are put in order, most important first, less is better in each: the merits asked, then
 * mass, wire diameter, total turns, and the order of the brief's lists; the mean diameter at last, so that no two are equal.
 *
 * @param figures  of one feasible spring
 * @param rank     the merits asked, in order
 */
export function orderKeys(figures: Figures, rank: readonly MeritName[]): number[] {
  return [
    ...rank.map((name) => MERITS[name](figures)),
    figures.mass,
    figures.wireDiameter,
    figures.totalTurns,
    figures.materialOrder,
    figures.endsOrder,
    figures.meanDiameter,
  ];
}

/** Below zero where `a` stands before `b`. */
export function compareKeys(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    const difference = (a[i] as number) - (b[i] as number);
    if (difference !== 0) return difference;
  }
  return 0;
}
