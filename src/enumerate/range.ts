/** How a margin behaves as the mean diameter grows. */
export type Shape = "constant" | "rises" | "falls" | "band" | "none";

/** A limit's margin at a position of the range, and the margin from which it passes. */
export interface Judge {
  readonly shape: Shape;
  readonly passes: number;
  marginAt(position: number): number;
}

/**
 * The mean diameters of one family that still pass, from `low` to `high`, both included; empty where low > high.
 * Positions are whole multiples of a step (the grid) or lengths in m (the reals); the cut is the same.
 *
 * Borders are found by bisection on the limit's own margin, so a cut keeps and rejects exactly what a visit to every position
 * would, in a number of looks that grows with the logarithm of the range.
 */
export class Range {
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

  copy(other: Range): void {
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
   * Keep what a limit passes. Over the reals a border stands where the margin is zero, so that no design is past its limit by the
   * room for rounding; that room counts only where nothing passes without it.
   *
   * @param judge  a limit with a shape other than none
   * @returns how many candidates were cut
   */
  cut(judge: Judge): number {
    if (this.empty) return 0;
    const { low, high, candidates } = this;
    this.cutAt(judge, this.whole ? judge.passes : 0);
    if (!this.whole && this.empty) {
      this.set(low, high);
      this.cutAt(judge, judge.passes);
    }
    return candidates - this.candidates;
  }

  private cutAt(judge: Judge, passes: number): void {
    switch (judge.shape) {
      case "constant":
        if (judge.marginAt(this.low) < passes) this.clear();
        break;
      case "rises":
        this.cutBelow(judge, passes);
        break;
      case "falls":
        this.cutAbove(judge, passes);
        break;
      default:
        this.cutAround(judge, passes);
    }
  }

  /**
   * The position of the range where a band is highest, and its figure there; a search by thirds.
   *
   * @param figureAt  rises to one peak and falls from it, flat only at the top
   * @param enough    stop at the first position with this figure
   */
  peak(figureAt: (position: number) => number, enough: number): { readonly position: number; readonly figure: number } {
    let { low, high } = this;
    let position = low;
    let figure = figureAt(low);
    const look = (candidate: number) => {
      const found = figureAt(candidate);
      if (found > figure) [position, figure] = [candidate, found];
      return found;
    };
    look(high);
    while (figure < enough && !this.narrow(low, high)) {
      const third = this.whole ? Math.floor((high - low) / 3) : (high - low) / 3;
      if (look(low + third) < look(high - third)) low += third;
      else high -= third;
    }
    if (this.whole && figure < enough) for (let between = low + 1; between < high; between++) look(between);
    return { position, figure };
  }

  private narrow(low: number, high: number): boolean {
    return this.whole ? high - low < 3 : high - low <= 1e-13 * high;
  }

  private clear(): void {
    this.set(1, 0);
  }

  private cutBelow(judge: Judge, passes: number): void {
    if (judge.marginAt(this.low) >= passes) return;
    if (judge.marginAt(this.high) < passes) this.clear();
    else this.low = this.border(judge, passes, this.high, this.low);
  }

  private cutAbove(judge: Judge, passes: number): void {
    if (judge.marginAt(this.high) >= passes) return;
    if (judge.marginAt(this.low) < passes) this.clear();
    else this.high = this.border(judge, passes, this.low, this.high);
  }

  /** A band: climb until a position passes, then find the border on each side of it. */
  private cutAround(judge: Judge, passes: number): void {
    const lowPasses = judge.marginAt(this.low) >= passes;
    const highPasses = judge.marginAt(this.high) >= passes;
    if (lowPasses && highPasses) return;
    if (lowPasses) this.high = this.border(judge, passes, this.low, this.high);
    else if (highPasses) this.low = this.border(judge, passes, this.high, this.low);
    else {
      const top = this.peak((position) => judge.marginAt(position), passes);
      if (top.figure < passes) this.clear();
      else this.set(this.border(judge, passes, top.position, this.low), this.border(judge, passes, top.position, this.high));
    }
  }

  /** The last passing position on the way from one that passes to one that fails. */
  private border(judge: Judge, passes: number, passing: number, failing: number): number {
    for (;;) {
      const middle = this.between(passing, failing);
      if (middle === passing || middle === failing) return passing;
      if (judge.marginAt(middle) >= passes) passing = middle;
      else failing = middle;
    }
  }

  private between(a: number, b: number): number {
    return this.whole ? Math.floor((a + b) / 2) : (a + b) / 2;
  }
}
