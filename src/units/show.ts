import type { Dimension, Units } from "../model.ts";

/** One unit on paper: shown = value / size - zero. */
interface ShownUnit {
  readonly label: string;
  /** SI value of one unit. */
  readonly size: number;
  /** Where its zero lies, in this unit above the SI zero. */
  readonly zero: number;
}

const metre = { mm: 0.001, in: 0.0254 } as const;
const newton = { N: 1, lbf: 4.4482216152605 } as const;
const pound = 0.45359237;

/** The unit in which a reader of these units expects a dimension; stress and mass go with the force, temperature with the length. */
function shownUnit(dimension: Dimension, units: Units): ShownUnit {
  const { length, force } = units;
  const plain = (label: string, size: number): ShownUnit => ({ label, size, zero: 0 });
  switch (dimension) {
    case "length":
      return plain(length, metre[length]);
    case "force":
      return plain(force, newton[force]);
    case "rate":
      return plain(`${force}/${length}`, newton[force] / metre[length]);
    case "stress":
      return force === "N" ? plain("MPa", 1e6) : plain("ksi", (1000 * newton.lbf) / metre.in ** 2);
    case "mass":
      return force === "N" ? plain("g", 0.001) : plain("lb", pound);
    case "density":
      return force === "N" ? plain("kg/m³", 1) : plain("lb/in³", pound / metre.in ** 3);
    case "frequency":
      return plain("Hz", 1);
    case "temperature":
      return length === "mm" ? { label: "°C", size: 1, zero: 273.15 } : { label: "°F", size: 5 / 9, zero: 459.67 };
    case "time":
      return plain("h", 3600);
    case "angle":
      return plain("°", Math.PI / 180);
    case "share":
      return plain("%", 0.01);
    case "number":
      return plain("", 1);
    case "price":
      return force === "N" ? plain("/ kg", 1) : plain("/ lb", 1 / pound);
  }
}

/**
 * Name of the unit in which a dimension is shown.
 *
 * @param dimension  what the number measures
 * @param units      the reader's units
 * @returns such as `mm`, `lbf/in`, `°C`; empty for a pure number
 */
export function unitLabel(dimension: Dimension, units: Units): string {
  return shownUnit(dimension, units).label;
}

/**
 * An SI value in the reader's units.
 *
 * @param value      SI unit of the dimension
 * @param dimension  what the number measures
 * @param units      the reader's units
 * @returns in the unit that `unitLabel` names
 */
export function inUnits(value: number, dimension: Dimension, units: Units): number {
  const { size, zero } = shownUnit(dimension, units);
  return value / size - zero;
}

/**
 * An SI value as digits in the reader's units, without the unit. Whole digits are never rounded away, zeros at the end are not
 * shown, and a power of ten is written only above a thousand million and below a hundred thousandth.
 *
 * @param value      SI unit of the dimension; infinity is shown as ∞
 * @param dimension  what the number measures
 * @param units      the reader's units
 * @param digits     significant digits, pure number, 1 to 15
 * @returns such as `7.188`, `206000`, `0.0625`; never `-0`
 */
export function showNumber(value: number, dimension: Dimension, units: Units, digits = 4): string {
  const shown = inUnits(value, dimension, units);
  if (!Number.isFinite(shown)) return shown < 0 ? "-∞" : "∞";
  const size = Math.abs(shown);
  // What subtracting the zero of a temperature scale leaves of nothing is nothing.
  if (size <= 1e-12 * shownUnit(dimension, units).zero) return "0";
  if (size >= 1e9 || size < 1e-5) return shown.toExponential(digits - 1).replace(/\.?0*e\+?/, "e");
  // Counted after rounding, so that 9.9996 has two whole digits.
  const whole = Number(size.toExponential(digits - 1).split("e")[1]) + 1;
  const text = shown.toFixed(Math.max(0, digits - whole));
  return text.includes(".") ? text.replace(/\.?0+$/, "") : text;
}

/**
 * An SI value with its unit, as a reader of these units would write it.
 *
 * @param value      SI unit of the dimension
 * @param dimension  what the number measures
 * @param units      the reader's units
 * @param digits     significant digits, pure number, 1 to 15
 * @returns such as `7.188 mm`, `12°`, `15 %`, `8`
 */
export function show(value: number, dimension: Dimension, units: Units, digits = 4): string {
  const label = unitLabel(dimension, units);
  const gap = label === "" || label === "°" ? "" : " ";
  return `${showNumber(value, dimension, units, digits)}${gap}${label}`;
}

/**
 * The other system of units, for a page that shows both: millimetres for inches, newtons for pounds-force, and back.
 *
 * @param units  the reader's units
 */
export function otherUnits(units: Units): Units {
  return { length: units.length === "mm" ? "in" : "mm", force: units.force === "N" ? "lbf" : "N" };
}
