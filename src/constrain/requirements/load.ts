import { pinnedRate } from "../../brief/fixed-rate.ts";
import type { Brief, Load, MeritName, Quantity, Span, Window } from "../../model.ts";

/** What bounds the free length of a candidate whose rate is known. */
export type FreeLengthRule =
  /** From the shortest that clears the clash allowance at one deflection, m. */
  | { readonly kind: "clearsAtDeflection"; readonly deflection: number }
  /** From the shortest that clears the clash allowance at one force, N. */
  | { readonly kind: "clearsAtForce"; readonly force: number }
  /** What load points leave: lengths, m, each with its least and greatest force, N. */
  | {
      readonly kind: "points";
      readonly lengths: readonly number[];
      readonly low: readonly number[];
      readonly high: readonly number[];
    };

/**
 * Which of the free lengths that pass every limit a spring is reported with: the shortest; the middle of them, where a maker has
 * most room; or the one nearest to that at which one load point has its nominal force.
 */
export type FreeLengthAim =
  | { readonly kind: "shortest" | "middle" }
  /** Length, m, and force, N. */
  | { readonly kind: "nominal"; readonly length: number; readonly force: number };

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
  return load.kind === "points" ? rateOfPoints(pointForces(load.points)) : rateOfWindow(load);
}

/** The rates between the ends of a force at a deflection, or of a rate. */
function rateOfWindow(load: Exclude<Load, { readonly kind: "points" }>): Span {
  if (load.kind !== "forceAtDeflection") return spanOf(load.rate);
  const { min, max } = spanOf(load.force);
  return { min: min / load.deflection, max: max / load.deflection };
}

/** The rate that the load pins, or the window that it leaves (the table in DEVELOPERS.md, "The space"). */
export function rateAsked(brief: Brief): { pinned: number | null; span: Span } {
  const pinned = pinnedRate(brief.load);
  return { pinned, span: pinned === null ? rateAllowed(brief) : { min: pinned, max: pinned } };
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

/** The least and greatest force of each point. */
function pointForces(points: readonly { readonly length: number; readonly force: Quantity }[]): PointForces {
  const end = (force: Quantity, bound: "min" | "max") => (force[bound] ?? force.nominal) as number;
  return {
    lengths: points.map(({ length }) => length),
    low: points.map(({ force }) => end(force, "min")),
    high: points.map(({ force }) => end(force, "max")),
  };
}

/** What the load leaves of free length. */
export function freeLengthRuleOf({ load }: Brief): FreeLengthRule {
  switch (load.kind) {
    case "forceAtDeflection":
      return { kind: "clearsAtDeflection", deflection: load.deflection };
    case "rateAndLargestForce":
      return { kind: "clearsAtForce", force: load.largestForce };
    case "points":
      return { kind: "points", ...pointForces(load.points) };
    case "rateAndPoint":
      return { kind: "points", ...pointForces([load.point]) };
  }
}

/** What the load leaves of free length where each force is its nominal. */
export function nominalFreeLengthOf(brief: Brief): FreeLengthRule {
  const rule = freeLengthRuleOf(brief);
  if (rule.kind !== "points") return rule;
  const points = "points" in brief.load ? brief.load.points : "point" in brief.load ? [brief.load.point] : [];
  const forces = points.map(({ force }) => force.nominal as number);
  return { kind: "points", lengths: rule.lengths, low: forces, high: forces };
}

/** Figures that depend on the free length; the shortest is the best of each. */
const OF_FREE_LENGTH: readonly MeritName[] = ["freeLength", "solidSafety"];

/** True where one of these figures depends on the free length. */
export function dependOnFreeLength(figures: readonly MeritName[]): boolean {
  return figures.some((name) => OF_FREE_LENGTH.includes(name));
}

/**
 * Which free length a spring is reported with.
 *
 * A load at a deflection, or to a force, takes the shortest that clears, as handbooks do: a longer one has no bound of the load.
 * One or two points with a nominal aim at it; a tolerance is left to the maker. Windows leave the free length free: the best of it
 * by the ranked figures, and where none of them depends on it, the middle.
 */
export function freeLengthAimOf({ load, rank }: Brief): FreeLengthAim {
  if (load.kind !== "points" && load.kind !== "rateAndPoint") return { kind: "shortest" };
  const points = load.kind === "points" ? load.points : [load.point];
  if (points.some(({ force }) => force.min === force.max)) return { kind: "shortest" };
  const aimed = points.length > 2 ? undefined : points.find(({ force }) => force.nominal !== undefined);
  if (aimed !== undefined) return { kind: "nominal", length: aimed.length, force: aimed.force.nominal as number };
  return { kind: dependOnFreeLength(rank) ? "shortest" : "middle" };
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
      // A window of force leaves a choice of free lengths, with the kinks that points have.
      return load.point.force.min === load.point.force.max ? "freeRateAndPoint" : "freePoints";
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
