import { solidLength } from "../mechanics/ends.ts";
import { diameterGrowth } from "../mechanics/geometry.ts";
import type { EndStyle } from "../model.ts";
import type { Practice } from "./choices.ts";
import { en15800, wireDeviation } from "./en-tolerances.ts";

/** The practice of the European standard for cold coiled springs. */
export const en13906: Practice = {
  name: "en13906",
  title: "EN 13906-1",
  ends: ["squared", "squared-ground"],
  fromMemory: [
    {
      source: "EN 13906-1",
      what: "moduli at temperature (6.4)",
      appliesTo: ({ service }) => service.temperature !== undefined,
    },
    {
      source: "EN 13906-1",
      what: "least gap between coils (9.9)",
      appliesTo: ({ limits }) => limits.clash !== "off" && "minimumGap" in limits.clash,
    },
    { source: "EN 13906-1", what: "solid length (9.10)" },
    { source: "EN 13906-1", what: "growth when pressed (9.11)" },
    {
      source: "EN 13906-1",
      what: "multiple of the frequency of work (9.12)",
      appliesTo: ({ service }) => service.frequency !== undefined,
    },
    { source: "EN 13906-1", what: "fixity by seats (9.14)", appliesTo: ({ service }) => service.seats !== "guided" },
    {
      source: "EN 13906-1",
      what: "allowable stress (10.1.1)",
      appliesTo: ({ sweep }) => sweep.materials.some(({ allowable }) => allowable === undefined),
    },
    { source: "EN 15800", what: "tolerances of force and length" },
  ],
  index: { value: { min: 4, max: 20 }, source: "EN 15800, scope" },
  turns: { value: { min: 2, max: 30 }, source: "EN 15800, scope, for 2; 30 is common practice, no source" },
  clash: { value: { minimumGap: 1 }, source: "EN 13906-1 clause 9.9, from memory" },
  clashCyclic: { value: { minimumGap: 1.5 }, source: "EN 13906-1 clause 9.9, from memory" },
  solidSafety: { value: 1, source: "EN 13906-1 clause 10.1.1 has the margin inside its 0.56" },
  bucklingSafety: { value: 1, source: "EN 13906-1 clause 9.14" },
  surgeMultiple: { value: 10, source: "EN 13906-1 clause 9.12, from memory" },
  stressFactor: {
    asWound: { value: "none", source: "EN 13906-1 clause 10.1.1: static stress is not corrected" },
    setRemoved: { value: "none", source: "EN 13906-1 clause 10.1.1: static stress is not corrected" },
  },
  fatigue: {
    kind: "diagram",
    factor: { value: "bergstrasser", source: "EN 13906-1 clauses 7 and 10.3" },
    safety: { value: 1, source: "EN 13906-1 clause 10.3: the range must not exceed the diagram's" },
  },
  tolerance: en15800,
  allowable: {
    asWound: { "cold drawn": 0.56, "hardened and tempered": 0.56, austenitic: 0.56, "non-ferrous": 0.56 },
    setRemoved: { "cold drawn": 0.56, "hardened and tempered": 0.56, austenitic: 0.56, "non-ferrous": 0.56 },
    source: "EN 13906-1 clause 10.1.1, from memory",
  },
  fixity: {
    value: { "parallel plates": 0.5, "plate and pivot": 0.7, pivots: 1, "clamped and free": 2, guided: 0.5 },
    source: "EN 13906-1 clause 9.14, from memory",
  },
  wireDeviation: { value: wireDeviation, source: "EN 10270-1, as the material's data give none" },
  solidLength: (totalTurns, ends, _wireDiameter, largestWireDiameter) =>
    solidLength(totalTurns, ends.ground ? 0 : 1.5, largestWireDiameter),
  outsideDiameterAtSolid: (meanDiameter, wireDiameter, activeTurns, freeLength, ends) =>
    meanDiameter + wireDiameter + growthFrom(freeLength, meanDiameter, wireDiameter, activeTurns, ends),
  // The standard prints the growth on pressing solid; at a length what is left of that is still to come.
  outsideDiameterAt: (length, meanDiameter, wireDiameter, activeTurns, freeLength, ends) => {
    const growth = (from: number) => growthFrom(from, meanDiameter, wireDiameter, activeTurns, ends);
    return meanDiameter + wireDiameter + growth(freeLength) - growth(length);
  },
};

/** Growth on pressing solid from a length, m. */
function growthFrom(length: number, meanDiameter: number, wireDiameter: number, activeTurns: number, ends: EndStyle): number {
  const gap = (length - (ends.ground ? 1 : 2.5) * wireDiameter) / activeTurns;
  return diameterGrowth(meanDiameter, wireDiameter, gap);
}
