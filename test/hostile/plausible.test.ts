import { describe, expect, it } from "vitest";
import { readEnds } from "../../src/catalog/ends.ts";
import { endKeys, materialKeys, wireColumns } from "../../src/catalog/keys.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { readWireSeries } from "../../src/catalog/wires.ts";
import { problemLine } from "../../src/problem.ts";
import { readQuantity } from "../../src/units/read.ts";
import { problemsOf } from "./answer.ts";

// Every number of the format, invented.
const material = `name: shop-steel
source: invented
class: cold drawn
density: 7850 kg/m^3
moduli: { youngsModulus: 206 GPa, shearModulus: 81.5 GPa }
strength:
  minimum: { between: interpolate, rows: [[0.5 mm, 2200 MPa], [8 mm, 1400 MPa]] }
  fit: { at: 1 mm, value: 1980 MPa, exponent: 0.16, diameter: { min: 0.1 mm, max: 12 mm } }
allowable: { asWound: 45 %, setRemoved: 60 % }
wireTolerance: [{ upTo: 8 mm, plusMinus: 0.04 mm }]
temperature: { max: 120 degC }
relativeCost: 1.4
fatigue: { source: invented, cycles: 1e7, unpeened: [[0 MPa, 450 MPa], [300 MPa, 650 MPa]] }
relaxation: { source: invented, points: [{ temperature: 100 degC, stress: 800 MPa, time: 48 h, loss: 5 % }] }
operations: { grind: 0.2 }
`;

describe("a number that no spring has is refused with the range in which it lies", () => {
  it.each([
    ["density: 7850 kg/m^3", "density: 78500 kg/m^3", "density"],
    ["youngsModulus: 206 GPa", "youngsModulus: 2060 GPa", "moduli.youngsModulus"],
    ["shearModulus: 81.5 GPa", "shearModulus: 81.5 kPa", "moduli.shearModulus"],
    ["[0.5 mm, 2200 MPa]", "[0.5 mm, 22000 MPa]", "strength.minimum.rows[1][2]"],
    ["[8 mm, 1400 MPa]", "[8 m, 1400 MPa]", "strength.minimum.rows[2][1]"],
    ["value: 1980 MPa", "value: 1980 GPa", "strength.fit.value"],
    ["exponent: 0.16", "exponent: 16", "strength.fit.exponent"],
    ["min: 0.1 mm", "min: 0.1 um", "strength.fit.diameter.min"],
    ["asWound: 45 %", "asWound: 45", "allowable.asWound"],
    ["plusMinus: 0.04 mm", "plusMinus: 40 mm", "wireTolerance[1].plusMinus"],
    ["max: 120 degC", "max: 12000 degC", "temperature.max"],
    ["relativeCost: 1.4", "relativeCost: 1.4e9", "relativeCost"],
    ["cycles: 1e7", "cycles: 7", "fatigue.cycles"],
    ["450 MPa", "450 GPa", "fatigue.unpeened[1][2]"],
    ["time: 48 h", "time: 48e9 h", "relaxation.points[1].time"],
    ["loss: 5 %", "loss: 500 %", "relaxation.points[1].loss"],
    ["grind: 0.2", "grind: 2e12", "operations.grind"],
  ])("%s as %s", (right, wrong, key) => {
    expect(problemsOf(() => readMaterial({ file: "m.yaml", text: material }))).toEqual([]);
    const problems = problemsOf(() => readMaterial({ file: "m.yaml", text: material.replace(right, wrong) }));
    const [first] = problems.filter(({ code }) => code === "implausible");
    expect(first?.key, problems.map(problemLine).join("\n")).toBe(key);
    expect(first?.want).toMatch(/^it lies from \S.* to \S.* \(a slip in its digits or unit\?\)$/);
  });

  it("also where a fit gives it at an end of its sizes", () => {
    const text = material.replace("exponent: 0.16", "exponent: 0.9");
    expect(problemsOf(() => readMaterial({ file: "m.yaml", text })).map(problemLine)).toEqual([
      "m.yaml:8 strength.fit: 1.57e+4 MPa is not plausible, which it gives at 0.1 mm; it lies from 1 MPa to 10 GPa (a slip in its digits or unit?)",
    ]);
  });

  it.each([
    ["wire,1.2 m", "diameter"],
    ["wire,1 nm", "diameter"],
  ])("in a stock: %s", (row, key) => {
    const act = () => readWireSeries({ file: "w.csv", text: `label,diameter\n${row}` }, "w");
    expect(problemsOf(act)).toMatchObject([{ code: "implausible", line: 2, key }]);
  });

  it("among prices", () => {
    const act = () => readWireSeries({ file: "w.csv", text: "label,diameter,price\na,1 mm,4e12 / kg" }, "w");
    expect(problemsOf(act)).toMatchObject([{ code: "implausible", key: "price" }]);
  });

  it.each(["deadTurns", "solidExtra", "pitchTurns", "pitchWires"])("of an end style: %s", (key) => {
    const numbers = { deadTurns: 2, solidExtra: 1, pitchTurns: 0, pitchWires: 3, [key]: 20 };
    const entry = Object.entries({ name: "own", ...numbers, closed: true, ground: false });
    const text = `- { ${entry.map(([name, value]) => `${name}: ${value}`).join(", ")} }`;
    expect(problemsOf(() => readEnds({ file: "e.yaml", text }))).toMatchObject([{ code: "implausible", key: `[1].${key}` }]);
  });

  it("of an end style whose pitch would be below the wire where the spring is solid", () => {
    const text = "- { name: own, deadTurns: 2, solidExtra: 1, pitchTurns: 0, pitchWires: 4, closed: true, ground: false }";
    expect(problemsOf(() => readEnds({ file: "e.yaml", text })).map(problemLine)).toEqual([
      "e.yaml:1 [1]: pitchTurns + pitchWires, 4, is above deadTurns + solidExtra, 3; the pitch of the solid spring would be below the wire; both are equal for common ends",
    ]);
  });
});

describe("the range of each number of a catalog", () => {
  const rules = [...materialKeys, ...endKeys, ...wireColumns].flatMap(({ path, quantity, pair }) =>
    [quantity, ...(pair ?? [])].flatMap((rule) => (rule ? [{ path, ...rule }] : [])),
  );

  it.each(rules)("of $path is the one that its words say", ({ dimension, plausible: { least, greatest, words } }) => {
    const read = words.split(" to ").map((text) => readQuantity(text, dimension));
    expect(read).toEqual([{ value: expect.closeTo(least, 9) }, { value: expect.closeTo(greatest, 3) }]);
    expect(least).toBeLessThan(greatest);
  });
});
