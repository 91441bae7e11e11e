import type { Brief, LimitName, Material, Wire, WireFunnel } from "../model.ts";
import { LIMIT_ORDER } from "./limits/limits.ts";

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

/** What one material and wire added to a tally, as plain data. */
export interface WireCounts {
  /** The material's place in the brief's list. */
  readonly order: number;
  readonly wire: Wire;
  readonly counts: Float64Array;
  readonly feasible: number;
}

interface WireTally {
  readonly order: number;
  readonly wire: Wire;
  readonly tally: Tally;
}

/** What each material and wire of a walk added to its tally, told from one to the next. */
export class WireTallies {
  private readonly brief: Brief;
  private readonly found = new Map<string, WireTally>();
  private before = new Tally();
  private current: Tally | null = null;

  constructor(brief: Brief) {
    this.brief = brief;
  }

  /** The walk takes a material and wire, and its tally holds all that came before. */
  enter(order: number, wire: Wire, tally: Tally): void {
    this.close(tally);
    this.current = this.tallyOf(order, wire);
  }

  /** What was told so far, for others who walk other parts to absorb. */
  kept(tally: Tally): readonly WireCounts[] {
    this.close(tally);
    return [...this.found.values()].map(({ order, wire, tally: { counts, feasible } }) => ({ order, wire, counts, feasible }));
  }

  /** Take what another part of the walk was told, before the tally takes what that counted. */
  absorb(kept: readonly WireCounts[], tally: Tally): void {
    this.close(tally);
    for (const { order, wire, counts, feasible } of kept) this.tallyOf(order, wire).add(counts, feasible);
  }

  /** A row for each material and wire once the walk is over, in its order. */
  finish(tally: Tally): readonly WireFunnel[] {
    this.close(tally);
    const inOrder = [...this.found.values()].sort((a, b) => a.order - b.order || a.wire.diameter - b.wire.diameter);
    return inOrder.map(({ order, wire, tally: { walked, rejected, feasible } }) => ({
      material: (this.brief.sweep.materials[order] as Material).name,
      series: wire.series,
      wire: wire.label,
      wireDiameter: wire.diameter,
      walked,
      rejected,
      feasible,
    }));
  }

  /** What the tally has grown by belongs to the wire that was taken last; with none, to another part of the walk. */
  private close(tally: Tally): void {
    const grown = tally.since(this.before);
    this.before = tally.copy();
    this.current?.add(grown.counts, grown.feasible);
    this.current = null;
  }

  private tallyOf(order: number, wire: Wire): Tally {
    const key = `${order} ${wire.series} ${wire.label}`;
    const known = this.found.get(key) ?? { order, wire, tally: new Tally() };
    this.found.set(key, known);
    return known.tally;
  }
}
