import { describe, expect, it } from "vitest";
import type { Dimension } from "../../src/model.ts";
import { longestQuantity, readQuantity, readToleranced } from "../../src/units/read.ts";

function misread(text: string, dimension: Dimension): string {
  const read = readQuantity(text, dimension);
  return "value" in read ? `read as ${read.value}` : `${read.got}; ${read.want}`;
}

describe("a quantity becomes its SI value", () => {
  it.each<[string, Dimension, number]>([
    ["12 mm", "length", 0.012],
    ["12mm", "length", 0.012],
    ["  .5   in ", "length", 0.0127],
    ["45 N", "force", 45],
    ["3.2 N/mm", "rate", 3200],
    ["800 MPa", "stress", 8e8],
    ["800 N/mm^2", "stress", 8e8],
    ["800 N/mm²", "stress", 8e8],
    ["7850 kg/m^3", "density", 7850],
    ["7850 kg/m³", "density", 7850],
    ["3 Hz", "frequency", 3],
    ["60 degC", "temperature", 333.15],
    ["60 °C", "temperature", 333.15],
    ["-40 degF", "temperature", 233.15],
    ["300 K", "temperature", 300],
    ["180 deg", "angle", Math.PI],
    ["15 %", "share", 0.15],
    ["0.15", "share", 0.15],
    ["1e7", "number", 1e7],
    ["-1.5e-3", "number", -0.0015],
    ["4.2 / kg", "price", 4.2],
    ["1 / lb", "price", 1 / 0.45359237],
    ["30e6 psi", "stress", (30e6 * 4.4482216152605) / 0.0254 ** 2],
  ])("%s as %s is %d", (text, dimension, value) => {
    const read = readQuantity(text, dimension);
    expect("value" in read && Math.abs(read.value / value - 1)).toBeLessThan(1e-14);
  });
});

describe("what is no quantity of the kind that is wanted is one sentence that shows the fix", () => {
  it.each<[string, Dimension, string]>([
    ["45", "force", "45 has no unit; write 45 N (or lbf)"],
    ["12", "length", "12 has no unit; write 12 mm (or in)"],
    ["45 lb", "force", "45 lb is a mass; write 45 lbf (200.17 N)"],
    ["5 kg", "force", "5 kg is a mass; write 5 kgf (49.033 N)"],
    ["18 lb/in", "rate", "18 lb/in is a quantity of another kind; write 18 lbf/in (3.1523 N/mm)"],
    ["2 in", "force", "2 in is a length; a force is wanted, such as 45 N"],
    ["60 C", "temperature", "60 C is a quantity of another kind; write 60 degC"],
    ["15 %", "force", "15 % is a share; a force is wanted, such as 45 N"],
    ["5 N", "share", "5 N is a force; a share is wanted, such as 15 %"],
    ["5 m^2", "length", "5 m^2 is an area; a length is wanted, such as 12 mm"],
    ["5 mm", "number", "5 mm has a unit; write 5, a pure number"],
    ["5 EUR", "price", "5 EUR is not a price for a mass; such as 5 / kg, or 5 / lb"],
    ["45 ibf", "force", 'no unit "ibf" in 45 ibf; nearest is lbf; a force is wanted, such as 45 N'],
    ["2 Mpa", "stress", 'no unit "Mpa" in 2 Mpa; nearest is MPa; a stress is wanted, such as 800 MPa'],
    ["5 furlongish", "length", 'no unit "furlongish" in 5 furlongish; a length is wanted, such as 12 mm'],
    ["3,5 mm", "length", "3,5 mm has a comma in its number; write 3.5 mm"],
    ["1,000 lbf", "force", "1,000 lbf has a comma in its number; write 1000 lbf or, if a decimal is meant, 1.000 lbf"],
    ["", "length", "nothing came; a length is wanted, such as 12 mm"],
    ["Infinity mm", "length", '"Infinity mm" does not begin with a number; a length is wanted, such as 12 mm'],
    ["NaN mm", "length", '"NaN mm" does not begin with a number; a length is wanted, such as 12 mm'],
    ["1e999 N", "force", "1e999 N is too large to compute with; a force is wanted, such as 45 N"],
    ["1e308 km", "length", "1e308 km is too large to compute with; a length is wanted, such as 12 mm"],
    ["-500 degC", "temperature", "-500 degC is below absolute zero; a temperature is wanted, such as 120 degC"],
  ])("%s as %s", (text, dimension, sentence) => {
    expect(misread(text, dimension)).toBe(sentence);
  });

  it("looks at no text longer than a quantity needs", () => {
    expect(readQuantity(`1${"0".repeat(longestQuantity)} mm`, "length")).toMatchObject({ code: "tooLong" });
  });

  it.each(["2 mm; 3", "2 __proto__", "2 mm()", '2 "', "2 mm.constructor", "2 [mm]", "1/2 in", "2 mm\n3"])(
    "never lets %j reach the unit library",
    (text) => {
      expect(readQuantity(text, "length")).toMatchObject({ code: "notAUnit" });
    },
  );

  it.each(["constructor", "toString", "hasOwnProperty", "prototype"])("knows no unit %s", (name) => {
    expect(readQuantity(`2 ${name}`, "length")).toMatchObject({ code: "unknownUnit" });
  });
});

describe("a tolerance becomes a least and a largest value", () => {
  it.each([
    ["45 N ± 10 %", 45, 40.5, 49.5],
    ["45 N +/- 10 %", 45, 40.5, 49.5],
    ["45 N +- 10%", 45, 40.5, 49.5],
    ["45 N ± 2 N", 45, 43, 47],
    ["45 N", 45, 45, 45],
  ])("%s", (text, nominal, min, max) => {
    expect(readToleranced(text, "force")).toEqual({ nominal, min, max });
  });

  it.each([
    ["45 N ± 2", "noUnit"],
    ["45 ± 2 N", "noUnit"],
    ["45 N ± 2 mm", "wrongDimension"],
    ["45 N ±", "empty"],
    ["± 2 N", "empty"],
    ["45 N ± -2 N", "notATolerance"],
    ["45 N ± 2 N ± 3 N", "notATolerance"],
    ["9e11 N ± 100 %", "outOfReach"],
    [`45 N ± ${" ".repeat(longestQuantity)}2 N`, "tooLong"],
  ])("%s is wrong (%s)", (text, code) => {
    expect(readToleranced(text, "force")).toMatchObject({ code });
  });
});
