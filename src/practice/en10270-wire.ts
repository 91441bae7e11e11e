import { bandOf } from "../mechanics/tolerance.ts";

const MM = 1e-3;

/** Wire diameters up to and including, mm. */
const DIAMETERS = [0.09, 0.16, 0.25, 0.63, 0.75, 1, 1.7, 2.6, 4, 5.3, 7, 9.5, 11, 14, 18, 20];
/** Plus-minus on each, mm. */
const DEVIATIONS = [0.003, 0.004, 0.005, 0.008, 0.01, 0.015, 0.02, 0.025, 0.03, 0.035, 0.04, 0.045, 0.05, 0.08, 0.09, 0.1];

/**
 * What the diameter of drawn spring wire may miss by.
 *
 * @param wireDiameter  d, m
 * @returns m, plus or minus; beyond 20 mm the last band's
 * @source EN 10270-1 with EN 10218-2, as a wire merchant prints it
 */
export function wireDeviation(wireDiameter: number): number {
  const rows = DEVIATIONS.map((deviation) => [deviation]);
  const band = bandOf(DIAMETERS, [1], rows, wireDiameter / MM, 1);
  return (band ?? (DEVIATIONS.at(-1) as number)) * MM;
}
