import type { Monotonicity } from "../../enumerate/domain.ts";
import type { Dimension, JudgedFigure, LimitName } from "../../model.ts";
import type { Candidate } from "../candidate/candidate.ts";
import type { Situation } from "../requirements/load.ts";
import type { Requirements } from "../requirements/requirements.ts";

/** A candidate passes a limit at this margin and above: room for rounding, and the one constant of walk, cut, check and oracle. */
export const PASSES = -1e-9;

/** What a bound depends on besides the mean diameter. A search prunes by it where that changes. */
export type Scope = "wire" | "turns" | "family";

/** One bound of a limit: a figure that must be at most, or at least, a value. */
export interface BoundSpec {
  readonly sense: "most" | "least";
  readonly value: (candidate: Candidate) => number;
  readonly boundValue: (candidate: Candidate) => number;
  readonly applies: (requirements: Requirements) => boolean;
  readonly scope: Scope | ((requirements: Requirements) => Scope);
  /** As the mean diameter grows, each candidate at its shortest free length. */
  readonly monotonicity: (requirements: Requirements) => Monotonicity;
  /**
   * As the free length of one candidate grows, between two steps of the practice's tables; absent: it does not depend on it.
   */
  readonly overFreeLength?: (requirements: Requirements) => Monotonicity;
  /** The monotonicity holds only where these limits have pruned the domain before. */
  readonly after?: readonly LimitName[];
  /** True where every candidate of a search passes by construction, so that the search need not evaluate it. */
  readonly byConstruction?: (requirements: Requirements) => boolean;
  /** What the figure measures. */
  readonly dimension: Dimension;
  /** The figure, where it is not the one that the limit is named after. */
  readonly figure?: JudgedFigure;
  /** The threshold as a brief writes it, where the bound is not that itself but moves in proportion to it. */
  readonly threshold?: (requirements: Requirements) => Threshold | null;
}

export interface Threshold {
  readonly value: number;
  readonly dimension: Dimension;
}

/** A bound resolved for one brief. */
export class Bound {
  readonly sense: "most" | "least";
  readonly scope: Scope;
  readonly monotonicity: Monotonicity;
  readonly overFreeLength: Monotonicity;
  /** True where every candidate of a search passes by construction. */
  readonly byConstruction: boolean;
  readonly value: (candidate: Candidate) => number;
  readonly boundValue: (candidate: Candidate) => number;
  /** The threshold in the brief's terms, where the bound is only in proportion to it. */
  readonly threshold: Threshold | null;
  readonly dimension: Dimension;
  readonly figure: JudgedFigure | null;

  constructor(spec: BoundSpec, requirements: Requirements) {
    this.sense = spec.sense;
    this.value = spec.value;
    this.boundValue = spec.boundValue;
    this.scope = typeof spec.scope === "function" ? spec.scope(requirements) : spec.scope;
    this.monotonicity = isClaimValid(spec.after ?? [], requirements) ? spec.monotonicity(requirements) : "unknown";
    this.overFreeLength = spec.overFreeLength?.(requirements) ?? "constant";
    this.byConstruction = spec.byConstruction?.(requirements) ?? false;
    this.threshold = spec.threshold?.(requirements) ?? null;
    this.dimension = this.threshold?.dimension ?? spec.dimension;
    this.figure = spec.figure ?? null;
  }

  /**
   * Whether the threshold as a brief writes it is a most or a least: every threshold in proportion is a safety, a share or a
   * multiple.
   */
  get senseInBrief(): "most" | "least" {
    return this.threshold === null ? this.sense : "least";
  }

  /** The limit, and what it would have to be for this candidate to stand exactly on it, both as a brief writes them. */
  terms(candidate: Candidate): { readonly limitValue: number; readonly needed: number } {
    const value = this.value(candidate);
    const boundValue = this.boundValue(candidate);
    if (this.threshold === null) return { limitValue: boundValue, needed: value };
    const { value: threshold } = this.threshold;
    return {
      limitValue: threshold,
      needed: this.sense === "most" ? (threshold * boundValue) / value : (threshold * value) / boundValue,
    };
  }

  /** How far inside, as a fraction of the bound; at most 1, finite. */
  margin(candidate: Candidate): number {
    const value = this.value(candidate);
    const boundValue = this.boundValue(candidate);
    return Math.min(1, this.sense === "most" ? 1 - value / boundValue : value / boundValue - 1);
  }

  /**
   * The margin as outputs show it, by what the brief asks: a stress that it limits by a safety is judged as that safety. It has the
   * sign of the margin by which the search prunes, in which a limit gives.
   */
  shownMargin(candidate: Candidate): number {
    if (this.senseInBrief === this.sense) return this.margin(candidate);
    const value = this.value(candidate);
    return value > 0 ? Math.min(1, this.boundValue(candidate) / value - 1) : 1;
  }
}

function isClaimValid(after: readonly LimitName[], requirements: Requirements): boolean {
  return !after.some((name) => requirements.lifted.has(name));
}

/** A limit with every bound it may have. */
export interface LimitSpec {
  readonly name: LimitName;
  /** Whether a brief's limit is asked as one, and not only for what geometry demands; absent: always. */
  readonly reported?: (requirements: Requirements) => boolean;
  readonly bounds: readonly BoundSpec[];
}

/** A monotonicity that is the same in every situation. */
export const always = (monotonicity: Monotonicity) => () => monotonicity;

/** A monotonicity by what the load leaves free. */
export const bySituation = (monotonicities: Readonly<Record<Situation, Monotonicity>>) => (requirements: Requirements) =>
  monotonicities[requirements.situation];

/** A stress by forces that fall, or stay as they are, while it grows with the diameter. */
export const stressMonotonicity = bySituation({
  pinnedShortest: "decreasing",
  pinnedPoints: "unimodal",
  freePoints: "unimodal",
  freeRateAndPoint: "decreasing",
  freeRateAndLargestForce: "decreasing",
  freeForceAtDeflection: "increasing",
});

/** The monotonicity where turns follow from the diameter; where they are counted the figure does not move. */
export const ifTurnsFollow = (monotonicity: Monotonicity) => (requirements: Requirements) =>
  requirements.turnsAny ? monotonicity : "constant";

/** True where the load gives forces at lengths, so that they grow with the free length. */
export const atLengths = ({ freeLengthRule }: Requirements) => freeLengthRule.kind === "points";

/** A margin by forces at the load points. */
export const pointForcesOverFreeLength = (requirements: Requirements): Monotonicity =>
  atLengths(requirements) ? "decreasing" : "constant";

/** Points leave a free length without regard to the ends; the shortest that clears depends on the solid length. */
export function freeLengthScope(requirements: Requirements): Scope {
  return atLengths(requirements) && !requirements.turnsAny && !requirements.coilsMayOverlap ? "turns" : "family";
}

/** Forces at lengths follow from the free length, which depends on the ends where coils may overlap. */
export function forceScope(requirements: Requirements): Scope {
  return atLengths(requirements) && requirements.coilsMayOverlap ? "family" : "turns";
}
