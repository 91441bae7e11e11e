import { PASSES } from "../constrain/side.ts";
import type { Asked, Brief, CheckEntry, Design, Quantity, ThresholdSource } from "../model.ts";

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
