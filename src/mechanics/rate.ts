/**
 * Force per deflection, from torsion of the wire alone: exact elasticity gives no reason to add a direct-shear term.
 *
 *   k = G d⁴ / (8 D³ Na)
 *
 * @param shearModulus  G, Pa
 * @param wireDiameter  d, m
 * @param meanDiameter  D, m
 * @param activeTurns   Na, pure number
 * @returns N/m
 * @range small pitch angle, coils not touching
 * @source Shigley eq. 10-9; EN 13906-1
 */
export function springRate(shearModulus: number, wireDiameter: number, meanDiameter: number, activeTurns: number): number {
  return (shearModulus * fourthPower(wireDiameter)) / (8 * meanDiameter * meanDiameter * meanDiameter * activeTurns);
}

/**
 * Mean diameter that gives a rate.
 *
 *   D = [G d⁴ / (8 k Na)]^⅓
 *
 * @param shearModulus  G, Pa
 * @param wireDiameter  d, m
 * @param rate          k, N/m
 * @param activeTurns   Na, pure number
 * @returns m
 * @range k > 0, Na > 0
 * @source Shigley eq. 10-9 solved for D
 */
export function meanDiameterForRate(shearModulus: number, wireDiameter: number, rate: number, activeTurns: number): number {
  return Math.cbrt((shearModulus * fourthPower(wireDiameter)) / (8 * rate * activeTurns));
}

/**
 * Active turns that give a rate.
 *
 *   Na = G d⁴ / (8 k D³)
 *
 * @param shearModulus  G, Pa
 * @param wireDiameter  d, m
 * @param meanDiameter  D, m
 * @param rate          k, N/m
 * @returns pure number
 * @range k > 0
 * @source Shigley eq. 10-9 solved for Na
 */
export function activeTurnsForRate(shearModulus: number, wireDiameter: number, meanDiameter: number, rate: number): number {
  return (shearModulus * fourthPower(wireDiameter)) / (8 * meanDiameter * meanDiameter * meanDiameter * rate);
}

/** Products, since the power operator costs several times as much and these run for every candidate that is looked at. */
function fourthPower(length: number): number {
  const squared = length * length;
  return squared * squared;
}
