import type { Confidence, MaterialClass } from "../model.ts";
import type { CatalogKey, QuantityRule } from "./key.ts";

const length = { dimension: "length" } as const;
const stress = { dimension: "stress" } as const;
const share = { dimension: "share" } as const;
const zeroLength: QuantityRule = { dimension: "length", least: "zero or more" };
const zeroStress: QuantityRule = { dimension: "stress", least: "zero or more" };
const zeroNumber: QuantityRule = { dimension: "number", least: "zero or more" };
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
  { path: "density", kind: "quantity", required: true, quantity: { dimension: "density" }, sentence: "mass for each volume" },
  {
    path: "moduli",
    kind: "sections",
    required: true,
    sentence: "one pair of moduli, or rows that each hold up to and including a diameter",
  },
  { path: "moduli.youngsModulus", kind: "quantity", required: true, quantity: stress, sentence: "E, the larger of the two" },
  { path: "moduli.shearModulus", kind: "quantity", required: true, quantity: stress, sentence: "G" },
  {
    path: "moduli.upTo",
    kind: "quantity",
    quantity: length,
    sentence: "the row holds up to this diameter; left out in the last",
  },
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
    quantity: zeroNumber,
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
    quantity: { dimension: "temperature" },
    sentence: "the highest in service",
  },
  {
    path: "relativeCost",
    kind: "quantity",
    required: true,
    quantity: { dimension: "number" },
    sentence: "cost for each mass, hard-drawn carbon wire being 1",
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
  { path: "wireTolerance.plusMinus", kind: "quantity", required: true, quantity: zeroLength, sentence: "either way" },
  { path: "notes", kind: "texts", sentence: "what a reader of the results should know" },
  { path: "fatigue", kind: "section", sentence: "stress that it endures at a life, for the practice en13906" },
  { path: "fatigue.source", kind: "text", required: true, sentence: "who published it" },
  { path: "fatigue.cycles", kind: "quantity", required: true, quantity: { dimension: "number" }, sentence: "the life" },
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
    quantity: { dimension: "temperature" },
    sentence: "of the spring",
  },
  { path: "relaxation.points.stress", kind: "quantity", required: true, quantity: stress, sentence: "shear stress at the start" },
  { path: "relaxation.points.time", kind: "quantity", required: true, quantity: { dimension: "time" }, sentence: "under load" },
  {
    path: "relaxation.points.loss",
    kind: "quantity",
    required: true,
    quantity: { dimension: "share", least: "zero or more" },
    sentence: "share of the load that is gone",
  },
  { path: "operations", kind: "section", sentence: "what operations add to relativeCost, where a brief gives none" },
  { path: "operations.grind", kind: "quantity", quantity: zeroNumber, sentence: "grinding both ends" },
  { path: "operations.set", kind: "quantity", quantity: zeroNumber, sentence: "removing set" },
  { path: "operations.peen", kind: "quantity", quantity: zeroNumber, sentence: "shot peening" },
  { path: "operations.relieve", kind: "quantity", quantity: zeroNumber, sentence: "relieving stress after coiling" },
];

/** Every key of an end style; a file of end styles is a list of them. */
export const endKeys: readonly CatalogKey[] = [
  { path: "name", kind: "text", required: true, sentence: "how briefs and results name it" },
  { path: "deadTurns", kind: "quantity", required: true, quantity: zeroNumber, sentence: "turns that do not deflect" },
  {
    path: "solidExtra",
    kind: "quantity",
    required: true,
    quantity: zeroNumber,
    sentence: "solid length = (total turns + solidExtra) wire diameter",
  },
  {
    path: "pitchTurns",
    kind: "quantity",
    required: true,
    quantity: zeroNumber,
    sentence: "free length = pitch (active turns + pitchTurns) + pitchWires wire diameter",
  },
  { path: "pitchWires", kind: "quantity", required: true, quantity: zeroNumber, sentence: "see pitchTurns" },
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
    quantity: { dimension: "price" },
    sentence: "for a mass; then relativeCost is mass times price",
  },
  { path: "materials", kind: "text", sentence: "names of the materials that the size is sold in, with spaces between" },
];
