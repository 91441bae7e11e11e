import type { Confidence, Dimension, MaterialClass } from "../model.ts";

/**
 * What may stand at a key. `sections`: one section or a list of them; `list`: a list of sections; `pairs`: a list of two
 * quantities each; `texts`: a list of texts.
 */
export type CatalogKeyKind = "section" | "sections" | "list" | "pairs" | "text" | "texts" | "word" | "quantity";

/** What a quantity must be at least. */
export type Least = "above zero" | "zero or more";

/** Where a number may lie, SI, far beyond what is made or sold: outside is a slip of the pen. */
interface Plausible {
  readonly least: number;
  readonly greatest: number;
  /** The same as a message says it. */
  readonly words: string;
}

/** What a quantity measures, what it must be at least (above zero where nothing is said), and where it may lie. */
export interface QuantityRule {
  readonly dimension: Dimension;
  readonly least?: Least;
  readonly plausible: Plausible;
}

/** What is wrong with a value that lies where none can be; undefined where it does not. */
export function implausible(
  text: string,
  value: number,
  { least, greatest, words }: Plausible,
): { readonly code: string; readonly got: string; readonly want: string } | undefined {
  if (value >= least && value <= greatest) return undefined;
  return { code: "implausible", got: `${text} is not plausible`, want: `it lies from ${words} (a slip in its digits or unit?)` };
}

/** One key of a catalog file. */
export interface CatalogKey {
  /** From the top of an entry, without the places in lists, such as `moduli.youngsModulus`. */
  readonly path: string;
  readonly kind: CatalogKeyKind;
  /** A section that is there must have it. */
  readonly required?: true;
  /** Of a quantity. */
  readonly quantity?: QuantityRule;
  /** Of a list of pairs: first and second. */
  readonly pair?: readonly [QuantityRule, QuantityRule];
  /** Words allowed; the first stands where the key is left out. */
  readonly words?: readonly string[];
  /** What it means. */
  readonly sentence: string;
}

// Where each number may lie: common practice, no source. Each reaches far beyond the springs that are made.
const size: Plausible = { least: 1e-6, greatest: 1, words: "0.001 mm to 1 m" };
/** Of a tensile strength. */
export const strengthRange: Plausible = { least: 1e6, greatest: 1e10, words: "1 MPa to 10 GPa" };

const length: QuantityRule = { dimension: "length", plausible: size };
const modulus: QuantityRule = { dimension: "stress", plausible: { least: 1e8, greatest: 2e12, words: "0.1 GPa to 2000 GPa" } };
const stress: QuantityRule = { dimension: "stress", plausible: strengthRange };
const zeroStress: QuantityRule = {
  dimension: "stress",
  least: "zero or more",
  plausible: { ...strengthRange, least: 0, words: "0 MPa to 10 GPa" },
};
const deviation: QuantityRule = {
  dimension: "length",
  least: "zero or more",
  plausible: { least: 0, greatest: 0.01, words: "0 mm to 10 mm" },
};
const share: QuantityRule = { dimension: "share", plausible: { least: 0.01, greatest: 1, words: "1 % to 100 %" } };
const temperature: QuantityRule = { dimension: "temperature", plausible: { least: 50, greatest: 2000, words: "50 K to 2000 K" } };
const weight: QuantityRule = {
  dimension: "number",
  least: "zero or more",
  plausible: { least: 0, greatest: 1e9, words: "0 to 1e9" },
};
const turns: QuantityRule = {
  dimension: "number",
  least: "zero or more",
  plausible: { least: 0, greatest: 10, words: "0 to 10" },
};
const yesOrNo = ["false", "true"];

/** How a material is made, as its file says it. */
export const materialClasses = [
  "cold drawn",
  "hardened and tempered",
  "austenitic",
  "non-ferrous",
] as const satisfies readonly MaterialClass[];

/** How far a strength may be trusted, as its file says it. */
export const confidences = ["high", "medium", "low", "memory"] as const satisfies readonly Confidence[];

const confidence =
  "how far it may be trusted: high, printed and in sequence; medium, one maker's limits or an inference; low, a copy with defective cells; memory, no copy read";

/** Every key of a material's file, in the order in which a file is best read. */
export const materialKeys: readonly CatalogKey[] = [
  { path: "name", kind: "text", required: true, sentence: "how briefs and results name it" },
  { path: "source", kind: "text", required: true, sentence: "standard, edition and table that its figures are from" },
  {
    path: "density",
    kind: "quantity",
    required: true,
    quantity: { dimension: "density", plausible: { least: 500, greatest: 25_000, words: "500 kg/m^3 to 25000 kg/m^3" } },
    sentence: "mass for each volume",
  },
  {
    path: "moduli",
    kind: "sections",
    required: true,
    sentence: "one pair of moduli, or rows that each hold up to and including a diameter",
  },
  { path: "moduli.youngsModulus", kind: "quantity", required: true, quantity: modulus, sentence: "E, the larger of the two" },
  { path: "moduli.shearModulus", kind: "quantity", required: true, quantity: modulus, sentence: "G" },
  {
    path: "moduli.upTo",
    kind: "quantity",
    quantity: length,
    sentence: "the row holds up to this diameter; left out in the last",
  },
  { path: "modulusLoss", kind: "section", sentence: "how both moduli fall with heat; left out, forces when hot are not known" },
  {
    path: "modulusLoss.perKelvin",
    kind: "quantity",
    required: true,
    quantity: { dimension: "share", least: "zero or more", plausible: { least: 0, greatest: 0.01, words: "0 % to 1 %" } },
    sentence: "share that goes for each kelvin above 20 degC",
  },
  { path: "modulusLoss.source", kind: "text", required: true, sentence: "who published it" },
  { path: "strength", kind: "section", required: true, sentence: "tensile strength: minimum, fit, or constant with diameter" },
  { path: "strength.minimum", kind: "section", sentence: "the least that a standard guarantees, by diameter" },
  {
    path: "strength.minimum.between",
    kind: "word",
    required: true,
    words: ["interpolate", "next-row"],
    sentence: "what holds between rows: linear in the logarithm of the diameter, or the value of the next larger row",
  },
  {
    path: "strength.minimum.rows",
    kind: "pairs",
    pair: [length, stress],
    sentence: "diameter and strength as read, diameters rising",
  },
  {
    path: "strength.minimum.inferred",
    kind: "pairs",
    pair: [length, stress],
    sentence: "rows that were not read but follow from printed ones by a rule that the head of the file tells",
  },
  { path: "strength.minimum.confidence", kind: "word", words: confidences, sentence: confidence },
  { path: "strength.fit", kind: "sections", sentence: "a power law, or pieces that join, for checking against textbooks" },
  { path: "strength.fit.at", kind: "quantity", required: true, quantity: length, sentence: "the diameter at which value holds" },
  { path: "strength.fit.value", kind: "quantity", required: true, quantity: stress, sentence: "the strength at that diameter" },
  {
    path: "strength.fit.exponent",
    kind: "quantity",
    required: true,
    quantity: { dimension: "number", least: "zero or more", plausible: { least: 0, greatest: 1, words: "0 to 1" } },
    sentence: "m in strength = value / (diameter / at)^m",
  },
  { path: "strength.fit.diameter", kind: "section", required: true, sentence: "the diameters for which it holds" },
  { path: "strength.fit.diameter.min", kind: "quantity", required: true, quantity: length, sentence: "the least of them" },
  { path: "strength.fit.diameter.max", kind: "quantity", required: true, quantity: length, sentence: "the largest of them" },
  { path: "strength.fit.confidence", kind: "word", words: confidences, sentence: confidence },
  { path: "strength.constant", kind: "quantity", quantity: stress, sentence: "one strength for all diameters" },
  { path: "strength.confidence", kind: "word", words: confidences, sentence: `of the constant, ${confidence}` },
  { path: "strength.diameter", kind: "section", sentence: "the diameters for which the constant holds" },
  { path: "strength.diameter.min", kind: "quantity", required: true, quantity: length, sentence: "the least of them" },
  { path: "strength.diameter.max", kind: "quantity", required: true, quantity: length, sentence: "the largest of them" },
  { path: "temperature", kind: "section", required: true, sentence: "service temperature" },
  {
    path: "temperature.max",
    kind: "quantity",
    required: true,
    quantity: temperature,
    sentence: "the highest in service",
  },
  {
    path: "relativeCost",
    kind: "quantity",
    required: true,
    quantity: { dimension: "number", plausible: { least: 1e-3, greatest: 1e4, words: "0.001 to 10000" } },
    sentence: "cost for each mass, hard-drawn carbon wire being 1",
  },
  {
    path: "series",
    kind: "texts",
    sentence: "wire series that a file of one's own is sold in, by name or path; left out, every one that does not say otherwise",
  },
  {
    path: "class",
    kind: "word",
    words: materialClasses,
    sentence: "picks the practice's allowable share of strength; may be left out where allowable is given",
  },
  { path: "allowable", kind: "section", sentence: "shares of strength allowed in torsion; left out, those of the class" },
  { path: "allowable.asWound", kind: "quantity", required: true, quantity: share, sentence: "as wound" },
  { path: "allowable.setRemoved", kind: "quantity", required: true, quantity: share, sentence: "with set removed" },
  { path: "wireTolerance", kind: "list", sentence: "what the wire's diameter may miss by, diameters rising" },
  {
    path: "wireTolerance.upTo",
    kind: "quantity",
    required: true,
    quantity: length,
    sentence: "the row holds up to and including this diameter",
  },
  { path: "wireTolerance.plusMinus", kind: "quantity", required: true, quantity: deviation, sentence: "either way" },
  { path: "notes", kind: "texts", sentence: "what a reader of the results should know" },
  { path: "fatigue", kind: "section", sentence: "stress that it endures at a life, for the practice en13906" },
  { path: "fatigue.source", kind: "text", required: true, sentence: "who published it" },
  {
    path: "fatigue.cycles",
    kind: "quantity",
    required: true,
    quantity: { dimension: "number", plausible: { least: 1e3, greatest: 1e12, words: "1000 to 1e12" } },
    sentence: "the life",
  },
  {
    path: "fatigue.unpeened",
    kind: "pairs",
    pair: [zeroStress, stress],
    sentence: "lower and upper corrected shear stress, the lower rising, the range never growing",
  },
  { path: "fatigue.peened", kind: "pairs", pair: [zeroStress, stress], sentence: "the same, shot peened" },
  { path: "relaxation", kind: "section", sentence: "published points of lost load" },
  { path: "relaxation.source", kind: "text", required: true, sentence: "who published them" },
  { path: "relaxation.points", kind: "list", required: true, sentence: "each at a temperature, a stress and a time" },
  {
    path: "relaxation.points.temperature",
    kind: "quantity",
    required: true,
    quantity: temperature,
    sentence: "of the spring",
  },
  { path: "relaxation.points.stress", kind: "quantity", required: true, quantity: stress, sentence: "shear stress at the start" },
  {
    path: "relaxation.points.time",
    kind: "quantity",
    required: true,
    quantity: { dimension: "time", plausible: { least: 1, greatest: 3.6e9, words: "1 s to 1000000 h" } },
    sentence: "under load",
  },
  {
    path: "relaxation.points.loss",
    kind: "quantity",
    required: true,
    quantity: { dimension: "share", least: "zero or more", plausible: { least: 0, greatest: 1, words: "0 % to 100 %" } },
    sentence: "share of the load that is gone",
  },
  { path: "operations", kind: "section", sentence: "what operations add to relativeCost, where a brief gives none" },
  { path: "operations.grind", kind: "quantity", quantity: weight, sentence: "grinding both ends" },
  { path: "operations.set", kind: "quantity", quantity: weight, sentence: "removing set" },
  { path: "operations.peen", kind: "quantity", quantity: weight, sentence: "shot peening" },
  { path: "operations.relieve", kind: "quantity", quantity: weight, sentence: "relieving stress after coiling" },
];

/** Every key of an end style; a file of end styles is a list of them. */
export const endKeys: readonly CatalogKey[] = [
  { path: "name", kind: "text", required: true, sentence: "how briefs and results name it" },
  { path: "deadTurns", kind: "quantity", required: true, quantity: turns, sentence: "turns that do not deflect" },
  {
    path: "solidExtra",
    kind: "quantity",
    required: true,
    quantity: turns,
    sentence: "solid length = (total turns + solidExtra) wire diameter",
  },
  {
    path: "pitchTurns",
    kind: "quantity",
    required: true,
    quantity: turns,
    sentence: "free length = pitch (active turns + pitchTurns) + pitchWires wire diameter",
  },
  { path: "pitchWires", kind: "quantity", required: true, quantity: turns, sentence: "see pitchTurns" },
  { path: "closed", kind: "word", required: true, words: yesOrNo, sentence: "whether the end coils touch" },
  { path: "ground", kind: "word", required: true, words: yesOrNo, sentence: "whether the end faces are ground flat" },
];

/** The columns of a table of wires, after lines with # that say its source; a row's own materials win over `# sold in:` there. */
export const wireColumns: readonly CatalogKey[] = [
  { path: "label", kind: "text", required: true, sentence: "the name that the size is ordered by" },
  { path: "diameter", kind: "quantity", required: true, quantity: length, sentence: "nominal diameter" },
  {
    path: "price",
    kind: "quantity",
    quantity: { dimension: "price", plausible: { least: 1e-6, greatest: 1e9, words: "0.000001 / kg to 1e9 / kg" } },
    sentence: "for a mass; then relativeCost is mass times price",
  },
  { path: "materials", kind: "text", sentence: "names of the materials that the size is sold in, with spaces between" },
];
