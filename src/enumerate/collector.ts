import { border } from "./boundary.ts";
import { Range } from "./domain.ts";
import { firstViolated, type Harvest, type PruningBound } from "./prune.ts";
import { highest } from "./unimodal-maximum.ts";

/** Told how many positions are about to be looked at one by one; throws where that would be too many. */
export type Visiting = (positions: number) => void;

/** Every survivor of the grid, each handed on by its position. */
export class GridHarvest implements Harvest {
  private readonly survive: (position: number) => void;
  private readonly reject: (slot: number, candidates: number) => void;
  private readonly visiting: Visiting;

  constructor(survive: (position: number) => void, reject: (slot: number, candidates: number) => void, visiting: Visiting) {
    this.survive = survive;
    this.reject = reject;
    this.visiting = visiting;
  }

  gather({ low, high, candidates }: Range): void {
    this.visiting(candidates);
    for (let position = low; position <= high; position++) this.survive(position);
  }

  visit({ low, high, candidates }: Range, bounds: readonly PruningBound[]): void {
    this.visiting(candidates);
    for (let position = low; position <= high; position++) {
      const violated = firstViolated(bounds, position);
      if (violated) this.reject(violated.slot, 1);
      else this.survive(position);
    }
  }
}

/** The positions of each family on the grid that come nearest to a limit which they break. */
export class MissHarvest implements Harvest {
  private readonly survive: (position: number) => void;
  private readonly missed: readonly PruningBound[];
  private readonly visiting: Visiting;
  private readonly passing = new Range(true);

  /** @param missed  the bounds of the limit */
  constructor(survive: (position: number) => void, missed: readonly PruningBound[], visiting: Visiting) {
    this.survive = survive;
    this.missed = missed;
    this.visiting = visiting;
  }

  /** The neighbours of the stretch that passes the limit; where none does, the highest margin. */
  gather(range: Range): void {
    const { passing, missed } = this;
    if (missed.some(({ monotonicity }) => monotonicity === "unknown")) {
      this.visit(range, []);
      return;
    }
    passing.copy(range);
    for (const bound of missed) passing.cut(bound);
    if (passing.empty) {
      this.survive(this.nearest(range));
      return;
    }
    if (passing.low > range.low) this.survive(passing.low - 1);
    if (passing.high < range.high) this.survive(passing.high + 1);
  }

  /**
   * The highest margin. It may stay level on its way to an end, where a search for the peak turns back: both ends are looked at.
   */
  private nearest(range: Range): number {
    const margin = (position: number) => Math.min(...this.missed.map((bound) => bound.marginAt(position)));
    const { position } = range.peak(margin, Number.POSITIVE_INFINITY);
    return [range.low, range.high].reduce((best, end) => (margin(end) > margin(best) ? end : best), position);
  }

  visit(range: Range, bounds: readonly PruningBound[]): void {
    this.visiting(range.candidates);
    handOn(range, bounds, this.survive);
  }
}

/** The one position of each family on the grid at which a figure is least; one valley of it is looked for in what passes. */
export class LeastHarvest implements Harvest {
  private readonly survive: (position: number) => void;
  private readonly figureAt: (position: number) => number;
  private readonly visiting: Visiting;

  /** @param figureAt  the figure at a position: never below zero, falls to one valley and rises from it */
  constructor(survive: (position: number) => void, figureAt: (position: number) => number, visiting: Visiting) {
    this.survive = survive;
    this.figureAt = figureAt;
    this.visiting = visiting;
  }

  gather(range: Range): void {
    this.survive(range.peak((position) => -this.figureAt(position), 0).position);
  }

  /** What passes need not be one stretch, so every position of it is handed on. */
  visit(range: Range, bounds: readonly PruningBound[]): void {
    this.visiting(range.candidates);
    handOn(range, bounds, this.survive);
  }
}

/** Hands on every position of a range that passes all of some bounds. */
function handOn({ low, high }: Range, bounds: readonly PruningBound[], survive: (position: number) => void): void {
  for (let position = low; position <= high; position++) if (!firstViolated(bounds, position)) survive(position);
}

/** One position of each family that may hold any, without a look at bounds that has unknown monotonicity. */
export class AnyHarvest implements Harvest {
  private readonly survive: (position: number) => void;

  constructor(survive: (position: number) => void) {
    this.survive = survive;
  }

  gather({ low }: Range): void {
    this.survive(low);
  }

  visit({ low }: Range): void {
    this.survive(low);
  }
}

/** Looks taken over a range where the monotonicity is unknown, evenly. */
const LOOKS = 256;

/** The one best mean diameter of each family over the reals. */
export class BestHarvest implements Harvest {
  private readonly survive: (meanDiameter: number) => void;
  private readonly reject: (slot: number, candidates: number) => void;
  private readonly figureAt: (meanDiameter: number) => number;

  /** @param figureAt  the first merit figure at a mean diameter, smaller is better */
  constructor(
    survive: (meanDiameter: number) => void,
    reject: (slot: number, candidates: number) => void,
    figureAt: (meanDiameter: number) => number,
  ) {
    this.survive = survive;
    this.reject = reject;
    this.figureAt = figureAt;
  }

  gather({ low, high }: Range): void {
    this.survive(least(this.figureAt, low, high));
  }

  /** Looks along the range, refines the borders of every stretch that passes, and takes the best of all stretches. */
  visit({ low, high }: Range, bounds: readonly PruningBound[]): void {
    const at = (look: number) => (look === LOOKS ? high : low + ((high - low) * look) / LOOKS);
    const violated = Array.from({ length: LOOKS + 1 }, (_, look) => firstViolated(bounds, at(look)));
    const excess = {
      marginAt: (length: number) => Math.min(...bounds.map((bound) => bound.marginAt(length) - bound.passMargin)),
    };
    const edge = (passing: number, failing: number) => {
      const [pass, fail] = [at(passing), at(failing)];
      return border(excess, 0, pass, excess.marginAt(pass), fail, excess.marginAt(fail), false);
    };
    const bests: number[] = [];
    for (let look = 0; look <= LOOKS; look++) {
      if (violated[look] !== undefined) continue;
      const first = look;
      while (look < LOOKS && violated[look + 1] === undefined) look++;
      const from = first === 0 ? low : edge(first, first - 1);
      const to = look === LOOKS ? high : edge(look, look + 1);
      bests.push(least(this.figureAt, from, to));
    }
    const [first, ...others] = bests;
    if (first !== undefined) {
      this.survive(others.reduce((a, b) => (this.figureAt(b) < this.figureAt(a) ? b : a), first));
      return;
    }
    const furthest = Math.max(...violated.map((bound) => bounds.indexOf(bound as PruningBound)));
    this.reject((bounds[furthest] as PruningBound).slot, 1);
  }
}

/**
 * Where a figure is least between two lengths: even looks, then a golden-section search round the best of them. Both ends are
 * looked at, so a figure that only rises or falls gives its end exactly.
 */
function least(figureAt: (length: number) => number, low: number, high: number): number {
  const looks = 16;
  const at = (look: number) => (look === looks ? high : low + ((high - low) * look) / looks);
  let best = 0;
  let atBest = figureAt(low);
  for (let look = 1; look <= looks; look++) {
    const figure = figureAt(at(look));
    if (figure >= atBest) continue;
    best = look;
    atBest = figure;
  }
  const [from, to] = [at(Math.max(0, best - 1)), at(Math.min(looks, best + 1))];
  const inside = highest((length) => -figureAt(length), from, to, Number.POSITIVE_INFINITY);
  return -inside.figure < atBest ? inside.position : at(best);
}
