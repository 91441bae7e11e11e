import type {
  Brief,
  ClashAllowance,
  Clearance,
  EndStyle,
  FatigueLine,
  LimitName,
  MaterialClass,
  OperationCosts,
  Service,
  Span,
  StressFactorName,
  StressLimit,
  ToleranceGrade,
} from "../../model.ts";
import { lifeFractions, type Practice } from "../../practice/choices.ts";
import { practices } from "../../practice/practices.ts";
import {
  type FreeLengthAim,
  type FreeLengthRule,
  freeLengthAimOf,
  freeLengthRuleOf,
  type LoadWindow,
  loadWindowsOf,
  rateAllowed,
  rateAsked,
  type Situation,
  situationOf,
  spanOf,
} from "./load.ts";

/** The requirements of a brief as plain numbers, computed once; open ends are 0 and Infinity. All SI. */
export interface Requirements {
  readonly practice: Practice;
  /** True for one given spring: no construction has satisfied anything, so all is judged. */
  readonly given: boolean;
  readonly situation: Situation;
  /** The one rate that the load fixes, N/m; null where it leaves a window. */
  readonly pinnedRate: number | null;
  readonly rate: Span;
  readonly freeLengthRule: FreeLengthRule;
  readonly freeLengthAim: FreeLengthAim;
  /** What reported free lengths are multiples of where the range holds one, m; null: not asked. */
  readonly freeLengthStep: number | null;
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
  readonly peened: boolean;
  /** Weights of operations that the brief states. */
  readonly cost: Partial<OperationCosts>;
  readonly fixity: number;
  /** True where the far end is on no seat and swings with the coils. */
  readonly endFree: boolean;
  readonly bucklingSafety: number | null;
  /** Least natural frequency, Hz; null where not asked. */
  readonly surge: number | null;
  /** Service temperature that the material must bear, K; null where not given or lifted. */
  readonly temperature: number | null;
  /** Length at the least load in cyclic duty, m; NaN where the load goes back to nothing. */
  readonly longestLength: number;
  readonly fatigue: FatigueRequirement | null;
  /** Stress factor of the stresses at load points. */
  readonly pointFactor: StressFactorName;
  /** Force windows that a maker must hit. */
  readonly loadWindows: readonly LoadWindow[];
  /** Those of them that must hold at the service temperature too. */
  readonly windowsAtTemperature: readonly LoadWindow[];
  /** The temperature at which they must, K; null where there are none. */
  readonly temperatureOfWindows: number | null;
  /** True where some end style lets coils overlap in a spring that is not yet solid. */
  readonly coilsMayOverlap: boolean;
  readonly loadTolerance: ToleranceGrade | null;
  readonly lifted: ReadonlySet<LimitName>;
}

/** Cyclic duty judged by strengths that springs endured, for ever or for a life, or by the diagram of the material's own data. */
export type FatigueRequirement = { readonly safety: number; readonly factor: StressFactorName; readonly largestWire: number } & (
  | {
      readonly kind: "endured";
      readonly line: Exclude<FatigueLine, "life">;
      readonly amplitude: number;
      readonly mean: number;
      readonly ultimateShear: number;
    }
  | {
      readonly kind: "life";
      /** Largest stress from nothing, as a share of tensile strength. */
      readonly fractions: Readonly<Record<MaterialClass, number>>;
      readonly ultimateShear: number;
    }
  | { readonly kind: "diagram"; readonly surface: Service["surface"] }
);

/** True where the load pins the rate and turns are counted: each family has one mean diameter, solved for. */
export function isSolved({ pinnedRate, turnsAny }: Requirements): boolean {
  return pinnedRate !== null && !turnsAny;
}

/** Index below which and above which nothing is wound, whatever the brief says. */
export const WOUND_INDEX: Span = { min: 2, max: 25 };

/**
 * Resolve the requirements that a brief makes of every candidate.
 *
 * @param brief  a resolved brief
 * @param given  true for one given spring, whose rate and free length are its own
 * @returns plain numbers for the limits; does not throw, leaves the brief unchanged
 */
export function resolveRequirements(brief: Brief, given = false): Requirements {
  const { limits, service, envelope, sweep } = brief;
  const practice = practices[brief.practice];
  const lifted = liftedBy(brief);
  const setRemoved = service.set === "removed";
  const stressFactor = (setRemoved ? practice.stressFactor.setRemoved : practice.stressFactor.asWound).value;
  const rate = given ? { pinned: null, span: rateAllowed(brief) } : rateAsked(brief);
  const freeLengthRule = freeLengthRuleOf(brief);
  const index = limits.index === "off" ? WOUND_INDEX : spanOf(limits.index);
  const loadWindows = loadWindowsOf(brief);
  const windowsAtTemperature = service.temperature === undefined || lifted.has("hotForce") ? [] : loadWindows;
  return {
    practice,
    given,
    situation: situationOf(brief, rate.pinned),
    pinnedRate: rate.pinned,
    rate: rate.span,
    freeLengthRule,
    freeLengthAim: freeLengthAimOf(brief),
    freeLengthStep: sweep.freeLength?.step ?? null,
    shortestLength: freeLengthRule.kind === "points" ? Math.min(...freeLengthRule.lengths) : Number.NaN,
    turnsAny: sweep.turns === "any" && !given,
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
    peened: service.surface === "peened",
    cost: brief.cost,
    fixity: practice.fixity.value[service.seats],
    endFree: service.farEnd === "free",
    bucklingSafety: limits.buckling === "off" || service.seats === "guided" ? null : limits.buckling.safety,
    surge: limits.surge === "off" || service.frequency === undefined ? null : limits.surge.multiple * service.frequency,
    temperature: service.temperature === undefined || lifted.has("temperature") ? null : service.temperature,
    longestLength:
      freeLengthRule.kind === "points" && freeLengthRule.lengths.length > 1 ? Math.max(...freeLengthRule.lengths) : Number.NaN,
    fatigue: fatigueAsked(brief, practice),
    pointFactor: service.cycles === undefined ? stressFactor : practice.fatigue.factor.value,
    loadWindows,
    windowsAtTemperature,
    temperatureOfWindows: windowsAtTemperature.length > 0 ? (service.temperature ?? null) : null,
    coilsMayOverlap: sweep.ends.some((ends) => mayOverlap(ends, practice)),
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

/** Whether coils of an end style may overlap in a spring longer than its solid length; in none of the styles that are shipped. */
function mayOverlap(ends: EndStyle, { solidLength }: Practice): boolean {
  const turns = 10;
  return turns + ends.pitchTurns + ends.pitchWires > solidLength(turns + ends.deadTurns, ends, 1, 1) + 1e-9;
}

const OPEN: Span = { min: 0, max: Number.POSITIVE_INFINITY };

function fatigueAsked({ limits, service }: Brief, { fatigue }: Practice): FatigueRequirement | null {
  if (service.cycles === undefined || limits.fatigue === "off") return null;
  const { safety, line } = limits.fatigue;
  const factor = fatigue.factor.value;
  if (fatigue.kind === "diagram") {
    return { kind: "diagram", safety, factor, largestWire: Number.POSITIVE_INFINITY, surface: service.surface };
  }
  const ultimateShear = fatigue.ultimateShear.value;
  if (line === "life") {
    const fractions = lifeFractions(fatigue, service);
    return { kind: "life", safety, factor, largestWire: Number.POSITIVE_INFINITY, fractions, ultimateShear };
  }
  const { amplitude, mean } = fatigue.strengths.value[service.surface];
  return { kind: "endured", safety, factor, largestWire: fatigue.largestWire, line, amplitude, mean, ultimateShear };
}

function insideDiameterAsked(brief: Brief): Span {
  const stated = spanOf(brief.envelope.insideDiameter);
  return { min: Math.max(stated.min, overRod(brief)), max: stated.max };
}

function overRod({ envelope: { rod, clearance } }: Brief): number {
  return rod === undefined ? 0 : rod + clearanceOf(clearance, rod);
}

/** What a clearance takes from a diameter, or adds to it, m. */
export function clearanceOf(clearance: Clearance | undefined, diameter: number): number {
  if (clearance === undefined) return 0;
  return "length" in clearance ? clearance.length : clearance.share * diameter;
}
