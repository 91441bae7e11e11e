import type {
  Brief,
  Design,
  Dimension,
  FatigueLine,
  LimitName,
  Limits,
  MaterialClass,
  OperationCosts,
  PointTolerance,
  Spread,
  ToleranceGrade,
  Units,
} from "../../model.ts";
import { lifeFractions } from "../../practice/choices.ts";
import { practices } from "../../practice/practices.ts";
import { show, unitLabel } from "../../units/show.ts";
import { fatigueDiagram } from "../drawing/fatigue-diagram.ts";
import { currencyOf, figureWords, warningWords } from "../text/labels.ts";
import { countWords } from "../text/rejections.ts";
import { freeLengthRangeNumbers, gradeWords, lossWords, relaxationAsked, toleranceSentence } from "../text/spring-summary.ts";
import { drawnWords, fallLabel, yieldCautions, yieldUnknown, yieldWords } from "../text/yield.ts";

/** Figures of one spring that belong together, in the reader's units and ready to show. */
export interface Facts {
  readonly heading: string;
  readonly entries: readonly (readonly [label: string, text: string])[];
  /** Heads without the one above the labels, and rows that each begin with a label. */
  readonly table?: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** An SVG element as text. */
  readonly picture?: string;
  readonly notes: readonly string[];
}

/**
 * How far its free length may move, what one spring does in cyclic duty and at its service temperature, what its maker may miss by,
 * and the parts of its cost.
 *
 * @param brief   the brief that it answers
 * @param design  the spring
 * @returns only what applies; does not throw
 */
export function springFacts(brief: Brief, design: Design): Facts[] {
  return [freeLengthFacts, cyclicFacts, heatFacts, toleranceFacts, scatterFacts, costFacts]
    .map((factsOf) => factsOf(brief, design))
    .filter((facts) => facts !== null);
}

/** The same for a page; null where the free length cannot move. */
function freeLengthFacts(brief: Brief, design: Design): Facts | null {
  const numbers = freeLengthRangeNumbers(design, brief.units);
  if (numbers === null) return null;
  return {
    heading: "Free length",
    entries: [
      ["as reported", show(design.freeLength, "length", brief.units)],
      ["every limit holds at", `${numbers} ${unitLabel("length", brief.units)}`],
    ],
    notes: ["Within this range a maker may adjust the free length; forces at lengths move with it."],
  };
}

const LINES: Readonly<Record<Exclude<FatigueLine, "life">, string>> = {
  goodman: "a Goodman line",
  gerber: "a Gerber line",
  sines: "Sines's rule",
};

/** The stresses of a spring between its least and its greatest force, and how fatigue was judged; null in static duty. */
function cyclicFacts(brief: Brief, design: Design): Facts | null {
  const { cyclic, fatigueSafety } = design;
  const { units, limits } = brief;
  if (cyclic === null) return null;
  const entry = (label: string, value: number, dimension: Dimension) => [label, show(value, dimension, units)] as const;
  const judged = fatigueSafety !== null && limits.fatigue !== "off";
  const picture = fatigueDiagram(brief, design);
  return {
    heading: "Cyclic duty",
    entries: [
      ...(brief.service.cycles === undefined ? [] : [["cycles asked", countWords(brief.service.cycles)] as const]),
      entry("least force", cyclic.leastForce, "force"),
      entry("greatest force", cyclic.greatestForce, "force"),
      entry("stress amplitude", cyclic.stressAmplitude, "stress"),
      entry("mean stress", cyclic.meanStress, "stress"),
      judged ? entry(figureWords.fatigueSafety.label, fatigueSafety, "number") : [figureWords.fatigueSafety.label, "not judged"],
    ],
    ...(picture === null ? {} : { picture }),
    notes: [
      "Both stresses carry the factor for the curvature of the wire.",
      judged ? judgedSentence(brief, design, limits.fatigue) : warningWords.fatigueNotJudged,
      ...(picture === null
        ? []
        : ["In the picture the dot is this spring, rings are the data, and the broken line is how its stress may grow."]),
    ],
  };
}

function judgedSentence(
  { practice, service, sweep, units }: Brief,
  { material }: Design,
  { safety, line }: Exclude<Limits["fatigue"], "off">,
): string {
  const least = `at least ${show(safety, "number", units)} is asked`;
  const { fatigue } = practices[practice];
  if (fatigue.kind === "endured") {
    if (line === "life") {
      const kind = sweep.materials.find(({ name }) => name === material)?.class as MaterialClass;
      const percent = show(lifeFractions(fatigue, service)[kind], "share", units);
      const endured = `${percent} of tensile strength, which ${service.surface} springs endure from nothing for these cycles`;
      return `Held against ${endured} (${fatigue.life.source}), by a Goodman line; ${least}.`;
    }
    const endured = "what springs endured (Zimmerli, as quoted in Shigley eq. 10-28 and 10-29)";
    return `Held against ${endured}, ${service.surface}, by ${LINES[line]}; ${least}.`;
  }
  const source = sweep.materials.find(({ name }) => name === material)?.fatigue?.source;
  const data = source === undefined ? "the material's own data" : `the material's own data (${source})`;
  return `Held against the diagram of ${data}, ${service.surface}; ${least}.`;
}

/** A spring at its service temperature beside the spring as wound and tested; null where no temperature is given. */
function heatFacts({ units }: Brief, design: Design): Facts | null {
  const { hot: atTemperature, points } = design;
  if (atTemperature === null) return null;
  const lost = lossWords(atTemperature, units) ?? `not known for this material: ask for ${relaxationAsked(design, units)}`;
  const row = (label: string, cold: number, warm: number | null, dimension: Dimension) =>
    warm === null ? [] : [[label, show(cold, dimension, units), show(warm, dimension, units)]];
  const rows = [
    ...row(figureWords.shearModulus.label, design.shearModulus, atTemperature.shearModulus, "stress"),
    ...row(figureWords.youngsModulus.label, design.youngsModulus, atTemperature.youngsModulus, "stress"),
    ...row(figureWords.rate.label, design.rate, atTemperature.rate, "rate"),
    ...points.flatMap(({ name, force }, i) => row(`force at ${name}`, force, atTemperature.forces[i] ?? null, "force")),
  ];
  const at = show(atTemperature.temperature, "temperature", units);
  return {
    heading: `At ${at}`,
    ...(rows.length > 0 ? { table: { heads: ["as tested", `at ${at}`], rows } } : {}),
    entries: [["load lost in time (relaxation)", lost]],
    notes: [
      atTemperature.modulusSource === null
        ? "How the moduli fall with heat is not known for this material."
        : `How the moduli fall: ${atTemperature.modulusSource}.`,
      ...(atTemperature.relaxation === null
        ? []
        : ["Read from a published point at least as hot and as stressed, after the longest time of such points."]),
    ],
  };
}

const UNKNOWN = "not in its tables";

/** What the maker of a spring may miss by, the room that this leaves, and the worst case. */
function toleranceFacts(brief: Brief, design: Design): Facts {
  const { units } = brief;
  const { tolerance } = design;
  const { wireDiameter, coilDiameter, freeLength, coarsestGrade, boreRoom, rodRoom } = tolerance;
  const plusMinus = (value: number | null) => (value === null ? UNKNOWN : `± ${show(value, "length", units, 3)}`);
  const hasWorst = tolerance.points.some(({ leastForce }) => leastForce !== null);
  return {
    heading: "Manufacturing tolerances",
    entries: [
      ["wire diameter", plusMinus(wireDiameter)],
      ["coil diameter", plusMinus(coilDiameter)],
      ["free length", plusMinus(freeLength)],
      ...(boreRoom === undefined ? [] : [["left in the bore beyond its clearance", roomWords(boreRoom, units)] as const]),
      ...(rodRoom === undefined ? [] : [["left over the rod beyond its clearance", roomWords(rodRoom, units)] as const]),
      ...(coarsestGrade === undefined ? [] : [["coarsest grade that keeps every force", coarsestWords(coarsestGrade)] as const]),
    ],
    ...(tolerance.points.length === 0 ? {} : { table: forceTable(tolerance.points, hasWorst, units) }),
    notes: [
      toleranceSentence(brief, design),
      ...(hasWorst
        ? ["Worst case: every dimension and the modulus at its wrong end at once. It says what is possible, not what is likely."]
        : []),
    ],
  };
}

function coarsestWords(grade: ToleranceGrade | "notKnown" | null): string {
  if (grade === null) return "none";
  return grade === "notKnown" ? UNKNOWN : gradeWords(grade);
}

/** Room with the coil at the wrong end of its tolerance. */
function roomWords(room: number | null, units: Units): string {
  if (room === null) return UNKNOWN;
  return room < 0 ? `${show(-room, "length", units, 3)} too little` : show(room, "length", units, 3);
}

function forceTable(points: readonly PointTolerance[], hasWorst: boolean, units: Units): NonNullable<Facts["table"]> {
  const force = (value: number) => show(value, "force", units);
  const worst = ({ leastForce, greatestForce }: PointTolerance) =>
    leastForce === null || greatestForce === null ? UNKNOWN : `${force(leastForce)} to ${force(greatestForce)}`;
  return {
    heads: ["by grade", ...(hasWorst ? ["worst case"] : [])],
    rows: points.map((point) => [
      `force at ${point.name}`,
      point.force === null ? UNKNOWN : `± ${show(point.force, "force", units, 3)}`,
      ...(hasWorst ? [worst(point)] : []),
    ]),
  };
}

/** What springs drawn about one design do; null where none are drawn. */
function scatterFacts({ service, units }: Brief, { scatter }: Design): Facts | null {
  if (service.scatter === undefined || scatter === undefined) return null;
  const heading = "Variation";
  if (scatter === null) return { heading, entries: [["yield", yieldUnknown]], notes: [] };
  const row = (label: string, dimension: "force" | "rate", { mean, standardDeviation, least, greatest }: Spread) => [
    label,
    show(mean, dimension, units),
    show(standardDeviation, dimension, units, 3),
    `${show(least, dimension, units)} to ${show(greatest, dimension, units)}`,
  ];
  return {
    heading,
    entries: [
      ["yield: meet every force window and limit", yieldWords(scatter, units)],
      ...Object.entries(scatter.falls).map(
        ([name, count]) => [`fall first at ${fallLabel(name as LimitName)}`, countWords(count)] as const,
      ),
    ],
    table: {
      heads: ["mean", "standard deviation", "least and greatest"],
      rows: [...scatter.forces.map((force) => row(`force at ${force.name}`, "force", force)), row("rate", "rate", scatter.rate)],
    },
    notes: [drawnWords(service.scatter, scatter, units), ...yieldCautions(scatter)],
  };
}

const OPERATIONS: Readonly<Record<keyof OperationCosts, string>> = {
  grind: "grinding the ends",
  set: "removing set",
  peen: "shot peening",
  relieve: "relieving stress",
};

/** The parts of a spring's cost proxy; null where no operation weighs anything, for then it is that of the wire. */
export function costFacts(brief: Brief, { costParts, relativeCost }: Design): Facts | null {
  const number = (value: number) => show(value, "number", brief.units);
  const currency = currencyOf(brief);
  const operations = (Object.keys(OPERATIONS) as (keyof OperationCosts)[]).filter((name) => costParts[name] > 0);
  if (operations.length === 0) return null;
  return {
    heading: currency === null ? "Parts of the relative cost" : `Parts of the cost${currency && `, ${currency}`}`,
    entries: [
      ["wire", number(costParts.wire)],
      ...operations.map((name) => [OPERATIONS[name], number(costParts[name])] as const),
      ["together", number(relativeCost)],
    ],
    notes: [
      currency === null
        ? "A proxy to compare springs by, in kilograms of hard-drawn wire: no quotation."
        : "At the price of the wire and the weights stated for operations: no quotation.",
    ],
  };
}
