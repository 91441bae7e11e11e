import type { Brief, CautionName, Design, Dimension, LimitName, MeritName, PracticeName, WarningName } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { show, unitLabel } from "../../units/show.ts";

/** The figures of a design that are numbers. */
export type FigureName = { [K in keyof Design]-?: Design[K] extends number | null ? K : never }[keyof Design];

/** How outputs name one figure, and what it measures. */
interface FigureWords {
  readonly label: string;
  readonly dimension: Dimension;
  /** What the figure is, one plain sentence. */
  readonly sentence: string;
}

const figure = (label: string, dimension: Dimension, sentence: string): FigureWords => ({ label, dimension, sentence });

/** Every figure of a design, in the order in which outputs list them. */
export const figureWords: Readonly<Record<FigureName, FigureWords>> = {
  rank: figure("rank", "number", "Place in the order that the brief asks for, 1 being the best."),
  wireDiameter: figure("wire diameter", "length", "Nominal diameter of the wire."),
  totalTurns: figure("total turns", "number", "Turns of wire, closed ends counted."),
  activeTurns: figure("active turns", "number", "Turns that deflect."),
  meanDiameter: figure("mean diameter", "length", "Diameter of the coil at the middle of the wire."),
  outsideDiameter: figure("outside diameter", "length", "Diameter over the coil as wound, without tolerance."),
  insideDiameter: figure("inside diameter", "length", "Diameter inside the coil as wound, without tolerance."),
  index: figure("index", "number", "Mean diameter over wire diameter."),
  rate: figure("rate", "rate", "Force added for each unit of deflection."),
  freeLength: figure("free length", "length", "Length without load."),
  solidLength: figure("solid length", "length", "Length with all coils touching."),
  pitch: figure("pitch", "length", "Distance from coil to coil along the axis, free, in the active turns."),
  pitchAngle: figure("pitch angle", "angle", "Slope of the coils at the mean diameter."),
  coilGap: figure("gap between coils", "length", "Clear distance between neighbouring active coils, free."),
  wireLength: figure("wire length", "length", "Length of wire in one spring."),
  mass: figure("mass", "mass", "Mass of one spring."),
  relativeCost: figure(
    "relative cost",
    "number",
    "Mass in kilograms times the relative cost of the material, or times the price of the wire.",
  ),
  forceAtSolid: figure("force at solid", "force", "Force that presses all coils together."),
  stressFactor: figure("stress factor", "number", "Factor on torsional stress for the curvature and direct shear of the wire."),
  stressAtSolid: figure("stress at solid", "stress", "Shear stress in the wire, factor included, with all coils touching."),
  solidSafety: figure("safety at solid", "number", "Allowable shear stress over the shear stress at solid."),
  workingSafety: figure("working safety", "number", "Allowable shear stress over the shear stress at the largest working force."),
  bucklingDeflection: figure("buckles at", "length", "Deflection at which the spring bows sideways between its seats."),
  surgeFrequency: figure("surge frequency", "frequency", "Lowest natural frequency of the coils between their seats."),
  outsideDiameterAtSolid: figure(
    "outside diameter at solid",
    "length",
    "Diameter over the coil once pressed solid, grown from the free one.",
  ),
  fatigueSafety: figure("fatigue safety", "number", "Safety in cyclic load."),
  shearModulus: figure("shear modulus", "stress", "Modulus of rigidity of the wire, from the material's table."),
  youngsModulus: figure("Young's modulus", "stress", "Modulus of elasticity of the wire, from the material's table."),
  tensileStrength: figure("tensile strength", "stress", "Strength of the wire at this size, as its basis says."),
  density: figure("density", "density", "Density of the wire."),
};

/** What stands in place of a figure that is null. */
export const absentWords: Readonly<Partial<Record<FigureName, string>>> = {
  bucklingDeflection: "never",
  fatigueSafety: "static duty",
};

/** How outputs name one limit, and what they say of it. */
export interface LimitWords {
  readonly label: string;
  /** What the limit holds the spring to. */
  readonly sentence: string;
  /** What gives it more room. */
  readonly raise: string;
}

const limit = (label: string, sentence: string, raise: string): LimitWords => ({ label, sentence, raise });

/** Every limit, in the order in which a candidate falls. */
export const limitWords: Readonly<Record<LimitName, LimitWords>> = {
  wire: limit(
    "wire",
    "The material is made in this size and the series is sold in this material.",
    "Choose a series sold in the material, or a material made in these sizes.",
  ),
  temperature: limit("temperature", "The material bears the service temperature.", "A material for higher temperature."),
  turns: limit("turns", "Active turns lie within their window.", "A wider window of turns; other wire sizes or diameters."),
  solidLength: limit("solid length", "The solid length lies within its window.", "Fewer turns or thinner wire."),
  index: limit("index", "The index lies within the window that can be wound well.", "A wider window of index; other wire sizes."),
  outsideDiameter: limit(
    "outside diameter",
    "The coil fits its bore when pressed solid, or its stated outside diameter as wound.",
    "A larger bore or less clearance.",
  ),
  insideDiameter: limit(
    "inside diameter",
    "The coil clears its rod, or keeps its stated inside diameter.",
    "A smaller rod or less clearance.",
  ),
  rate: limit("rate", "The rate lies within what the loads ask.", "Wider load or rate tolerances."),
  freeLength: limit("free length", "The free length lies within its window.", "A longer free length."),
  pitch: limit("pitch", "Coils of the free spring do not overlap.", "A longer free length or fewer turns."),
  hotForce: limit(
    "force at temperature",
    "Forces lie within their windows at the service temperature too.",
    "Wider force windows, or a material whose modulus falls less with heat.",
  ),
  clash: limit(
    "clash allowance",
    "Room is left before solid at the largest working deflection.",
    "A longer shortest length, thinner wire, fewer turns, or a smaller allowance.",
  ),
  workingStress: limit(
    "working stress",
    "Shear stress at the largest working force stays below its limit.",
    "Stronger or thicker wire, or a smaller index.",
  ),
  solidStress: limit(
    "solid stress",
    "Shear stress stays within the allowable share of strength with all coils touching.",
    "Stronger or thicker wire, removed set, or a smaller design factor.",
  ),
  fatigue: limit("fatigue", "The spring bears its cycles.", "Less difference between the loads, or peened wire."),
  buckling: limit(
    "buckling",
    "The spring stays straight between its seats at the largest working deflection.",
    "A larger diameter, a shorter spring, stiffer seats, or a guide.",
  ),
  surge: limit(
    "surge",
    "The natural frequency is a stated multiple of the frequency of work.",
    "Thicker wire, fewer turns, a smaller diameter, or a slower machine.",
  ),
  loadTolerance: limit("load tolerance", "A maker can hold the load tolerances.", "Wider tolerances."),
};

/** Every figure that designs can be ranked by; the smallest first, safety at solid the largest first. */
export const meritWords: Readonly<Record<MeritName, FigureWords>> = {
  mass: figureWords.mass,
  outsideDiameter: figureWords.outsideDiameter,
  relativeCost: figureWords.relativeCost,
  freeLength: figureWords.freeLength,
  solidSafety: figureWords.solidSafety,
};

/** What to watch in one design that passes. */
export const cautionWords: Readonly<Record<CautionName, string>> = {
  steepPitch: "The pitch angle is above 12°: hard to wind, and the formulas lose accuracy (common practice, no source).",
  thinGround: "Ends are ground on wire under 0.5 mm: few makers grind it (common practice, no source).",
  bucklesBeforeSolid: "The spring would buckle before it is solid, though not in work.",
  bucklesInWork: "The spring buckles in work.",
  strengthFromMemory: "The strength of this wire is from memory: no copy of its standard was read.",
  strengthInferred: "The strength of this wire is inferred from printed rows of its standard: its own row was not read.",
  lifeFromMemory:
    "Fatigue is judged by shares of strength for a life that are from memory (Spring Manufacturers Institute); of hardened and tempered wire they mean valve spring wire alone.",
  askRelaxation:
    "At this heat and stress it loses load in time, and how much is not known: ask the maker for the percent lost at the service temperature, at the stress of the largest load, after the hours in service (half way to the highest temperature and to the allowable stress: common practice, no source).",
  mayTouchBore: "Pressed solid at the largest diameter of its tolerance, the spring may touch the bore less its clearance.",
  mayTouchRod: "At the smallest diameter of its tolerance, the spring may touch the rod with its clearance.",
  noGradeHolds: "No grade of the practice's tolerances keeps the forces inside their windows: ask the maker for closer ones.",
  tolerancesNotKnown:
    "The practice's tolerance tables do not reach this spring, so whether its forces stay inside their windows is not known: ask the maker.",
};

/** What to know of the whole result. */
export const warningWords: Readonly<Record<WarningName, string>> = {
  noStressLimit: "No stress limit is active: nothing here keeps the wire from yielding.",
  fatigueNotJudged: "The load is cyclic and fatigue was not judged: nothing here says that the spring lasts.",
  beyondFatigueLife:
    "More cycles are asked than the ten million that fatigue data come from: springs have broken later than that.",
  hotForceNotJudged:
    "Forces at the service temperature were not judged: limits.hotForce is off, or how the modulus of a material falls is not known.",
  scatterUnknown:
    "The tables of tolerances do not reach some of these springs, so none were drawn about them: state tolerances in service.scatter.",
};

/** The two practices, as pages name them. */
export const practiceWords: Readonly<Record<PracticeName, string>> = {
  handbook: "handbook practice",
  en13906: "EN 13906-1",
};

/** The line that ends every output. */
export const screeningWords = "Screening only: verify with the spring maker and the governing standard.";

/** What holds for every nested pair, whatever its figures. */
export const nestedCautions: readonly string[] = [
  "Wind the springs in opposite hands, here the outer right and the inner left, so that their coils cannot lock into each other.",
  "Guide both on their seats, so that neither leans on the other (common practice, no source).",
  "Where they touch they wear: look at both after some service (common practice, no source).",
];

/** What holds for every spring of this kind, whatever its figures. */
export const generalCautions: readonly string[] = [
  "A compressed spring stores energy. Hold it captive before it is loaded, assembled or taken out, and shield eyes and hands.",
  "These figures screen designs by published formulas. They are no release for production, and no spring was tested.",
  "Where the governing standard, a local code or a contract says otherwise, that text holds.",
  "Have a licensed engineer or the spring maker verify the design before anyone depends on it.",
  "Relaxation, corrosion, hydrogen embrittlement, eccentric load and impact are not judged here.",
];

/** Figures of one spring in the order in which an engineer checks them. */
export const CHOSEN_FIGURES: readonly FigureName[] = [
  "wireDiameter",
  "meanDiameter",
  "outsideDiameter",
  "insideDiameter",
  "outsideDiameterAtSolid",
  "index",
  "totalTurns",
  "activeTurns",
  "freeLength",
  "solidLength",
  "pitch",
  "rate",
  "forceAtSolid",
  "stressAtSolid",
  "solidSafety",
  "workingSafety",
  "tensileStrength",
  "bucklingDeflection",
  "surgeFrequency",
  "wireLength",
  "mass",
  "relativeCost",
];

/** The words of a figure with its unit. */
export interface FigureWordsOfBrief extends FigureWords {
  readonly unit: string;
}

/** What the prices of a brief's wires are in: empty where no stock names it; null where wires have no price, and cost is a proxy. */
export function currencyOf({ sweep: { wires } }: Brief): string | null {
  const priced = wires.every((series) => series.wires.every(({ price }) => price !== undefined));
  return priced ? oneLine(wires[0]?.currency ?? "") : null;
}

/**
 * How outputs of one brief name a figure: where every wire has a price, cost is money and no proxy.
 *
 * @param name   the figure
 * @param brief  the requirement
 */
export function figureWordsIn(name: FigureName, brief: Brief): FigureWordsOfBrief {
  const words = figureWords[name];
  const currency = name === "relativeCost" ? currencyOf(brief) : null;
  if (currency === null) return { ...words, unit: unitLabel(words.dimension, brief.units) };
  const sentence = "Mass times the price of the wire in its stock, with what operations are stated to add: no quotation.";
  return { label: "cost", dimension: words.dimension, sentence, unit: currency };
}

/** A figure with its unit, as a reader of the brief would write it; costs in the money of the stock, where that is named. */
export function showFigure(name: FigureName, value: number, brief: Brief): string {
  const shown = show(value, figureWords[name].dimension, brief.units);
  const currency = name === "relativeCost" ? currencyOf(brief) : null;
  return currency ? `${shown} ${currency}` : shown;
}

/** A figure with its value, such as "a mass of 5.843 g" and "an outside diameter of 12 mm". */
export function figureWithValue(name: FigureName, value: number, brief: Brief): string {
  const { label } = figureWordsIn(name, brief);
  return `${/^[aeiou]/.test(label) ? "an" : "a"} ${label} of ${showFigure(name, value, brief)}`;
}
