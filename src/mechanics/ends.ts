/**
 * Turns that deflect.
 *
 *   Na = Nt - Ne
 *
 * @param totalTurns  Nt, pure number
 * @param deadTurns   Ne, pure number: 0, 1, 2, 2 for plain, plain and ground, squared, squared and ground ends
 * @returns pure number
 * @range Nt > Ne
 * @source Shigley Table 10-1
 */
export function activeTurns(totalTurns: number, deadTurns: number): number {
  return totalTurns - deadTurns;
}

/**
 * Length of the spring with all coils touching.
 *
 *   Ls = (Nt + e) d
 *
 * @param totalTurns    Nt, pure number
 * @param extra         e, pure number: wire thicknesses beyond one a turn; by the end table 1, 0, 1, 0
 * @param wireDiameter  d, m; the largest wire diameter where the practice asks for it
 * @returns m
 * @range Nt > 0
 * @source Shigley Table 10-1; Machinery's Handbook, 31st ed., springs, Table 3; EN 13906-1 clause 9.10 (e = 0 ground, 1.5 not; from memory)
 */
export function solidLength(totalTurns: number, extra: number, wireDiameter: number): number {
  return (totalTurns + extra) * wireDiameter;
}

/**
 * Least total gap between active coils at the greatest load.
 *
 *   Sa = n (0.0015 D²/d + 0.1 d)
 *
 * @param activeTurns   n, pure number
 * @param meanDiameter  D, m
 * @param wireDiameter  d, m
 * @returns m; times 1.5 in cyclic duty
 * @range cold coiled springs
 * @source EN 13906-1, clause 9.9, from memory
 */
export function minimumGap(activeTurns: number, meanDiameter: number, wireDiameter: number): number {
  return activeTurns * ((0.0015 * meanDiameter * meanDiameter) / wireDiameter + 0.1 * wireDiameter);
}
