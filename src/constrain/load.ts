import type { Brief, Load, Quantity, Span, Window } from "../model.ts";
import { pinnedRate } from "../pinned-rate.ts";

/** How the free length of a candidate follows from its rate. */
export type FreeLengthRule =
  /** The shortest that clears the clash allowance at one deflection, m. */
  | { readonly kind: "shortestAtDeflection"; readonly deflection: number }
  /** The shortest that clears the clash allowance at one force, N. */
  | { readonly kind: "shortestAtForce"; readonly force: number }
  /** The middle of what points leave: lengths, m, each with its least and greatest force, N. */
  | {
      readonly kind: "points";
      readonly lengths: readonly number[];
      readonly low: readonly number[];
      readonly high: readonly number[];
    };

/**
 * How figures move as the mean diameter grows depends on this: is the rate pinned (then active turns follow from the diameter)
 * or free (then the rate does), and what sets the free length.
 */
export type Situation =
  | "pinnedShortest"
  | "pinnedPoints"
  | "freePoints"
  | "freeRateAndPoint"
  | "freeRateAndLargestForce"
  | "freeForceAtDeflection";

/** A force window at a length, m, or at a deflection, m. */
export type LoadWindow = Span & { readonly name: string } & ({ readonly length: number } | { readonly deflection: number });

/** A window with its open ends as 0 and Infinity. */
export function spanOf(window: Window | undefined): Span {
  return { min: window?.min ?? 0, max: window?.max ?? Number.POSITIVE_INFINITY };
}

/** The rates of which every one serves the load, tolerances included. */
export function rateAllowed({ load }: Brief): Span {
  return load.kind === "points" ? rateOfPoints(pointForces(load.points, false)) : rateOfWindow(load);
}

/** The rates between the ends of a force at a deflection, or of a rate. */
function rateOfWindow(load: Exclude<Load, { readonly kind: "points" }>): Span {
  if (load.kind !== "forceAtDeflection") return spanOf(load.rate);
  const { min, max } = spanOf(load.force);
  return { min: min / load.deflection, max: max / load.deflection };
}

/** The rate that the load pins, or the window that it leaves (the table in DEVELOPERS.md, "The space"). */
export function rateAsked({ load }: Brief): { pinned: number | null; span: Span } {
  const pinned = pinnedRate(load);
  if (pinned !== null) return { pinned, span: { min: pinned, max: pinned } };
  return { pinned, span: load.kind === "points" ? rateOfPoints(pointForces(load.points)) : rateOfWindow(load) };
}

interface PointForces {
  readonly lengths: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
}

/** Over every pair: k <= (hi2 - lo1)/(L1 - L2) and k >= (lo2 - hi1)/(L1 - L2); pairwise overlap suffices on a line. */
function rateOfPoints({ lengths, low, high }: PointForces): Span {
  let min = 0;
  let max = Number.POSITIVE_INFINITY;
  for (let long = 0; long < lengths.length; long++) {
    for (let short = 0; short < lengths.length; short++) {
      const travel = (lengths[long] as number) - (lengths[short] as number);
      if (travel <= 0) continue;
      min = Math.max(min, ((low[short] as number) - (high[long] as number)) / travel);
      max = Math.min(max, ((high[short] as number) - (low[long] as number)) / travel);
    }
  }
  return { min, max };
}

/**
 * The least and greatest force of each point. A tolerance is not freedom: with one or two points the design aims at the nominal;
 * three or more need not lie on a line, so there the tolerance is the window.
 */
function pointForces(
  points: readonly { readonly length: number; readonly force: Quantity }[],
  aim = points.length <= 2,
): PointForces {
  const end = (force: Quantity, side: "min" | "max") =>
    ((aim ? force.nominal : undefined) ?? force[side] ?? force.nominal) as number;
  return {
    lengths: points.map(({ length }) => length),
    low: points.map(({ force }) => end(force, "min")),
    high: points.map(({ force }) => end(force, "max")),
  };
}

/** How the load sets the free length. */
export function freeLengthRuleOf({ load }: Brief): FreeLengthRule {
  switch (load.kind) {
    case "forceAtDeflection":
      return { kind: "shortestAtDeflection", deflection: load.deflection };
    case "rateAndLargestForce":
      return { kind: "shortestAtForce", force: load.largestForce };
    case "points":
      return { kind: "points", ...pointForces(load.points) };
    case "rateAndPoint":
      return { kind: "points", ...pointForces([load.point]) };
  }
}

/** What the load leaves free. */
export function situationOf({ load }: Brief, pinned: number | null): Situation {
  const fromPoints = load.kind === "points" || load.kind === "rateAndPoint";
  if (pinned !== null) return fromPoints ? "pinnedPoints" : "pinnedShortest";
  switch (load.kind) {
    case "forceAtDeflection":
      return "freeForceAtDeflection";
    case "rateAndLargestForce":
      return "freeRateAndLargestForce";
    case "points":
      return "freePoints";
    case "rateAndPoint":
      // A window of force leaves the free length a middle to follow, with the kinks that points have.
      return load.point.force.nominal === undefined ? "freePoints" : "freeRateAndPoint";
  }
}

/** The windows, from tolerances as from freedom: what the maker delivers must lie in them either way. */
export function loadWindowsOf({ load }: Brief): LoadWindow[] {
  const isWindow = ({ force }: { readonly force: Quantity }) => (force.min ?? 0) < (force.max ?? 0);
  const span = ({ min, max }: Quantity): Span => ({ min: min as number, max: max as number });
  const points = load.kind === "points" ? load.points : load.kind === "rateAndPoint" ? [load.point] : [];
  if (load.kind === "forceAtDeflection" && isWindow(load)) {
    return [{ name: "loaded", deflection: load.deflection, ...span(load.force) }];
  }
  return points.filter(isWindow).map(({ name, length, force }) => ({ name, length, ...span(force) }));
}
