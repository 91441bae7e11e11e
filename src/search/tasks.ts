import type { LimitName, SweepOptions } from "../model.ts";

/**
 * A search task as plain data, so that threads can share it: the full search of the space; the near miss of one limit, among
 * candidates that pass all other limits or all earlier ones; the least violation of the families without a feasible design.
 */
export type SearchTask =
  | { readonly kind: "fullSearch"; readonly options: SweepOptions }
  | { readonly kind: "nearMiss"; readonly limit: LimitName; readonly passing: "others" | "earlier" }
  | {
      readonly kind: "leastViolation";
      /** Indices of the families with a feasible design. */
      readonly nonEmpty: readonly number[];
    };

/**
 * Runs one search task, slice by slice in ascending order. Several runners may split the slices of a task; the merged result does
 * not depend on the split or on the order of merging.
 */
export interface TaskRunner<Found = unknown> {
  /** Number of slices: material x wire x rows of turns. */
  readonly slices: number;
  /** Candidates counted so far. */
  readonly counted: number;
  /**
   * Search the slices from `from` up to but not including `to`.
   *
   * @throws ProblemError as the traversal does
   */
  run(from: number, to: number): void;
  /** The partial result so far, as plain data. */
  readonly partial: Found;
  /**
   * Merge the partial result of another runner of the same task.
   *
   * @throws ProblemError where both together have visited too many positions
   */
  merge(found: Found): void;
}

/**
 * The number of chunks for a number of slices. Chunks are small, so that threads end together and a search can be stopped, and
 * large enough that what depends on the wire alone is computed once for many slices.
 */
export function chunksIn(slices: number): number {
  return Math.min(slices, Math.max(64, Math.min(1024, Math.ceil(slices / 8))));
}

/** Progress of the tolerance Monte Carlo, which one thread runs alone. */
export interface SamplingProgress {
  readonly kind: "sampling";
  /** Springs sampled so far, and in all. */
  readonly sampled: number;
  readonly total: number;
}

/** The plan of a long study. It yields search tasks, each answered by a runner that has completed the task, and reports the progress of
 * its own sampling, which needs no answer.
 */
export type TaskPlan<Result> = Generator<SearchTask | SamplingProgress, Result, TaskRunner | undefined>;
