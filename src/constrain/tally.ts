import type { LimitName } from "../model.ts";
import { LIMIT_ORDER } from "./limits.ts";

/** Every limit in the order in which a candidate falls; a slot of the tally is a place in this list. */
export const TALLY_ORDER: readonly LimitName[] = ["wire", "temperature", ...LIMIT_ORDER];

/** Counts candidates at the first limit that each breaks. walked = feasible + the sum of rejections, always. */
export class Tally {
  readonly counts = new Float64Array(TALLY_ORDER.length);
  feasible = 0;

  reject(slot: number, candidates: number): void {
    this.counts[slot] = (this.counts[slot] as number) + candidates;
  }

  /** Count what another walk of the same limits counted. */
  add(counts: Float64Array, feasible: number): void {
    for (let slot = 0; slot < counts.length; slot++) this.reject(slot, counts[slot] as number);
    this.feasible += feasible;
  }

  get walked(): number {
    return this.counts.reduce((sum, count) => sum + count, this.feasible);
  }

  /** What has been counted since another tally was copied from this one. */
  since(earlier: Tally): Tally {
    const grown = new Tally();
    this.counts.forEach((count, slot) => {
      grown.counts[slot] = count - (earlier.counts[slot] as number);
    });
    grown.feasible = this.feasible - earlier.feasible;
    return grown;
  }

  /** The counts as they stand now. */
  copy(): Tally {
    return this.since(new Tally());
  }

  /** Rejections by limit, in order, without those that rejected nothing. */
  get rejected(): Partial<Record<LimitName, number>> {
    return Object.fromEntries(TALLY_ORDER.map((name, slot) => [name, this.counts[slot]]).filter(([, count]) => count !== 0));
  }
}

/** The slot of a limit. */
export function slotOf(limit: LimitName): number {
  return TALLY_ORDER.indexOf(limit);
}
