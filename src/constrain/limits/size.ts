import type { Shape } from "../../enumerate/domain.ts";
import type { Span } from "../../model.ts";
import type { Candidate } from "../candidate/candidate.ts";
import type { LoadWindow } from "../requirements/load.ts";
import type { Asks } from "../requirements/requirements.ts";
import {
  always,
  atLengths,
  bySituation,
  freeLengthScope,
  type LimitSpec,
  type SideSpec,
  type Threshold,
  whereTurnsFollow,
} from "./bound.ts";

/** A window that asks nothing. */
const UNASKED: Span = { min: 0, max: Number.POSITIVE_INFINITY };

/** The two sides of a window: a figure of the candidate, and the window that the brief asks of it. */
function within({
  value,
  window,
  shapes: [least, most],
  overFreeLength = ["constant", "constant"],
  ...common
}: Pick<SideSpec, "value" | "dimension" | "scope" | "kept"> & {
  readonly window: (asks: Asks) => Span;
  /** Of the side that asks a least, and of the one that asks a most. */
  readonly shapes: readonly [SideSpec["shape"], SideSpec["shape"]];
  readonly overFreeLength?: readonly [Shape, Shape];
}): SideSpec[] {
  return [
    {
      ...common,
      sense: "least",
      value,
      bound: (c) => window(c.asks).min,
      asked: (asks) => window(asks).min > 0,
      shape: least,
      overFreeLength: () => overFreeLength[0],
    },
    {
      ...common,
      sense: "most",
      value,
      bound: (c) => window(c.asks).max,
      asked: (asks) => window(asks).max < Number.POSITIVE_INFINITY,
      shape: most,
      overFreeLength: () => overFreeLength[1],
    },
  ];
}

/** The shortest free length as the mean diameter grows. */
const shortestRises = bySituation({
  pinnedShortest: "falls",
  pinnedPoints: "falls",
  freePoints: "rises",
  freeRateAndPoint: "rises",
  freeRateAndLargestForce: "rises",
  freeForceAtDeflection: "rises",
});
const shortestFalls = (asks: Asks) => (shortestRises(asks) === "rises" ? "falls" : "rises");

/** Forces at lengths may be too small at either end of the diameters; those at a deflection go by the rate alone. */
const hotShape = bySituation({
  pinnedShortest: "constant",
  pinnedPoints: "band",
  freePoints: "band",
  freeRateAndPoint: "band",
  freeRateAndLargestForce: "constant",
  freeForceAtDeflection: "band",
});

/** The force of a window at the service temperature, N. */
function hotForceAt(c: Candidate, window: LoadWindow): number {
  const deflection = "deflection" in window ? window.deflection : c.freeLength - window.length;
  return Math.max(0, c.hotShare * c.rate * deflection);
}

/** The window that the force at temperature is furthest out of, or nearest to the end of. */
function hotWindow(c: Candidate, sense: "least" | "most"): LoadWindow {
  const inside = (window: LoadWindow) =>
    sense === "least" ? hotForceAt(c, window) / window.min : -hotForceAt(c, window) / window.max;
  return endsAsked(c.asks, sense).reduce((a, b) => (inside(b) < inside(a) ? b : a));
}

/** The windows that have such an end. */
function endsAsked({ hotWindows }: Asks, sense: "least" | "most"): readonly LoadWindow[] {
  return sense === "most" ? hotWindows : hotWindows.filter(({ min }) => min > 0);
}

/** One end of the force windows with the rate at temperature. */
function hotSide(sense: "least" | "most"): SideSpec {
  const isLeast = sense === "least";
  return {
    sense,
    value: (c) => hotForceAt(c, hotWindow(c, sense)),
    bound: (c) => hotWindow(c, sense)[isLeast ? "min" : "max"],
    dimension: "force",
    asked: (asks) => endsAsked(asks, sense).length > 0,
    scope: freeLengthScope,
    shape: hotShape,
    overFreeLength: (asks) => (atLengths(asks) ? (isLeast ? "rises" : "falls") : "constant"),
  };
}

/** Limits on turns, diameters, rate and lengths, in the order in which a candidate falls. */
export const SIZE_LIMITS: readonly LimitSpec[] = [
  {
    name: "turns",
    reported: (asks) => asks.turns.min > 0 || asks.turns.max < Number.POSITIVE_INFINITY,
    sides: within({
      value: (c) => c.activeTurns,
      dimension: "number",
      window: (asks) => asks.turns,
      scope: "turns",
      shapes: [whereTurnsFollow("falls"), whereTurnsFollow("rises")],
      kept: (asks) => !asks.turnsAny,
    }),
  },
  {
    name: "solidLength",
    sides: within({
      value: (c) => c.solidLength,
      dimension: "length",
      window: (asks) => asks.solidLength,
      scope: "family",
      shapes: [whereTurnsFollow("falls"), whereTurnsFollow("rises")],
    }),
  },
  {
    name: "index",
    reported: (asks) => !asks.lifted.has("index"),
    sides: within({
      value: (c) => c.index,
      dimension: "number",
      window: (asks) => asks.index,
      scope: "wire",
      shapes: [always("rises"), always("falls")],
    }),
  },
  {
    name: "outsideDiameter",
    sides: [
      ...within({
        value: (c) => c.outsideDiameter,
        dimension: "length",
        window: (asks) => asks.outsideDiameter,
        scope: "wire",
        shapes: [always("rises"), always("falls")],
      }),
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
        overFreeLength: () => "falls",
      },
    ],
  },
  {
    name: "insideDiameter",
    sides: within({
      value: (c) => c.insideDiameter,
      dimension: "length",
      window: (asks) => asks.insideDiameter,
      scope: "wire",
      shapes: [always("rises"), always("falls")],
    }),
  },
  {
    name: "rate",
    sides: within({
      value: (c) => c.rate,
      dimension: "rate",
      // A pinned rate is met by construction.
      window: (asks) => (asks.pinnedRate === null ? asks.rate : UNASKED),
      scope: "turns",
      shapes: [always("falls"), always("rises")],
    }),
  },
  {
    name: "freeLength",
    sides: within({
      value: (c) => c.freeLength,
      dimension: "length",
      window: (asks) => asks.freeLength,
      scope: freeLengthScope,
      shapes: [shortestRises, shortestFalls],
      overFreeLength: ["rises", "falls"],
    }),
  },
  {
    // Of geometry, so that no brief lifts it.
    name: "pitch",
    reported: () => false,
    sides: [
      {
        sense: "least",
        value: (c) => c.pitch,
        bound: (c) => c.wireDiameter,
        dimension: "length",
        asked: (asks) => asks.given || asks.coilsMayOverlap,
        scope: "family",
        shape: always("rises"),
        overFreeLength: () => "rises",
      },
    ],
  },
  {
    name: "hotForce",
    sides: [hotSide("least"), hotSide("most")],
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
        asked: (asks) => asks.given || atLengths(asks),
        scope: "family",
        shape: bySituation({
          pinnedShortest: "constant",
          pinnedPoints: "rises",
          freePoints: "falls",
          freeRateAndPoint: "falls",
          freeRateAndLargestForce: "constant",
          freeForceAtDeflection: "constant",
        }),
        overFreeLength: (asks) => (atLengths(asks) ? "falls" : "rises"),
      },
    ],
  },
];

function clashThreshold({ clash }: Asks): Threshold | null {
  if (clash === null || "length" in clash || "minimumGap" in clash) return null;
  const share = "ofDeflection" in clash ? clash.ofDeflection : clash.ofSolidLength;
  return share === 0 ? null : { value: share, dimension: "share" };
}
