import type { LimitSpec } from "./side.ts";

/** What the maker may miss by, against what the brief allows. */
export const TOLERANCE_LIMITS: readonly LimitSpec[] = [
  {
    name: "loadTolerance",
    sides: [
      {
        sense: "most",
        value: (c) => c.worstLoadShare,
        bound: () => 1,
        dimension: "share",
        asked: (asks) => asks.loadTolerance !== null,
        scope: "family",
        shape: () => "none",
        // Between two steps of the practice's tables, at which a deviation jumps.
        overFreeLength: () => "band",
      },
    ],
  },
];
