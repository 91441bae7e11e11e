import type { LimitName, SweepOptions } from "../model.ts";

/**
 * A walk that a sweep needs, as plain data, so that whoever runs the sweep may share it among threads: the survey of the whole
 * space, the nearest miss of one limit among what passes all others or all earlier ones, the nearest of the families that hold
 * nothing.
 */
export type Errand =
  | { readonly kind: "survey"; readonly options: SweepOptions }
  | { readonly kind: "miss"; readonly limit: LimitName; readonly passing: "others" | "earlier" }
  | {
      readonly kind: "nearestEmpty";
      /** Places of the families that hold something. */
      readonly full: readonly number[];
    };

/**
 * One who walks an errand, strip by strip and in rising order; several may share the strips of one. What they find together
 * depends neither on who walked what nor on the order in which it is absorbed.
 */
export interface Walker<Found = unknown> {
  /** Strips in all: material x wire x rows of turns. */
  readonly strips: number;
  /** Candidates counted so far. */
  readonly walked: number;
  /**
   * Walk the strips from one up to but not including another.
   *
   * @throws ProblemError as the walk does
   */
  walk(from: number, to: number): void;
  /** What was found so far, as plain data. */
  readonly found: Found;
  /**
   * Take what another found who shares the errand.
   *
   * @throws ProblemError where both together have looked at more than can be
   */
  absorb(found: Found): void;
}

/**
 * Pieces that a walk of strips is done in: small enough that threads end together and that a walk can be stopped, large enough that what
 * a wire has in common is worked out once for many strips.
 */
export function piecesIn(strips: number): number {
  return Math.min(strips, Math.max(64, Math.min(1024, Math.ceil(strips / 8))));
}

/** A moment while springs are drawn about designs, which nobody shares. */
export interface Drawing {
  readonly kind: "drawing";
  /** Springs drawn so far, and in all. */
  readonly drawn: number;
  readonly of: number;
}

/**
 * The steps of an act that takes long: it hands out errands, each answered by a walker that has walked all of it, and says how far it
 * is with what it does itself, which needs no answer.
 */
export type Steps<Result> = Generator<Errand | Drawing, Result, Walker | undefined>;
