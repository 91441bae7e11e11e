import type {
  Brief,
  ClashAllowance,
  Clearance,
  FatigueLine,
  LimitName,
  Quantity,
  Service,
  Span,
  StressFactorName,
  StressLimit,
  ToleranceGrade,
} from "../model.ts";
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
  /** The rod with its clearance, m; 0 without one. */
  readonly rod: number;
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
  /** Length at the least load in cyclic duty, m; NaN where the load goes back to nothing. */
  readonly longestLength: number;
  readonly fatigue: FatigueAsk | null;
  /** Stress factor of the stresses at load points. */
  readonly pointFactor: StressFactorName;
  /** Force windows that a maker must hit. */
  readonly loadWindows: readonly LoadWindow[];
  readonly loadTolerance: ToleranceGrade | null;
  readonly lifted: ReadonlySet<LimitName>;
}

/** Cyclic duty judged by strengths that springs endured, or by the diagram of the material's own data. */
export type FatigueAsk = { readonly safety: number; readonly factor: StressFactorName; readonly largestWire: number } & (
  | {
      readonly kind: "endured";
      readonly line: FatigueLine;
      readonly amplitude: number;
      readonly mean: number;
      readonly ultimateShear: number;
    }
  | { readonly kind: "diagram"; readonly surface: Service["surface"] }
);

/** A force window at a length, m, or at a deflection, m. */
export type LoadWindow = Span & { readonly name: string } & ({ readonly length: number } | { readonly deflection: number });

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
    rod: lifted.has("insideDiameter") ? 0 : overRod(brief),
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
    longestLength:
      freeLengthRule.kind === "points" && freeLengthRule.lengths.length > 1 ? Math.max(...freeLengthRule.lengths) : Number.NaN,
    fatigue: fatigueAsked(brief, practice),
    pointFactor: service.cycles === undefined ? stressFactor : practice.fatigue.factor.value,
    loadWindows: loadWindowsOf(brief),
    loadTolerance: limits.loadTolerance === "off" ? null : limits.loadTolerance.grade,
    lifted,
  };
}

/** Every limit that the brief switches off, whichever place sets it. */
function liftedBy({ limits }: Brief): ReadonlySet<LimitName> {
  const mayBeOff = [
    "index",
    "turns",
    "clash",
    "workingStress",
    "solidStress",
    "fatigue",
    "buckling",
    "surge",
    "loadTolerance",
  ] as const;
  const off = mayBeOff.filter((name) => limits[name] === "off");
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

function fatigueAsked({ limits, service }: Brief, { fatigue }: Practice): FatigueAsk | null {
  if (service.cycles === undefined || limits.fatigue === "off") return null;
  const { safety, line } = limits.fatigue;
  const factor = fatigue.factor.value;
  if (fatigue.kind === "diagram") {
    return { kind: "diagram", safety, factor, largestWire: Number.POSITIVE_INFINITY, surface: service.surface };
  }
  const { amplitude, mean } = fatigue.strengths.value[service.surface];
  const { largestWire } = fatigue;
  return { kind: "endured", safety, factor, largestWire, line, amplitude, mean, ultimateShear: fatigue.ultimateShear.value };
}

/** The windows, from tolerances as from freedom: what the maker delivers must lie in them either way. */
function loadWindowsOf({ load }: Brief): LoadWindow[] {
  const isWindow = ({ force }: { readonly force: Quantity }) => (force.min ?? 0) < (force.max ?? 0);
  const span = ({ min, max }: Quantity): Span => ({ min: min as number, max: max as number });
  const points = load.kind === "points" ? load.points : load.kind === "rateAndPoint" ? [load.point] : [];
  if (load.kind === "forceAtDeflection" && isWindow(load)) {
    return [{ name: "loaded", deflection: load.deflection, ...span(load.force) }];
  }
  return points.filter(isWindow).map(({ name, length, force }) => ({ name, length, ...span(force) }));
}

function insideDiameterAsked(brief: Brief): Span {
  const stated = spanOf(brief.envelope.insideDiameter);
  return { min: Math.max(stated.min, overRod(brief)), max: stated.max };
}

function overRod({ envelope: { rod, clearance } }: Brief): number {
  return rod === undefined ? 0 : rod + clearanceOf(clearance, rod);
}

function clearanceOf(clearance: Clearance | undefined, diameter: number): number {
  if (clearance === undefined) return 0;
  return "length" in clearance ? clearance.length : clearance.share * diameter;
}
