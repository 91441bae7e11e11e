import { describe, expect, it } from "vitest";
import { headLines } from "../../src/catalog/text.ts";
import { shelf, shipped } from "./shipped.ts";

const series = [...shelf.wires.keys()];
const materials = [...shelf.materials.keys()];

describe.each(series)("the shipped wire series %s", (name) => {
  const { source, wires } = shipped.series(name, "");

  it("names its source", () => {
    expect(source.length).toBeGreaterThan(40);
    expect(source).not.toBe("no source stated");
  });

  it("stands in its file in rising diameter", () => {
    const { text } = shelf.wires.get(name) ?? { text: "" };
    const labels = text.split("\n").slice(headLines(text).length + 1, -1);
    expect(labels.map((line) => line.split(",")[0])).toEqual(wires.map(({ label }) => label));
    for (const [i, { diameter }] of wires.entries()) expect(diameter).toBeGreaterThan(wires[i - 1]?.diameter ?? 0);
  });

  it("is sold only in shipped materials, where it names any", () => {
    for (const { soldIn } of wires) expect(materials).toEqual(expect.arrayContaining([...(soldIn ?? [])]));
  });
});

describe.each(materials)("the shipped material %s", (name) => {
  const material = shipped.material(name, "");

  it("has the name of its file, and a head that says where its figures come from", () => {
    expect(material.name).toBe(name);
    expect(headLines(shelf.materials.get(name)?.text ?? "").join(" ").length).toBeGreaterThan(100);
  });

  it("is of a plausible size in every figure, so that no unit slipped", () => {
    expect(material.density).toBeGreaterThan(7500);
    expect(material.density).toBeLessThan(9000);
    for (const { youngsModulus, shearModulus } of material.moduli) {
      expect(youngsModulus / shearModulus).toBeGreaterThan(2.3);
      expect(youngsModulus / shearModulus).toBeLessThan(2.9);
      expect(shearModulus).toBeGreaterThan(40e9);
      expect(shearModulus).toBeLessThan(90e9);
    }
    expect(material.temperature.max).toBeGreaterThan(350);
    expect(material.temperature.max).toBeLessThan(550);
  });

  it("grows no stronger with its diameter", () => {
    const rows = material.strength.minimum?.rows ?? [];
    for (const [i, { strength }] of rows.entries()) expect(strength).toBeLessThanOrEqual(rows[i - 1]?.strength ?? 3.1e9);
    for (const { exponent } of material.strength.fit?.pieces ?? []) expect(exponent).toBeGreaterThanOrEqual(0);
  });
});

it("every ASTM and EN 10270-1 grade that the wires are sold in is shipped", () => {
  expect(materials).toEqual(
    ["a227", "a228", "a229", "a232", "a313-302", "a401", "b159"]
      .map((n) => `astm-${n}`)
      .concat(["dh", "dm", "sh", "sl", "sm"].map((n) => `en-${n}`)),
  );
});

it.each([
  ["astm-a232", undefined, true],
  ["astm-a401", undefined, true],
  ["astm-b159", undefined, true],
  ["astm-a313-302", false, true],
  ["astm-a228", false, false],
  ["en-sl", true, undefined],
  ["en-sm", false, undefined],
])("%s says what of its strength is from memory (rows %s, fit %s)", (name, rows, fit) => {
  const { strength } = shipped.material(name, "");
  expect(strength.minimum?.fromMemory).toBe(rows);
  expect(strength.fit?.fromMemory).toBe(fit);
});
