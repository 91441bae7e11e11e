import type { Dimension, LimitName, StressLimit } from "../model.ts";
import type { Asks, Situation } from "./asks.ts";
import type { Candidate } from "./candidate.ts";

/** A candidate passes a limit at this margin and above: room for rounding, and the one constant of walk, cut, check and oracle. */
export const PASSES = -1e-9;

/** How a margin behaves as the mean diameter of a family grows; a band rises to one peak and falls from it, flat only at the top. */
export type Shape = "constant" | "rises" | "falls" | "band" | "none";

/** What a limit's verdict depends on besides the mean diameter; a walk cuts it where that changes. */
export type Scope = "wire" | "turns" | "family";

/** One side of a limit: a figure that must be at most, or at least, a bound. */
interface SideSpec {
  readonly sense: "most" | "least";
  readonly value: (candidate: Candidate) => number;
  readonly bound: (candidate: Candidate) => number;
  readonly asked: (asks: Asks) => boolean;
  readonly scope: Scope | ((asks: Asks) => Scope);
  readonly shape: (asks: Asks) => Shape;
  /** The shape is claimed only where these limits have cut the range before. */
  readonly after?: readonly LimitName[];
  /** What the figure measures. */
  readonly dimension: Dimension;
  /** The threshold as a brief writes it, where the bound is not that itself but moves in proportion to it. */
  readonly threshold?: (asks: Asks) => Threshold | null;
}

interface Threshold {
  readonly value: number;
  readonly dimension: Dimension;
}

/** A side as the walk uses it for one brief. */
export class Side {
  readonly sense: "most" | "least";
  readonly scope: Scope;
  readonly shape: Shape;
  readonly value: (candidate: Candidate) => number;
  readonly bound: (candidate: Candidate) => number;
  /** The threshold in the brief's terms, where the bound is only in proportion to it. */
  readonly threshold: Threshold | null;
  readonly dimension: Dimension;

  constructor(spec: SideSpec, asks: Asks) {
    this.sense = spec.sense;
    this.value = spec.value;
    this.bound = spec.bound;
    this.scope = typeof spec.scope === "function" ? spec.scope(asks) : spec.scope;
    this.shape = claimHolds(spec.after ?? [], asks) ? spec.shape(asks) : "none";
    this.threshold = spec.threshold?.(asks) ?? null;
    this.dimension = this.threshold?.dimension ?? spec.dimension;
  }

  /** The limit, and what it would have to be for this candidate to stand exactly on it, both as a brief writes them. */
  terms(candidate: Candidate): { readonly limitValue: number; readonly needed: number } {
    const value = this.value(candidate);
    const bound = this.bound(candidate);
    if (this.threshold === null) return { limitValue: bound, needed: value };
    const { value: threshold } = this.threshold;
    return { limitValue: threshold, needed: this.sense === "most" ? (threshold * bound) / value : (threshold * value) / bound };
  }

  /** How far inside, as a fraction of the bound; at most 1, finite. */
  margin(candidate: Candidate): number {
    const value = this.value(candidate);
    const bound = this.bound(candidate);
    return Math.min(1, this.sense === "most" ? 1 - value / bound : value / bound - 1);
  }
}

/** One limit as the walk uses it for one brief: the sides that the brief asks of it. */
export class Limit {
  readonly name: LimitName;
  readonly sides: readonly Side[];
  /** False for what a limit asks of geometry alone, which has no entry among a design's margins. */
  readonly reported: boolean;

  constructor(name: LimitName, sides: readonly Side[], reported: boolean) {
    this.name = name;
    this.sides = sides;
    this.reported = reported;
  }

  /** The smaller margin of its sides; 1 where nothing is asked. */
  margin(candidate: Candidate): number {
    let least = 1;
    for (const side of this.sides) least = Math.min(least, side.margin(candidate));
    return least;
  }

  passes(candidate: Candidate): boolean {
    return this.margin(candidate) >= PASSES;
  }

  /** The side with the least margin. */
  tightest(candidate: Candidate): Side {
    return this.sides.reduce((a, b) => (b.margin(candidate) < a.margin(candidate) ? b : a));
  }
}

const INDEX_AND_CLASH = ["index", "clash"] as const;

const bySituation = (shapes: Readonly<Record<Situation, Shape>>) => (asks: Asks) => shapes[asks.situation];

/** The same in every situation but where turns follow from a pinned rate. */
const whereTurnsFollow = (shape: Shape) => (asks: Asks) => (asks.turnsAny ? shape : "constant");
const always = (shape: Shape) => () => shape;
const ofDeflection = (asks: Asks) => asks.clash !== null && "ofDeflection" in asks.clash;
const minimumGap = (asks: Asks) => asks.clash !== null && "minimumGap" in asks.clash;
const ofSolidLengthOrGap = (asks: Asks) => asks.clash !== null && ("ofSolidLength" in asks.clash || "minimumGap" in asks.clash);

/**
 * The limits in the order in which a candidate falls. The walk, the tally, the words, the nearest misses and the prices of
 * limits read this list. `wire` and `temperature` stand before it: they reject a family before any diameter is looked at.
 *
 * Shapes were found by random search over briefs of every kind of load and both practices and are held by a property test.
 */
const SPECS: readonly {
  readonly name: LimitName;
  readonly reported?: (asks: Asks) => boolean;
  readonly sides: readonly SideSpec[];
}[] = [
  {
    name: "turns",
    reported: (asks) => asks.turns.min > 0 || asks.turns.max < Number.POSITIVE_INFINITY,
    sides: [
      {
        sense: "least",
        value: (c) => c.activeTurns,
        dimension: "number",
        bound: (c) => c.asks.turns.min,
        asked: (asks) => asks.turns.min > 0,
        scope: "turns",
        shape: whereTurnsFollow("falls"),
      },
      {
        sense: "most",
        value: (c) => c.activeTurns,
        dimension: "number",
        bound: (c) => c.asks.turns.max,
        asked: (asks) => asks.turns.max < Number.POSITIVE_INFINITY,
        scope: "turns",
        shape: whereTurnsFollow("rises"),
      },
    ],
  },
  {
    name: "solidLength",
    sides: [
      {
        sense: "least",
        value: (c) => c.solidLength,
        dimension: "length",
        bound: (c) => c.asks.solidLength.min,
        asked: (asks) => asks.solidLength.min > 0,
        scope: "family",
        shape: whereTurnsFollow("falls"),
      },
      {
        sense: "most",
        value: (c) => c.solidLength,
        dimension: "length",
        bound: (c) => c.asks.solidLength.max,
        asked: (asks) => asks.solidLength.max < Number.POSITIVE_INFINITY,
        scope: "family",
        shape: whereTurnsFollow("rises"),
      },
    ],
  },
  {
    name: "index",
    reported: (asks) => !asks.lifted.has("index"),
    sides: [
      {
        sense: "least",
        value: (c) => c.index,
        dimension: "number",
        bound: (c) => c.asks.index.min,
        asked: () => true,
        scope: "wire",
        shape: always("rises"),
      },
      {
        sense: "most",
        value: (c) => c.index,
        dimension: "number",
        bound: (c) => c.asks.index.max,
        asked: () => true,
        scope: "wire",
        shape: always("falls"),
      },
    ],
  },
  {
    name: "outsideDiameter",
    sides: [
      {
        sense: "least",
        value: (c) => c.outsideDiameter,
        dimension: "length",
        bound: (c) => c.asks.outsideDiameter.min,
        asked: (asks) => asks.outsideDiameter.min > 0,
        scope: "wire",
        shape: always("rises"),
      },
      {
        sense: "most",
        value: (c) => c.outsideDiameter,
        dimension: "length",
        bound: (c) => c.asks.outsideDiameter.max,
        asked: (asks) => asks.outsideDiameter.max < Number.POSITIVE_INFINITY,
        scope: "wire",
        shape: always("falls"),
      },
      {
        sense: "most",
        value: (c) => c.outsideDiameterAtSolid,
        dimension: "length",
        bound: (c) => c.asks.bore,
        asked: (asks) => asks.bore < Number.POSITIVE_INFINITY,
        scope: "family",
        // The growth that the European standard gives falls with the diameter, and outweighs it where the pitch is very steep.
        shape: (asks) => (asks.practice.name === "en13906" && !asks.turnsAny ? "band" : "falls"),
      },
    ],
  },
  {
    name: "insideDiameter",
    sides: [
      {
        sense: "least",
        value: (c) => c.insideDiameter,
        dimension: "length",
        bound: (c) => c.asks.insideDiameter.min,
        asked: (asks) => asks.insideDiameter.min > 0,
        scope: "wire",
        shape: always("rises"),
      },
      {
        sense: "most",
        value: (c) => c.insideDiameter,
        dimension: "length",
        bound: (c) => c.asks.insideDiameter.max,
        asked: (asks) => asks.insideDiameter.max < Number.POSITIVE_INFINITY,
        scope: "wire",
        shape: always("falls"),
      },
    ],
  },
  {
    name: "rate",
    sides: [
      {
        sense: "least",
        value: (c) => c.rate,
        dimension: "rate",
        bound: (c) => c.asks.rate.min,
        asked: (asks) => asks.pinnedRate === null && asks.rate.min > 0,
        scope: "turns",
        shape: always("falls"),
      },
      {
        sense: "most",
        value: (c) => c.rate,
        dimension: "rate",
        bound: (c) => c.asks.rate.max,
        asked: (asks) => asks.pinnedRate === null && asks.rate.max < Number.POSITIVE_INFINITY,
        scope: "turns",
        shape: always("rises"),
      },
    ],
  },
  {
    name: "freeLength",
    sides: [
      {
        sense: "least",
        value: (c) => c.freeLength,
        dimension: "length",
        bound: (c) => c.asks.freeLength.min,
        asked: (asks) => asks.freeLength.min > 0,
        scope: freeLengthScope,
        shape: bySituation({
          pinnedShortest: "falls",
          pinnedPoints: "constant",
          freePoints: "rises",
          freeRateAndPoint: "rises",
          freeRateAndLargestForce: "rises",
          freeForceAtDeflection: "rises",
        }),
      },
      {
        sense: "most",
        value: (c) => c.freeLength,
        dimension: "length",
        bound: (c) => c.asks.freeLength.max,
        asked: (asks) => asks.freeLength.max < Number.POSITIVE_INFINITY,
        scope: freeLengthScope,
        shape: bySituation({
          pinnedShortest: "rises",
          pinnedPoints: "constant",
          freePoints: "falls",
          freeRateAndPoint: "falls",
          freeRateAndLargestForce: "falls",
          freeForceAtDeflection: "falls",
        }),
      },
    ],
  },
  {
    name: "clash",
    reported: (asks) => asks.clash !== null,
    sides: [
      {
        // Without an allowance the spring must still not be solid: then the room is held against the solid length itself.
        sense: "least",
        value: (c) => (c.asks.clash === null ? c.solidLength + c.clashRoom : c.clashRoom),
        dimension: "length",
        threshold: clashThreshold,
        bound: (c) => (c.asks.clash === null ? c.solidLength : c.clashAllowance),
        asked: (asks) => asks.freeLengthRule.kind === "points",
        scope: "family",
        shape: bySituation({
          pinnedShortest: "constant",
          pinnedPoints: "rises",
          freePoints: "falls",
          freeRateAndPoint: "falls",
          freeRateAndLargestForce: "constant",
          freeForceAtDeflection: "constant",
        }),
      },
    ],
  },
  {
    name: "workingStress",
    sides: [
      {
        sense: "most",
        value: (c) => c.stress(c.workingForce, c.asks.workingFactor),
        dimension: "stress",
        threshold: (asks) => safetyThreshold(asks.workingStress),
        bound: (c) => stressBound(c, c.asks.workingStress as StressLimit),
        asked: (asks) => asks.workingStress !== null,
        scope: "turns",
        shape: bySituation({
          pinnedShortest: "falls",
          pinnedPoints: "falls",
          freePoints: "none",
          freeRateAndPoint: "falls",
          freeRateAndLargestForce: "falls",
          freeForceAtDeflection: "rises",
        }),
        after: ["index"],
      },
    ],
  },
  {
    name: "solidStress",
    sides: [
      {
        sense: "most",
        value: (c) => c.stressAtSolid,
        dimension: "stress",
        threshold: (asks) => safetyThreshold(asks.solidStress),
        bound: (c) => stressBound(c, c.asks.solidStress as StressLimit),
        asked: (asks) => asks.solidStress !== null,
        scope: "family",
        shape: (asks) =>
          bySituation({
            // An allowance that grows with the turns can outweigh the stress that grows with the diameter.
            pinnedShortest: ofSolidLengthOrGap(asks) ? "band" : "falls",
            pinnedPoints: "falls",
            freePoints: "none",
            freeRateAndPoint: "band",
            freeRateAndLargestForce: ofDeflection(asks) ? "falls" : "band",
            freeForceAtDeflection: "rises",
          })(asks),
        after: INDEX_AND_CLASH,
      },
    ],
  },
  {
    name: "buckling",
    sides: [
      {
        sense: "least",
        value: (c) => c.bucklingDeflection,
        dimension: "length",
        threshold: (asks) => ({ value: asks.bucklingSafety as number, dimension: "number" }),
        bound: (c) => (c.asks.bucklingSafety as number) * c.workingDeflection,
        asked: (asks) => asks.bucklingSafety !== null,
        scope: freeLengthScope,
        shape: (asks) =>
          bySituation({
            pinnedShortest: "rises",
            pinnedPoints: "rises",
            freePoints: "none",
            freeRateAndPoint: "none",
            freeRateAndLargestForce: "none",
            freeForceAtDeflection: minimumGap(asks) ? "none" : "rises",
          })(asks),
      },
    ],
  },
  {
    name: "surge",
    sides: [
      {
        sense: "least",
        value: (c) => c.surgeFrequency,
        dimension: "frequency",
        bound: (c) => c.asks.surge as number,
        asked: (asks) => asks.surge !== null,
        scope: "turns",
        shape: (asks) => (asks.turnsAny ? "rises" : "falls"),
      },
    ],
  },
];

/** Names of the limits that look at a diameter, in the order in which a candidate falls. */
export const LIMIT_ORDER: readonly LimitName[] = SPECS.map(({ name }) => name);

/**
 * The limits that a brief asks, in order, each with the sides it asks and their shapes.
 *
 * @param asks  what the brief asks
 * @returns only limits with a side to judge; a limit that the construction satisfies or that is off is not among them
 */
export function limitsFor(asks: Asks): Limit[] {
  return SPECS.map(({ name, reported, sides }) => {
    const asked = sides.filter((side) => side.asked(asks)).map((side) => new Side(side, asks));
    return new Limit(name, asked, reported?.(asks) ?? true);
  }).filter(({ sides }) => sides.length > 0);
}

function stressBound(candidate: Candidate, limit: StressLimit): number {
  return "max" in limit ? limit.max : candidate.allowableStress / limit.safety;
}

/** Points set the free length without the ends; the shortest that clears depends on the solid length. */
function freeLengthScope(asks: Asks): Scope {
  return asks.freeLengthRule.kind === "points" && !asks.turnsAny ? "turns" : "family";
}

function claimHolds(after: readonly LimitName[], asks: Asks): boolean {
  return !after.some((name) => asks.lifted.has(name) || (name === "clash" && asks.clash === null));
}

function safetyThreshold(limit: StressLimit | null): Threshold | null {
  return limit !== null && "safety" in limit ? { value: limit.safety, dimension: "number" } : null;
}

function clashThreshold({ clash }: Asks): Threshold | null {
  if (clash === null || "length" in clash || "minimumGap" in clash) return null;
  return { value: "ofDeflection" in clash ? clash.ofDeflection : clash.ofSolidLength, dimension: "share" };
}
