import type { LimitSpec } from "./bound.ts";

/** What the maker may miss by, against what the brief allows. */
export const TOLERANCE_LIMITS: readonly LimitSpec[] = [
  {
    name: "loadTolerance",
    bounds: [
      {
        sense: "most",
        value: (c) => c.worstWindowFraction,
        boundValue: () => 1,
        dimension: "share",
        applies: (requirements) => requirements.loadTolerance !== null,
        scope: "family",
        monotonicity: () => "unknown",
        // A force is a straight line over the free length and so is its deviation, but for its steps: the worst share is convex.
        overFreeLength: () => "concave",
      },
    ],
  },
];
