/**
 * Lowest natural frequency of the coils along the axis, both ends held against plates.
 *
 *   f = ½ (k / m)^½
 *
 * @param rate        k, N/m
 * @param activeMass  m, kg, the mass of the active turns
 * @returns Hz
 * @range both ends in contact with their seats
 * @source Shigley eq. 10-25; EN 13906-1 clause 9.12 gives the same with 3560 d (G/ρ)^½ / (n D²), 3558.8 recomputed
 */
export function surgeFrequency(rate: number, activeMass: number): number {
  return 0.5 * Math.sqrt(rate / activeMass);
}

/**
 * Lowest natural frequency of the coils along the axis, one end held against a plate and the other free.
 *
 *   f = ¼ (k / m)^½
 *
 * @param rate        k, N/m
 * @param activeMass  m, kg, the mass of the active turns
 * @returns Hz
 * @range the free end touches no seat, as of a spring that hangs or stands by itself
 * @source Shigley eq. 10-26, after Wolford and Smith, from memory
 */
export function surgeFrequencyEndFree(rate: number, activeMass: number): number {
  return 0.25 * Math.sqrt(rate / activeMass);
}
