import { boundary } from "./boundary.ts";
import { type Maximum, maximumByGoldenSection, maximumOfConcave, maximumOfWhole } from "./unimodal-maximum.ts";

/**
 * How a margin behaves as the mean diameter of a family grows, or as a free length does. A unimodal margin increases to one maximum
 * and decreases from it. A concave margin, such as straight segments of falling slope, needs fewer evaluations.
 */
export type Monotonicity = "constant" | "increasing" | "decreasing" | "unimodal" | "concave" | "unknown";

/** A limit's margin at a position of the range, the margin at which its bound stands, and the one from which it passes. */
export interface MarginBound {
  readonly monotonicity: Monotonicity;
  readonly exactMargin: number;
  readonly passMargin: number;
  marginAt(position: number): number;
}

/**
 * The mean diameters of one family that still pass, from `low` to `high`, both included; empty where low > high.
 * Positions are whole multiples of a step (the grid) or lengths in m (the reals); the cut is the same.
 *
 * Borders are found on the limit's own margin, so a cut keeps and rejects exactly what a visit to every position
 * would, in a number of looks that grows with the logarithm of the range.
 */
export class Domain {
  low = Number.NaN;
  high = Number.NaN;
  private readonly whole: boolean;

  /** @param whole  true on the grid, false over the reals */
  constructor(whole: boolean) {
    this.whole = whole;
  }

  set(low: number, high: number): void {
    this.low = low;
    this.high = high;
  }

  copy(other: Domain): void {
    this.low = other.low;
    this.high = other.high;
  }

  get empty(): boolean {
    return !(this.low <= this.high);
  }

  /** Candidates in the range: its positions on the grid; over the reals one, the best, where it is not empty. */
  get candidates(): number {
    if (this.empty) return 0;
    return this.whole ? this.high - this.low + 1 : 1;
  }

  /**
   * Keep what a limit passes. Over the reals a boundary stands where the bound does, so that no design is past its limit by the
   * room for rounding; that room counts only where nothing passes without it.
   *
   * @param bound  a limit with known monotonicity
   * @returns how many candidates were cut
   */
  prune(bound: MarginBound): number {
    if (this.empty) return 0;
    const { low, high, candidates } = this;
    this.pruneAt(bound, this.whole ? bound.passMargin : bound.exactMargin);
    if (!this.whole && this.empty) {
      this.set(low, high);
      this.pruneAt(bound, bound.passMargin);
    }
    return candidates - this.candidates;
  }

  private pruneAt(bound: MarginBound, passes: number): void {
    switch (bound.monotonicity) {
      case "constant":
        if (bound.marginAt(this.low) < passes) this.clear();
        break;
      case "increasing":
        this.pruneBelow(bound, passes);
        break;
      case "decreasing":
        this.pruneAbove(bound, passes);
        break;
      default:
        this.pruneBothEnds(bound, passes);
    }
  }

  /**
   * The position of the range where a band is highest, and its figure there: on the grid by halving towards the higher of two
   * neighbours, over the reals by golden sections, or along chords where it is concave.
   *
   * @param figureAt   rises to one peak and falls from it, flat only at the top
   * @param enough     stop at the first position with this figure
   * @param isConcave  whether it is concave too
   */
  maximum(figureAt: (position: number) => number, enough: number, isConcave = false): Maximum {
    const search = this.whole ? maximumOfWhole : isConcave ? maximumOfConcave : maximumByGoldenSection;
    return search(figureAt, this.low, this.high, enough);
  }

  private clear(): void {
    this.set(1, 0);
  }

  private pruneBelow(bound: MarginBound, passes: number): void {
    const { low, high } = this;
    const atLow = bound.marginAt(low) - passes;
    if (atLow >= 0) return;
    const atHigh = bound.marginAt(high) - passes;
    if (atHigh < 0) this.clear();
    else this.low = boundary(bound, passes, high, atHigh, low, atLow, this.whole);
  }

  private pruneAbove(bound: MarginBound, passes: number): void {
    const { low, high } = this;
    const atHigh = bound.marginAt(high) - passes;
    if (atHigh >= 0) return;
    const atLow = bound.marginAt(low) - passes;
    if (atLow < 0) this.clear();
    else this.high = boundary(bound, passes, low, atLow, high, atHigh, this.whole);
  }

  /** Unimodal: search for a position that passes, then for the boundary on each side of it. */
  private pruneBothEnds(bound: MarginBound, passes: number): void {
    const { low, high, whole } = this;
    const atLow = bound.marginAt(low) - passes;
    const atHigh = bound.marginAt(high) - passes;
    if (atLow >= 0 && atHigh >= 0) return;
    if (atLow >= 0) this.high = boundary(bound, passes, low, atLow, high, atHigh, whole);
    else if (atHigh >= 0) this.low = boundary(bound, passes, high, atHigh, low, atLow, whole);
    else {
      const { position, figure } = this.maximum((at) => bound.marginAt(at), passes, bound.monotonicity === "concave");
      const atTop = figure - passes;
      if (atTop < 0) this.clear();
      else {
        this.low = boundary(bound, passes, position, atTop, low, atLow, whole);
        this.high = boundary(bound, passes, position, atTop, high, atHigh, whole);
      }
    }
  }
}
