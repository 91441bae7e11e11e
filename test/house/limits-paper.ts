import { briefKeys, keyAt } from "../../src/brief/keys.ts";
import { REJECTION_ORDER } from "../../src/constrain/rejection-counts.ts";
import type { ClashAllowance, LimitName } from "../../src/model.ts";
import type { EnduredFatigue, Practice, Sourced } from "../../src/practice/choices.ts";
import { practices } from "../../src/practice/practices.ts";
import { limitWords } from "../../src/report/text/labels.ts";
import { wrap } from "../../src/report/text/layout.ts";
import { anchorOf } from "./anchor.ts";
import { type Formula, formulas } from "./docstring.ts";

/** What one limit is explained by, beside the words and docstrings of the code. */
interface Explained {
  /** What must hold, in the symbols of its formulas. */
  readonly held: string;
  /** Keys of a brief that set it, beside those under `limits`. */
  readonly keys?: readonly string[];
  /** The formulas of `mechanics` that give its figures, in the order in which they are worked out. */
  readonly formulas: readonly string[];
  /** What a practice chooses, each with its source; or when the limit is asked, where no practice chooses anything. */
  readonly chosen: string | ((practice: Practice) => readonly Choice[]);
}

type Choice = readonly [what: string, value: string, source: string];

const GIVEN = "Not asked unless the brief gives it.";

const STRENGTH = ["strengthInterpolated", "strengthNextRow", "strengthPowerLaw"];
const FACTORS = ["stressFactorBergstrasser", "stressFactorDirect", "stressFactorWahl"];

const explained: Readonly<Record<LimitName, Explained>> = {
  wire: {
    held: "the wire's diameter lies within the sizes of the material's table, and its series is sold in the material",
    keys: ["sweep.wires", "sweep.materials"],
    formulas: [],
    chosen: "Always asked, by the catalogs.",
  },
  temperature: {
    held: "t ≤ the highest temperature in the material's file",
    keys: ["service.temperature"],
    formulas: [],
    chosen: "Asked where the brief gives a temperature.",
  },
  turns: {
    held: "least ≤ Na ≤ most",
    keys: ["sweep.turns"],
    formulas: ["activeTurns", "activeTurnsForRate"],
    chosen: ({ turns }) => [window("active turns", turns)],
  },
  solidLength: {
    held: "least ≤ Ls ≤ most",
    keys: ["envelope.solidLength"],
    formulas: ["solidLength"],
    chosen: GIVEN,
  },
  index: {
    held: "least ≤ C ≤ most, and never outside 2 to 25",
    formulas: ["springIndex"],
    chosen: ({ index }) => [window("index", index)],
  },
  outsideDiameter: {
    held: "least ≤ De ≤ most as wound, De = D + d; and De pressed solid ≤ the bore less its clearance",
    keys: ["envelope.bore", "envelope.clearance", "envelope.outsideDiameter"],
    formulas: ["pitch", "outsideDiameterAtSolid", "diameterGrowth"],
    chosen: GIVEN,
  },
  insideDiameter: {
    held: "Di ≥ the rod with its clearance, Di = D - d; and least ≤ Di ≤ most",
    keys: ["envelope.rod", "envelope.clearance", "envelope.insideDiameter"],
    formulas: [],
    chosen: GIVEN,
  },
  rate: {
    held: "least ≤ k ≤ most, which for points is (lo2 - hi1) / (L1 - L2) ≤ k ≤ (hi2 - lo1) / (L1 - L2) over every two of them",
    keys: ["load.rate", "load.points"],
    formulas: ["springRate", "meanDiameterForRate"],
    chosen: "Asked where the load leaves a window of rate; else the mean diameter or the turns are solved for it.",
  },
  freeLength: {
    held: "least ≤ L0 ≤ most. L0 is free: at points from max(Li + lo_i/k) to min(Li + hi_i/k), else from the shortest that clears the clash allowance; a candidate is feasible where some L0 passes every limit",
    keys: ["envelope.freeLength", "load.points", "sweep.freeLength"],
    formulas: [],
    chosen: GIVEN,
  },
  pitch: {
    held: "p ≥ d; of geometry, so that no brief lifts it",
    keys: ["sweep.ends"],
    formulas: ["pitch"],
    chosen: "Always asked, where an end style lets coils overlap.",
  },
  hotForce: {
    held: "lo ≤ F(t) ≤ hi at each load point with a window, F(t) = F G(t) / G; a material whose loss of modulus is not known is not judged",
    keys: ["service.temperature", "load.points", "load.force"],
    formulas: ["modulusAtTemperature"],
    chosen: "Asked where the brief gives a temperature and a window of force.",
  },
  clash: {
    held: "L - Ls ≥ the allowance, L being the length at the largest working deflection",
    formulas: ["solidLength", "minimumGap"],
    chosen: ({ clash, clashCyclic }) => [
      ["room, static", clashWords(clash.value), clash.source],
      ["room, cyclic", clashWords(clashCyclic.value), clashCyclic.source],
    ],
  },
  workingStress: {
    held: "τ at the largest working load ≤ max, or ≤ the allowable stress over the safety",
    formulas: ["shearStress", ...FACTORS, ...STRENGTH],
    chosen: GIVEN,
  },
  solidStress: {
    held: "τ with all coils touching ≤ (share Rm) / safety, or ≤ max",
    formulas: ["shearStress", ...FACTORS, ...STRENGTH],
    chosen: ({ solidSafety, stressFactor, allowable }) => [
      ["safety", `${solidSafety.value}`, solidSafety.source],
      ["factor K, as wound", stressFactor.asWound.value, stressFactor.asWound.source],
      ["factor K, set removed", stressFactor.setRemoved.value, stressFactor.setRemoved.source],
      ["share of Rm, as wound", byWord(allowable.asWound), allowable.source],
      ["share of Rm, set removed", byWord(allowable.setRemoved), allowable.source],
    ],
  },
  fatigue: {
    held: "n ≥ safety; by endured strengths also τ at the greatest load ≤ the allowable stress, and d ≤ the thickest wire of the data",
    keys: ["service.cycles", "service.surface"],
    formulas: [
      "shearStress",
      "fatigueSafetyGoodman",
      "fatigueSafetyGerber",
      "fatigueSafetySines",
      "shareAtLife",
      "allowedUpperStress",
      "fatigueSafetyRange",
    ],
    chosen: ({ fatigue }) => [
      ["safety", `${fatigue.safety.value}`, fatigue.safety.source],
      ["factor K", fatigue.factor.value, fatigue.factor.source],
      ...(fatigue.kind === "diagram"
        ? [["strength", "the diagram in the material's own file", fatigue.safety.source] as const]
        : [
            ["Ssa and Ssm, unpeened", endured(fatigue.strengths.value.unpeened), fatigue.strengths.source] as const,
            ["Ssa and Ssm, peened", endured(fatigue.strengths.value.peened), fatigue.strengths.source] as const,
            ...(["unpeened", "peened"] as const).map(
              (surface) => [`share of Rm by life, ${surface}`, lives(fatigue, surface), fatigue.life.source] as const,
            ),
            ["Ssu", `${fatigue.ultimateShear.value} Rm`, fatigue.ultimateShear.source] as const,
          ]),
    ],
  },
  buckling: {
    held: "y ≥ safety times the largest working deflection",
    keys: ["service.seats"],
    formulas: ["bucklingDeflection", "stableFreeLength"],
    chosen: ({ bucklingSafety, fixity }) => {
      const { guided, ...asked } = fixity.value;
      return [
        ["safety", `${bucklingSafety.value}`, bucklingSafety.source],
        ["α or ν by seats", `${byWord(asked)}; guided springs are not asked`, fixity.source],
      ];
    },
  },
  surge: {
    held: "f ≥ multiple times the frequency in service",
    keys: ["service.frequency", "service.farEnd"],
    formulas: ["wireLength", "wireMass", "surgeFrequency", "surgeFrequencyEndFree"],
    chosen: ({ surgeMultiple }) => [["multiple", `${surgeMultiple.value}`, surgeMultiple.source]],
  },
  loadTolerance: {
    held: "at every point with a window: (distance of F from the middle + what the grade lets F miss by) ≤ half the window",
    formulas: ["forceDeviationBase", "turnsInfluence", "forceDeviation", "lengthDeviation", "loadShareDeviation"],
    chosen: ({ tolerance }) => [["grades", tolerance.grades.join(", "), tolerance.source]],
  },
};

/**
 * The paper that explains every limit: what it holds, its key, what the practices choose, its formulas as the docstrings of the
 * code give them, and what raises it. Markdown, ended by a line break.
 */
export function limitsPaper(): string {
  const shown = new Set<string>();
  const parts = REJECTION_ORDER.map((limit) => limitPart(limit, shown));
  return `${[HEAD, ...parts].join("\n\n")}\n`;
}

const HEAD = `# Limits, one by one

To check a spring by hand. Each limit in the order in which a spring falls: what must hold, the keys of a brief that set it, what each
practice chooses where the brief is silent, the formulas with their symbols, range and source, and what gives it more room.
\`coilsieve check BRIEF --worked\` puts the numbers of one spring into the same formulas, step by step.

The margin of a limit is 1 - value/limit for an upper one, value/limit - 1 for a lower one, never more than 1; a window's is the smaller
of its two. At 0 the spring stands on the limit. Formulas are in SI; any units that agree with each other serve as well, unless a
formula says otherwise.

Written by \`npm run docs\` from the docstrings and words of the code, which a test holds it to: change those, not this.`;

function limitPart(limit: LimitName, shown: Set<string>): string {
  const { held, formulas: names, chosen } = explained[limit];
  const { label, sentence, raise } = limitWords[limit];
  const parts = [
    `## ${label[0]?.toUpperCase()}${label.slice(1)}: \`${limit}\``,
    filled(sentence),
    filled(`Held: ${held}.`),
    keyLines(limit),
    typeof chosen === "string" ? chosen : choiceTable(chosen),
    ...names.map((name) => formulaPart(name, shown)),
    filled(`More room: ${raise}`),
  ];
  return parts.join("\n\n");
}

/** Lines of the width of the other papers, those after the first set in. */
function filled(text: string, indent = 0): string {
  return wrap(text, 130, indent).join("\n");
}

/** The keys of a brief that set a limit: what it is about, then those under `limits`. */
function keyLines(limit: LimitName): string {
  const about = explained[limit].keys ?? [];
  const own = briefKeys.filter(({ path }) => path === `limits.${limit}` || path.startsWith(`limits.${limit}.`));
  return [...about.map(keyAt), ...own]
    .map(({ path, sentence, words, example }) => {
      const takes = words === undefined || words.join() === "off" ? "" : ` (${words.join(", ")})`;
      const such = example === undefined || example.includes("\n") ? "" : `, such as \`${example}\``;
      return filled(`- \`${path}\`: ${sentence}${takes}${such}${words?.join() === "off" && such ? "; or `off`" : ""}`, 2);
    })
    .join("\n");
}

function choiceTable(chosen: (practice: Practice) => readonly Choice[]): string {
  const rows = Object.values(practices).flatMap((practice) =>
    chosen(practice).map(([what, value, source]) => `| \`${practice.name}\` | ${what} | ${value} | ${source} |`),
  );
  return ["| practice | | value | source |", "|---|---|---|---|", ...rows].join("\n");
}

function formulaPart(name: string, shown: Set<string>): string {
  const formula = formulas.get(name);
  if (formula === undefined) throw new Error(`mechanics has no formula ${name}`);
  const heading = headingOf(formula);
  if (shown.has(name)) return `[${heading}](#${anchorOf(heading)}): above.`;
  shown.add(name);
  const { sentences, equations, remarks, parameters, returns, range, source } = formula;
  const more = [sentences.slice(heading.length).replace(/^[.,:;]\s*/, ""), remarks].filter((text) => text !== "").map(sentenceOf);
  return [
    `### ${heading}`,
    ...(more.length > 0 ? [filled(more.join(" "))] : []),
    ...(equations.length > 0 ? [`\`\`\`\n${equations.join("\n")}\n\`\`\``] : []),
    [
      ...parameters.map((parameter) => `- ${spelled(parameter.name)}: ${parameter.text}`),
      `- gives: ${returns}`,
      `- range: ${range}`,
      `- source: ${source}`,
    ]
      .map((line) => filled(line, 2))
      .join("\n"),
  ].join("\n\n");
}

/** What a formula gives: the first clause of its docstring. */
function headingOf({ sentences }: Formula): string {
  return /^[^.:;,]+/.exec(sentences)?.[0] ?? sentences;
}

function sentenceOf(text: string): string {
  return `${text[0]?.toUpperCase()}${text.slice(1)}`;
}

/** `freeLength` as words. */
function spelled(name: string): string {
  return name.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
}

function window(what: string, { value, source }: Sourced<{ readonly min: number; readonly max: number }>): Choice {
  return [what, `${value.min} to ${value.max}`, source];
}

function clashWords(allowance: ClashAllowance): string {
  if ("ofDeflection" in allowance) return `${100 * allowance.ofDeflection} % of the largest working deflection`;
  if ("ofSolidLength" in allowance) return `${100 * allowance.ofSolidLength} % of the solid length`;
  if ("length" in allowance) return `${1000 * allowance.length} mm`;
  return allowance.minimumGap === 1 ? "the least total gap Sa" : `${allowance.minimumGap} Sa`;
}

function byWord(values: Readonly<Record<string, number>>): string {
  return Object.entries(values)
    .map(([word, value]) => `${word} ${value}`)
    .join(", ");
}

/** Such as `0.36 at 1e5, 0.33 at 1e6 cycles (cold drawn, austenitic, non-ferrous); …`. */
function lives({ life }: EnduredFatigue, surface: "unpeened" | "peened"): string {
  const { cycles, shares } = life.value;
  const classesOf = new Map<string, string[]>();
  for (const [name, { [surface]: row }] of Object.entries(shares)) {
    const text = row.map((share, i) => `${share} at ${(cycles[i] as number).toExponential().replace("+", "")}`).join(", ");
    classesOf.set(text, [...(classesOf.get(text) ?? []), name]);
  }
  return [...classesOf].map(([text, names]) => `${names.join(", ")}: ${text} cycles`).join("; ");
}

function endured({ amplitude, mean }: { readonly amplitude: number; readonly mean: number }): string {
  const megapascals = (stress: number) => (stress / 1e6).toFixed(1);
  return `${megapascals(amplitude)} MPa and ${megapascals(mean)} MPa`;
}
