import type { Asks } from "./asks.ts";
import { always, bySituation, freeLengthScope, type LimitSpec, type Threshold, whereTurnsFollow } from "./side.ts";

const turnsAreCounted = (asks: Asks) => !asks.turnsAny;

/** Limits on turns, diameters, rate and lengths, in the order in which a candidate falls. */
export const SIZE_LIMITS: readonly LimitSpec[] = [
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
        kept: turnsAreCounted,
      },
      {
        sense: "most",
        value: (c) => c.activeTurns,
        dimension: "number",
        bound: (c) => c.asks.turns.max,
        asked: (asks) => asks.turns.max < Number.POSITIVE_INFINITY,
        scope: "turns",
        shape: whereTurnsFollow("rises"),
        kept: turnsAreCounted,
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
        figure: "outsideDiameterAtSolid",
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
        value: (c) => (c.clashAllowance === 0 ? c.solidLength + c.clashRoom : c.clashRoom),
        dimension: "length",
        threshold: clashThreshold,
        bound: (c) => (c.clashAllowance === 0 ? c.solidLength : c.clashAllowance),
        asked: (asks) => asks.given || asks.freeLengthRule.kind === "points",
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
];

function clashThreshold({ clash }: Asks): Threshold | null {
  if (clash === null || "length" in clash || "minimumGap" in clash) return null;
  const share = "ofDeflection" in clash ? clash.ofDeflection : clash.ofSolidLength;
  return share === 0 ? null : { value: share, dimension: "share" };
}
