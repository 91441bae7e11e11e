import type { LimitName, Span } from "../../model.ts";
import type { Candidate } from "../candidate/candidate.ts";
import type { Requirements } from "../requirements/requirements.ts";
import { Bound, PASSES } from "./bound.ts";
import { FATIGUE_LIMITS } from "./fatigue.ts";
import { MOTION_LIMITS } from "./motion.ts";
import { SIZE_LIMITS } from "./size.ts";
import { STRESS_LIMITS } from "./stress.ts";
import { TOLERANCE_LIMITS } from "./tolerance.ts";

/** One limit resolved for one brief, with the bounds that apply. */
export class Limit {
  readonly name: LimitName;
  readonly bounds: readonly Bound[];
  /** False for what a limit asks of geometry alone, which has no entry among a design's margins. */
  readonly reported: boolean;
  /** Fraction by which its bounds lie further out than in the brief; a search for the least relaxation lowers it as it goes. */
  relaxation = 0;

  constructor(name: LimitName, bounds: readonly Bound[], reported: boolean) {
    this.name = name;
    this.bounds = bounds;
    this.reported = reported;
  }

  /** The smaller margin of its bounds; 1 where nothing is asked. */
  margin(candidate: Candidate): number {
    let least = 1;
    for (const bound of this.bounds) least = Math.min(least, bound.margin(candidate));
    return least;
  }

  /** The smaller margin of its bounds as outputs show it; 1 where nothing is asked. */
  shownMargin(candidate: Candidate): number {
    return this.bounds.reduce((least, bound) => Math.min(least, bound.shownMargin(candidate)), 1);
  }

  passes(candidate: Candidate): boolean {
    return this.margin(candidate) >= PASSES - this.relaxation;
  }

  /** The same limit with its bounds moved outwards by a share of themselves. */
  relaxedBy(fraction: number): Limit {
    const limit = new Limit(this.name, this.bounds, this.reported);
    limit.relaxation = fraction;
    return limit;
  }

  /** The bound with the least margin. */
  tightest(candidate: Candidate): Bound {
    return this.bounds.reduce((a, b) => (b.margin(candidate) < a.margin(candidate) ? b : a));
  }
}

/**
 * The limits in the order of the limits. The search, the rejection counts, the words, the nearest misses and the prices of limits
 * read this list. `wire` and `temperature` stand before it: they reject a family before any diameter is looked at.
 *
 * Each monotonicity was found by random search over briefs of every kind of load and both practices. A property test holds it.
 */
const SPECS = [...SIZE_LIMITS, ...STRESS_LIMITS, ...FATIGUE_LIMITS, ...MOTION_LIMITS, ...TOLERANCE_LIMITS];

/** Names of the limits that look at a diameter, in the order of the limits. */
export const LIMIT_ORDER: readonly LimitName[] = SPECS.map(({ name }) => name);

/**
 * The limits that a brief asks, in order, each with the bounds it asks and their monotonicity.
 *
 * @param requirements  what the brief asks
 * @returns only limits with a bound to judge; a limit that the construction satisfies or that is off is not among them
 */
export function limitsFor(requirements: Requirements): Limit[] {
  return SPECS.map(({ name, reported, bounds }) => {
    const applicable = bounds.filter((bound) => bound.applies(requirements)).map((bound) => new Bound(bound, requirements));
    return new Limit(name, applicable, reported?.(requirements) ?? true);
  }).filter(({ bounds }) => bounds.length > 0);
}

/**
 * A limit that is a window, with ends of its own instead of the brief's, asked of every candidate.
 *
 * @param name          `turns` or `index`
 * @param requirements  what the brief asks
 * @param window        its ends
 */
export function limitWithin(name: "turns" | "index", requirements: Requirements, window: Span): Limit {
  const specs = SPECS.filter((spec) => spec.name === name).flatMap((spec) => spec.bounds);
  const within = specs
    .map((spec) => ({
      ...spec,
      boundValue: () => (spec.sense === "least" ? window.min : window.max),
      byConstruction: () => false,
    }))
    .filter((spec) => spec.boundValue() > 0 && spec.boundValue() < Number.POSITIVE_INFINITY);
  return new Limit(
    name,
    within.map((spec) => new Bound(spec, requirements)),
    false,
  );
}
