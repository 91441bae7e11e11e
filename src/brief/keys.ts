import type { BriefKey } from "./key.ts";

const off = ["off"];
const length = { dimension: "length", sign: "positive" } as const;
const number = { dimension: "number", sign: "positive" } as const;

/** Every key of a brief, in the order in which a brief is best read. */
export const briefKeys: readonly BriefKey[] = [
  { path: "title", kind: "text", sentence: "heads every page", example: "Return spring (invented example)", started: true },
  {
    path: "practice",
    kind: "word",
    words: ["handbook", "en13906"],
    sentence: "the published practice that answers for the spring",
    example: "handbook",
    started: true,
  },
  {
    path: "load",
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
  { path: "load.points[].length", kind: "quantity", ...length, sentence: "length of the spring at the point" },
  {
    path: "load.points[].force",
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
  { path: "sweep.wires", kind: "names", sentence: "series of wire sizes", example: "[iso-r20]", started: true },
  { path: "sweep.materials", kind: "names", sentence: "wire materials", example: "[astm-a228, astm-a313-302]", started: true },
  { path: "sweep.ends", kind: "names", sentence: "end styles", example: "[squared-ground, squared]", started: true },
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
  { path: "sweep.meanDiameter.step", kind: "quantity", ...length, sentence: "the mean diameters tried are its multiples" },
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
  { path: "service.scatter", kind: "reserved", sentence: "scatter of dimensions and material" },
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
  { path: "limits.surge.multiple", kind: "quantity", ...number, sentence: "the least multiple of the load's frequency" },
  { path: "limits.fatigue", kind: "word", words: off, sentence: "not judged in this version; off accepts that", example: "off" },
  { path: "limits.loadTolerance", kind: "word", words: off, sentence: "not judged in this version" },
  { path: "limits.outsideDiameter", kind: "word", words: off, sentence: "off lifts what the envelope sets" },
  { path: "limits.insideDiameter", kind: "word", words: off, sentence: "off lifts what the envelope sets" },
  { path: "limits.freeLength", kind: "word", words: off, sentence: "off lifts what the envelope sets" },
  { path: "limits.solidLength", kind: "word", words: off, sentence: "off lifts what the envelope sets" },
  { path: "limits.temperature", kind: "word", words: off, sentence: "off lifts the material's highest temperature" },
  { path: "limits.wire", kind: "word", words: off, sentence: "off lifts what a series is sold in" },
  {
    path: "rank",
    kind: "words",
    words: ["mass", "outsideDiameter", "relativeCost", "freeLength", "solidSafety"],
    sentence: "what comes first; several in order",
    example: "[mass, outsideDiameter]",
    started: true,
  },
  { path: "design", kind: "reserved", sentence: "one design to be judged" },
  { path: "nested", kind: "reserved", sentence: "springs inside springs" },
  { path: "order", kind: "reserved", sentence: "hand, finish, quantity and notes" },
];

const byPath = new Map(briefKeys.map((key) => [key.path, key]));

/** The key at a path such as `load.points[2].force`; throws a plain Error for a path that no brief has. */
export function keyAt(path: string): BriefKey {
  const key = byPath.get(path.replace(/\[\d+\]/g, "[]"));
  if (key === undefined) throw new Error(`no such key of a brief: ${path}`);
  return key;
}

/** Names of the keys directly under a path; "" is the top. */
export function keysUnder(path: string): readonly string[] {
  const prefix = path === "" ? "" : `${path.replace(/\[\d+\]/g, "[]")}.`;
  return briefKeys
    .filter((key) => key.path.startsWith(prefix) && !/[.[]/.test(key.path.slice(prefix.length)))
    .map((key) => key.path.slice(prefix.length));
}
