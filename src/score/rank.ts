import { compareKeys } from "./merit.ts";

/** A feasible spring worth keeping: its place in the order, and what singles it out. */
export interface Ranked<T> {
  readonly keys: readonly number[];
  readonly item: T;
}

/**
 * The best of a stream, in bounded memory: candidates are collected and cut back to the best whenever twice as many have come.
 * Order and ties are those of `orderKeys`; the order in which feasible springs come does not matter.
 */
export class BestOf<T> {
  private readonly capacity: number;
  private items: Ranked<T>[] = [];
  /** The first key a feasible spring must not exceed to be worth a second look. */
  private worstFirstKey = Number.POSITIVE_INFINITY;

  /** @param capacity  how many to keep, at least 1 */
  constructor(capacity: number) {
    this.capacity = capacity;
  }

  /** False where a feasible spring with this first key cannot be among the best; costs one comparison. */
  mayKeep(firstKey: number): boolean {
    return firstKey <= this.worstFirstKey;
  }

  offer(ranked: Ranked<T>): void {
    this.items.push(ranked);
    if (this.items.length >= 2 * this.capacity + 64) this.trim();
  }

  /** The best, best first. */
  get best(): readonly Ranked<T>[] {
    this.trim();
    return this.items;
  }

  private trim(): void {
    this.items.sort((a, b) => compareKeys(a.keys, b.keys));
    this.items = this.items.slice(0, this.capacity);
    if (this.items.length === this.capacity) this.worstFirstKey = this.items.at(-1)?.keys[0] as number;
  }
}

/** The best feasible spring for each value of something, such as each wire. */
export class BestForEach<T> {
  private readonly bests = new Map<string, Ranked<T>>();

  offer(value: string, ranked: Ranked<T>): void {
    const known = this.bests.get(value);
    if (known === undefined || compareKeys(ranked.keys, known.keys) < 0) this.bests.set(value, ranked);
  }

  /** Each value with its best. */
  get entries(): readonly (readonly [string, Ranked<T>])[] {
    return [...this.bests];
  }

  /** One for each value, best first. */
  get best(): readonly Ranked<T>[] {
    return [...this.bests.values()].sort((a, b) => compareKeys(a.keys, b.keys));
  }
}
