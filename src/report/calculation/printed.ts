import { withSymbols } from "./expression.ts";
import type { Calculation, Derived, Step } from "./steps.ts";

/** Significant digits of a printed figure. */
const DIGITS = 6;

/**
 * A figure of a sheet without its unit.
 *
 * @param value  in the sheet's unit; infinite is ∞
 * @returns such as `5.68512`, `81500`, `1.2e-7`; the digits that a pencil carries on with
 */
export function printedNumber(value: number): string {
  if (!Number.isFinite(value)) return value < 0 ? "-∞" : "∞";
  const text = value.toPrecision(DIGITS);
  if (text.includes("e")) return String(Number(text)).replace("e+", "e");
  return text.includes(".") ? text.replace(/\.?0+$/, "").replace(/^-0$/, "0") : text;
}

/** A figure with its unit. */
export function printedValue({ value, unit }: Step): string {
  return `${printedNumber(value)}${unit === "" || unit === "°" ? "" : " "}${unit}`;
}

/**
 * The equation of a step with the numbers of the steps above put in for its symbols, each with its unit.
 *
 * @param step   a step of the sheet
 * @param known  its steps by symbol
 * @returns such as `81500 MPa * (2 mm)^4 / (8 * (16 mm)^3 * 7)`
 */
export function numbersPutIn({ expression }: Derived, known: ReadonlyMap<string, Step>): string {
  return withSymbols(expression, (symbol, raised) => {
    const step = known.get(symbol) as Step;
    const text = printedValue(step);
    return step.value < 0 || step.unit.includes("/") || (raised && step.unit !== "") ? `(${text})` : text;
  });
}

/** Every step of a sheet by its symbol. */
export function stepsBySymbol({ chapters }: Calculation): ReadonlyMap<string, Step> {
  return new Map(chapters.flatMap(({ steps }) => steps.map((step) => [step.symbol, step])));
}
