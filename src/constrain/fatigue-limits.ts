import type { Asks, FatigueAsk } from "./asks.ts";
import { type LimitSpec, type SideSpec, withForcesAsked } from "./side.ts";

const asked = (asks: Asks) => asks.fatigue !== null;
const ask = (asks: Asks) => asks.fatigue as FatigueAsk;

const common = { scope: "turns", asked, shape: withForcesAsked, after: ["index"] } as const satisfies Partial<SideSpec>;

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
        after: [],
      },
    ],
  },
];
