import type { Shape } from "../../enumerate/domain.ts";
import type { Asks, FatigueAsk } from "../requirements/requirements.ts";
import { forceScope, type LimitSpec, type SideSpec, withForcesAsked, withForcesAtLengths } from "./bound.ts";

const asked = (asks: Asks) => asks.fatigue !== null;
const ask = (asks: Asks) => asks.fatigue as FatigueAsk;

const common = {
  scope: forceScope,
  asked,
  shape: withForcesAsked,
  overFreeLength: withForcesAtLengths,
  after: ["index"],
} as const satisfies Partial<SideSpec>;

/** Where forces move as the diameter grows, amplitude and mean may move in opposite directions: nothing is claimed. */
function safetyShape(asks: Asks): Shape {
  const moves = asks.situation === "freePoints" || (asks.situation === "pinnedPoints" && asks.coilsMayOverlap);
  return moves ? "none" : withForcesAsked(asks);
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
        bound: (c) => ask(c.asks).safety,
        dimension: "number",
        shape: safetyShape,
      },
      {
        ...common,
        sense: "most",
        value: (c) => c.stress(c.workingForce, c.asks.stressFactor),
        bound: (c) => c.allowableStress,
        dimension: "stress",
        figure: "stressAtGreatestLoad",
        asked: (asks) => asked(asks) && ask(asks).kind !== "diagram",
      },
      {
        ...common,
        sense: "most",
        value: (c) => c.wireDiameter,
        bound: (c) => ask(c.asks).largestWire,
        dimension: "length",
        figure: "wireDiameter",
        asked: (asks) => asked(asks) && ask(asks).largestWire < Number.POSITIVE_INFINITY,
        shape: () => "constant",
        overFreeLength: () => "constant",
        after: [],
      },
    ],
  },
];
