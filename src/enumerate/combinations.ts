import type { Brief, EndStyle, Material, Span, TurnsStep, Wire, WireSeries } from "../model.ts";

/** End styles that share a count of active turns, each with the total that makes it. */
export interface TurnsRow {
  /** NaN where turns follow from the diameter. */
  readonly activeTurns: number;
  readonly members: readonly { readonly ends: number; readonly totalTurns: number }[];
}

/** Whole multiples are found with this slack, so that 12 x 0.25 is 3 whatever the rounding. */
const SLACK = 1e-9;

const TURNS_STEP: Readonly<Record<Exclude<TurnsStep, "any">, number>> = { quarter: 0.25, half: 0.5, whole: 1 };

/**
 * Turn counts of a space: active turns in the window where total turns are whole multiples of the step.
 *
 * @param ends   the end styles
 * @param step   what totals may be; `any`: one row with all ends, its turns left to follow from the diameter
 * @param turns  window of active turns
 * @returns rows in rising active turns; styles whose dead turns give the same count share a row
 */
export function turnsRows(ends: readonly EndStyle[], step: TurnsStep, turns: Span): TurnsRow[] {
  if (step === "any") {
    return [{ activeTurns: Number.NaN, members: ends.map((_, i) => ({ ends: i, totalTurns: Number.NaN })) }];
  }
  const size = TURNS_STEP[step];
  const rows = new Map<number, { ends: number; totalTurns: number }[]>();
  ends.forEach(({ deadTurns }, i) => {
    const first = Math.ceil((turns.min + deadTurns) / size - SLACK);
    const last = Math.floor((turns.max + deadTurns) / size + SLACK);
    for (let count = first; count <= last; count++) {
      const totalTurns = count * size;
      const activeTurns = totalTurns - deadTurns;
      if (activeTurns <= 0) continue;
      const members = rows.get(activeTurns) ?? [];
      rows.set(activeTurns, [...members, { ends: i, totalTurns }]);
    }
  });
  return [...rows].sort(([a], [b]) => a - b).map(([activeTurns, members]) => ({ activeTurns, members }));
}

/**
 * The wires that a material is walked in: every diameter once, rising.
 *
 * Where several series hold a size, the first that sells it in this material stands for it; one that none sells stays in the
 * list, for the limit `wire` to count.
 *
 * @param material  the material
 * @param series    the wire series in the brief's order
 * @param isSold    whether a wire is sold in a material
 * @returns wires, rising in diameter
 */
export function wiresFor(
  material: Material,
  series: readonly WireSeries[],
  isSold: (wire: Wire, material: Material) => boolean,
): Wire[] {
  const sizes = new Map<string, Wire>();
  for (const wire of series.flatMap(({ wires }) => wires)) {
    const size = wire.diameter.toPrecision(9);
    const known = sizes.get(size);
    if (known === undefined || (!isSold(known, material) && isSold(wire, material))) sizes.set(size, wire);
  }
  return [...sizes.values()].sort((a, b) => a.diameter - b.diameter);
}

/**
 * What walks the families: told of each change of material and wire, turns, and ends, in that order. Material and ends come as
 * places in the brief's lists.
 */
export interface FamilyVisitor {
  /** Take a material and wire; false where they are refused together, with the families that fall with them. */
  enter(material: number, wire: Wire, families: number): boolean;
  turns(activeTurns: number): void;
  family(ends: number, totalTurns: number): void;
  /** All families have been told. */
  finish(): void;
}

/**
 * Every family of a brief, material x wire x turns x ends, in a fixed order and in slices. A slice is one material and wire with
 * one row of turns.
 */
export class Families {
  private readonly rows: readonly TurnsRow[];
  private readonly pairs: readonly { readonly material: number; readonly wire: Wire }[];
  /** Families of a material and wire before each row, and at last all of them. */
  private readonly before: readonly number[];
  /** The current slice, and the index of the current family. */
  slice = 0;
  index = 0;

  /**
   * @param brief   a resolved brief
   * @param turns   window of active turns
   * @param isSold  whether a wire is sold in a material
   */
  constructor({ sweep }: Brief, turns: Span, isSold: (wire: Wire, material: Material) => boolean) {
    this.rows = turnsRows(sweep.ends, sweep.turns, turns);
    this.pairs = sweep.materials.flatMap((entry, material) =>
      wiresFor(entry, sweep.wires, isSold).map((wire) => ({ material, wire })),
    );
    const before = [0];
    for (const { members } of this.rows) before.push((before.at(-1) as number) + members.length);
    this.before = before;
  }

  get slices(): number {
    return this.pairs.length * this.rows.length;
  }

  /** How many families there are. */
  get count(): number {
    return this.pairs.length * (this.before[this.rows.length] as number);
  }

  /**
   * Visit the families of some slices in order.
   *
   * @param visitor  is told of each step
   * @param from     the first slice
   * @param to       the slice after the last
   * @param skip     whether a family is left out, by its material and wire, its ends and its total turns
   */
  visit(
    visitor: FamilyVisitor,
    from: number,
    to: number,
    skip?: (pair: number, ends: number, totalTurns: number) => boolean,
  ): void {
    const { rows, pairs, before } = this;
    for (let slice = from; slice < to; ) {
      const order = Math.floor(slice / rows.length);
      const first = slice - order * rows.length;
      const last = Math.min(rows.length, first + to - slice);
      const { material, wire } = pairs[order] as (typeof pairs)[number];
      this.index = order * (before[rows.length] as number) + (before[first] as number) - 1;
      if (visitor.enter(material, wire, (before[last] as number) - (before[first] as number))) {
        for (let row = first; row < last; row++) {
          const { activeTurns, members } = rows[row] as TurnsRow;
          this.slice = slice - first + row;
          visitor.turns(activeTurns);
          for (const { ends, totalTurns } of members) {
            this.index++;
            if (skip === undefined || !skip(order, ends, totalTurns)) visitor.family(ends, totalTurns);
          }
        }
      }
      slice += last - first;
    }
    visitor.finish();
  }

  /**
   * The index of each family, for a search with another window of turns.
   *
   * @returns the index of a family by its material and wire, ends and total turns; undefined where it is none of these
   */
  indexing(): (pair: number, ends: number, totalTurns: number) => number | undefined {
    const inPair = new Map<number, Map<number, number>>();
    let perPair = 0;
    for (const { members } of this.rows) {
      for (const { ends, totalTurns } of members) {
        const ofEnds = inPair.get(ends) ?? new Map<number, number>();
        inPair.set(ends, ofEnds.set(totalTurns, perPair++));
      }
    }
    return (pair, ends, totalTurns) => {
      const offset = inPair.get(ends)?.get(totalTurns);
      return offset === undefined ? undefined : pair * perPair + offset;
    };
  }
}
