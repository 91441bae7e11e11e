import type { StressLimit } from "../../model.ts";
import type { Candidate } from "../candidate/candidate.ts";
import type { Requirements } from "../requirements/requirements.ts";
import {
  bySituation,
  forceScope,
  type LimitSpec,
  pointForcesOverFreeLength,
  stressMonotonicity,
  type Threshold,
} from "./bound.ts";

const INDEX_AND_CLASH = ["index", "clash"] as const;
const ofTurns = ({ clash }: Requirements) => clash !== null && ("ofSolidLength" in clash || "minimumGap" in clash);

/** Limits on stress in work and pressed solid, in the order of the limits. */
export const STRESS_LIMITS: readonly LimitSpec[] = [
  {
    name: "workingStress",
    bounds: [
      {
        sense: "most",
        value: (c) => c.stress(c.workingForce, c.requirements.workingFactor),
        dimension: "stress",
        threshold: (requirements) => safetyThreshold(requirements.workingStress),
        boundValue: (c) => stressBound(c, c.requirements.workingStress as StressLimit),
        applies: (requirements) => requirements.workingStress !== null,
        scope: forceScope,
        monotonicity: stressMonotonicity,
        overFreeLength: pointForcesOverFreeLength,
        after: ["index"],
      },
    ],
  },
  {
    name: "solidStress",
    bounds: [
      {
        sense: "most",
        value: (c) => c.stressAtSolid,
        dimension: "stress",
        threshold: (requirements) => safetyThreshold(requirements.solidStress),
        boundValue: (c) => stressBound(c, c.requirements.solidStress as StressLimit),
        applies: (requirements) => requirements.solidStress !== null,
        scope: "family",
        monotonicity: (requirements) =>
          bySituation({
            // An allowance that grows with the turns can outweigh the stress that grows with the diameter.
            pinnedShortest: ofTurns(requirements) ? "unimodal" : "decreasing",
            pinnedPoints: "unimodal",
            freePoints: "unimodal",
            freeRateAndPoint: "unimodal",
            freeRateAndLargestForce: "unimodal",
            freeForceAtDeflection: "increasing",
          })(requirements),
        overFreeLength: () => "decreasing",
        after: INDEX_AND_CLASH,
      },
    ],
  },
];

function stressBound(candidate: Candidate, limit: StressLimit): number {
  return "max" in limit ? limit.max : candidate.allowableStress / limit.safety;
}

function safetyThreshold(limit: StressLimit | null): Threshold | null {
  return limit !== null && "safety" in limit ? { value: limit.safety, dimension: "number" } : null;
}
