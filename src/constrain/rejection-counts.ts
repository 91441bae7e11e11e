import type { Brief, LimitName, Material, Wire, WireFunnel } from "../model.ts";
import { LIMIT_ORDER } from "./limits/limits.ts";

/** Every limit in the order of the limits; a slot is an index in this list. */
export const REJECTION_ORDER: readonly LimitName[] = ["wire", "temperature", ...LIMIT_ORDER];

/** Counts each candidate at the first limit that rejects it. walked = feasible + the sum of rejections, always. */
export class RejectionCounts {
  readonly counts = new Float64Array(REJECTION_ORDER.length);
  feasible = 0;

  reject(slot: number, candidates: number): void {
    this.counts[slot] = (this.counts[slot] as number) + candidates;
  }

  /** Count what another search of the same limits counted. */
  add(counts: Float64Array, feasible: number): void {
    for (let slot = 0; slot < counts.length; slot++) this.reject(slot, counts[slot] as number);
    this.feasible += feasible;
  }

  get walked(): number {
    return this.counts.reduce((sum, count) => sum + count, this.feasible);
  }

  /** The counts since an earlier snapshot. */
  since(earlier: RejectionCounts): RejectionCounts {
    const difference = new RejectionCounts();
    this.counts.forEach((count, slot) => {
      difference.counts[slot] = count - (earlier.counts[slot] as number);
    });
    difference.feasible = this.feasible - earlier.feasible;
    return difference;
  }

  /** The counts as they stand now. */
  snapshot(): RejectionCounts {
    return this.since(new RejectionCounts());
  }

  /** Rejections by limit, in order, without those that rejected nothing. */
  get rejected(): Partial<Record<LimitName, number>> {
    return Object.fromEntries(REJECTION_ORDER.map((name, slot) => [name, this.counts[slot]]).filter(([, count]) => count !== 0));
  }
}

/** The slot of a limit. */
export function slotOf(limit: LimitName): number {
  return REJECTION_ORDER.indexOf(limit);
}

/** The counts of one material and wire, as plain data. */
export interface WireCounts {
  /** The material's place in the brief's list. */
  readonly order: number;
  readonly wire: Wire;
  readonly counts: Float64Array;
  readonly feasible: number;
}

interface WireRejectionCounts {
  readonly order: number;
  readonly wire: Wire;
  readonly rejections: RejectionCounts;
}

/** The rejection counts of a search by material and wire. */
export class RejectionCountsByWire {
  private readonly brief: Brief;
  private readonly byWire = new Map<string, WireRejectionCounts>();
  private counted = new RejectionCounts();
  private current: RejectionCounts | null = null;

  constructor(brief: Brief) {
    this.brief = brief;
  }

  /** The search starts a material and wire; its rejection counts contain all that came before. */
  enter(order: number, wire: Wire, rejections: RejectionCounts): void {
    this.close(rejections);
    this.current = this.countsOf(order, wire);
  }

  /** The counts so far, for a search of another part to merge. */
  partial(rejections: RejectionCounts): readonly WireCounts[] {
    this.close(rejections);
    return [...this.byWire.values()].map(({ order, wire, rejections: { counts, feasible } }) => ({
      order,
      wire,
      counts,
      feasible,
    }));
  }

  /** Merge the counts of another part of the search, before they are added to the total. */
  merge(partial: readonly WireCounts[], rejections: RejectionCounts): void {
    this.close(rejections);
    for (const { order, wire, counts, feasible } of partial) this.countsOf(order, wire).add(counts, feasible);
  }

  /** A row for each material and wire once the search is over, in its order. */
  finish(rejections: RejectionCounts): readonly WireFunnel[] {
    this.close(rejections);
    const inOrder = [...this.byWire.values()].sort((a, b) => a.order - b.order || a.wire.diameter - b.wire.diameter);
    return inOrder.map(({ order, wire, rejections: { walked, rejected, feasible } }) => ({
      material: (this.brief.sweep.materials[order] as Material).name,
      series: wire.series,
      wire: wire.label,
      wireDiameter: wire.diameter,
      walked,
      rejected,
      feasible,
    }));
  }

  /** The increase belongs to the wire that was started last; without one, to another part of the search. */
  private close(rejections: RejectionCounts): void {
    const difference = rejections.since(this.counted);
    this.counted = rejections.snapshot();
    this.current?.add(difference.counts, difference.feasible);
    this.current = null;
  }

  private countsOf(order: number, wire: Wire): RejectionCounts {
    const key = `${order} ${wire.series} ${wire.label}`;
    const known = this.byWire.get(key) ?? { order, wire, rejections: new RejectionCounts() };
    this.byWire.set(key, known);
    return known.rejections;
  }
}
