import { BestOf } from "./rank.ts";

/** An item with its place in the stream. */
interface Placed<T> {
  readonly place: number;
  readonly item: T;
}

/**
 * An even sample of a stream of unknown length, in bounded memory and without chance: the items whose places, their binary digits
 * read backwards, are the smallest. Such places lie evenly over the stream however long it gets, and they are as many as there is
 * room for. The first item of each stretch comes before all others, so that a short stretch is not lost in a long stream; where
 * even these are too many they are sampled as evenly. The same stream gives the same sample.
 */
export class EvenSample<T> {
  private readonly kept: BestOf<Placed<T>>;
  private seen = 0;

  /** @param capacity  how many to keep, at least 1 */
  constructor(capacity: number) {
    this.kept = new BestOf(capacity);
  }

  /** @param begins  whether a stretch begins with this item */
  offer(make: () => T, begins = false): void {
    const place = this.seen++;
    const key = begins ? digitsReversed(place) - 2 ** 32 : digitsReversed(place);
    if (this.kept.mayKeep(key)) this.kept.offer({ keys: [key], item: { place, item: make() } });
  }

  /** The sample, in the order of the stream. */
  get items(): readonly T[] {
    const placed = this.kept.best.map(({ item }) => item);
    return placed.sort((a, b) => a.place - b.place).map(({ item }) => item);
  }
}

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
