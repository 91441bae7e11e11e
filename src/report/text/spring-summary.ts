import type { Brief, CautionName, Design, HotFigures, PracticeName, ToleranceGrade, Units } from "../../model.ts";
import { show, showNumber, unitLabel } from "../../units/show.ts";
import { cautionWords, currencyOf, showFigure } from "./labels.ts";
import { scatterSentences } from "./yield.ts";

/**
 * What one spring does in cyclic duty, at temperature and at the ends of its tolerances, and what it costs by parts: sentences for
 * a terminal and a page. Only what the brief asks or what is known.
 *
 * @param brief   the requirement
 * @param design  one of its springs
 * @returns none or several sentences; does not throw
 */
export function dutySentences(brief: Brief, design: Design): string[] {
  return [
    ...freeLengthSentences(brief, design),
    ...cyclicSentence(brief, design),
    ...heatSentences(brief, design),
    ...toleranceSentences(brief, design),
    ...scatterSentences(brief, design),
    ...costSentence(brief, design),
  ];
}

function cyclicSentence({ units, limits }: Brief, { cyclic, fatigueSafety }: Design): string[] {
  if (cyclic === null) return [];
  const { leastForce, greatestForce, stressAmplitude, meanStress } = cyclic;
  const forces = `${show(leastForce, "force", units)} to ${show(greatestForce, "force", units)}`;
  const stresses = `${show(stressAmplitude, "stress", units)} about ${show(meanStress, "stress", units)}, corrected`;
  const line = limits.fatigue === "off" || !("line" in limits.fatigue) ? "" : ` (asked ${limits.fatigue.safety})`;
  const verdict =
    fatigueSafety === null ? "fatigue was not judged" : `fatigue safety ${show(fatigueSafety, "number", units)}${line}`;
  return [`Cyclic duty: ${forces}, stress ${stresses}; ${verdict}.`];
}

function heatSentences({ units }: Brief, { hot: atTemperature, points }: Design): string[] {
  if (atTemperature === null) return [];
  const at = show(atTemperature.temperature, "temperature", units);
  const { rate, shearModulus } = atTemperature;
  const forces = atTemperature.forces.flatMap((force, i) =>
    force === null ? [] : [`${show(force, "force", units)} at ${points[i]?.name}`],
  );
  const moduli =
    rate === null || shearModulus === null
      ? "how its moduli fall is not known for this material"
      : `shear modulus ${show(shearModulus / 1e3, "stress", units)
          .replace("MPa", "GPa")
          .replace("ksi", "Mpsi")}, rate ${show(rate, "rate", units)}, ${forces.join(", ")}`;
  const loss = lossWords(atTemperature, units);
  const relaxation = loss === null ? "relaxation is not known for this material" : `of its load it loses ${loss}`;
  return [`At ${at}: ${moduli}; ${relaxation}.`];
}

function toleranceSentences({ units }: Brief, { tolerance }: Design): string[] {
  const plusMinus = (value: number | null) => (value === null ? null : `± ${show(value, "length", units)}`);
  const parts = [
    ["wire", plusMinus(tolerance.wireDiameter)],
    ["coil diameter", plusMinus(tolerance.coilDiameter)],
    ["free length", plusMinus(tolerance.freeLength)],
    ...tolerance.points.map(({ name, force }) => [
      `force at ${name}`,
      force === null ? null : `± ${show(force, "force", units)}`,
    ]),
  ];
  const known = parts.flatMap(([label, text]) => (text === null ? [] : [`${label} ${text}`]));
  if (known.length === 0) return [];
  const worst = tolerance.points.flatMap(({ name, leastForce, greatestForce }) =>
    leastForce === null || greatestForce === null
      ? []
      : [`${show(leastForce, "force", units)} to ${show(greatestForce, "force", units)} at ${name}`],
  );
  return [
    `Tolerances ${ofGrade(tolerance.grade)}: ${known.join(", ")}.`,
    ...(worst.length > 0
      ? [`Worst case, every dimension at its wrong end at once, which is no likely spread: ${worst.join(", ")}.`]
      : []),
    ...(tolerance.coarsestGrade === undefined || tolerance.coarsestGrade === null || tolerance.coarsestGrade === "notKnown"
      ? []
      : [`The coarsest tolerances that keep the force windows are those ${ofGrade(tolerance.coarsestGrade)}.`]),
  ];
}

/** A grade as part of a sentence. */
function ofGrade(grade: ToleranceGrade): string {
  return grade === "commercial" ? "of the commercial tables" : `of ${gradeWords(grade)}`;
}

function costSentence(brief: Brief, { costParts, relativeCost }: Design): string[] {
  const { wire, ...operations } = costParts;
  const weights = Object.entries(operations).filter(([, weight]) => weight > 0);
  if (weights.length === 0) return [];
  const number = (value: number) => String(Number(value.toPrecision(4)));
  const added = weights.map(([name, weight]) => `${name} ${number(weight)}`);
  const label = currencyOf(brief) === null ? "Relative cost" : "Cost";
  return [`${label} ${showFigure("relativeCost", relativeCost, brief)}: wire ${number(wire)}, ${added.join(", ")}.`];
}

/** Two free lengths nearer than this share are one. */
const SAME = 1e-6;

/** The free lengths at which every limit holds, without their unit, as "55.9 to 57.7"; null where there is only one, or none. */
export function freeLengthRangeNumbers({ freeLengthRange: range }: Design, units: Units): string | null {
  if (range === null || range.max - range.min <= SAME * range.max) return null;
  return `${showNumber(range.min, "length", units)} to ${showNumber(range.max, "length", units)}`;
}

/** How far the free length of a spring may move, in one sentence or none. */
function freeLengthSentences(brief: Brief, design: Design): string[] {
  const numbers = freeLengthRangeNumbers(design, brief.units);
  return numbers === null ? [] : [`Every limit holds at a free length of ${numbers} ${unitLabel("length", brief.units)}.`];
}

/** What a maker is to be asked of relaxation: percent lost at a temperature and a stress, after a time. */
export function relaxationAsked({ hot: atTemperature, points }: Pick<Design, "hot" | "points">, units: Units): string {
  const stress = show(Math.max(...points.map((point) => point.stress)), "stress", units);
  return `the percent lost at ${show(atTemperature?.temperature ?? Number.NaN, "temperature", units)} and ${stress} after the hours in service`;
}

/** Load lost in time, with that time; null where it is not known. */
export function lossWords({ relaxation, relaxationTime }: HotFigures, units: Units): string | null {
  if (relaxation === null) return null;
  const after = relaxationTime === undefined ? "" : ` after ${show(relaxationTime, "time", units)}`;
  return `at most ${show(relaxation, "share", units)}${after}`;
}

const NAMES: Readonly<Record<PracticeName, string>> = {
  handbook: "tables of the inch trade, for force a rule from memory",
  en13906: "EN 15800, for force and length from memory",
};

/**
 * By which grade of which tables the sheet's tolerances stand, and who chose it.
 *
 * @returns such as `Tolerances: grade 2 (EN 15800, …), the practice's usual; the brief asks none.`
 */
export function toleranceSentence({ practice, limits }: Brief, { tolerance }: Design): string {
  const chosen = limits.loadTolerance === "off" ? "the practice's usual; the brief asks none" : "as the brief asks";
  return `Tolerances: ${gradeWords(tolerance.grade)} (${NAMES[practice]}), ${chosen}.`;
}

/** A grade as a heading names it. */
export function gradeWords(grade: ToleranceGrade): string {
  return grade === "commercial" ? "commercial" : `grade ${grade}`;
}

/**
 * What to watch in springs that share a caution; of one that they buckle, at what deflection, and how far work presses them.
 *
 * @param name     the caution
 * @param designs  those that have it, at least one
 * @param units    the reader's
 * @returns one sentence; of several springs with the figures of the one that buckles first in its work
 */
export function cautionSentence(name: CautionName, designs: readonly Design[], units: Units): string {
  const sentence = cautionWords[name];
  if (name !== "bucklesBeforeSolid" && name !== "bucklesInWork") return sentence;
  const [first] = designs
    .map((design) => ({ buckles: design.bucklingDeflection ?? Number.POSITIVE_INFINITY, works: workingDeflection(design) }))
    .sort((a, b) => a.buckles / a.works - b.buckles / b.works);
  const { buckles, works } = first as NonNullable<typeof first>;
  const of = designs.length > 1 ? "the first of them " : "";
  const pressed = `where work presses it ${show(works, "length", units)}`;
  return `${sentence.slice(0, -1)}: ${of}at ${show(buckles, "length", units)}, ${pressed}.`;
}

/** Largest deflection in work, m; none of a spring that is too short to be pressed. */
function workingDeflection({ points }: Design): number {
  return Math.max(0, ...points.map(({ deflection }) => deflection));
}
