import type { Brief, Quantity } from "../model.ts";

/**
 * What the brief asks of the force at each load point, in the order of a design's points.
 *
 * @param brief  a resolved brief
 * @returns N; exact where min = max; a largest working force is asked exactly, for the point stands where the spring has it
 */
export function forceWindows({ load }: Brief): readonly Quantity[] {
  switch (load.kind) {
    case "points":
      return load.points.map(({ force }) => force);
    case "rateAndPoint":
      return [load.point.force];
    case "forceAtDeflection":
      return [load.force];
    case "rateAndLargestForce":
      return [{ nominal: load.largestForce, min: load.largestForce, max: load.largestForce }];
  }
}
