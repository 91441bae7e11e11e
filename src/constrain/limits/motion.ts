import type { Requirements } from "../requirements/requirements.ts";
import { bySituation, freeLengthScope, type LimitSpec } from "./bound.ts";

const minimumGap = ({ clash }: Requirements) => clash !== null && "minimumGap" in clash;

/** Limits on sideways and swinging motion, in the order of the limits. */
export const MOTION_LIMITS: readonly LimitSpec[] = [
  {
    name: "buckling",
    bounds: [
      {
        sense: "least",
        value: (c) => c.bucklingDeflection,
        dimension: "length",
        threshold: (requirements) => ({ value: requirements.bucklingSafety as number, dimension: "number" }),
        boundValue: (c) => (c.requirements.bucklingSafety as number) * c.workingDeflection,
        applies: (requirements) => requirements.bucklingSafety !== null,
        scope: freeLengthScope,
        monotonicity: (requirements) =>
          bySituation({
            pinnedShortest: "increasing",
            pinnedPoints: "increasing",
            freePoints: "unknown",
            freeRateAndPoint: "unknown",
            freeRateAndLargestForce: "unknown",
            freeForceAtDeflection: minimumGap(requirements) ? "unknown" : "increasing",
          })(requirements),
        overFreeLength: () => "decreasing",
      },
    ],
  },
  {
    name: "surge",
    bounds: [
      {
        sense: "least",
        value: (c) => c.surgeFrequency,
        dimension: "frequency",
        boundValue: (c) => c.requirements.surge as number,
        applies: (requirements) => requirements.surge !== null,
        scope: "turns",
        monotonicity: (requirements) => (requirements.turnsAny ? "increasing" : "decreasing"),
      },
    ],
  },
];
