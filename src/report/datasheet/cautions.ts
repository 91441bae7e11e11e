import { isBeyondTests } from "../../constrain/candidate/fatigue.ts";
import type { Brief, Design, Material, WarningName } from "../../model.ts";
import { show } from "../../units/show.ts";
import { screeningWords, warningWords } from "../text/labels.ts";
import { cautionSentence, lossWords, relaxationAsked } from "../text/spring-summary.ts";

/** Above this hardened or drawn steel is taken for prone to hydrogen, Pa: common practice, no source. */
const HARD = 1000e6;

/** An inch pound-force, J. */
const INCH_POUND = 4.4482216152605 * 0.0254;

/**
 * What whoever makes, handles or uses this spring must know.
 *
 * @param brief     the brief that the spring answers
 * @param design    the spring
 * @param material  of its wire
 * @returns sentences, the most urgent first
 */
export function sheetCautions(brief: Brief, design: Design, material: Material): string[] {
  return [
    storedEnergy(brief, design),
    ...(isProneToHydrogen(design, material) ? [platingWords(design, brief)] : []),
    temperatureWords(brief, design, material),
    ...notJudged(brief, design).map((warning) => warningWords[warning]),
    // What to ask of relaxation stands with the temperature, in figures.
    ...design.cautions
      .filter((caution) => caution !== "askRelaxation")
      .map((caution) => cautionSentence(caution, [design], brief.units)),
    `${screeningWords} Where they differ from this sheet, they hold.`,
  ];
}

function storedEnergy({ units }: Brief, { forceAtSolid, freeLength, solidLength }: Design): string {
  const energy = (forceAtSolid * (freeLength - solidLength)) / 2;
  const words =
    units.force === "N" ? `${Number(energy.toPrecision(2))} J` : `${Number((energy / INCH_POUND).toPrecision(2))} in·lbf`;
  return `Stored energy: pressed solid this spring holds about ${words}. Hold it captive, release it by steps, shield eyes and hands.`;
}

/** Austenitic and non-ferrous wire is not; where a material has no class, only its strength speaks. */
function isProneToHydrogen({ tensileStrength }: Design, { class: kind }: Material): boolean {
  return tensileStrength > HARD && kind !== "austenitic" && kind !== "non-ferrous";
}

function platingWords({ tensileStrength }: Design, { units }: Brief): string {
  return (
    `Hydrogen: at ${show(tensileStrength, "stress", units)} this wire can be embrittled by pickling and electroplating and break ` +
    "later under load. Prefer a coating put on without them; else stress-relieve before, bake at once after, and agree a test."
  );
}

function temperatureWords({ units, service }: Brief, design: Design, { name, temperature }: Material): string {
  const limit = `Temperature: ${name} serves up to ${show(temperature.max, "temperature", units)}`;
  if (service.temperature === undefined) return `${limit}; the brief states none, so loss of load by heat was not looked at.`;
  const loss = design.hot && lossWords(design.hot, units);
  if (loss === null) {
    return `${limit}; how much load it loses with time in heat is not known here: ask the maker for ${relaxationAsked(design, units)}.`;
  }
  return `${limit}; of its load it loses ${loss}, by a published point at least as hot and as stressed.`;
}

function notJudged({ service: { cycles }, limits }: Brief, { fatigueSafety }: Design): WarningName[] {
  return [
    ...(cycles !== undefined && fatigueSafety === null ? (["fatigueNotJudged"] as const) : []),
    ...(cycles !== undefined && fatigueSafety !== null && isBeyondTests(cycles) ? (["beyondFatigueLife"] as const) : []),
    ...(limits.workingStress === "off" && limits.solidStress === "off" ? (["noStressLimit"] as const) : []),
  ];
}
