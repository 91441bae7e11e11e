import type { Candidate } from "../constrain/candidate/candidate.ts";
import { madeSizes, temperatureMargin } from "../constrain/candidate/wire-properties.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Asked, Brief, CheckEntry, Design, Dimension, GivenDesign, LimitName, Quantity, ThresholdSource } from "../model.ts";
import { thresholdSource } from "./bound-source.ts";

/** A force that the load asks, and the key of the brief that holds it. */
interface AskedForce {
  readonly force: Quantity;
  readonly key: string;
}

/**
 * The force of a given spring at each load point against the window asked there; a tolerance is a window too, for the spring is
 * held to its nominal figures.
 *
 * @param brief   a resolved brief
 * @param design  the spring, with the points of the brief in their order
 * @returns an entry for each end of each window, SI; none for a load that asks no force
 */
export function loadEntries(brief: Brief, { points }: Design): CheckEntry[] {
  const forces = askedForces(brief);
  const largest = Math.max(...forces.map(({ force }) => force.max as number));
  return forces.flatMap(({ force, key }, i) => {
    const { name: point, force: value } = points[i] as Design["points"][number];
    const entry = (bound: number, sense: "most" | "least"): CheckEntry => {
      // At a point without force there is no share of the bound to speak of, so the load's largest force stands in.
      const inside = (sense === "most" ? bound - value : value - bound) / (bound > 0 ? bound : largest);
      const margin = Math.abs(inside) <= -PASSES ? 0 : Math.min(1, inside);
      const source = sourceOf(brief.asked, key, sense);
      return {
        limit: "load",
        point,
        value,
        bound,
        sense,
        dimension: "force",
        margin,
        passes: margin >= PASSES,
        source,
      };
    };
    const { min, max } = force as Required<Pick<Quantity, "min" | "max">>;
    return [...(min > 0 ? [entry(min, "least")] : []), entry(max, "most")];
  });
}

function askedForces({ load }: Brief): readonly AskedForce[] {
  switch (load.kind) {
    case "forceAtDeflection":
      return [{ force: load.force, key: "load.force" }];
    case "points":
      return load.points.map(({ force }, i) => ({ force, key: `load.points[${i + 1}].force` }));
    case "rateAndPoint":
      return [{ force: load.point.force, key: "load.points[1].force" }];
    case "rateAndLargestForce":
      return [];
  }
}

function sourceOf(asked: readonly Asked[], key: string, sense: "most" | "least"): ThresholdSource {
  const end = `${key}.${sense === "least" ? "min" : "max"}`;
  const written = asked.find((one) => one.key === key || one.key === end);
  return { from: "brief", key: written?.key ?? key, text: written?.text ?? "" };
}

/**
 * The material of a given spring against the wire's size and the service temperature.
 *
 * @param given         the spring
 * @param brief         a resolved brief
 * @param requirements  its requirements
 * @returns an entry for each bound, SI
 */
export function materialEntries({ material, wire }: GivenDesign, brief: Brief, requirements: Requirements): CheckEntry[] {
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
    ...(requirements.temperature === null
      ? []
      : [
          entry(
            "temperature",
            requirements.temperature,
            "most",
            material.temperature.max,
            "temperature",
            temperatureMargin(material, requirements.temperature),
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
 * A given spring against both bounds of every limit that is asked.
 *
 * @param candidate  set to the spring
 * @param brief      a resolved brief
 * @returns an entry for each bound, in the terms in which a brief writes the limit, SI; in the order of the limits
 */
export function limitEntries(candidate: Candidate, brief: Brief): CheckEntry[] {
  const { requirements } = candidate;
  const hasRoom = candidate.freeLength > candidate.solidLength;
  const limits = limitsFor(requirements).filter(({ name }) => hasRoom || AT_REST.includes(name));
  return limits.flatMap(({ name, bounds }) =>
    bounds.map((bound): CheckEntry => {
      const { limitValue, needed } = bound.terms(candidate);
      return {
        limit: name,
        ...(bound.figure === null ? {} : { figure: bound.figure }),
        value: needed,
        bound: limitValue,
        sense: bound.senseInBrief,
        dimension: bound.dimension,
        margin: settled(bound.shownMargin(candidate)),
        passes: bound.margin(candidate) >= PASSES,
        source: thresholdSource(brief, requirements, name, bound, limitValue),
      };
    }),
  );
}

/** A margin within the pass tolerance of the boundary is the boundary. */
function settled(margin: number): number {
  return Math.abs(margin) <= -PASSES ? 0 : margin;
}
