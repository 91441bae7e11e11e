import { bisector } from "d3-array";
import { compareKeys } from "./merit.ts";
import type { Ranked } from "./rank.ts";

/** A point of the front, less is better along both axes. */
export interface FrontPoint<T> {
  readonly across: number;
  readonly up: number;
  readonly ranked: Ranked<T>;
}

const { left: firstNotBelow } = bisector((point: FrontPoint<unknown>) => point.across);

/**
 * The feasible springs that no other beats in both of two figures, kept sorted while they come: rising across, strictly falling up.
 * Of equal points the one that stands earlier in the order stays. A feasible spring off the front costs a search in log(front)
 * steps.
 */
export class Front<T> {
  private readonly kept: FrontPoint<T>[] = [];

  /** True where some kept point is at least as good along both axes and better along one. */
  isDominated(across: number, up: number): boolean {
    const at = firstNotBelow(this.kept, across);
    const before = this.kept[at - 1];
    const here = this.kept[at];
    return (before !== undefined && before.up <= up) || (here !== undefined && here.across === across && here.up < up);
  }

  /** Take a feasible spring that is not dominated; what it dominates leaves. */
  offer(across: number, up: number, ranked: Ranked<T>): void {
    const at = firstNotBelow(this.kept, across);
    const here = this.kept[at];
    if (here !== undefined && here.across === across && here.up === up && compareKeys(here.ranked.keys, ranked.keys) <= 0) return;
    let end = at;
    while (end < this.kept.length && (this.kept[end] as FrontPoint<T>).up >= up) end++;
    this.kept.splice(at, end - at, { across, up, ranked });
  }

  /** The front with its figures, for a front of more feasible springs to merge. */
  get points(): readonly FrontPoint<T>[] {
    return this.kept;
  }

  /** Take the front of other feasible springs. */
  merge(points: readonly FrontPoint<T>[]): void {
    for (const { across, up, ranked } of points) if (!this.isDominated(across, up)) this.offer(across, up, ranked);
  }

  /** The front, rising across. */
  get members(): readonly Ranked<T>[] {
    return this.kept.map(({ ranked }) => ranked);
  }
}
