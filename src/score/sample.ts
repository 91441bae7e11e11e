/**
 * An even sample of a stream of unknown length, in bounded memory and without chance: every n-th item, n doubling whenever the
 * room is full. The same stream gives the same sample.
 */
export class EvenSample<T> {
  private readonly capacity: number;
  private kept: T[] = [];
  private every = 1;
  private seen = 0;

  constructor(capacity: number) {
    this.capacity = capacity;
  }

  offer(make: () => T): void {
    if (this.seen++ % this.every !== 0) return;
    if (this.kept.length === this.capacity) {
      this.kept = this.kept.filter((_, i) => i % 2 === 0);
      this.every *= 2;
      if ((this.seen - 1) % this.every !== 0) return;
    }
    this.kept.push(make());
  }

  get items(): readonly T[] {
    return this.kept;
  }
}
