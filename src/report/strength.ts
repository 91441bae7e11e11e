import type { Brief, Confidence, Material } from "../model.ts";

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
