import { Domain, type MarginBound } from "../enumerate/domain.ts";
import type { TolerancedSpring } from "../practice/choices.ts";
import type { Candidate } from "./candidate/candidate.ts";
import { longestFreeLength } from "./candidate/free-length.ts";
import { type Bound, PASSES } from "./limits/bound.ts";
import type { Limit } from "./limits/limits.ts";

/** Sections end this share short of a step of a table, so that no rounding takes their end past it. */
const SHORT_OF = 1 - 2e-9;

/**
 * The free lengths at which a candidate passes every limit and serves the load, and the one of them that is reported.
 *
 * Limits that rise or fall with the free length leave one range, found on their own margins. The load tolerance is a band between
 * two steps of the practice's tables, so it leaves a stretch, or nothing, of each section of that range.
 */
export class FreeLengthRange {
  readonly domain = new Domain(false);
  private readonly candidate: Candidate;
  private readonly monotoneBounds: readonly MarginBound[];
  private readonly concaveBounds: readonly MarginBound[];

  /**
   * @param candidate  the record; wound to a mean diameter before each question
   * @param limits     all that judge it
   */
  constructor(candidate: Candidate, limits: readonly Limit[]) {
    const bounds = limits.flatMap((limit) => limit.bounds.map((bound) => marginBoundOf(limit, bound, candidate)));
    this.candidate = candidate;
    this.monotoneBounds = bounds.filter(({ monotonicity }) => monotonicity !== "concave");
    this.concaveBounds = bounds.filter(({ monotonicity }) => monotonicity === "concave");
  }

  /** True where a limit is a band, so that the shortest free length may fail it though another passes. */
  get hasConcaveBound(): boolean {
    return this.concaveBounds.length > 0;
  }

  /**
   * Set the candidate to the free length that is reported for its mean diameter.
   *
   * @returns false where none passes; the candidate then has the shortest that is asked, or that at which a band comes nearest to
   *   passing, and `range` is empty
   */
  settle(): boolean {
    const { candidate, domain } = this;
    const shortest = this.prune();
    if (!domain.empty && this.hasConcaveBound) {
      const aim = this.aim();
      const nearest = leastOf(this.intervals(), (interval) => Math.abs(aim - within(interval, aim)));
      if (nearest === undefined) {
        this.settleForConcaveBounds();
        domain.set(1, 0);
        return false;
      }
      domain.copy(nearest);
    }
    candidate.freeLength = domain.empty ? shortest : this.rounded(this.aim());
    return !domain.empty;
  }

  /**
   * Set the candidate to the free length that passes every limit and has the least of a figure; where none passes, to that at which
   * a band comes nearest to it.
   *
   * @param figure  rises or falls with the free length; where a band gives, it may be the share by which limits must give
   */
  settleAtLeast(figure: (candidate: Candidate) => number): void {
    const { candidate, domain } = this;
    const figureAt = (length: number) => {
      candidate.freeLength = length;
      return figure(candidate);
    };
    this.prune();
    const concaveRelaxed = this.concaveBounds.some(({ exactMargin }) => exactMargin < 0);
    const intervals = domain.empty ? [] : this.intervals();
    const lengths = intervals.flatMap((interval) =>
      concaveRelaxed ? [this.leastRelaxationIn(interval, figureAt)] : [interval.low, interval.high],
    );
    const least = leastOf(lengths, figureAt);
    if (least === undefined) this.settleForConcaveBounds();
    else candidate.freeLength = least;
  }

  /** Where the share by which limits must give is least: at the peak of the bands, unless another limit needs more there. */
  private leastRelaxationIn(interval: Domain, relaxationAt: (length: number) => number): number {
    const marginAt = (length: number) => Math.min(...this.concaveBounds.map((bound) => bound.marginAt(length)));
    const maximum = interval.maximum(marginAt, Number.POSITIVE_INFINITY, true);
    if (relaxationAt(maximum.position) <= Math.max(0, -maximum.figure) - PASSES) return maximum.position;
    return interval.maximum((length) => -relaxationAt(length), 0).position;
  }

  /** Set the candidate to a free length that passes every limit; where none does, to that at which a band comes nearest to it. */
  settleForConcaveBounds(): void {
    const { candidate, domain } = this;
    const shortest = this.prune();
    if (domain.empty) {
      candidate.freeLength = shortest;
      return;
    }
    const aim = this.aim();
    let best = { position: aim, figure: this.concaveMargin(aim) };
    for (const section of best.figure < PASSES ? this.sections() : []) {
      const maximum = section.maximum((length) => this.concaveMargin(length), PASSES, true);
      if (maximum.figure > best.figure) best = maximum;
      if (best.figure >= PASSES) break;
    }
    candidate.freeLength = best.position;
  }

  /** Cut the range by every limit that is no band; the shortest free length that is asked, m. */
  private prune(): number {
    const { candidate, domain } = this;
    const { meanDiameter } = candidate;
    candidate.setMeanDiameter(meanDiameter);
    const shortest = candidate.freeLength;
    domain.set(shortest, Math.max(shortest, longestFreeLength(candidate)));
    for (const bound of this.monotoneBounds) domain.prune(bound);
    return shortest;
  }

  /** The range between the steps of the practice's tables. */
  private sections(): readonly Domain[] {
    const { low, high } = this.domain;
    const steps = this.candidate.requirements.practice.tolerance.freeLengthSteps(this.candidate as Candidate & TolerancedSpring);
    const inside = steps.filter((step) => low < step && step < high);
    return [low, ...inside].map((from, section) => {
      const domain = new Domain(false);
      const step = inside[section];
      domain.set(from, step === undefined ? high : Math.max(from, step * SHORT_OF));
      return domain;
    });
  }

  /** What the bands leave of each section. */
  private intervals(): readonly Domain[] {
    const sections = this.sections();
    for (const section of sections) for (const bound of this.concaveBounds) section.prune(bound);
    return sections.filter(({ empty }) => !empty);
  }

  private concaveMargin(length: number): number {
    let least = 1;
    for (const bound of this.concaveBounds) least = Math.min(least, bound.marginAt(length) - bound.exactMargin);
    return least;
  }

  private aim(): number {
    const { low, high } = this.domain;
    const { requirements, rate } = this.candidate;
    const { freeLengthAim: aim } = requirements;
    if (aim.kind === "nominal") return within(this.domain, aim.length + aim.force / rate);
    return aim.kind === "shortest" ? low : (low + high) / 2;
  }

  /** The whole multiple of the step that is asked nearest to a length inside the range; the length itself where there is none. */
  private rounded(length: number): number {
    const { low, high } = this.domain;
    const step = this.candidate.requirements.freeLengthStep;
    if (step === null) return length;
    const [first, last] = [Math.ceil(low / step - 1e-9), Math.floor(high / step + 1e-9)];
    return first > last ? length : Math.min(last, Math.max(first, Math.round(length / step))) * step;
  }
}

/** The length of a range that is nearest to one. */
function within({ low, high }: Domain, length: number): number {
  return Math.min(high, Math.max(low, length));
}

/** The first of those with the least of a figure; undefined where there are none. */
function leastOf<T>(items: readonly T[], figure: (item: T) => number): T | undefined {
  let least: T | undefined;
  let atLeast = Number.POSITIVE_INFINITY;
  for (const item of items) {
    const here = figure(item);
    if (here >= atLeast) continue;
    least = item;
    atLeast = here;
  }
  return least;
}

/** A bound of a limit as the free length grows. */
function marginBoundOf(limit: Limit, bound: Bound, candidate: Candidate): MarginBound {
  return {
    monotonicity: bound.overFreeLength,
    get exactMargin() {
      return -limit.relaxation;
    },
    get passMargin() {
      return PASSES - limit.relaxation;
    },
    marginAt(length) {
      candidate.freeLength = length;
      return bound.margin(candidate);
    },
  };
}
