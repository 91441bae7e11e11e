import type { Brief, Design, Dimension } from "../model.ts";
import { show } from "../units/show.ts";
import type { Facts } from "./facts.ts";
import { figureWords } from "./words.ts";

/** A spring at its service temperature beside the spring as wound and tested; null where no temperature is given. */
export function heatFacts({ units }: Brief, design: Design): Facts | null {
  const { hot, points } = design;
  if (hot === null) return null;
  const lost = hot.relaxation === null ? "not known for this material" : `at most ${show(hot.relaxation, "share", units)}`;
  const row = (label: string, cold: number, warm: number | null, dimension: Dimension) =>
    warm === null ? [] : [[label, show(cold, dimension, units), show(warm, dimension, units)]];
  const rows = [
    ...row(figureWords.shearModulus.label, design.shearModulus, hot.shearModulus, "stress"),
    ...row(figureWords.youngsModulus.label, design.youngsModulus, hot.youngsModulus, "stress"),
    ...row(figureWords.rate.label, design.rate, hot.rate, "rate"),
    ...points.flatMap(({ name, force }, i) => row(`force at ${name}`, force, hot.forces[i] ?? null, "force")),
  ];
  const at = show(hot.temperature, "temperature", units);
  return {
    heading: `At ${at}`,
    ...(rows.length > 0 ? { table: { heads: ["as tested", `at ${at}`], rows } } : {}),
    entries: [["load lost in time (relaxation)", lost]],
    notes: [
      hot.modulusSource === null
        ? "How the moduli fall with heat is not known for this material."
        : `How the moduli fall: ${hot.modulusSource}.`,
      ...(hot.relaxation === null
        ? []
        : ["Read from a published point at least as hot and as stressed, for the time it states."]),
    ],
  };
}
