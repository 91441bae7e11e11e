import { border } from "../enumerate/border.ts";
import { type Judge, Range } from "../enumerate/range.ts";
import type { Candidate } from "./candidate.ts";
import { longestFreeLength } from "./free-length.ts";
import type { Limit } from "./limits.ts";
import { PASSES, type Side } from "./side.ts";

/** Looks taken over free lengths where a limit has no shape, evenly. */
const LOOKS = 64;

/**
 * The free lengths at which a candidate passes every limit and serves the load, and the one of them that is reported.
 *
 * Limits that rise or fall with the free length leave one range, found on their own margins. Where a limit has no shape over it
 * (the load tolerance), the range is looked along, and the stretch that passes and lies nearest to the aim is taken.
 */
export class FreeLengthRange {
  readonly range = new Range(false);
  private readonly candidate: Candidate;
  private readonly monotone: readonly Judge[];
  private readonly sampled: readonly Judge[];

  /**
   * @param candidate  the record; wound to a mean diameter before each question
   * @param limits     all that judge it
   */
  constructor(candidate: Candidate, limits: readonly Limit[]) {
    const judges = limits.flatMap((limit) => limit.sides.map((side) => judgeOf(limit, side, candidate)));
    this.candidate = candidate;
    this.monotone = judges.filter(({ shape }) => shape !== "none");
    this.sampled = judges.filter(({ shape }) => shape === "none");
  }

  /** True where a limit has no shape, so that the shortest free length may fail it though another passes. */
  get isSampled(): boolean {
    return this.sampled.length > 0;
  }

  /**
   * Set the candidate to the free length that is reported for its mean diameter.
   *
   * @returns false where none passes; the candidate then has the shortest that is asked, and `range` is empty
   */
  settle(): boolean {
    const shortest = this.cut();
    if (!this.range.empty && this.isSampled) this.cutSampled();
    this.candidate.freeLength = this.range.empty ? shortest : this.rounded(this.aim());
    return !this.range.empty;
  }

  /**
   * Set the candidate to one of the looked-at free lengths that pass, where a limit has no shape; where none does, to that at which
   * these limits have their greatest margin.
   *
   * @param figure  the least of it is taken; absent: the aim, where it passes
   */
  settleByLooks(figure?: (candidate: Candidate) => number): void {
    const shortest = this.cut();
    const { range, candidate } = this;
    if (range.empty) {
      candidate.freeLength = shortest;
      return;
    }
    const aim = this.aim();
    const lengths = figure === undefined && this.sampledMargin(aim) >= PASSES ? [aim] : [aim, ...this.looks()];
    const passing = lengths.filter((length) => this.sampledMargin(length) >= PASSES);
    const costs = (length: number): number => {
      if (passing.length === 0) return -this.sampledMargin(length);
      candidate.freeLength = length;
      return figure?.(candidate) ?? 0;
    };
    candidate.freeLength = (passing.length > 0 ? passing : lengths).reduce((a, b) => (costs(b) < costs(a) ? b : a));
  }

  /** Cut the range by every limit that has a shape; the shortest free length that is asked, m. */
  private cut(): number {
    const { candidate, range } = this;
    const { meanDiameter } = candidate;
    candidate.place(meanDiameter);
    const shortest = candidate.freeLength;
    range.set(shortest, Math.max(shortest, longestFreeLength(candidate)));
    for (const judge of this.monotone) range.cut(judge);
    return shortest;
  }

  /** Narrow the range to the stretch round the length nearest to the aim that passes the limits without a shape. */
  private cutSampled(): void {
    const { range } = this;
    const aim = this.aim();
    const nearestFirst = [aim, ...this.looks()].sort((a, b) => Math.abs(a - aim) - Math.abs(b - aim));
    const passing = nearestFirst.find((length) => this.sampledMargin(length) >= PASSES);
    if (passing === undefined) {
      range.set(1, 0);
      return;
    }
    const looks = this.looks();
    const ends = [looks.filter((length) => length < passing).reverse(), looks.filter((length) => length > passing)];
    const [low, high] = ends.map((outwards) => this.lastPassing(passing, outwards)) as [number, number];
    range.set(low, high);
  }

  /** The border of the stretch that passes, on the way outwards from a length that does. */
  private lastPassing(passing: number, outwards: readonly number[]): number {
    const margins = { marginAt: (length: number) => this.sampledMargin(length) };
    let last = passing;
    for (const length of outwards) {
      const margin = this.sampledMargin(length);
      if (margin < PASSES)
        return border(margins, PASSES, last, this.sampledMargin(last) - PASSES, length, margin - PASSES, false);
      last = length;
    }
    return last;
  }

  private looks(): number[] {
    const { low, high } = this.range;
    return low === high ? [low] : Array.from({ length: LOOKS + 1 }, (_, look) => low + ((high - low) * look) / LOOKS);
  }

  private sampledMargin(length: number): number {
    let least = 1;
    for (const judge of this.sampled) least = Math.min(least, judge.marginAt(length) - judge.stands);
    return least;
  }

  private aim(): number {
    const { low, high } = this.range;
    const { asks, rate } = this.candidate;
    const { freeLengthAim: aim } = asks;
    if (aim.kind === "nominal") return Math.min(high, Math.max(low, aim.length + aim.force / rate));
    return aim.kind === "shortest" ? low : (low + high) / 2;
  }

  /** The whole multiple of the step that is asked nearest to a length inside the range; the length itself where there is none. */
  private rounded(length: number): number {
    const { low, high } = this.range;
    const step = this.candidate.asks.freeLengthStep;
    if (step === null) return length;
    const [first, last] = [Math.ceil(low / step - 1e-9), Math.floor(high / step + 1e-9)];
    return first > last ? length : Math.min(last, Math.max(first, Math.round(length / step))) * step;
  }
}

/** A side of a limit as the free length grows. */
function judgeOf(limit: Limit, side: Side, candidate: Candidate): Judge {
  return {
    shape: side.overFreeLength,
    get stands() {
      return -limit.eased;
    },
    get passes() {
      return PASSES - limit.eased;
    },
    marginAt(length) {
      candidate.freeLength = length;
      return side.margin(candidate);
    },
  };
}
