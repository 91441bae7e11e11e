import { describe, expect, it } from "vitest";
import { briefText, type Parts, read } from "./reading.ts";

function asked(parts: Parts) {
  return read(briefText(parts)).asked.map(({ key, text, dimension, value }) => [
    key,
    text,
    dimension,
    Number(value.toPrecision(12)),
  ]);
}

describe("what was asked", () => {
  it("keeps the author's own text of every quantity with its SI value", () => {
    const parts = {
      load: "load: { points: [{ name: shut, length: 6.20 cm, force: 45 N ± 10 % }, { length: 44 mm, force: { min: 0.1 kN, max: 110 N } }] }",
      envelope: "envelope: { bore: 26 mm, clearance: 5 %, freeLength: { min: 70 mm, max: 3.5 in } }",
      service: "service: { temperature: 60 degC }",
      limits: "limits: { clash: { ofDeflection: 15 % } }",
    };
    expect(asked(parts)).toEqual([
      ["load.points[1].length", "6.20 cm", "length", 0.062],
      ["load.points[1].force", "45 N ± 10 %", "force", 45],
      ["load.points[2].length", "44 mm", "length", 0.044],
      ["load.points[2].force.min", "0.1 kN", "force", 100],
      ["load.points[2].force.max", "110 N", "force", 110],
      ["envelope.bore", "26 mm", "length", 0.026],
      ["envelope.clearance", "5 %", "share", 0.05],
      ["envelope.freeLength.min", "70 mm", "length", 0.07],
      ["envelope.freeLength.max", "3.5 in", "length", 0.0889],
      ["service.temperature", "60 degC", "temperature", 333.15],
      ["limits.clash.ofDeflection", "15 %", "share", 0.15],
    ]);
  });

  it.each([
    ["load: { force: 20 lbf, deflection: 2 in }", "in", "lbf"],
    ["load: { force: 20 lbf, deflection: 50 mm }", "mm", "lbf"],
    ["load: { force: 20 N, deflection: 2in }", "in", "N"],
    ["load: { rate: 18 lbf/in ± 5 %, largestForce: 100 N }", "in", "lbf"],
    ["load: { rate: { min: 2 N/mm, max: 3 N/mm }, largestForce: 100 lbf }", "mm", "N"],
    ["load: { rate: { min: 2 kN/m }, largestForce: 100 lbf }", "mm", "N"],
  ])("%s shows results in %s and %s", (load, length, force) => {
    expect(read(briefText({ load })).units).toEqual({ length, force });
  });

  it("takes the least hole and the largest rod of a bore and rod that vary", () => {
    const { envelope } = read(briefText({ envelope: "envelope: { bore: { min: 20 mm, max: 21 mm }, rod: 8 mm ± 0.5 mm }" }));
    expect(envelope.bore).toBeCloseTo(0.02, 15);
    expect(envelope.rod).toBeCloseTo(0.0085, 15);
  });

  it("names points by their number where they have no name", () => {
    const { load } = read(
      briefText({ load: "load: { points: [{ length: 60 mm, force: 0 N }, { length: 40 mm, force: 30 N }] }" }),
    );
    expect(load).toMatchObject({ points: [{ name: "point 1" }, { name: "point 2" }] });
  });

  it("reads JSON, CRLF and a byte order mark as the same brief", () => {
    const plain = read(briefText({}));
    expect(read(briefText({}).replaceAll("\n", "\r\n"))).toEqual(plain);
    expect(read(`\uFEFF${briefText({})}`)).toEqual(plain);
    const sweep = { wires: ["iso-r20"], materials: ["astm-a228"], ends: ["squared-ground"] };
    const json = { practice: "handbook", load: { force: "20 N", deflection: "10 mm" }, sweep };
    expect(read(JSON.stringify(json, null, "\t"))).toEqual(plain);
  });
});
