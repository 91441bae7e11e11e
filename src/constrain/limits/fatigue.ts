import type { Shape } from "../../enumerate/domain.ts";
import type { FatigueRequirement, Requirements } from "../requirements/requirements.ts";
import { forceScope, type LimitSpec, type SideSpec, withForcesAsked, withForcesAtLengths } from "./bound.ts";

const asked = (requirements: Requirements) => requirements.fatigue !== null;
const ask = (requirements: Requirements) => requirements.fatigue as FatigueRequirement;

const common = {
  scope: forceScope,
  asked,
  shape: withForcesAsked,
  overFreeLength: withForcesAtLengths,
  after: ["index"],
} as const satisfies Partial<SideSpec>;

/** Where forces move as the diameter grows, amplitude and mean may move in opposite directions: nothing is claimed. */
function safetyShape(requirements: Requirements): Shape {
  const moves =
    requirements.situation === "freePoints" || (requirements.situation === "pinnedPoints" && requirements.coilsMayOverlap);
  return moves ? "none" : withForcesAsked(requirements);
}

/** Cyclic duty: the fatigue line, torsional yielding at the greatest load, and the sizes of wire that the data come from. */
export const FATIGUE_LIMITS: readonly LimitSpec[] = [
  {
    name: "fatigue",
    sides: [
      {
        ...common,
        sense: "least",
        value: (c) => c.fatigueSafety,
        bound: (c) => ask(c.requirements).safety,
        dimension: "number",
        shape: safetyShape,
      },
      {
        ...common,
        sense: "most",
        value: (c) => c.stress(c.workingForce, c.requirements.stressFactor),
        bound: (c) => c.allowableStress,
        dimension: "stress",
        figure: "stressAtGreatestLoad",
        asked: (requirements) => asked(requirements) && ask(requirements).kind !== "diagram",
      },
      {
        ...common,
        sense: "most",
        value: (c) => c.wireDiameter,
        bound: (c) => ask(c.requirements).largestWire,
        dimension: "length",
        figure: "wireDiameter",
        asked: (requirements) => asked(requirements) && ask(requirements).largestWire < Number.POSITIVE_INFINITY,
        shape: () => "constant",
        overFreeLength: () => "constant",
        after: [],
      },
    ],
  },
];
