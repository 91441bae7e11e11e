import { bandOf, loadShareDeviation } from "../mechanics/tolerance.ts";
import type { EndStyle } from "../model.ts";
import type { TolerancedSpring, TolerancePractice } from "./choices.ts";

const INCH = 0.0254;

/** Index up to and including, for both tables. */
const INDICES = [4, 6, 8, 10, 12, 14, 16];

/** Wire diameters up to and including, in. */
const WIRES = [0.015, 0.023, 0.035, 0.051, 0.076, 0.114, 0.171, 0.25, 0.375, 0.5];

/** Plus-minus on the coil diameter, in. */
const COIL = [
  [0.002, 0.002, 0.003, 0.004, 0.005, 0.006, 0.007],
  [0.002, 0.003, 0.004, 0.006, 0.007, 0.008, 0.01],
  [0.002, 0.004, 0.006, 0.007, 0.009, 0.011, 0.013],
  [0.003, 0.005, 0.007, 0.01, 0.012, 0.015, 0.017],
  [0.004, 0.007, 0.01, 0.013, 0.016, 0.019, 0.022],
  [0.006, 0.009, 0.013, 0.018, 0.021, 0.025, 0.029],
  [0.008, 0.012, 0.017, 0.023, 0.028, 0.033, 0.038],
  [0.011, 0.015, 0.021, 0.028, 0.035, 0.042, 0.049],
  [0.016, 0.02, 0.026, 0.037, 0.046, 0.054, 0.064],
  [0.021, 0.03, 0.04, 0.062, 0.08, 0.1, 0.125],
];

/** Active coils in an inch of free length, up to and including. */
const COILS_PER_INCH = [0.5, 1, 2, 4, 8, 12, 16, 20];

/** Plus-minus on the free length, in for each inch of it, squared and ground ends. */
const LENGTH = [
  [0.01, 0.011, 0.012, 0.013, 0.015, 0.016, 0.016],
  [0.011, 0.013, 0.015, 0.016, 0.017, 0.018, 0.019],
  [0.013, 0.015, 0.017, 0.019, 0.02, 0.022, 0.023],
  [0.016, 0.018, 0.021, 0.023, 0.024, 0.026, 0.027],
  [0.019, 0.022, 0.024, 0.026, 0.028, 0.03, 0.032],
  [0.021, 0.024, 0.027, 0.03, 0.032, 0.034, 0.036],
  [0.022, 0.026, 0.029, 0.032, 0.034, 0.036, 0.038],
  [0.023, 0.027, 0.031, 0.034, 0.036, 0.038, 0.04],
];

/** Tolerances of the inch trade's handbook tables. */
export const inchTolerances: TolerancePractice = {
  source: "Machinery's Handbook, 31st ed., springs, Tables 7 and 8 (Spring Manufacturers Institute); loads by a rule from memory",
  grades: ["commercial"],
  usual: "commercial",
  coilDiameter: (_grade, spring) => {
    const value = bandOf(WIRES, INDICES, COIL, spring.wireDiameter / INCH, spring.meanDiameter / spring.wireDiameter);
    return value === null ? null : value * INCH;
  },
  freeLength: (_grade, spring) => freeLengthDeviation(spring),
  lengthOf,
  force: (_grade, spring, force, deflection) => {
    const length = freeLengthDeviation(spring);
    // The rule is a share of the force, and at a deflection of nothing there is no force to share.
    return length === null || deflection <= 0 ? null : loadShareDeviation(length, deflection) * force;
  },
  freeLengthSteps: ({ activeTurns }) => COILS_PER_INCH.toReversed().map((coils) => (activeTurns / coils) * INCH),
  turns: { value: 0.25, source: "JIS B 2704 annex (B 2707): total coils ± 1/4; the inch tables give none" },
  shearModulus: { value: 0.02, source: "common practice, no source" },
};

/** Plain ends have no figure. */
function lengthOf({ closed }: EndStyle): boolean {
  return closed;
}

/** The table is for ends squared and ground; squared ends that are not ground get 1.7 times that. */
function freeLengthDeviation({ wireDiameter, meanDiameter, activeTurns, freeLength, ends }: TolerancedSpring): number | null {
  if (!lengthOf(ends)) return null;
  const inches = freeLength / INCH;
  const perInch = bandOf(COILS_PER_INCH, INDICES, LENGTH, activeTurns / inches, meanDiameter / wireDiameter);
  return perInch === null ? null : perInch * Math.max(inches, 0.5) * (ends.ground ? 1 : 1.7) * INCH;
}
