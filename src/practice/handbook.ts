import { solidLength } from "../mechanics/ends.ts";
import { outsideDiameterAtSolid, outsideDiameterPressed, pitch } from "../mechanics/geometry.ts";
import type { Practice } from "./choices.ts";
import { inchTolerances } from "./inch-tolerances.ts";

/** 1000 pounds-force per square inch, Pa. */
const KPSI = 4448.2216152605 / 0.0254 ** 2;

/** What music, austenitic and non-ferrous wire endures at each life, from nothing, as a share of tensile strength. */
const COMMON_WIRE = { unpeened: [0.36, 0.33, 0.3], peened: [0.42, 0.39, 0.36] };

/** The practice of the inch-trade texts. */
export const handbook: Practice = {
  name: "handbook",
  title: "handbook practice of the inch trade",
  ends: null,
  fromMemory: [
    {
      source: "Shigley Table 10-6",
      what: "allowable stress with set removed",
      appliesTo: ({ service }) => service.set === "removed",
    },
    { source: "Associated Spring, Design Handbook", what: "growth when pressed" },
    { source: "Associated Spring, Design Handbook", what: "load tolerance" },
    {
      source: "Spring Manufacturers Institute",
      what: "strength by life",
      appliesTo: ({ service, limits }) =>
        service.cycles !== undefined && limits.fatigue !== "off" && limits.fatigue.line === "life",
    },
  ],
  index: { value: { min: 4, max: 12 }, source: "Shigley eq. 10-18" },
  turns: { value: { min: 3, max: 15 }, source: "Shigley eq. 10-19" },
  clash: { value: { ofDeflection: 0.15 }, source: "Shigley eq. 10-20" },
  clashCyclic: { value: { ofDeflection: 0.15 }, source: "Shigley eq. 10-20" },
  solidSafety: { value: 1.2, source: "Shigley eq. 10-21" },
  bucklingSafety: { value: 1, source: "Shigley eq. 10-10, no factor added" },
  surgeMultiple: { value: 15, source: "Shigley section 10-8, lower end of 15 to 20" },
  stressFactor: {
    asWound: { value: "bergstrasser", source: "Shigley Table 10-6" },
    setRemoved: { value: "direct", source: "Shigley Table 10-6" },
  },
  fatigue: {
    kind: "endured",
    factor: { value: "bergstrasser", source: "Shigley eq. 10-31 and 10-32" },
    safety: { value: 1.5, source: "Shigley Example 10-5" },
    strengths: {
      value: { unpeened: { amplitude: 35 * KPSI, mean: 55 * KPSI }, peened: { amplitude: 57.5 * KPSI, mean: 77.5 * KPSI } },
      source: "Zimmerli, as quoted in Shigley eq. 10-28 and 10-29",
    },
    life: {
      value: {
        cycles: [1e5, 1e6, 1e7],
        shares: {
          "cold drawn": COMMON_WIRE,
          "hardened and tempered": { unpeened: [0.42, 0.4, 0.38], peened: [0.49, 0.47, 0.46] },
          austenitic: COMMON_WIRE,
          "non-ferrous": COMMON_WIRE,
        },
      },
      source:
        "Spring Manufacturers Institute, from memory: ASTM A228, austenitic and non-ferrous wire; A230 and A232 for hardened and tempered wire",
    },
    ultimateShear: { value: 0.67, source: "Shigley eq. 10-30" },
    largestWire: 10e-3,
    classes: ["cold drawn", "hardened and tempered", "austenitic"],
  },
  tolerance: inchTolerances,
  allowable: {
    asWound: { "cold drawn": 0.45, "hardened and tempered": 0.5, austenitic: 0.35, "non-ferrous": 0.35 },
    setRemoved: { "cold drawn": 0.6, "hardened and tempered": 0.65, austenitic: 0.55, "non-ferrous": 0.55 },
    source: "Shigley Table 10-6, lower end of each printed range",
  },
  fixity: {
    // biome-ignore lint/suspicious/noApproximativeNumericConstant: the table prints three digits
    value: { "parallel plates": 0.5, "plate and pivot": 0.707, pivots: 1, "clamped and free": 2, guided: 0.5 },
    source: "Shigley Table 10-2",
  },
  wireDeviation: null,
  solidLength: (totalTurns, ends, wireDiameter) => solidLength(totalTurns, ends.solidExtra, wireDiameter),
  outsideDiameterAtSolid: (meanDiameter, wireDiameter, activeTurns, freeLength, ends) =>
    outsideDiameterAtSolid(
      meanDiameter,
      wireDiameter,
      pitch(freeLength, wireDiameter, activeTurns, ends.pitchTurns, ends.pitchWires),
    ),
  outsideDiameterAt: (length, meanDiameter, wireDiameter, activeTurns, freeLength, ends) => {
    const pitchAt = (at: number) => pitch(at, wireDiameter, activeTurns, ends.pitchTurns, ends.pitchWires);
    return outsideDiameterPressed(meanDiameter, wireDiameter, pitchAt(freeLength), pitchAt(length));
  },
};
