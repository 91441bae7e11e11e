/**
 * Safety against fatigue by a straight Goodman line through the strength at one known point of it.
 *
 *   n = 1 / (τa/Sse + τm/Ssu)    Sse = Ssa / (1 - Ssm/Ssu)
 *
 * @param amplitude          τa, Pa, half the range of corrected shear stress
 * @param mean               τm, Pa, the middle of that range
 * @param strengthAmplitude  Ssa, Pa, the amplitude that springs endured
 * @param strengthMean       Ssm, Pa, the mean stress at which they did
 * @param ultimateShear      Ssu, Pa
 * @returns pure number; the load line runs through the origin
 * @range Ssm < Ssu, τa > 0
 * @source Shigley section 10-9, eq. 10-31 on, and Table 6-6
 */
export function fatigueSafetyGoodman(
  amplitude: number,
  mean: number,
  strengthAmplitude: number,
  strengthMean: number,
  ultimateShear: number,
): number {
  const endurance = strengthAmplitude / (1 - strengthMean / ultimateShear);
  return 1 / (amplitude / endurance + mean / ultimateShear);
}

/**
 * Safety against fatigue by the Gerber parabola through the strength at one known point of it.
 *
 *   n = ½ (Ssu/τm)² (τa/Sse) [(1 + (2 τm Sse / (Ssu τa))²)^½ - 1]    Sse = Ssa / [1 - (Ssm/Ssu)²]
 *
 * @param amplitude          τa, Pa, half the range of corrected shear stress
 * @param mean               τm, Pa, the middle of that range
 * @param strengthAmplitude  Ssa, Pa, the amplitude that springs endured
 * @param strengthMean       Ssm, Pa, the mean stress at which they did
 * @param ultimateShear      Ssu, Pa
 * @returns pure number; the load line runs through the origin
 * @range Ssm < Ssu, τa > 0, τm > 0
 * @source Shigley section 10-9 and Table 6-7
 */
export function fatigueSafetyGerber(
  amplitude: number,
  mean: number,
  strengthAmplitude: number,
  strengthMean: number,
  ultimateShear: number,
): number {
  const endurance = strengthAmplitude / (1 - (strengthMean / ultimateShear) ** 2);
  const slope = (2 * mean * endurance) / (ultimateShear * amplitude);
  return 0.5 * (ultimateShear / mean) ** 2 * (amplitude / endurance) * (Math.sqrt(1 + slope * slope) - 1);
}

/**
 * Safety against fatigue where the mean stress in torsion is held to have no effect.
 *
 *   n = Ssa / τa
 *
 * @param amplitude          τa, Pa, half the range of corrected shear stress
 * @param strengthAmplitude  Ssa, Pa, the amplitude that springs endured
 * @returns pure number
 * @range τa > 0
 * @source Sines, as quoted in Shigley section 10-9
 */
export function fatigueSafetySines(amplitude: number, strengthAmplitude: number): number {
  return strengthAmplitude / amplitude;
}

/**
 * Share of tensile strength that springs endure for a life, read between published lives on the logarithm of the cycles; level before
 * the first life, on the safe side, and beyond the last, of which nothing is known.
 *
 *   s = s1 + (s2 - s1) ln(N/N1) / ln(N2/N1)
 *
 * @param cycles  N, pure number
 * @param lives   published lives, pure numbers, rising
 * @param shares  share of tensile strength at each, pure numbers
 * @returns pure number
 * @range N > 0, at least two lives
 * @source common practice: fatigue strength falls in proportion to the logarithm of the cycles
 */
export function shareAtLife(cycles: number, lives: readonly number[], shares: readonly number[]): number {
  const above = Math.max(
    1,
    lives.findIndex((life) => life >= cycles),
  );
  const at = cycles > (lives.at(-1) as number) ? lives.length - 1 : above;
  const [n1, n2] = [lives[at - 1] as number, lives[at] as number];
  const [s1, s2] = [shares[at - 1] as number, shares[at] as number];
  const within = Math.min(Math.max(cycles, n1), n2);
  return s1 + ((s2 - s1) * Math.log(within / n1)) / Math.log(n2 / n1);
}

/**
 * Upper stress that a Goodman diagram allows over a lower one, read between its points in straight lines; level beyond its last
 * point, and before its first.
 *
 * @param lower   lower corrected shear stress, Pa
 * @param lowers  lower stresses of the diagram's points, Pa, rising
 * @param uppers  upper stress of each point, Pa
 * @returns Pa
 * @range at least one point
 * @source EN 13906-1 clause 10.3 as to how such a diagram is used
 */
export function allowedUpperStress(lower: number, lowers: readonly number[], uppers: readonly number[]): number {
  const at = lowers.findIndex((point) => point >= lower);
  if (at < 0) return uppers.at(-1) as number;
  if (at === 0) return uppers[0] as number;
  const [x1, x2] = [lowers[at - 1] as number, lowers[at] as number];
  const [y1, y2] = [uppers[at - 1] as number, uppers[at] as number];
  return y1 + ((y2 - y1) * (lower - x1)) / (x2 - x1);
}

/**
 * Safety of a stress range: the range that the diagram allows over the lower stress, over the range that is there.
 *
 *   n = (τO,allowed - τ1) / (τ2 - τ1)
 *
 * @param lower         τ1, Pa, lower corrected shear stress
 * @param upper         τ2, Pa, upper corrected shear stress
 * @param allowedUpper  τO,allowed, Pa, from the diagram at τ1
 * @returns pure number; below zero where even the lower stress is beyond the diagram
 * @range τ2 > τ1
 * @source EN 13906-1 clause 10.3: the range must not exceed the diagram's
 */
export function fatigueSafetyRange(lower: number, upper: number, allowedUpper: number): number {
  return (allowedUpper - lower) / (upper - lower);
}
