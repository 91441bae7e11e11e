/**
 * Shear stress in the wire.
 *
 *   τ = K 8 F D / (π d³)
 *
 * @param force         F, N
 * @param meanDiameter  D, m
 * @param wireDiameter  d, m
 * @param factor        K, pure number: one of the factors below, or 1 for the uncorrected stress
 * @returns Pa
 * @range round wire
 * @source Shigley eq. 10-7; EN 13906-1
 */
export function shearStress(force: number, meanDiameter: number, wireDiameter: number, factor: number): number {
  return (factor * 8 * force * meanDiameter) / (Math.PI * wireDiameter * wireDiameter * wireDiameter);
}

/**
 * Direct-shear factor: uniform transverse shear added to torsion, no curvature.
 *
 *   Ks = (2C + 1) / (2C)
 *
 * @param index  C, pure number
 * @returns pure number
 * @range C >= 2
 * @source Shigley eq. 10-3
 */
export function stressFactorDirect(index: number): number {
  return (2 * index + 1) / (2 * index);
}

/**
 * Bergsträsser factor: curvature and direct shear. The European standard's k = (w + 0.5) / (w - 0.75) is the same expression.
 *
 *   KB = (4C + 2) / (4C - 3)
 *
 * @param index  C, pure number
 * @returns pure number
 * @range C >= 2
 * @source Shigley eq. 10-5; EN 13906-1 clause 7
 */
export function stressFactorBergstrasser(index: number): number {
  return (4 * index + 2) / (4 * index - 3);
}

/**
 * Wahl factor: curvature and direct shear.
 *
 *   Kw = (4C - 1) / (4C - 4) + 0.615 / C
 *
 * @param index  C, pure number
 * @returns pure number
 * @range C >= 2
 * @source Shigley eq. 10-4
 */
export function stressFactorWahl(index: number): number {
  return (4 * index - 1) / (4 * index - 4) + 0.615 / index;
}
