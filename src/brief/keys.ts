import type { Dimension } from "../model.ts";

/**
 * What may stand at a key. `requirement`: exact, with ± or `{ min, max }`; `window`: `{ min }`, `{ max }` or both;
 * `names`: a list of catalog names or paths; `words`: one or several of the words; `list`: a list of sections.
 */
export type KeyKind = "section" | "list" | "text" | "word" | "words" | "names" | "quantity" | "requirement" | "window";

/** One key of a brief. */
export interface BriefKey {
  /** From the top, such as `load.points[].force`. */
  readonly path: string;
  readonly kind: KeyKind;
  readonly dimension?: Dimension;
  /** Words allowed: all of them for `word` and `words`, beside what the kind allows for the others. */
  readonly words?: readonly string[];
  /** Its numbers are above zero, or zero or above. */
  readonly sign?: "positive" | "notNegative";
  /** What may stand in place of a quantity of its dimension: a share of something, or a size in a series of wires. */
  readonly or?: "share" | "size";
  /** A section that is there must have it. */
  readonly required?: true;
  /** The catalog that its names are looked up in, where they are no paths. */
  readonly catalog?: "wires" | "materials" | "ends";
  /** What it means, without its unit. */
  readonly sentence: string;
  /** A value as it would be written; a section that has one is shown whole. */
  readonly example?: string;
  /** True where the starter brief gives it; others stand there as comments. */
  readonly started?: true;
}

const off = ["off"];
const length = { dimension: "length", sign: "positive" } as const;
const number = { dimension: "number", sign: "positive" } as const;
const weight = { dimension: "number", sign: "notNegative" } as const;

/** Every key of a brief, in the order in which a brief is best read. */
export const briefKeys: readonly BriefKey[] = [
  { path: "title", kind: "text", sentence: "heads every page", example: "Return spring (invented example)", started: true },
  {
    path: "practice",
    required: true,
    kind: "word",
    words: ["handbook", "en13906"],
    sentence: "the published practice that answers for the spring",
    example: "handbook",
    started: true,
  },
  {
    path: "load",
    required: true,
    kind: "section",
    sentence: "one kind: points; force + deflection; rate + one point; rate + largestForce",
    started: true,
  },
  {
    path: "load.points",
    kind: "list",
    sentence: "lengths of the spring, each with its force",
    example: [
      "- { name: resting, length: 55 mm, force: { min: 20 N, max: 25 N } }",
      "- { name: pressed, length: 40 mm, force: { min: 57 N, max: 63 N } }",
    ].join("\n"),
    started: true,
  },
  { path: "load.points[].name", kind: "text", sentence: "how tables name the point" },
  { path: "load.points[].length", required: true, kind: "quantity", ...length, sentence: "length of the spring at the point" },
  {
    path: "load.points[].force",
    required: true,
    kind: "requirement",
    dimension: "force",
    sign: "notNegative",
    sentence: "force at that length: exact, with ± (what the maker may miss by), or { min, max } (freedom for the design)",
  },
  {
    path: "load.force",
    kind: "requirement",
    dimension: "force",
    sign: "positive",
    sentence: "the force at the deflection",
    example: "60 N",
  },
  { path: "load.deflection", kind: "quantity", ...length, sentence: "how far that force presses it", example: "20 mm" },
  {
    path: "load.rate",
    kind: "requirement",
    dimension: "rate",
    sign: "positive",
    sentence: "force over deflection",
    example: "2.4 N/mm ± 5 %",
  },
  {
    path: "load.largestForce",
    kind: "quantity",
    dimension: "force",
    sign: "positive",
    sentence: "the largest force in work",
    example: "60 N",
  },
  { path: "envelope", kind: "section", sentence: "the room it works in", started: true },
  {
    path: "envelope.bore",
    kind: "requirement",
    ...length,
    sentence: "the least hole it works in",
    example: "20 mm",
    started: true,
  },
  {
    path: "envelope.rod",
    kind: "requirement",
    ...length,
    sentence: "the largest rod it works over",
    example: "8 mm",
    started: true,
  },
  {
    path: "envelope.clearance",
    or: "share",
    kind: "quantity",
    dimension: "length",
    sign: "notNegative",
    sentence: "on the diameter, a length or a share of bore or rod",
    example: "5 %",
    started: true,
  },
  { path: "envelope.outsideDiameter", kind: "window", ...length, sentence: "as wound", example: "{ max: 19 mm }" },
  { path: "envelope.insideDiameter", kind: "window", ...length, sentence: "as wound", example: "{ min: 9 mm }" },
  { path: "envelope.freeLength", kind: "window", ...length, sentence: "unloaded", example: "{ max: 80 mm }", started: true },
  { path: "envelope.solidLength", kind: "window", ...length, sentence: "all coils touching", example: "{ max: 35 mm }" },
  {
    path: "sweep",
    kind: "section",
    sentence: "what to try: names of `coilsieve catalog`, or paths from this file",
    started: true,
  },
  {
    path: "sweep.wires",
    required: true,
    catalog: "wires",
    kind: "names",
    sentence: "series of wire sizes",
    example: "[iso-r20]",
    started: true,
  },
  {
    path: "sweep.materials",
    required: true,
    catalog: "materials",
    kind: "names",
    sentence: "wire materials",
    example: "[astm-a228, astm-a313-302]",
    started: true,
  },
  {
    path: "sweep.ends",
    required: true,
    catalog: "ends",
    kind: "names",
    sentence: "end styles",
    example: "[squared-ground, squared]",
    started: true,
  },
  {
    path: "sweep.turns",
    kind: "word",
    words: ["quarter", "half", "whole", "any"],
    sentence: "total turns in whole multiples of this; any: solved from rate and mean diameter",
    example: "quarter",
    started: true,
  },
  {
    path: "sweep.meanDiameter",
    kind: "section",
    words: ["exact"],
    sentence: "tried at multiples of the step; exact: the best over the reals",
    example: "{ step: 0.1 mm }",
    started: true,
  },
  {
    path: "sweep.meanDiameter.step",
    required: true,
    kind: "quantity",
    ...length,
    sentence: "the mean diameters tried are its multiples",
  },
  {
    path: "sweep.freeLength",
    kind: "section",
    sentence: "reported in multiples of the step, where one passes",
    example: "{ step: 0.1 mm }",
  },
  { path: "sweep.freeLength.step", required: true, kind: "quantity", ...length, sentence: "free lengths are its multiples" },
  { path: "service", kind: "section", sentence: "how it is used", started: true },
  {
    path: "service.seats",
    kind: "word",
    words: ["parallel plates", "plate and pivot", "pivots", "clamped and free", "guided"],
    sentence: "how the ends are held; a guided spring cannot buckle",
    example: "parallel plates",
    started: true,
  },
  {
    path: "service.farEnd",
    kind: "word",
    words: ["on a seat", "free"],
    sentence: "with seats clamped and free: whether the far end swings with the coils, at half the natural frequency",
    example: "on a seat",
  },
  {
    path: "service.set",
    kind: "word",
    words: ["as wound", "removed"],
    sentence: "removed: pressed solid once by the maker",
    example: "as wound",
    started: true,
  },
  {
    path: "service.surface",
    kind: "word",
    words: ["unpeened", "peened"],
    sentence: "shot peening, for life in cyclic load",
    example: "unpeened",
  },
  {
    path: "service.strength",
    kind: "word",
    words: ["minimum", "fit"],
    sentence: "the least that the standard guarantees, or the textbook's power law",
    example: "minimum",
  },
  { path: "service.cycles", kind: "quantity", ...number, sentence: "life in load cycles; none: static", example: "1e6" },
  {
    path: "service.frequency",
    kind: "quantity",
    dimension: "frequency",
    sign: "positive",
    sentence: "of the load; none: surge is not asked",
    example: "3 Hz",
  },
  {
    path: "service.temperature",
    kind: "quantity",
    dimension: "temperature",
    sign: "positive",
    sentence: "the highest in service",
    example: "60 degC",
    started: true,
  },
  {
    path: "service.scatter",
    kind: "section",
    sentence: "springs drawn within tolerances, and the share that meets all",
    example: "{ wireDiameter: 0.02 mm }",
  },
  { path: "service.scatter.draws", kind: "quantity", ...number, sentence: "springs drawn for each design", example: "2000" },
  {
    path: "service.scatter.shape",
    kind: "word",
    words: ["normal", "uniform"],
    sentence:
      "normal: the tolerance is three standard deviations (common practice, no source), none beyond; uniform: all of it alike",
    example: "normal",
  },
  {
    path: "service.scatter.seed",
    kind: "quantity",
    dimension: "number",
    sign: "notNegative",
    sentence: "the same seed draws the same springs",
    example: "1",
  },
  {
    path: "service.scatter.grade",
    kind: "word",
    words: ["1", "2", "3", "commercial"],
    sentence: "tolerance grade of coil diameter and free length, where these are not stated",
  },
  {
    path: "service.scatter.wireDiameter",
    kind: "quantity",
    dimension: "length",
    sign: "notNegative",
    sentence: "plus-minus on the wire; left out, of the material's standard",
    example: "0.02 mm",
  },
  {
    path: "service.scatter.coilDiameter",
    kind: "quantity",
    dimension: "length",
    sign: "notNegative",
    sentence: "plus-minus on the mean diameter; left out, by the grade",
    example: "0.2 mm",
  },
  { path: "service.scatter.turns", kind: "quantity", ...weight, sentence: "plus-minus on the turns", example: "0.1" },
  {
    path: "service.scatter.freeLength",
    kind: "quantity",
    dimension: "length",
    sign: "notNegative",
    sentence: "plus-minus on the free length; left out, by the grade",
    example: "0.5 mm",
  },
  {
    path: "service.scatter.modulus",
    kind: "quantity",
    dimension: "share",
    sign: "notNegative",
    sentence: "plus-minus on the shear modulus",
    example: "2 %",
  },
  { path: "limits", kind: "section", sentence: "thresholds; left out, the practice's; off lifts one" },
  {
    path: "limits.index",
    kind: "window",
    ...number,
    words: off,
    sentence: "mean diameter over wire diameter",
    example: "{ min: 5, max: 10 }",
  },
  { path: "limits.turns", kind: "window", ...number, words: off, sentence: "active turns", example: "{ min: 3, max: 12 }" },
  {
    path: "limits.clash",
    kind: "section",
    words: off,
    sentence: "left before solid: ofDeflection, ofSolidLength or length",
    example: "{ ofDeflection: 0.15 }",
  },
  {
    path: "limits.clash.ofDeflection",
    kind: "quantity",
    dimension: "share",
    sign: "notNegative",
    sentence: "share of the largest working deflection",
  },
  {
    path: "limits.clash.ofSolidLength",
    kind: "quantity",
    dimension: "share",
    sign: "notNegative",
    sentence: "share of the solid length",
  },
  { path: "limits.clash.length", kind: "quantity", dimension: "length", sign: "notNegative", sentence: "a length" },
  {
    path: "limits.workingStress",
    kind: "section",
    words: off,
    sentence: "shear stress at the largest working load: max or safety",
    example: "{ max: 700 MPa, factor: wahl }",
  },
  {
    path: "limits.workingStress.max",
    kind: "quantity",
    dimension: "stress",
    sign: "positive",
    sentence: "the largest shear stress",
  },
  { path: "limits.workingStress.safety", kind: "quantity", ...number, sentence: "the allowable stress over the stress" },
  {
    path: "limits.workingStress.factor",
    kind: "word",
    words: ["none", "direct", "bergstrasser", "wahl"],
    sentence: "the stress factor it is reckoned with",
  },
  {
    path: "limits.solidStress",
    kind: "section",
    words: off,
    sentence: "shear stress pressed solid: safety or max",
    example: "{ safety: 1.2 }",
  },
  {
    path: "limits.solidStress.max",
    kind: "quantity",
    dimension: "stress",
    sign: "positive",
    sentence: "the largest shear stress",
  },
  { path: "limits.solidStress.safety", kind: "quantity", ...number, sentence: "the allowable stress over the stress" },
  { path: "limits.buckling", kind: "section", words: off, sentence: "against buckling in work", example: "{ safety: 1.1 }" },
  {
    path: "limits.buckling.safety",
    required: true,
    kind: "quantity",
    ...number,
    sentence: "buckling deflection over the largest working deflection",
  },
  {
    path: "limits.surge",
    kind: "section",
    words: off,
    sentence: "natural frequency over that of the load",
    example: "{ multiple: 15 }",
  },
  {
    path: "limits.surge.multiple",
    required: true,
    kind: "quantity",
    ...number,
    sentence: "the least multiple of the load's frequency",
  },
  {
    path: "limits.fatigue",
    kind: "section",
    words: off,
    sentence: "asked in cyclic duty; off: every output says that it was not judged",
    example: "{ safety: 1.5, line: goodman }",
  },
  { path: "limits.fatigue.safety", kind: "quantity", ...number, sentence: "strength over stress in cyclic duty" },
  {
    path: "limits.fatigue.line",
    kind: "word",
    words: ["goodman", "gerber", "sines", "life"],
    sentence:
      "the line through the strength that springs endured; life: through what they endure for the cycles asked, 1e5 to 1e7",
  },
  {
    path: "limits.loadTolerance",
    kind: "section",
    words: off,
    sentence: "a maker of this grade must hold the force windows",
    example: "{ grade: 2 }",
  },
  {
    path: "limits.loadTolerance.grade",
    required: true,
    kind: "word",
    words: ["1", "2", "3", "commercial"],
    sentence: "of EN 15800; commercial: the inch tables",
  },
  { path: "limits.outsideDiameter", kind: "word", words: off, sentence: "off lifts what the envelope sets" },
  { path: "limits.insideDiameter", kind: "word", words: off, sentence: "off lifts what the envelope sets" },
  { path: "limits.freeLength", kind: "word", words: off, sentence: "off lifts what the envelope sets" },
  { path: "limits.solidLength", kind: "word", words: off, sentence: "off lifts what the envelope sets" },
  { path: "limits.temperature", kind: "word", words: off, sentence: "off lifts the material's highest temperature" },
  { path: "limits.hotForce", kind: "word", words: off, sentence: "off: force windows hold at room temperature only" },
  { path: "limits.wire", kind: "word", words: off, sentence: "off lifts what a series is sold in" },
  {
    path: "cost",
    kind: "section",
    sentence: "what operations add to relativeCost",
    example: "{ grind: 0.02, set: 0.01 }",
  },
  { path: "cost.grind", kind: "quantity", ...weight, sentence: "grinding both ends" },
  { path: "cost.set", kind: "quantity", ...weight, sentence: "removing set" },
  { path: "cost.peen", kind: "quantity", ...weight, sentence: "shot peening" },
  { path: "cost.relieve", kind: "quantity", ...weight, sentence: "relieving stress after coiling" },
  {
    path: "rank",
    kind: "words",
    words: ["mass", "outsideDiameter", "relativeCost", "freeLength", "solidSafety", "yield"],
    sentence: "what comes first; several in order; yield first needs scatter",
    example: "[mass, outsideDiameter]",
    started: true,
  },
  {
    path: "design",
    kind: "section",
    sentence: "a given spring for `coilsieve check`; then no sweep is needed",
  },
  {
    path: "design.wire",
    or: "size",
    required: true,
    kind: "quantity",
    ...length,
    sentence: "its diameter, or a series and a size in it, such as us-music 16",
    example: "1.2 mm",
  },
  {
    path: "design.material",
    required: true,
    catalog: "materials",
    kind: "text",
    sentence: "one wire material",
    example: "astm-a228",
  },
  { path: "design.ends", required: true, catalog: "ends", kind: "text", sentence: "one end style", example: "squared-ground" },
  {
    path: "design.outsideDiameter",
    kind: "quantity",
    ...length,
    sentence: "as wound; one diameter is needed",
    example: "13.2 mm",
  },
  { path: "design.insideDiameter", kind: "quantity", ...length, sentence: "as wound", example: "10.8 mm" },
  { path: "design.meanDiameter", kind: "quantity", ...length, sentence: "at the middle of the wire", example: "12 mm" },
  {
    path: "design.totalTurns",
    kind: "quantity",
    ...number,
    sentence: "closed ends counted; or activeTurns, or the rate",
    example: "10",
  },
  { path: "design.activeTurns", kind: "quantity", ...number, sentence: "those that deflect", example: "8" },
  {
    path: "design.freeLength",
    kind: "quantity",
    ...length,
    sentence: "without load; left out, as the load sets it",
    example: "60 mm",
  },
  {
    path: "design.rate",
    kind: "quantity",
    dimension: "rate",
    sign: "positive",
    sentence: "measured or quoted",
    example: "1.5 N/mm",
  },
  {
    path: "nested",
    kind: "word",
    words: ["2"],
    sentence: "two springs, one inside the other and of opposite hands, share the load",
    example: "2",
  },
  { path: "order", kind: "section", sentence: "what the data sheet tells the maker; left out, a line to fill in by hand" },
  {
    path: "order.hand",
    kind: "word",
    words: ["right", "left", "either"],
    sentence: "which way the coils wind",
    example: "right",
  },
  {
    path: "order.governing",
    kind: "word",
    words: ["outside", "inside", "mean"],
    sentence: "the diameter that the maker must hold",
    example: "outside",
  },
  {
    path: "order.free",
    kind: "words",
    words: ["free length", "turns", "wire", "coil diameter"],
    sentence: "what the maker may adjust to meet the forces",
    example: "[turns, wire]",
  },
  { path: "order.quantity", kind: "quantity", ...number, sentence: "how many springs", example: "500" },
  { path: "order.finish", kind: "text", sentence: "coating or other finish", example: "oiled" },
  { path: "order.drawing", kind: "text", sentence: "your drawing number", example: "A-1042" },
  { path: "order.notes", kind: "text", sentence: "anything else for the maker", example: "pack so that springs cannot tangle" },
];

const byPath = new Map(briefKeys.map((key) => [key.path, key]));

/** The key at a path such as `load.points[2].force`, or the end of a window; throws a plain Error for a path that no brief has. */
export function keyAt(path: string): BriefKey {
  const plain = path.replace(/\[\d+\]/g, "[]");
  const key = byPath.get(plain) ?? windowEnd(plain);
  if (key === undefined) throw new Error(`no such key of a brief: ${path}`);
  return key;
}

/** The key of one end of a window: a quantity of the window's own. */
function windowEnd(path: string): BriefKey | undefined {
  const window = byPath.get(path.replace(/\.(min|max)$/, ""));
  if (window?.kind !== "window" && window?.kind !== "requirement") return undefined;
  const { words, example = "", ...rest } = window;
  const [, alone = example] = /: ([^,}]+?)[ ,}]*[,}]/.exec(example) ?? [];
  return { ...rest, path, kind: "quantity", example: alone.replace(/ ±.*/, "") };
}

/** Names of the keys directly under a path; "" is the top. */
export function keysUnder(path: string): readonly string[] {
  const prefix = path === "" ? "" : `${path.replace(/\[\d+\]/g, "[]")}.`;
  return briefKeys
    .filter((key) => key.path.startsWith(prefix) && !/[.[]/.test(key.path.slice(prefix.length)))
    .map((key) => key.path.slice(prefix.length));
}
