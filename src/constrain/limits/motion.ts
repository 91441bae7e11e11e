import type { Asks } from "../requirements/requirements.ts";
import { bySituation, freeLengthScope, type LimitSpec } from "./bound.ts";

const minimumGap = ({ clash }: Asks) => clash !== null && "minimumGap" in clash;

/** Limits on sideways and swinging motion, in the order in which a candidate falls. */
export const MOTION_LIMITS: readonly LimitSpec[] = [
  {
    name: "buckling",
    sides: [
      {
        sense: "least",
        value: (c) => c.bucklingDeflection,
        dimension: "length",
        threshold: (asks) => ({ value: asks.bucklingSafety as number, dimension: "number" }),
        bound: (c) => (c.asks.bucklingSafety as number) * c.workingDeflection,
        asked: (asks) => asks.bucklingSafety !== null,
        scope: freeLengthScope,
        shape: (asks) =>
          bySituation({
            pinnedShortest: "rises",
            pinnedPoints: "rises",
            freePoints: "none",
            freeRateAndPoint: "none",
            freeRateAndLargestForce: "none",
            freeForceAtDeflection: minimumGap(asks) ? "none" : "rises",
          })(asks),
        overFreeLength: () => "falls",
      },
    ],
  },
  {
    name: "surge",
    sides: [
      {
        sense: "least",
        value: (c) => c.surgeFrequency,
        dimension: "frequency",
        bound: (c) => c.asks.surge as number,
        asked: (asks) => asks.surge !== null,
        scope: "turns",
        shape: (asks) => (asks.turnsAny ? "rises" : "falls"),
      },
    ],
  },
];
