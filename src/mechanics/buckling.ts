/**
 * Deflection at which a compression spring buckles.
 *
 *   y = L0 C1 [1 - (1 - C2/λ²)^½]    λ = α L0 / D    C1 = E / 2(E - G)    C2 = 2π²(E - G) / (2G + E)
 *
 * The European standard's s_K is the same expression with ν for α.
 *
 * @param freeLength     L0, m
 * @param meanDiameter   D, m
 * @param fixity         α, pure number: 0.5 both seats parallel plates, 0.707 plate and pivot, 1 pivots, 2 clamped and free
 * @param youngsModulus  E, Pa
 * @param shearModulus   G, Pa
 * @returns m; Infinity where the spring is stable at every deflection
 * @range E > G > 0, coils not touching
 * @source Shigley eq. 10-10; EN 13906-1 clause 9.14
 */
export function bucklingDeflection(
  freeLength: number,
  meanDiameter: number,
  fixity: number,
  youngsModulus: number,
  shearModulus: number,
): number {
  const slenderness = (fixity * freeLength) / meanDiameter;
  const c1 = youngsModulus / (2 * (youngsModulus - shearModulus));
  const c2 = (2 * Math.PI ** 2 * (youngsModulus - shearModulus)) / (2 * shearModulus + youngsModulus);
  const radicand = 1 - c2 / (slenderness * slenderness);
  return radicand < 0 ? Number.POSITIVE_INFINITY : freeLength * c1 * (1 - Math.sqrt(radicand));
}

/**
 * Free length below which a spring is stable at every deflection.
 *
 *   L0 = (π D / α) [2(E - G) / (2G + E)]^½
 *
 * @param meanDiameter   D, m
 * @param fixity         α, pure number
 * @param youngsModulus  E, Pa
 * @param shearModulus   G, Pa
 * @returns m
 * @range E > G > 0
 * @source Shigley eq. 10-12; its rounded form for steels, 2.63 D/α, is up to 4 % off for the moduli printed in the same book
 */
export function stableFreeLength(meanDiameter: number, fixity: number, youngsModulus: number, shearModulus: number): number {
  return (
    ((Math.PI * meanDiameter) / fixity) * Math.sqrt((2 * (youngsModulus - shearModulus)) / (2 * shearModulus + youngsModulus))
  );
}
