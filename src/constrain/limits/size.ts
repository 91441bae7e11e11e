import type { Monotonicity } from "../../enumerate/domain.ts";
import type { Span } from "../../model.ts";
import type { Candidate } from "../candidate/candidate.ts";
import type { LoadWindow } from "../requirements/load.ts";
import type { Requirements } from "../requirements/requirements.ts";
import {
  always,
  atLengths,
  type BoundSpec,
  bySituation,
  freeLengthScope,
  ifTurnsFollow,
  type LimitSpec,
  type Threshold,
} from "./bound.ts";

/** A window that asks nothing. */
const UNASKED: Span = { min: 0, max: Number.POSITIVE_INFINITY };

/** The two bounds of a window: a figure of the candidate, and the window that the brief asks of it. */
function within({
  value,
  window,
  monotonicities: [least, most],
  overFreeLength = ["constant", "constant"],
  ...common
}: Pick<BoundSpec, "value" | "dimension" | "scope" | "byConstruction"> & {
  readonly window: (requirements: Requirements) => Span;
  /** Of the bound that asks a least, and of the one that asks a most. */
  readonly monotonicities: readonly [BoundSpec["monotonicity"], BoundSpec["monotonicity"]];
  readonly overFreeLength?: readonly [Monotonicity, Monotonicity];
}): BoundSpec[] {
  return [
    {
      ...common,
      sense: "least",
      value,
      boundValue: (c) => window(c.requirements).min,
      applies: (requirements) => window(requirements).min > 0,
      monotonicity: least,
      overFreeLength: () => overFreeLength[0],
    },
    {
      ...common,
      sense: "most",
      value,
      boundValue: (c) => window(c.requirements).max,
      applies: (requirements) => window(requirements).max < Number.POSITIVE_INFINITY,
      monotonicity: most,
      overFreeLength: () => overFreeLength[1],
    },
  ];
}

/** The shortest free length as the mean diameter grows. */
const leastFreeLengthMonotonicity = bySituation({
  pinnedShortest: "decreasing",
  pinnedPoints: "decreasing",
  freePoints: "increasing",
  freeRateAndPoint: "increasing",
  freeRateAndLargestForce: "increasing",
  freeForceAtDeflection: "increasing",
});
const mostFreeLengthMonotonicity = (requirements: Requirements) =>
  leastFreeLengthMonotonicity(requirements) === "increasing" ? "decreasing" : "increasing";

/** Forces at lengths may be too small at either end of the diameters; those at a deflection go by the rate alone. */
const forceAtTemperatureMonotonicity = bySituation({
  pinnedShortest: "constant",
  pinnedPoints: "unimodal",
  freePoints: "unimodal",
  freeRateAndPoint: "unimodal",
  freeRateAndLargestForce: "constant",
  freeForceAtDeflection: "unimodal",
});

/** The force of a window at the service temperature, N. */
function forceAtTemperature(c: Candidate, window: LoadWindow): number {
  const deflection = "deflection" in window ? window.deflection : c.freeLength - window.length;
  return Math.max(0, c.modulusRatio * c.rate * deflection);
}

/** The window that the force at temperature is furthest out of, or nearest to the end of. */
function tightestWindow(c: Candidate, sense: "least" | "most"): LoadWindow {
  const inside = (window: LoadWindow) =>
    sense === "least" ? forceAtTemperature(c, window) / window.min : -forceAtTemperature(c, window) / window.max;
  return windowsWithEnd(c.requirements, sense).reduce((a, b) => (inside(b) < inside(a) ? b : a));
}

/** The windows that have such an end. */
function windowsWithEnd({ windowsAtTemperature }: Requirements, sense: "least" | "most"): readonly LoadWindow[] {
  return sense === "most" ? windowsAtTemperature : windowsAtTemperature.filter(({ min }) => min > 0);
}

/** One end of the force windows with the rate at temperature. */
function boundAtTemperature(sense: "least" | "most"): BoundSpec {
  const isLeast = sense === "least";
  return {
    sense,
    value: (c) => forceAtTemperature(c, tightestWindow(c, sense)),
    boundValue: (c) => tightestWindow(c, sense)[isLeast ? "min" : "max"],
    dimension: "force",
    applies: (requirements) => windowsWithEnd(requirements, sense).length > 0,
    scope: freeLengthScope,
    monotonicity: forceAtTemperatureMonotonicity,
    overFreeLength: (requirements) => (atLengths(requirements) ? (isLeast ? "increasing" : "decreasing") : "constant"),
  };
}

/** Limits on turns, diameters, rate and lengths, in the order of the limits. */
export const SIZE_LIMITS: readonly LimitSpec[] = [
  {
    name: "turns",
    reported: (requirements) => requirements.turns.min > 0 || requirements.turns.max < Number.POSITIVE_INFINITY,
    bounds: within({
      value: (c) => c.activeTurns,
      dimension: "number",
      window: (requirements) => requirements.turns,
      scope: "turns",
      monotonicities: [ifTurnsFollow("decreasing"), ifTurnsFollow("increasing")],
      byConstruction: (requirements) => !requirements.turnsAny,
    }),
  },
  {
    name: "solidLength",
    bounds: within({
      value: (c) => c.solidLength,
      dimension: "length",
      window: (requirements) => requirements.solidLength,
      scope: "family",
      monotonicities: [ifTurnsFollow("decreasing"), ifTurnsFollow("increasing")],
    }),
  },
  {
    name: "index",
    reported: (requirements) => !requirements.lifted.has("index"),
    bounds: within({
      value: (c) => c.index,
      dimension: "number",
      window: (requirements) => requirements.index,
      scope: "wire",
      monotonicities: [always("increasing"), always("decreasing")],
    }),
  },
  {
    name: "outsideDiameter",
    bounds: [
      ...within({
        value: (c) => c.outsideDiameter,
        dimension: "length",
        window: (requirements) => requirements.outsideDiameter,
        scope: "wire",
        monotonicities: [always("increasing"), always("decreasing")],
      }),
      {
        sense: "most",
        value: (c) => c.outsideDiameterAtSolid,
        dimension: "length",
        figure: "outsideDiameterAtSolid",
        boundValue: (c) => c.requirements.bore,
        applies: (requirements) => requirements.bore < Number.POSITIVE_INFINITY,
        scope: "family",
        // The growth that the European standard gives falls with the diameter, and outweighs it where the pitch is very steep.
        monotonicity: (requirements) =>
          requirements.practice.name === "en13906" && !requirements.turnsAny ? "unimodal" : "decreasing",
        overFreeLength: () => "decreasing",
      },
    ],
  },
  {
    name: "insideDiameter",
    bounds: within({
      value: (c) => c.insideDiameter,
      dimension: "length",
      window: (requirements) => requirements.insideDiameter,
      scope: "wire",
      monotonicities: [always("increasing"), always("decreasing")],
    }),
  },
  {
    name: "rate",
    bounds: within({
      value: (c) => c.rate,
      dimension: "rate",
      // A pinned rate is met by construction.
      window: (requirements) => (requirements.pinnedRate === null ? requirements.rate : UNASKED),
      scope: "turns",
      monotonicities: [always("decreasing"), always("increasing")],
    }),
  },
  {
    name: "freeLength",
    bounds: within({
      value: (c) => c.freeLength,
      dimension: "length",
      window: (requirements) => requirements.freeLength,
      scope: freeLengthScope,
      monotonicities: [leastFreeLengthMonotonicity, mostFreeLengthMonotonicity],
      overFreeLength: ["increasing", "decreasing"],
    }),
  },
  {
    // Of geometry, so that no brief lifts it.
    name: "pitch",
    reported: () => false,
    bounds: [
      {
        sense: "least",
        value: (c) => c.pitch,
        boundValue: (c) => c.wireDiameter,
        dimension: "length",
        applies: (requirements) => requirements.given || requirements.coilsMayOverlap,
        scope: "family",
        monotonicity: always("increasing"),
        overFreeLength: () => "increasing",
      },
    ],
  },
  {
    name: "hotForce",
    bounds: [boundAtTemperature("least"), boundAtTemperature("most")],
  },
  {
    name: "clash",
    reported: (requirements) => requirements.clash !== null,
    bounds: [
      {
        // Without an allowance the spring must still not be solid: then the room is held against the solid length itself.
        sense: "least",
        value: (c) => (c.clashAllowance === 0 ? c.solidLength + c.clashRoom : c.clashRoom),
        dimension: "length",
        threshold: clashThreshold,
        boundValue: (c) => (c.clashAllowance === 0 ? c.solidLength : c.clashAllowance),
        applies: (requirements) => requirements.given || atLengths(requirements),
        scope: "family",
        monotonicity: bySituation({
          pinnedShortest: "constant",
          pinnedPoints: "increasing",
          freePoints: "decreasing",
          freeRateAndPoint: "decreasing",
          freeRateAndLargestForce: "constant",
          freeForceAtDeflection: "constant",
        }),
        overFreeLength: (requirements) => (atLengths(requirements) ? "decreasing" : "increasing"),
      },
    ],
  },
];

function clashThreshold({ clash }: Requirements): Threshold | null {
  if (clash === null || "length" in clash || "minimumGap" in clash) return null;
  const share = "ofDeflection" in clash ? clash.ofDeflection : clash.ofSolidLength;
  return share === 0 ? null : { value: share, dimension: "share" };
}
