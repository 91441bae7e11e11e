import { boundary } from "./boundary.ts";
import { Domain } from "./domain.ts";
import { type Collector, firstViolated, type PruningBound } from "./prune.ts";
import { maximumByGoldenSection } from "./unimodal-maximum.ts";

/** Called with the number of positions that are about to be visited one by one; throws where they are too many. */
export type Visiting = (positions: number) => void;

/** Reports every feasible position of the grid. */
export class GridCollector implements Collector {
  private readonly onFeasible: (position: number) => void;
  private readonly reject: (slot: number, candidates: number) => void;
  private readonly visiting: Visiting;

  constructor(onFeasible: (position: number) => void, reject: (slot: number, candidates: number) => void, visiting: Visiting) {
    this.onFeasible = onFeasible;
    this.reject = reject;
    this.visiting = visiting;
  }

  collect({ low, high, candidates }: Domain): void {
    this.visiting(candidates);
    for (let position = low; position <= high; position++) this.onFeasible(position);
  }

  collectVisited({ low, high, candidates }: Domain, bounds: readonly PruningBound[]): void {
    this.visiting(candidates);
    for (let position = low; position <= high; position++) {
      const violated = firstViolated(bounds, position);
      if (violated) this.reject(violated.slot, 1);
      else this.onFeasible(position);
    }
  }
}

/** The positions of each family on the grid that come nearest to a limit which they break. */
export class NearMissCollector implements Collector {
  private readonly onFeasible: (position: number) => void;
  private readonly violated: readonly PruningBound[];
  private readonly visiting: Visiting;
  private readonly passing = new Domain(true);

  /** @param violated  the bounds of the limit */
  constructor(onFeasible: (position: number) => void, violated: readonly PruningBound[], visiting: Visiting) {
    this.onFeasible = onFeasible;
    this.violated = violated;
    this.visiting = visiting;
  }

  /** The neighbours of the stretch that passes the limit; where none does, the highest margin. */
  collect(domain: Domain): void {
    const { passing, violated } = this;
    if (violated.some(({ monotonicity }) => monotonicity === "unknown")) {
      this.collectVisited(domain, []);
      return;
    }
    passing.copy(domain);
    for (const bound of violated) passing.prune(bound);
    if (passing.empty) {
      this.onFeasible(this.maximum(domain));
      return;
    }
    if (passing.low > domain.low) this.onFeasible(passing.low - 1);
    if (passing.high < domain.high) this.onFeasible(passing.high + 1);
  }

  /**
   * The highest margin. It may stay level on its way to an end, where a search for the peak turns back: both ends are looked at.
   */
  private maximum(domain: Domain): number {
    const margin = (position: number) => Math.min(...this.violated.map((bound) => bound.marginAt(position)));
    const { position } = domain.maximum(margin, Number.POSITIVE_INFINITY);
    return [domain.low, domain.high].reduce((best, end) => (margin(end) > margin(best) ? end : best), position);
  }

  collectVisited(domain: Domain, bounds: readonly PruningBound[]): void {
    this.visiting(domain.candidates);
    handOnPassing(domain, bounds, this.onFeasible);
  }
}

/** The one position of each family on the grid at which a figure is least; one valley of it is looked for in what passes. */
export class GridBestCollector implements Collector {
  private readonly onFeasible: (position: number) => void;
  private readonly figureAt: (position: number) => number;
  private readonly visiting: Visiting;

  /** @param figureAt  the figure at a position: never below zero, falls to one valley and rises from it */
  constructor(onFeasible: (position: number) => void, figureAt: (position: number) => number, visiting: Visiting) {
    this.onFeasible = onFeasible;
    this.figureAt = figureAt;
    this.visiting = visiting;
  }

  collect(domain: Domain): void {
    this.onFeasible(domain.maximum((position) => -this.figureAt(position), 0).position);
  }

  /** What passes need not be one stretch, so every position of it is handed on. */
  collectVisited(domain: Domain, bounds: readonly PruningBound[]): void {
    this.visiting(domain.candidates);
    handOnPassing(domain, bounds, this.onFeasible);
  }
}

/** Hands on every position of a range that passes all of some bounds. */
function handOnPassing({ low, high }: Domain, bounds: readonly PruningBound[], onFeasible: (position: number) => void): void {
  for (let position = low; position <= high; position++) if (!firstViolated(bounds, position)) onFeasible(position);
}

/** Reports one position of each family that may contain a feasible design; bounds of unknown monotonicity are not evaluated. */
export class FirstCollector implements Collector {
  private readonly onFeasible: (position: number) => void;

  constructor(onFeasible: (position: number) => void) {
    this.onFeasible = onFeasible;
  }

  collect({ low }: Domain): void {
    this.onFeasible(low);
  }

  collectVisited({ low }: Domain): void {
    this.onFeasible(low);
  }
}

/** Looks taken over a range where the monotonicity is unknown, evenly. */
const SAMPLES = 256;

/** The one best mean diameter of each family over the reals. */
export class BestCollector implements Collector {
  private readonly onFeasible: (meanDiameter: number) => void;
  private readonly reject: (slot: number, candidates: number) => void;
  private readonly figureAt: (meanDiameter: number) => number;

  /** @param figureAt  the first merit figure at a mean diameter, smaller is better */
  constructor(
    onFeasible: (meanDiameter: number) => void,
    reject: (slot: number, candidates: number) => void,
    figureAt: (meanDiameter: number) => number,
  ) {
    this.onFeasible = onFeasible;
    this.reject = reject;
    this.figureAt = figureAt;
  }

  collect({ low, high }: Domain): void {
    this.onFeasible(least(this.figureAt, low, high));
  }

  /** Samples the domain, refines the boundaries of every interval that passes, and reports the best of all intervals. */
  collectVisited({ low, high }: Domain, bounds: readonly PruningBound[]): void {
    const at = (look: number) => (look === SAMPLES ? high : low + ((high - low) * look) / SAMPLES);
    const violated = Array.from({ length: SAMPLES + 1 }, (_, look) => firstViolated(bounds, at(look)));
    const excess = {
      marginAt: (length: number) => Math.min(...bounds.map((bound) => bound.marginAt(length) - bound.passMargin)),
    };
    const boundaryBetween = (passing: number, failing: number) => {
      const [pass, fail] = [at(passing), at(failing)];
      return boundary(excess, 0, pass, excess.marginAt(pass), fail, excess.marginAt(fail), false);
    };
    const optima: number[] = [];
    for (let look = 0; look <= SAMPLES; look++) {
      if (violated[look] !== undefined) continue;
      const first = look;
      while (look < SAMPLES && violated[look + 1] === undefined) look++;
      const from = first === 0 ? low : boundaryBetween(first, first - 1);
      const to = look === SAMPLES ? high : boundaryBetween(look, look + 1);
      optima.push(least(this.figureAt, from, to));
    }
    const [first, ...others] = optima;
    if (first !== undefined) {
      this.onFeasible(others.reduce((a, b) => (this.figureAt(b) < this.figureAt(a) ? b : a), first));
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
  const inside = maximumByGoldenSection((length) => -figureAt(length), from, to, Number.POSITIVE_INFINITY);
  return -inside.figure < atBest ? inside.position : at(best);
}
