import { bandOf, forceDeviation, forceDeviationBase, lengthDeviation, turnsInfluence } from "../mechanics/tolerance.ts";
import type { ToleranceGrade } from "../model.ts";
import type { TolerancedSpring, TolerancePractice } from "./choices.ts";

const MM = 1e-3;

/** Mean diameters up to and including, mm. */
const DIAMETERS = [1, 1.6, 2.5, 4, 6.3, 10, 16, 25, 31.5, 40, 50, 63, 80, 100, 125, 160, 200];
/** Index up to and including. */
const INDICES = [8, 14, 20];

/** Plus-minus on the coil diameter, mm, by grade; EN 15800 (DIN 2095; grade 2 above 63 mm as DIN 2097 prints it). */
const COIL: Readonly<Record<1 | 2 | 3, readonly (readonly (number | null)[])[]>> = {
  1: [
    [0.05, 0.07, 0.1],
    [0.05, 0.07, 0.1],
    [0.07, 0.1, 0.15],
    [0.1, 0.1, 0.15],
    [0.1, 0.15, 0.2],
    [0.15, 0.15, 0.2],
    [0.15, 0.2, 0.25],
    [0.2, 0.25, 0.3],
    [0.25, 0.3, 0.35],
    [0.25, 0.3, 0.35],
    [0.3, 0.4, 0.5],
    [0.4, 0.5, 0.6],
    [0.5, null, null],
  ],
  2: [
    [0.07, 0.1, 0.15],
    [0.08, 0.1, 0.15],
    [0.1, 0.15, 0.2],
    [0.15, 0.2, 0.25],
    [0.2, 0.25, 0.3],
    [0.25, 0.3, 0.35],
    [0.3, 0.35, 0.4],
    [0.35, 0.45, 0.5],
    [0.4, 0.5, 0.6],
    [0.5, 0.6, 0.7],
    [0.6, 0.8, 0.9],
    [0.8, 1, 1.1],
    [1, 1.2, 1.4],
    [1.2, 1.5, 1.7],
    [1.4, 1.9, 2.2],
    [1.8, 2.3, 2.7],
    [2.1, 2.9, 3.3],
  ],
  3: [
    [0.1, 0.15, 0.2],
    [0.15, 0.2, 0.3],
    [0.2, 0.3, 0.4],
    [0.3, 0.4, 0.5],
    [0.4, 0.5, 0.6],
    [0.5, 0.6, 0.7],
    [0.6, 0.7, 0.8],
    [0.7, 0.9, 1],
    [0.8, 1, 1.2],
    [1, 1.2, 1.5],
    [1.2, 1.5, 1.8],
    [1.5, 2, 2.3],
  ],
};

/** Q of the force and length formulas. */
export const GRADE_FACTOR: Readonly<Record<1 | 2 | 3, number>> = { 1: 0.63, 2: 1, 3: 1.6 };

/** Tolerances of the European standard for cold coiled springs. */
export const en15800: TolerancePractice = {
  source: "EN 15800; its force and length formulas from memory",
  grades: [1, 2, 3],
  usual: 2,
  coilDiameter: (grade, spring) => {
    const table = COIL[numbered(grade)];
    const value = inScope(spring)
      ? bandOf(DIAMETERS, INDICES, table, spring.meanDiameter / MM, spring.meanDiameter / spring.wireDiameter)
      : null;
    return value === null ? null : value * MM;
  },
  freeLength: (grade, spring) =>
    inScope(spring)
      ? lengthDeviation(baseOf(spring), turnsInfluence(spring.activeTurns), spring.rate, GRADE_FACTOR[numbered(grade)])
      : null,
  lengthOf: () => true,
  force: (grade, spring, force) =>
    inScope(spring)
      ? forceDeviation(baseOf(spring), turnsInfluence(spring.activeTurns), force, GRADE_FACTOR[numbered(grade)])
      : null,
  freeLengthSteps: () => [LONGEST],
  turns: { value: 0.25, source: "JIS B 2704 annex (B 2707): total coils ± 1/4; EN 15800 gives none" },
  shearModulus: { value: 0.02, source: "common practice, no source" },
};

function baseOf({ wireDiameter, meanDiameter }: TolerancedSpring): number {
  return forceDeviationBase(wireDiameter, meanDiameter);
}

function numbered(grade: ToleranceGrade): 1 | 2 | 3 {
  return grade === "commercial" ? 2 : grade;
}

/** Two figures closer than this, as a fraction, are the same, so that the ends of the scope are in it whatever the rounding. */
const SAME = 1e-9;
const atLeast = (figure: number, bound: number) => figure >= bound * (1 - SAME);
const atMost = (figure: number, bound: number) => figure <= bound * (1 + SAME);

/** The longest free length in the scope, m. */
const LONGEST = 630 * MM;

/** The scope of EN 15800. */
function inScope({ wireDiameter, meanDiameter, activeTurns, freeLength }: TolerancedSpring): boolean {
  const index = meanDiameter / wireDiameter;
  return (
    atLeast(wireDiameter, 0.07 * MM) &&
    atMost(wireDiameter, 16 * MM) &&
    atLeast(meanDiameter, 0.63 * MM) &&
    atMost(meanDiameter, 200 * MM) &&
    atMost(freeLength, LONGEST) &&
    atLeast(activeTurns, 2) &&
    atLeast(index, 4) &&
    atMost(index, 20)
  );
}

/** Wire diameters up to and including, mm. */
const WIRE_DIAMETERS = [0.09, 0.16, 0.25, 0.63, 0.75, 1, 1.7, 2.6, 4, 5.3, 7, 9.5, 11, 14, 18, 20];
/** Plus-minus on each, mm. */
const DEVIATIONS = [0.003, 0.004, 0.005, 0.008, 0.01, 0.015, 0.02, 0.025, 0.03, 0.035, 0.04, 0.045, 0.05, 0.08, 0.09, 0.1];

/**
 * What the diameter of drawn spring wire may miss by.
 *
 * @param wireDiameter  d, m
 * @returns m, plus or minus; beyond 20 mm the last band's
 * @source EN 10270-1 with EN 10218-2, as a wire merchant prints it
 */
export function wireDeviation(wireDiameter: number): number {
  const rows = DEVIATIONS.map((deviation) => [deviation]);
  const band = bandOf(WIRE_DIAMETERS, [1], rows, wireDiameter / MM, 1);
  return (band ?? (DEVIATIONS.at(-1) as number)) * MM;
}
