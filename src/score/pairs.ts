import { bisector } from "d3-array";
import type { Choice, MeritName } from "../model.ts";
import { type Figures, MERITS } from "./merit.ts";
import { BestOf, type Ranked } from "./rank.ts";

/** A spring as the search for pairs reads it, SI. */
export interface NestingSpring extends Figures {
  readonly insideDiameter: number;
  readonly outsideDiameterAtSolid: number;
  readonly choice: Choice;
}

/** Two springs that fit in one another, and the outer's share of the load. */
export interface FittingPair {
  readonly share: number;
  readonly outer: NestingSpring;
  readonly inner: NestingSpring;
}

const sum = (outer: number, inner: number) => outer + inner;
const ofOuter = (outer: number) => outer;

/**
 * How a merit of a pair follows from those of its springs, each as a number of which less is better. All rise with either, so
 * that the best inner bounds what an outer can give.
 */
const MERIT_OF_PAIR: Readonly<Record<MeritName, (outer: number, inner: number) => number>> = {
  mass: sum,
  relativeCost: sum,
  outsideDiameter: ofOuter,
  freeLength: ofOuter,
  solidSafety: Math.max,
};

/**
 * The numbers by which pairs are put in order, less is better in each: the merits asked, then total mass, wire of the outer and
 * of the inner, turns, the order of the brief's lists, and the share, so that no two are equal.
 *
 * @param pair  springs that share one load
 * @param rank  the merits asked, in order; the free length is the same in every pair and puts none before another
 */
export function pairKeys({ share, outer, inner }: FittingPair, rank: readonly MeritName[]): number[] {
  return [
    ...rankingMerits(rank).map((name) => meritOfPair(name, outer, inner)),
    outer.mass + inner.mass,
    outer.wireDiameter,
    inner.wireDiameter,
    outer.totalTurns,
    inner.totalTurns,
    outer.materialOrder,
    inner.materialOrder,
    outer.endsOrder,
    inner.endsOrder,
    share,
  ];
}

/** The best pairs of springs, in bounded memory, while one share of the load after another is offered. */
export class BestPairs {
  /** How many pairs fit, kept or not. */
  fitting = 0;
  /** The least by which two springs of one share do not fit, m; Infinity while no share had both. */
  lacking = Number.POSITIVE_INFINITY;
  private readonly rank: readonly MeritName[];
  private readonly first: MeritName;
  private readonly widestInner: (insideDiameter: number) => number;
  private readonly bestOf: BestOf<FittingPair>;

  /**
   * @param rank         the merits asked, in order
   * @param widestInner  the largest diameter at solid, m, that an outer of an inside diameter, m, lets in
   * @param top          how many to keep
   */
  constructor(rank: readonly MeritName[], widestInner: (insideDiameter: number) => number, top: number) {
    this.rank = rank;
    this.first = rankingMerits(rank)[0] ?? "mass";
    this.widestInner = widestInner;
    this.bestOf = new BestOf(top);
  }

  /** Take all springs of both roles at one share of the load. Counting costs n log n, keeping looks only at pairs that may rank. */
  offer(share: number, outers: readonly NestingSpring[], inners: readonly NestingSpring[]): void {
    this.count(outers, inners);
    const best = inBestOrder(inners, this.first);
    const [bestInner] = best;
    if (bestInner === undefined) return;
    for (const outer of inBestOrder(outers, this.first)) {
      if (!this.mayKeep(outer, bestInner)) return;
      const widest = this.widestInner(outer.insideDiameter);
      for (const inner of best) {
        if (!this.mayKeep(outer, inner)) break;
        if (inner.outsideDiameterAtSolid > widest) continue;
        const pair = { share, outer, inner };
        this.bestOf.offer({ keys: pairKeys(pair, this.rank), item: pair });
      }
    }
  }

  /** The best, best first. */
  get best(): readonly Ranked<FittingPair>[] {
    return this.bestOf.best;
  }

  private mayKeep(outer: NestingSpring, inner: NestingSpring): boolean {
    return this.bestOf.mayKeep(meritOfPair(this.first, outer, inner));
  }

  private count(outers: readonly NestingSpring[], inners: readonly NestingSpring[]): void {
    const rising = [...inners].sort((a, b) => a.outsideDiameterAtSolid - b.outsideDiameterAtSolid);
    const [narrowest] = rising;
    if (narrowest === undefined) return;
    for (const { insideDiameter } of outers) {
      const widest = this.widestInner(insideDiameter);
      this.fitting += howManyWithin(rising, widest);
      this.lacking = Math.min(this.lacking, narrowest.outsideDiameterAtSolid - widest);
    }
  }
}

const { right: howManyWithin } = bisector((spring: NestingSpring) => spring.outsideDiameterAtSolid);

function meritOfPair(name: MeritName, outer: NestingSpring, inner: NestingSpring): number {
  return MERIT_OF_PAIR[name](MERITS[name](outer), MERITS[name](inner));
}

function rankingMerits(rank: readonly MeritName[]): readonly MeritName[] {
  return rank.filter((name) => name !== "freeLength");
}

function inBestOrder(springs: readonly NestingSpring[], merit: MeritName): NestingSpring[] {
  return [...springs].sort((a, b) => MERITS[merit](a) - MERITS[merit](b));
}
