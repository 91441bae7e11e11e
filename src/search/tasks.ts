import type { LimitName, SweepOptions } from "../model.ts";

/**
 * A walk that a sweep needs, as plain data, so that whoever runs the sweep may share it among threads: the survey of the whole
 * space, the nearest miss of one limit among what passes all others or all earlier ones, the nearest of the families that hold
 * nothing.
 */
export type SearchTask =
  | { readonly kind: "fullSearch"; readonly options: SweepOptions }
  | { readonly kind: "nearMiss"; readonly limit: LimitName; readonly passing: "others" | "earlier" }
  | {
      readonly kind: "leastViolation";
      /** Places of the families that hold something. */
      readonly nonEmpty: readonly number[];
    };

/**
 * One who walks an errand, strip by strip and in rising order; several may share the strips of one. What they find together
 * depends neither on who walked what nor on the order in which it is absorbed.
 */
export interface TaskRunner<Found = unknown> {
  /** Strips in all: material x wire x rows of turns. */
  readonly slices: number;
  /** Candidates counted so far. */
  readonly counted: number;
  /**
   * Walk the strips from one up to but not including another.
   *
   * @throws ProblemError as the walk does
   */
  run(from: number, to: number): void;
  /** What was found so far, as plain data. */
  readonly partial: Found;
  /**
   * Take what another found who shares the errand.
   *
   * @throws ProblemError where both together have looked at more than can be
   */
  merge(found: Found): void;
}

/**
 * Pieces that a walk of strips is done in: small enough that threads end together and that a walk can be stopped, large enough that
 * what a wire has in common is worked out once for many strips.
 */
export function chunksIn(slices: number): number {
  return Math.min(slices, Math.max(64, Math.min(1024, Math.ceil(slices / 8))));
}

/** A moment while springs are drawn about designs, which nobody shares. */
export interface SamplingProgress {
  readonly kind: "sampling";
  /** Springs drawn so far, and in all. */
  readonly sampled: number;
  readonly total: number;
}

/**
 * The steps of an act that takes long: it hands out errands, each answered by a walker that has walked all of it, and says how far
 * it is with what it does itself, which needs no answer.
 */
export type TaskPlan<Result> = Generator<SearchTask | SamplingProgress, Result, TaskRunner | undefined>;
