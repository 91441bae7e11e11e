import { expect } from "vitest";

/**
 * One unit of the last digit of a figure as printed: "4.43" -> 0.01, "168" -> 1.
 *
 * @param printed  the figure with its digits as printed, a zero before the point added
 */
export function lastUnit(printed: string): number {
  return 10 ** -(printed.split(".")[1] ?? "").length;
}

/**
 * Holds a figure of ours to a printed one.
 *
 * @param ours   in the unit of the print
 * @param units  how many units of the last printed digit they may differ by; more than a half only with a reason beside it
 */
export function expectPrinted(ours: number, printed: string, units = 0.5): void {
  const allowed = units * lastUnit(printed) * (1 + 1e-9);
  expect(Math.abs(ours - Number(printed)), `${ours} for the printed ${printed}`).toBeLessThanOrEqual(allowed);
}

/**
 * Holds a known disagreement: our figure stands where it is written down, and that is not where the print has it.
 *
 * @param ours     in the unit of the print
 * @param written  our figure as the test writes it down, held to half a unit of its last digit
 */
export function expectDisagreement(ours: number, printed: string, written: string): void {
  expectPrinted(ours, written);
  expect(Math.abs(ours - Number(printed)), `${ours} agrees with the printed ${printed}`).toBeGreaterThan(lastUnit(printed) / 2);
}
