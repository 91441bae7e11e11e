import type { Brief, ClashAllowance, Clearance, LimitName, Quantity, Span, StressFactorName, StressLimit } from "../model.ts";
import { type Practice, practices } from "../practice/practice.ts";

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

/** The brief as the limits read it: numbers worked out once, open ends as 0 and Infinity. All SI. */
export interface Asks {
  readonly practice: Practice;
  readonly situation: Situation;
  /** The one rate that the load fixes, N/m; null where it leaves a window. */
  readonly pinnedRate: number | null;
  readonly rate: Span;
  readonly freeLengthRule: FreeLengthRule;
  /** Length at the largest working deflection, m; NaN where the free length is the shortest that clears. */
  readonly shortestLength: number;
  readonly turnsAny: boolean;
  readonly exact: boolean;
  readonly turns: Span;
  readonly index: Span;
  readonly solidLength: Span;
  readonly outsideDiameter: Span;
  readonly insideDiameter: Span;
  readonly freeLength: Span;
  /** The bore less its clearance, m; Infinity without one. */
  readonly bore: number;
  readonly clash: ClashAllowance | null;
  readonly workingStress: StressLimit | null;
  readonly workingFactor: StressFactorName;
  readonly solidStress: StressLimit | null;
  readonly stressFactor: StressFactorName;
  readonly setRemoved: boolean;
  readonly fixity: number;
  readonly bucklingSafety: number | null;
  /** Least natural frequency, Hz; null where not asked. */
  readonly surge: number | null;
  /** Service temperature, K; null where not given or lifted. */
  readonly temperature: number | null;
  readonly lifted: ReadonlySet<LimitName>;
}

/** Index below which and above which nothing is wound, whatever the brief says. */
export const WOUND_INDEX: Span = { min: 2, max: 25 };

/**
 * Work out what a brief asks of every candidate.
 *
 * @param brief  a resolved brief
 * @returns plain numbers for the limits; does not throw, leaves the brief unchanged
 */
export function asksOf(brief: Brief): Asks {
  const { limits, service, envelope, sweep } = brief;
  const practice = practices[brief.practice];
  const lifted = liftedBy(brief);
  const setRemoved = service.set === "removed";
  const stressFactor = (setRemoved ? practice.stressFactor.setRemoved : practice.stressFactor.asWound).value;
  const rate = rateAsked(brief);
  const freeLengthRule = freeLengthRuleOf(brief);
  const index = limits.index === "off" ? WOUND_INDEX : spanOf(limits.index);
  return {
    practice,
    situation: situationOf(brief, rate.pinned),
    pinnedRate: rate.pinned,
    rate: rate.span,
    freeLengthRule,
    shortestLength: freeLengthRule.kind === "points" ? Math.min(...freeLengthRule.lengths) : Number.NaN,
    turnsAny: sweep.turns === "any",
    exact: sweep.meanDiameter === "exact",
    turns: limits.turns === "off" ? OPEN : spanOf(limits.turns),
    index: { min: Math.max(index.min, WOUND_INDEX.min), max: Math.min(index.max, WOUND_INDEX.max) },
    solidLength: lifted.has("solidLength") ? OPEN : spanOf(envelope.solidLength),
    outsideDiameter: lifted.has("outsideDiameter") ? OPEN : spanOf(envelope.outsideDiameter),
    insideDiameter: lifted.has("insideDiameter") ? OPEN : insideDiameterAsked(brief),
    freeLength: lifted.has("freeLength") ? OPEN : spanOf(envelope.freeLength),
    bore:
      envelope.bore === undefined || lifted.has("outsideDiameter")
        ? Number.POSITIVE_INFINITY
        : envelope.bore - clearanceOf(envelope.clearance, envelope.bore),
    clash: limits.clash === "off" ? null : limits.clash,
    workingStress: limits.workingStress === "off" ? null : limits.workingStress,
    workingFactor: limits.workingStress === "off" ? stressFactor : limits.workingStress.factor,
    solidStress: limits.solidStress === "off" ? null : limits.solidStress,
    stressFactor,
    setRemoved,
    fixity: practice.fixity.value[service.seats],
    bucklingSafety: limits.buckling === "off" || service.seats === "guided" ? null : limits.buckling.safety,
    surge: limits.surge === "off" || service.frequency === undefined ? null : limits.surge.multiple * service.frequency,
    temperature: service.temperature === undefined || lifted.has("temperature") ? null : service.temperature,
    lifted,
  };
}

/** Every limit that the brief switches off, whichever place sets it. */
function liftedBy({ limits }: Brief): ReadonlySet<LimitName> {
  const off = (["index", "turns", "clash", "workingStress", "solidStress", "buckling", "surge"] as const).filter(
    (name) => limits[name] === "off",
  );
  return new Set([...limits.lifted, ...off]);
}

const OPEN: Span = { min: 0, max: Number.POSITIVE_INFINITY };

function spanOf(window: { readonly min?: number; readonly max?: number } | undefined): Span {
  return { min: window?.min ?? 0, max: window?.max ?? Number.POSITIVE_INFINITY };
}

/** The rate that the load pins, or the window that it leaves (the table in DEVELOPERS.md, "The space"). */
function rateAsked({ load }: Brief): { pinned: number | null; span: Span } {
  const pin = (rate: number) => ({ pinned: rate, span: { min: rate, max: rate } });
  switch (load.kind) {
    case "forceAtDeflection": {
      const { force, deflection } = load;
      if (force.nominal !== undefined) return pin(force.nominal / deflection);
      const { min, max } = spanOf(force);
      return { pinned: null, span: { min: min / deflection, max: max / deflection } };
    }
    case "points": {
      const [first, second, ...others] = load.points;
      if (first && second && others.length === 0 && first.force.nominal !== undefined && second.force.nominal !== undefined) {
        return pin((second.force.nominal - first.force.nominal) / (first.length - second.length));
      }
      return { pinned: null, span: rateOfPoints(pointForces(load.points)) };
    }
    default:
      return load.rate.nominal !== undefined ? pin(load.rate.nominal) : { pinned: null, span: spanOf(load.rate) };
  }
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
function pointForces(points: readonly { readonly length: number; readonly force: Quantity }[]): PointForces {
  const aim = points.length <= 2;
  const end = (force: Quantity, side: "min" | "max") =>
    ((aim ? force.nominal : undefined) ?? force[side] ?? force.nominal) as number;
  return {
    lengths: points.map(({ length }) => length),
    low: points.map(({ force }) => end(force, "min")),
    high: points.map(({ force }) => end(force, "max")),
  };
}

function freeLengthRuleOf({ load }: Brief): FreeLengthRule {
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

function situationOf({ load }: Brief, pinned: number | null): Situation {
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

function insideDiameterAsked({ envelope }: Brief): Span {
  const stated = spanOf(envelope.insideDiameter);
  const overRod = envelope.rod === undefined ? 0 : envelope.rod + clearanceOf(envelope.clearance, envelope.rod);
  return { min: Math.max(stated.min, overRod), max: stated.max };
}

function clearanceOf(clearance: Clearance | undefined, diameter: number): number {
  if (clearance === undefined) return 0;
  return "length" in clearance ? clearance.length : clearance.share * diameter;
}
