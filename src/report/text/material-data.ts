import type { Brief, Confidence, Material, RelaxResult, TableEnd, Units } from "../../model.ts";
import { practices } from "../../practice/practices.ts";
import { show } from "../../units/show.ts";

const READ_BETWEEN = {
  interpolate: "read between rows on the logarithm of the diameter",
  "next-row": "each size takes the row of the next larger one",
} as const;

/**
 * How the strength of one material was read in a sweep.
 *
 * @param material  one of the brief's materials
 * @param basis     what the brief asks: the guaranteed minimum, or the textbook fit
 * @returns a sentence without the material's name
 */
export function strengthSentence(material: Material, basis: Brief["service"]["strength"]): string {
  const { minimum, fit, constant } = material.strength;
  if (basis === "minimum" && minimum) {
    const inferred = minimum.rows.filter((row) => row.inferred).length;
    const rows = inferred === minimum.rows.length ? "its rows" : "some of its rows";
    return `Minimum of the table, ${READ_BETWEEN[minimum.between]}${memory([minimum])}${inferred > 0 ? `, ${rows} inferred from printed ones` : ""}.`;
  }
  if (fit) {
    const instead = basis === "minimum" ? "No table of minima at hand, so the" : "The";
    return `${instead} power law fitted to the table serves${memory(fit)}.`;
  }
  return constant ? `One strength for all sizes, as the material's file states${memory([constant])}.` : "No strength is stated.";
}

/** The materials of a brief gathered by how their strength was read, in catalog order. */
export function strengthReadings(brief: Brief): { readonly materials: readonly string[]; readonly sentence: string }[] {
  const readings = new Map<string, string[]>();
  for (const material of brief.sweep.materials) {
    const sentence = strengthSentence(material, brief.service.strength);
    readings.set(sentence, [...(readings.get(sentence) ?? []), material.name]);
  }
  return [...readings].map(([sentence, materials]) => ({ materials, sentence }));
}

function memory(figures: readonly { readonly confidence?: Confidence }[]): string {
  const remembered = figures.filter(({ confidence }) => confidence === "memory").length;
  if (remembered === 0) return "";
  return remembered === figures.length ? ", its figures from memory" : ", some of its figures from memory";
}

/**
 * What the figures of a brief rest on that nobody here has read in print: strengths of its materials, and parts of its practice
 * that it asks for.
 *
 * @param brief      a resolved brief
 * @param materials  those in question: of one spring its own
 * @returns such as `strength of astm-a401`, then each source with its parts; does not throw
 */
export function fromMemory(brief: Brief, materials: readonly Material[] = brief.sweep.materials): readonly string[] {
  const strengths = materials.filter((material) => isStrengthFromMemory(material, brief)).map(({ name }) => name);
  const parts = new Map<string, string[]>();
  for (const { source, what, appliesTo } of practices[brief.practice].fromMemory) {
    if (appliesTo?.(brief) ?? true) parts.set(source, [...(parts.get(source) ?? []), what]);
  }
  return [
    ...(strengths.length > 0 ? [`strength of ${strengths.join(", ")}`] : []),
    ...[...parts].map(([source, whats]) => `${source}: ${whats.join(", ")}`),
  ];
}

/** The same as one sentence, which heads an output; each practice rests on some. */
export function memoryWords(brief: Brief, materials?: readonly Material[]): string {
  return `From memory, no copy of the source read: ${fromMemory(brief, materials).join("; ")}.`;
}

function isStrengthFromMemory({ strength: { minimum, fit, constant } }: Material, { service }: Brief): boolean {
  const read: readonly { readonly confidence?: Confidence }[] =
    service.strength === "minimum" && minimum ? [minimum] : (fit ?? (constant ? [constant] : []));
  return read.some(({ confidence }) => confidence === "memory");
}

/** What ends where a material was not tried any further, in a sentence that goes on from its size. */
const BECAUSE: Readonly<Record<TableEnd["because"], string>> = {
  rows: "the rows of its strength end",
  fit: "the power law of its strength ends",
  stated: "the sizes that its file states end",
  moduli: "the rows of its moduli end",
  soldIn: "no series is said to be sold in it",
};

/**
 * Where the tables at hand end an answer: which material, at which end, and why.
 *
 * @param ends   of a result
 * @param found  whether something fits
 * @param units  the reader's
 * @returns one sentence; empty where no table took part
 */
export function tableEndsWords(ends: readonly TableEnd[], found: boolean, units: Units): string {
  if (ends.length === 0) return "";
  const head = found
    ? "What is best here stands where the tables at hand end, so a better spring may lie beyond"
    : "Nothing fits among the sizes that the tables at hand cover";
  return `${head}: ${listed(ends, units)}.`;
}

/** The same of prices: an end at which any of the designs stands that are best with a limit relaxed. */
export function relaxedEndsText({ best, tableEnds, brief: { units } }: RelaxResult): string {
  if (best === null || tableEnds.length === 0) return tableEndsWords(tableEnds, false, units);
  const head =
    "As asked, or with a limit relaxed, what is best stands where the tables at hand end, so a better spring may lie beyond";
  return `${head}: ${listed(tableEnds, units)}.`;
}

/**
 * The end of a material's tables at which one given spring stands.
 *
 * @returns such as "5 mm is the thickest size at hand of en-sh, where the rows of its strength end."
 */
export function givenEndWords({ material, end, size, because }: TableEnd, units: Units): string {
  return `${show(size, "length", units)} is the ${end} size at hand of ${material}, where ${BECAUSE[because]}.`;
}

/** Both ends of one material in one clause where the same ends there. */
function listed(ends: readonly TableEnd[], units: Units): string {
  const clauses = ends.flatMap((end, i) => {
    const [before, after] = [ends[i - 1], ends[i + 1]];
    if (before && isPair(before, end)) return [];
    if (!after || !isPair(end, after)) return [endWords(end, units)];
    const [thin, thick] = [end, after].map(({ size }) => show(size, "length", units));
    return [`${end.material} was not tried below ${thin} or above ${thick}, where ${BECAUSE[end.because]}`];
  });
  return clauses.join("; ");
}

function isPair(thin: TableEnd, thick: TableEnd): boolean {
  return (
    thin.end === "thinnest" && thick.end === "thickest" && thin.material === thick.material && thin.because === thick.because
  );
}

function endWords({ material, end, size, next, because }: TableEnd, units: Units): string {
  const at = show(size, "length", units);
  const beyond = next === undefined ? "" : ` (the next size is ${show(next, "length", units)})`;
  if (end !== "all")
    return `${material} was not tried ${end === "thickest" ? "above" : "below"} ${at}, where ${BECAUSE[because]}${beyond}`;
  const why = because === "soldIn" ? BECAUSE[because] : `${BECAUSE[because]} at ${at}`;
  return `${material} was not tried at all, for ${why}${because === "soldIn" ? "" : beyond}`;
}
