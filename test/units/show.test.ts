import { describe, expect, it } from "vitest";
import type { Dimension, Units } from "../../src/model.ts";
import { readQuantity } from "../../src/units/read.ts";
import { inUnits, otherUnits, show, showNumber, unitLabel } from "../../src/units/show.ts";

const metric: Units = { length: "mm", force: "N" };
const inch: Units = { length: "in", force: "lbf" };
const mixed: Units = { length: "in", force: "N" };
const mixedToo: Units = { length: "mm", force: "lbf" };

describe("what is shown reads back as the same value", () => {
  const dimensions: Dimension[] = ["length", "force", "rate", "stress", "mass", "density", "frequency", "temperature", "angle"];
  it.each(
    [metric, inch, mixed, mixedToo].flatMap((units) =>
      [...dimensions, "share" as const, "price" as const].map((dimension) => ({ dimension, ...units })),
    ),
  )("$dimension in $length and $force", ({ dimension, length, force }) => {
    const units = { length, force };
    const read = readQuantity(`${inUnits(321.5, dimension, units)} ${unitLabel(dimension, units)}`, dimension);
    expect("value" in read && Math.abs(read.value / 321.5 - 1)).toBeLessThan(1e-14);
  });
});

describe("a number is shown with four significant digits and no noise", () => {
  it.each<[number, Dimension, Units, string]>([
    [0.283 * 0.0254, "length", metric, "7.188"],
    [0.283 * 0.0254, "length", inch, "0.283"],
    [0.0348 * 0.0254, "length", inch, "0.0348"],
    [0.012, "length", metric, "12"],
    [206e9, "stress", metric, "206000"],
    [16.999999, "number", metric, "17"],
    [9.9996, "number", metric, "10"],
    [0.1 + 0.2, "number", metric, "0.3"],
    [12345.6, "number", metric, "12346"],
    [1000, "number", metric, "1000"],
    [1e7, "number", metric, "10000000"],
    [1.234e12, "number", metric, "1.234e12"],
    [1.5e-7, "number", metric, "1.5e-7"],
    [0.000123, "number", metric, "0.000123"],
    [0, "number", metric, "0"],
    [-0, "number", metric, "0"],
    [273.15 + 1e-13, "temperature", metric, "0"],
    [-2.5, "number", metric, "-2.5"],
    [Number.POSITIVE_INFINITY, "length", inch, "∞"],
  ])("%d as %s", (value, dimension, units, text) => {
    expect(showNumber(value, dimension, units)).toBe(text);
  });

  it("takes more digits where they are asked for", () => {
    expect(showNumber(1.223041, "number", metric, 7)).toBe("1.223041");
  });
});

describe("a quantity is shown with its unit", () => {
  it.each<[number, Dimension, Units, string]>([
    [0.0127, "length", metric, "12.7 mm"],
    [0.0127, "length", inch, "0.5 in"],
    [3152.283034436575, "rate", inch, "18 lbf/in"],
    [3152.283034436575, "rate", mixed, "80.07 N/in"],
    [333.15, "temperature", metric, "60 °C"],
    [333.15, "temperature", inch, "140 °F"],
    [0.2, "angle", metric, "11.46°"],
    [0.15, "share", inch, "15 %"],
    [8, "number", inch, "8"],
  ])("%d as %s", (value, dimension, units, text) => {
    expect(show(value, dimension, units)).toBe(text);
  });
});

it("the other units of millimetres and newtons are inches and pounds-force, and back", () => {
  expect(otherUnits(metric)).toEqual(inch);
  expect(otherUnits(inch)).toEqual(metric);
});
