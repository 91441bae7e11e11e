import type { Monotonicity } from "../../enumerate/domain.ts";
import type { FatigueRequirement, Requirements } from "../requirements/requirements.ts";
import { type BoundSpec, forceScope, type LimitSpec, pointForcesOverFreeLength, stressMonotonicity } from "./bound.ts";

const applies = (requirements: Requirements) => requirements.fatigue !== null;
const requirement = (requirements: Requirements) => requirements.fatigue as FatigueRequirement;

const common = {
  scope: forceScope,
  applies,
  monotonicity: stressMonotonicity,
  overFreeLength: pointForcesOverFreeLength,
  after: ["index"],
} as const satisfies Partial<BoundSpec>;

/** Where forces move as the diameter grows, amplitude and mean may move in opposite directions: nothing is claimed. */
function safetyMonotonicity(requirements: Requirements): Monotonicity {
  const moves =
    requirements.situation === "freePoints" || (requirements.situation === "pinnedPoints" && requirements.coilsMayOverlap);
  return moves ? "unknown" : stressMonotonicity(requirements);
}

/** Cyclic duty: the fatigue line, torsional yielding at the greatest load, and the sizes of wire that the data come from. */
export const FATIGUE_LIMITS: readonly LimitSpec[] = [
  {
    name: "fatigue",
    bounds: [
      {
        ...common,
        sense: "least",
        value: (c) => c.fatigueSafety,
        boundValue: (c) => requirement(c.requirements).safety,
        dimension: "number",
        monotonicity: safetyMonotonicity,
      },
      {
        ...common,
        sense: "most",
        value: (c) => c.stress(c.workingForce, c.requirements.stressFactor),
        boundValue: (c) => c.allowableStress,
        dimension: "stress",
        figure: "stressAtGreatestLoad",
        applies: (requirements) => applies(requirements) && requirement(requirements).kind !== "diagram",
      },
      {
        ...common,
        sense: "most",
        value: (c) => c.wireDiameter,
        boundValue: (c) => requirement(c.requirements).largestWire,
        dimension: "length",
        figure: "wireDiameter",
        applies: (requirements) => applies(requirements) && requirement(requirements).largestWire < Number.POSITIVE_INFINITY,
        monotonicity: () => "constant",
        overFreeLength: () => "constant",
        after: [],
      },
    ],
  },
];
