import type { Requirements } from "../requirements/requirements.ts";
import { bySituation, freeLengthScope, type LimitSpec } from "./bound.ts";

const minimumGap = ({ clash }: Requirements) => clash !== null && "minimumGap" in clash;

/** Limits on sideways and swinging motion, in the order in which a candidate falls. */
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
        shape: (requirements) =>
          bySituation({
            pinnedShortest: "rises",
            pinnedPoints: "rises",
            freePoints: "none",
            freeRateAndPoint: "none",
            freeRateAndLargestForce: "none",
            freeForceAtDeflection: minimumGap(requirements) ? "none" : "rises",
          })(requirements),
        overFreeLength: () => "falls",
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
        shape: (requirements) => (requirements.turnsAny ? "rises" : "falls"),
      },
    ],
  },
];
