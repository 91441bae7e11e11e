import { describe, expect, it } from "vitest";
import type { Dimension } from "../../src/model.ts";
import { readQuantity } from "../../src/units/read.ts";

function inSi(text: string, dimension: Dimension): number {
  const read = readQuantity(text, dimension);
  if (!("value" in read)) throw new Error(`${read.got}; ${read.want}`);
  return read.value;
}

// Exact by definition: 1 in = 25.4 mm and 1 lb = 0.45359237 kg (International Yard and Pound Agreement, 1959), standard
// gravity 9.80665 m/s² (3rd CGPM, 1901), 0 degC = 273.15 K; the rest is their product.
describe("units exact by definition are exact to the last digits of a double", () => {
  it.each<[string, Dimension, number]>([
    ["1 in", "length", 0.0254],
    ["0.5 in", "length", 0.0127],
    ["0.283 in", "length", 0.0071882],
    ["1 ft", "length", 0.3048],
    ["1 lbf", "force", 4.4482216152605],
    ["20 lbf", "force", 88.96443230521],
    ["1 kgf", "force", 9.80665],
    ["1 lb", "mass", 0.45359237],
    ["32 degF", "temperature", 273.15],
    ["212 degF", "temperature", 373.15],
    ["100 degC", "temperature", 373.15],
  ])("%s is %d in SI", (text, dimension, value) => {
    expect(Math.abs(inSi(text, dimension) / value - 1)).toBeLessThan(1e-14);
  });
});

// NIST Special Publication 811 (2008), Appendix B.8, factors from memory; tolerance half a unit of the last printed digit.
describe("conversion factors agree with NIST SP 811 to its printed digits", () => {
  it.each<[string, Dimension, number, number]>([
    ["1 psi", "stress", 6.894757e3, 5e-4],
    ["1 ksi", "stress", 6.894757e6, 5e-1],
    ["1 kpsi", "stress", 6.894757e6, 5e-1],
    ["1 Mpsi", "stress", 6.894757e9, 5e2],
    ["1 lbf/in", "rate", 1.751268e2, 5e-5],
    ["1 lb/in^3", "density", 2.76799e4, 5e-3],
    ["1 g/cm^3", "density", 1e3, 1e-9],
  ])("%s is %d in SI", (text, dimension, printed, tolerance) => {
    expect(Math.abs(inSi(text, dimension) - printed)).toBeLessThan(tolerance);
  });
});

describe("the same quantity in millimetres and inches, newtons and pounds-force, is the same number", () => {
  it.each<[string, string, Dimension]>([
    ["7.1882 mm", "0.283 in", "length"],
    ["4.4482216152605 N", "1 lbf", "force"],
    ["4.4482216152605 N/mm", "25.4 lbf/in", "rate"],
    ["1000 psi", "1 ksi", "stress"],
    ["1 lbf/in^2", "1 psi", "stress"],
  ])("%s = %s", (metric, inch, dimension) => {
    expect(Math.abs(inSi(metric, dimension) / inSi(inch, dimension) - 1)).toBeLessThan(1e-12);
  });
});
