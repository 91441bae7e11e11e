import type { Dimension, Units } from "../../model.ts";
import { inUnits, unitLabel } from "../../units/show.ts";

/**
 * An SI value in the sheet's units. They are the reader's, but for stress, which goes by force over length squared, so that
 * equations of lengths, forces and stresses need no factor.
 *
 * @param value      SI unit of the dimension
 * @param dimension  what the number measures
 * @param units      the reader's units
 * @returns in the unit that `sheetLabel` names
 */
export function inSheetUnits(value: number, dimension: Dimension, units: Units): number {
  if (dimension !== "stress") return inUnits(value, dimension, units);
  return inUnits(value, "force", units) / inUnits(1, "length", units) ** 2;
}

/** Name of the sheet's unit of a dimension; empty for a pure number. */
export function sheetLabel(dimension: Dimension, units: Units): string {
  if (dimension !== "stress") return unitLabel(dimension, units);
  const label = `${units.force}/${units.length}²`;
  return { "N/mm²": "MPa", "lbf/in²": "psi" }[label] ?? label;
}

/** What the product of density and volume is multiplied by to be a mass. */
export function massFactor(units: Units): number {
  return rounded(inUnits(1, "mass", units) / (inUnits(1, "density", units) * inUnits(1, "length", units) ** 3));
}

/** What rate over mass is multiplied by to be the square of a frequency in 1/s. */
export function swingFactor(units: Units): number {
  return rounded(inUnits(1, "mass", units) / inUnits(1, "rate", units));
}

/** Kilograms in the sheet's unit of mass. */
export function kilograms(units: Units): number {
  return rounded(1 / inUnits(1, "mass", units));
}

/** Millimetres in the sheet's unit of length. */
export function millimetres(units: Units): number {
  return rounded(1000 / inUnits(1, "length", units));
}

/** Newtons in the sheet's unit of force. */
export function newtons(units: Units): number {
  return rounded(1 / inUnits(1, "force", units));
}

/**
 * A factor in front of the rest of a product.
 *
 * @param factor  pure number, above zero
 * @returns such as `10^-6 * `; empty for 1
 */
export function times(factor: number): string {
  if (factor === 1) return "";
  const power = Math.round(Math.log10(factor));
  return `${rounded(factor / 10 ** power) === 1 ? `10^${power}` : factor} * `;
}

/** What multiplying and dividing factors of units leaves behind the fifteenth digit is nothing. */
function rounded(factor: number): number {
  return Number(factor.toPrecision(15));
}
