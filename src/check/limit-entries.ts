import type { Asks } from "../constrain/asks.ts";
import type { Candidate } from "../constrain/candidate.ts";
import { limitsFor } from "../constrain/limits.ts";
import { PASSES } from "../constrain/side.ts";
import { madeSizes, temperatureMargin } from "../constrain/stock.ts";
import type { Brief, CheckEntry, Dimension, GivenDesign, LimitName } from "../model.ts";
import { thresholdSource } from "./threshold.ts";

/**
 * The material of a given spring against the wire's size and the service temperature.
 *
 * @param given  the spring
 * @param brief  a resolved brief
 * @param asks   what it asks
 * @returns an entry for each bound, SI
 */
export function materialEntries({ material, wire }: GivenDesign, brief: Brief, asks: Asks): CheckEntry[] {
  const { min, max } = madeSizes(material, brief.service.strength);
  const entry = (
    limit: "wire" | "temperature",
    value: number,
    sense: "most" | "least",
    bound: number,
    dimension: Dimension,
    inside = Math.min(1, sense === "most" ? 1 - value / bound : value / bound - 1),
  ): CheckEntry => {
    const margin = settled(inside);
    const source = { from: "material", text: material.source } as const;
    return { limit, value, bound, sense, dimension, margin, passes: margin >= PASSES, source };
  };
  return [
    entry("wire", wire.diameter, "least", min, "length"),
    entry("wire", wire.diameter, "most", max, "length"),
    ...(asks.temperature === null
      ? []
      : [
          entry(
            "temperature",
            asks.temperature,
            "most",
            material.temperature.max,
            "temperature",
            temperatureMargin(material, asks.temperature),
          ),
        ]),
  ];
}

/** What can be judged of a spring that cannot be pressed at all. */
const AT_REST: readonly LimitName[] = [
  "turns",
  "solidLength",
  "index",
  "outsideDiameter",
  "insideDiameter",
  "rate",
  "freeLength",
  "pitch",
];

/**
 * A given spring against both sides of every limit that is asked.
 *
 * @param candidate  set to the spring
 * @param brief      a resolved brief
 * @returns an entry for each side, in the terms in which a brief writes the limit, SI; in the order in which a candidate falls
 */
export function limitEntries(candidate: Candidate, brief: Brief): CheckEntry[] {
  const { asks } = candidate;
  const hasRoom = candidate.freeLength > candidate.solidLength;
  const limits = limitsFor(asks).filter(({ name }) => hasRoom || AT_REST.includes(name));
  return limits.flatMap(({ name, sides }) =>
    sides.map((side): CheckEntry => {
      const { limitValue, needed } = side.terms(candidate);
      return {
        limit: name,
        ...(side.figure === null ? {} : { figure: side.figure }),
        value: needed,
        bound: limitValue,
        sense: side.askedSense,
        dimension: side.dimension,
        margin: settled(side.shownMargin(candidate)),
        passes: side.margin(candidate) >= PASSES,
        source: thresholdSource(brief, asks, name, side, limitValue),
      };
    }),
  );
}

/** A margin within the pass tolerance of the border is the border. */
function settled(margin: number): number {
  return Math.abs(margin) <= -PASSES ? 0 : margin;
}
