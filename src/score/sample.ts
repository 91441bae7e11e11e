import { BestOf, type Ranked } from "./rank.ts";

/** An item with its family's place and its own place in the family. */
export interface Placed<T> {
  readonly family: number;
  readonly place: number;
  readonly item: T;
}

/**
 * An even sample of a stream of unknown length, in bounded memory and without chance. Items come family by family, and an item's
 * key depends on its family and its place in it alone, so however a stream is shared out, the samples of its parts give the sample
 * of the whole. In a family the keys are the places with their binary digits read backwards, of which the smallest lie evenly
 * however many come; from family to family they are turned by the golden section of their range, so that small families share
 * evenly too.
 */
export class EvenSample<T> {
  private readonly best: BestOf<Placed<T>>;
  private family = Number.NaN;
  private seen = 0;

  /** @param capacity  how many to keep, at least 1 */
  constructor(capacity: number) {
    this.best = new BestOf(capacity);
  }

  /** @param family  place of its family among all; the items of a family come one after another */
  offer(family: number, make: () => T): void {
    if (family !== this.family) {
      this.family = family;
      this.seen = 0;
    }
    const place = this.seen++;
    const key = (digitsReversed(place) + Math.imul(family, GOLDEN)) >>> 0;
    if (this.best.mayKeep(key)) this.best.offer({ keys: [key, family, place], item: { family, place, item: make() } });
  }

  /** Those that are kept, for a sample of a larger part to absorb. */
  get kept(): readonly Ranked<Placed<T>>[] {
    return this.best.best;
  }

  /** Take what the sample of another part of the stream has kept. */
  absorb(kept: readonly Ranked<Placed<T>>[]): void {
    for (const ranked of kept) this.best.offer(ranked);
  }

  /** The sample, in the order of the stream. */
  get items(): readonly T[] {
    const placed = this.kept.map(({ item }) => item);
    return placed.sort((a, b) => a.family - b.family || a.place - b.place).map(({ item }) => item);
  }
}

/** 2^32 times the golden section. */
const GOLDEN = 0x9e3779b9;

/** The 32 binary digits of a whole number read backwards, as a number; places that differ by 2^32 share one. */
function digitsReversed(place: number): number {
  let reversed = 0;
  let rest = place >>> 0;
  for (let digit = 0; digit < 32; digit++) {
    reversed = reversed * 2 + (rest & 1);
    rest >>>= 1;
  }
  return reversed;
}
