/**
 * Length of wire in a spring; the pitch is neglected, as the books do (under 1 % at a pitch angle of 8°).
 *
 *   l = π D N
 *
 * @param meanDiameter  D, m
 * @param turns         N, pure number: all of them for the spring, the active ones for what swings
 * @returns m
 * @range small pitch angle
 * @source Shigley section 10-5
 */
export function wireLength(meanDiameter: number, turns: number): number {
  return Math.PI * meanDiameter * turns;
}

/**
 * Mass of wire.
 *
 *   m = ρ (π/4) d² l
 *
 * @param density       ρ, kg/m³
 * @param wireDiameter  d, m
 * @param wireLength    l, m
 * @returns kg
 * @range round wire
 * @source Shigley eq. 10-22
 */
export function wireMass(density: number, wireDiameter: number, wireLength: number): number {
  return ((density * Math.PI) / 4) * wireDiameter * wireDiameter * wireLength;
}
