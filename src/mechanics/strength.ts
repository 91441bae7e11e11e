import { power } from "./power.ts";

/**
 * Tensile strength read between the rows of a standard's table, linear in the logarithm of the diameter.
 *
 *   Rm = R1 + (R2 - R1) ln(d/d1) / ln(d2/d1)
 *
 * @param diameters     wire diameters of the rows, m, rising
 * @param strengths     tensile strength of each row, Pa
 * @param wireDiameter  d, m
 * @returns Pa
 * @range from the first row's diameter to the last's; the caller keeps to it
 * @source common practice for ASTM A227, A228, A229, A231: "intermediate sizes interpolated"
 */
export function strengthInterpolated(diameters: readonly number[], strengths: readonly number[], wireDiameter: number): number {
  const upper = rowAtOrAbove(diameters, wireDiameter);
  if (upper === 0) return strengths[0] as number;
  const d1 = diameters[upper - 1] as number;
  const d2 = diameters[upper] as number;
  const r1 = strengths[upper - 1] as number;
  const r2 = strengths[upper] as number;
  const fraction = Math.min(1, Math.log(wireDiameter / d1) / Math.log(d2 / d1));
  return r1 + (r2 - r1) * fraction;
}

/**
 * Tensile strength of the next larger row of a table whose rows say "up to and including".
 *
 * @param diameters     wire diameters of the rows, m, rising
 * @param strengths     tensile strength of each row, Pa
 * @param wireDiameter  d, m
 * @returns Pa
 * @range up to the last row's diameter; the caller keeps to it
 * @source EN 10270-1, EN 10270-3 and ASTM A313 as their tables are headed
 */
export function strengthNextRow(diameters: readonly number[], strengths: readonly number[], wireDiameter: number): number {
  return strengths[rowAtOrAbove(diameters, wireDiameter)] as number;
}

/**
 * Tensile strength by a power law in the diameter.
 *
 *   Sut = value / (d / at)^m
 *
 * @param value         strength at the reference diameter, Pa
 * @param at            reference diameter, m
 * @param exponent      m, pure number
 * @param wireDiameter  d, m
 * @returns Pa
 * @range the fit's own range of diameters
 * @source Shigley eq. 10-14
 */
export function strengthPowerLaw(value: number, at: number, exponent: number, wireDiameter: number): number {
  return value / power(wireDiameter / at, exponent);
}

/** The first row whose diameter is not below this one, the same size to a billionth counting as this one; else the last row. */
function rowAtOrAbove(diameters: readonly number[], wireDiameter: number): number {
  const row = diameters.findIndex((diameter) => wireDiameter <= diameter * (1 + 1e-9));
  return row < 0 ? diameters.length - 1 : row;
}
