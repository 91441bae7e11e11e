/**
 * A modulus at temperature, falling in a straight line.
 *
 *   G(t) = G [1 - r (t - 20 °C)]
 *
 * @param modulus      G at 20 °C, Pa; E is treated the same
 * @param temperature  t, K
 * @param loss         r, of the material, 1/K as a pure number per kelvin
 * @returns Pa
 * @range from room temperature to the highest service temperature of the material
 * @source EN 13906-1 clause 6.4, from memory, r = 0.25e-3 for steel and 0.40e-3 for stainless; Associated Spring, 2 % for 55 °C
 */
export function modulusAtTemperature(modulus: number, temperature: number, loss: number): number {
  return modulus * (1 - loss * (temperature - ROOM_TEMPERATURE));
}

/** 20 °C, K. */
export const ROOM_TEMPERATURE = 293.15;
