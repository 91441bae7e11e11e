import { BestOf, type Ranked } from "./rank.ts";

/** An item with its family's place and its own place in the family. */
export interface SampleItem<T> {
  readonly family: number;
  readonly index: number;
  readonly item: T;
}

/** What a sample holds, as plain data. */
export interface SamplePartial<T> {
  readonly best: readonly Ranked<SampleItem<T>>[];
  /** The first item of each stretch, by its name. */
  readonly firsts: readonly (readonly [string, SampleItem<T>])[];
}

/**
 * An even sample of a stream of unknown length, in bounded memory and without chance. Items come family by family, and an item's
 * key depends on its family and its place in it alone, so however a stream is shared out, the samples of its parts give the sample
 * of the whole. In a family the keys are the van der Corput sequence in base 2, the index with its binary digits reversed, of which
 * the smallest lie evenly however many come; from family to family they are turned by the golden section of their range, so that
 * small families share evenly too. The first item of each stretch of families is kept before all others, so that a short stretch is
 * not lost in a long stream; where even these are too many they are sampled as evenly.
 */
export class EvenSample<T> {
  private readonly capacity: number;
  private readonly best: BestOf<SampleItem<T>>;
  private readonly firsts = new Map<string, SampleItem<T>>();
  private family = Number.NaN;
  private seen = 0;

  /** @param capacity  how many to keep, at least 1 */
  constructor(capacity: number) {
    this.capacity = capacity;
    this.best = new BestOf(capacity);
  }

  /**
   * @param family   place of its family among all; the items of a family come one after another
   * @param make     makes the item, where it may be kept
   * @param stretch  name of the stretch that begins with this item, where one may
   */
  offer(family: number, make: () => T, stretch?: string): void {
    if (family !== this.family) {
      this.family = family;
      this.seen = 0;
    }
    const index = this.seen++;
    if (stretch !== undefined) this.lead(stretch, { family, index, item: make() });
    const key = (digitsReversed(index) + Math.imul(family, GOLDEN)) >>> 0;
    if (this.best.mayKeep(key)) this.best.offer({ keys: [key, family, index], item: { family, index, item: make() } });
  }

  /** Those that are kept, for a sample of a larger part to merge. */
  get partial(): SamplePartial<T> {
    return { best: this.best.best, firsts: [...this.firsts] };
  }

  /** Take what the sample of another part of the stream has kept. */
  merge({ best, firsts }: SamplePartial<T>): void {
    for (const ranked of best) this.best.offer(ranked);
    for (const [stretch, one] of firsts) this.lead(stretch, one);
  }

  /** The sample, in the order of the stream. */
  get items(): readonly T[] {
    const firsts = evenly(inOrder([...this.firsts.values()]), this.capacity);
    const keys = new Set(firsts.map(keyOf));
    const others = this.best.best.map(({ item }) => item).filter((one) => !keys.has(keyOf(one)));
    const sample = [...firsts, ...others.slice(0, this.capacity - firsts.length)];
    return inOrder(sample).map(({ item }) => item);
  }

  private lead(stretch: string, one: SampleItem<T>): void {
    const known = this.firsts.get(stretch);
    if (known === undefined || one.family < known.family) this.firsts.set(stretch, one);
  }
}

function inOrder<T>(items: SampleItem<T>[]): SampleItem<T>[] {
  return items.sort((a, b) => a.family - b.family || a.index - b.index);
}

/** All of a list, or as many of it as there is room for. */
function evenly<T>(list: readonly T[], room: number): T[] {
  return list.filter(
    (_, i) => list.length <= room || Math.floor((i * room) / list.length) !== Math.floor(((i - 1) * room) / list.length),
  );
}

function keyOf({ family, index }: SampleItem<unknown>): string {
  return `${family} ${index}`;
}

/** 2^32 times the golden section. */
const GOLDEN = 0x9e3779b9;

/** The 32 binary digits of a whole number read backwards, as a number; places that differ by 2^32 share one. */
function digitsReversed(index: number): number {
  let reversed = 0;
  let rest = index >>> 0;
  for (let digit = 0; digit < 32; digit++) {
    reversed = reversed * 2 + (rest & 1);
    rest >>>= 1;
  }
  return reversed;
}
