import type { FigureName } from "./words.ts";

/** Figures of one spring in the order in which an engineer checks them. */
export const CHOSEN_FIGURES: readonly FigureName[] = [
  "wireDiameter",
  "meanDiameter",
  "outsideDiameter",
  "insideDiameter",
  "outsideDiameterAtSolid",
  "index",
  "totalTurns",
  "activeTurns",
  "freeLength",
  "solidLength",
  "pitch",
  "rate",
  "forceAtSolid",
  "stressAtSolid",
  "solidSafety",
  "workingSafety",
  "tensileStrength",
  "bucklingDeflection",
  "surgeFrequency",
  "wireLength",
  "mass",
  "relativeCost",
];
