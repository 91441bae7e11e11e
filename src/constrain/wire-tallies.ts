import type { Brief, Material, Wire, WireFunnel } from "../model.ts";
import { Tally } from "./tally.ts";

/** What each material and wire of a walk added to its tally, told from one to the next. */
export class WireTallies {
  private readonly brief: Brief;
  private readonly rows: WireFunnel[] = [];
  private before = new Tally();
  private current: { readonly material: Material; readonly wire: Wire } | null = null;

  constructor(brief: Brief) {
    this.brief = brief;
  }

  /** The walk takes a material and wire, and its tally holds all that came before. */
  enter(order: number, wire: Wire, tally: Tally): void {
    this.close(tally);
    this.current = { material: this.brief.sweep.materials[order] as Material, wire };
  }

  /** A row for each material and wire once the walk is over, in its order. */
  finish(tally: Tally): readonly WireFunnel[] {
    this.close(tally);
    return this.rows;
  }

  private close(tally: Tally): void {
    const { walked, rejected, feasible } = tally.since(this.before);
    this.before = tally.copy();
    if (this.current === null) return;
    const { material, wire } = this.current;
    this.rows.push({
      material: material.name,
      series: wire.series,
      wire: wire.label,
      wireDiameter: wire.diameter,
      walked,
      rejected,
      feasible,
    });
  }
}
