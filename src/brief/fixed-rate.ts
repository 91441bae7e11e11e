import type { Load } from "../model.ts";

/**
 * The one rate that a load fixes: by a force with a nominal at a deflection, by exactly two points with nominals, or stated.
 * Then the turns or the mean diameter are solved for it, not both walked. A tolerance round a nominal is no freedom.
 *
 * @param load  of a brief
 * @returns N/m; null where the load leaves a window
 */
export function pinnedRate(load: Load): number | null {
  switch (load.kind) {
    case "forceAtDeflection":
      return load.force.nominal === undefined ? null : load.force.nominal / load.deflection;
    case "points": {
      const [first, second, ...others] = load.points;
      if (first?.force.nominal === undefined || second?.force.nominal === undefined || others.length > 0) return null;
      return (second.force.nominal - first.force.nominal) / (first.length - second.length);
    }
    default:
      return load.rate.nominal ?? null;
  }
}
