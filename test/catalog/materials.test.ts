import { describe, expect, it } from "vitest";
import { readMaterial } from "../../src/catalog/materials.ts";
import { ProblemError } from "../../src/problem.ts";

function read(text: string) {
  return readMaterial({ file: "steel.yaml", text });
}

function problemsOf(text: string): string[] {
  try {
    read(text);
  } catch (error) {
    if (error instanceof ProblemError) return error.message.split("\n");
    throw error;
  }
  return [];
}

// Every key of the format, numbers invented.
const full = `name: shop-steel
source: invented
class: cold drawn
density: 7850 kg/m^3
moduli:
  - { upTo: 1.6 mm, youngsModulus: 203 GPa, shearModulus: 81.5 GPa }
  - { youngsModulus: 200 GPa, shearModulus: 80 GPa }
strength:
  minimum:
    between: next-row
    rows: [[0.5 mm, 2200 MPa], [1 mm, 1980 MPa]]
  fit: { at: 1 mm, value: 1980 MPa, exponent: 0.16, diameter: { min: 0.5 mm, max: 12 mm } }
allowable: { asWound: 0.45, setRemoved: 60 % }
wireTolerance:
  - { upTo: 2 mm, plusMinus: 0.02 mm }
  - { upTo: 8 mm, plusMinus: 0.04 mm }
temperature: { max: 120 degC }
relativeCost: 1.4
notes: [Cost is a guess.]
series: [us-music, ./rack.csv]
modulusLoss: { perKelvin: 0.25e-3, source: invented }
fatigue:
  source: invented
  cycles: 1e7
  unpeened: [[0 MPa, 450 MPa], [300 MPa, 650 MPa]]
`;

describe("a material", () => {
  it("comes in SI with every key of its file", () => {
    expect(read(full)).toEqual({
      name: "shop-steel",
      source: "invented",
      class: "cold drawn",
      density: 7850,
      moduli: [
        { upTo: 0.0016, youngsModulus: 203e9, shearModulus: 81.5e9 },
        { youngsModulus: 200e9, shearModulus: 80e9 },
      ],
      strength: {
        minimum: {
          between: "next-row",
          rows: [
            { diameter: 0.0005, strength: 2.2e9 },
            { diameter: 0.001, strength: 1.98e9 },
          ],
        },
        fit: [{ at: 0.001, value: 1.98e9, exponent: 0.16, diameter: { min: 0.0005, max: 0.012 } }],
      },
      allowable: { asWound: 0.45, setRemoved: 0.6 },
      wireTolerance: [
        { upTo: 0.002, plusMinus: 0.00002 },
        { upTo: 0.008, plusMinus: 0.00004 },
      ],
      temperature: { max: 393.15 },
      relativeCost: 1.4,
      notes: ["Cost is a guess."],
      series: ["us-music", "./rack.csv"],
      modulusLoss: { perKelvin: 0.00025, source: "invented" },
      fatigue: {
        source: "invented",
        cycles: 1e7,
        unpeened: [
          [0, 450e6],
          [300e6, 650e6],
        ],
      },
    });
  });

  it("may state one pair of moduli and one strength for all sizes, and shares in place of a class", () => {
    const material = read(`name: benchmark-steel
source: invented
moduli: { youngsModulus: 30e6 psi, shearModulus: 11.5e6 psi }
density: 0.284 lb/in^3
strength: { constant: 420 ksi, diameter: { min: 0.2 in, max: 0.5 in } }
allowable: { asWound: 0.45, setRemoved: 0.6 }
relativeCost: 1
temperature: { max: 250 degF }
`);
    expect(material.class).toBeUndefined();
    expect(material.moduli).toHaveLength(1);
    expect(material.strength.constant?.diameter.min).toBeCloseTo(0.00508, 12);
    expect(material.strength.constant?.value).toBeCloseTo(420e3 * (4.4482216152605 / 0.0254 ** 2), 3);
  });

  it("may have rows that are inferred among those that were read, and say how far they may be trusted", () => {
    const rows = "rows: [[1 mm, 1980 MPa]]\n    inferred: [[0.5 mm, 2200 MPa], [2 mm, 1760 MPa]]\n    confidence: medium";
    const { minimum } = read(full.replace(/rows: .*/, rows)).strength;
    expect(minimum?.confidence).toBe("medium");
    expect(minimum?.rows.map(({ diameter, inferred }) => [diameter, inferred])).toEqual([
      [0.0005, true],
      [0.001, undefined],
      [0.002, true],
    ]);
  });

  it("may fit its strength in pieces that join, in whatever units; each with its confidence", () => {
    const pieces = `
    - { at: 1 in, value: 169 ksi, exponent: 0.146, diameter: { min: 0.013 in, max: 0.1 in } }
    - { at: 1 in, value: 128 ksi, exponent: 0.263, diameter: { min: 2.54 mm, max: 0.2 in }, confidence: memory }`;
    const fit = read(full.replace(/ {2}fit: .*/, `  fit:${pieces}`)).strength.fit;
    expect(fit?.map(({ exponent, confidence }) => [exponent, confidence])).toEqual([
      [0.146, undefined],
      [0.263, "memory"],
    ]);
  });
});

describe("what is wrong with a material is said by file, line and key", () => {
  it("a size both read and inferred, a word of confidence that is none, no row at all", () => {
    const rows = (text: string) => problemsOf(full.replace(/rows: .*/, text));
    const twice = "a diameter stands both in rows and in inferred; write each once";
    expect(rows("rows: [[1 mm, 1980 MPa]]\n    inferred: [[1 mm, 1970 MPa]]")).toEqual([
      `steel.yaml:10 strength.minimum: ${twice}`,
    ]);
    expect(rows("rows: [[1 mm, 1980 MPa]]\n    confidence: sure")).toEqual([
      'steel.yaml:12 strength.minimum.confidence: "sure" came; one of high | medium | low | memory',
    ]);
    const none = "no row came; write rows as [1 mm, 1980 MPa], the diameter and its strength";
    expect(rows("confidence: high")).toEqual([`steel.yaml:10 strength.minimum: ${none}`]);
  });

  it.each<[string, RegExp | string, string, string[]]>([
    [
      "an unknown key",
      "density:",
      "densty:",
      [
        "steel.yaml:1 file: density is missing; write it; it has no default",
        'steel.yaml:4 file: no key "densty"; nearest is density',
      ],
    ],
    ["a bare number", "7850 kg/m^3", "7850", ["steel.yaml:4 density: 7850 has no unit; write 7850 kg/m^3 (or lb/in^3)"]],
    ["a negative number", "7850 kg/m^3", "-7850 kg/m^3", ["steel.yaml:4 density: -7850 kg/m^3 is not above zero; it must be"]],
    [
      "a class that is none",
      "cold drawn",
      "cold",
      ['steel.yaml:3 class: "cold" came; one of cold drawn | hardened and tempered | austenitic | non-ferrous'],
    ],
    [
      "moduli changed round",
      "203 GPa, shearModulus: 81.5 GPa",
      "81.5 GPa, shearModulus: 203 GPa",
      ["steel.yaml:6 moduli[1]: youngsModulus is not above shearModulus; Young's modulus is the larger (swapped?)"],
    ],
    [
      "an open row of moduli before the last",
      "upTo: 1.6 mm, ",
      "",
      [
        "steel.yaml:6 moduli[1]: upTo is missing; only the last row may be without an upper diameter",
        "steel.yaml:7 moduli[2]: its upTo is not above that of the row before; write the rows with rising upTo",
      ],
    ],
    [
      "rows that do not rise",
      "[1 mm, 1980",
      "[0.4 mm, 1980",
      [
        "steel.yaml:11 strength.minimum.rows[2]: its diameter is not above that of the row before; write the rows with rising diameter",
      ],
    ],
    [
      "a row of three",
      "[1 mm, 1980 MPa]",
      "[1 mm, 1980 MPa, 3 mm]",
      [
        "steel.yaml:11 strength.minimum.rows[2]: not two values in brackets; write [1 mm, 1980 MPa], the diameter and its strength",
      ],
    ],
    [
      "a range changed round",
      "{ min: 0.5 mm, max: 12 mm }",
      "{ min: 12 mm, max: 0.5 mm }",
      ["steel.yaml:12 strength.fit.diameter: min is not below max; write the smaller diameter as min"],
    ],
    [
      "a share above one",
      "asWound: 0.45",
      "asWound: 45",
      ["steel.yaml:13 allowable.asWound: 45 is not plausible; it lies from 1 % to 100 % (a slip in its digits or unit?)"],
    ],
    [
      "fatigue pairs changed round",
      "[300 MPa, 650 MPa]",
      "[650 MPa, 300 MPa]",
      [
        "steel.yaml:25 fatigue.unpeened[2]: the upper stress is not above the lower; write [0 MPa, 450 MPa], the lower and the upper stress",
      ],
    ],
    [
      "no strength",
      /strength:[\s\S]*allowable/,
      "strength: {}\nallowable",
      ["steel.yaml:8 strength: no strength came; give minimum, fit, or constant with its diameter range"],
    ],
    [
      "a fit without pieces",
      /fit: .*/,
      "fit: []",
      ["steel.yaml:12 strength.fit: no piece came; write { at, value, exponent, diameter } or leave fit out"],
    ],
    [
      "neither class nor shares",
      /class: .*\n|allowable: .*\n/g,
      "",
      [
        "steel.yaml:1 file: neither class nor allowable came; write class (cold drawn | hardened and tempered | austenitic | non-ferrous) or the shares allowed",
      ],
    ],
    [
      "a loss that leaves nothing of the moduli at its highest temperature",
      "0.25e-3",
      "1 %",
      [
        "steel.yaml:21 modulusLoss.perKelvin: nothing of the moduli is left at temperature.max; write the share that goes for each kelvin, such as 0.25e-3",
      ],
    ],
    [
      "a highest temperature that is none",
      "120 degC",
      "10 degC",
      ["steel.yaml:17 temperature.max: 10 degC is not above 20 degC, at which springs are tested; write the highest in service"],
    ],
    [
      "a loss without its source",
      ", source: invented }",
      " }",
      ["steel.yaml:21 modulusLoss: source is missing; write it; it has no default"],
    ],
    ["an empty value", "name: shop-steel", "name:", ["steel.yaml:1 name: nothing came; write a text"]],
    [
      "a list where a text belongs",
      "source: invented\nclass",
      "source: [a, b]\nclass",
      ["steel.yaml:2 source: a list came; write a text"],
    ],
    [
      "an alias",
      "relativeCost: 1.4",
      "relativeCost: *cost",
      ["steel.yaml:18 text: *cost stands for another value; write it out"],
    ],
    [
      "a key with a prototype's name",
      "relativeCost: 1.4",
      "relativeCost: 1.4\n__proto__: { max: 1 degC }",
      [
        'steel.yaml:19 file: no key "__proto__"; the keys here are name, source, density, moduli, strength, temperature, relativeCost, modulusLoss, series, class, allowable, wireTolerance, notes, fatigue, relaxation, operations',
      ],
    ],
  ])("%s", (_, part, replacement, sentences) => {
    expect(problemsOf(full.replace(part, replacement))).toEqual(sentences);
  });

  it.each([
    ["in braces", "youngsModulus: 203 GPa", "youngsModulus: 203,5 GPa", "6 moduli[1].youngsModulus: 203,5 GPa", "203.5 GPa"],
    ["in brackets", "[1 mm, 1980 MPa]", "[1,2 mm, 1980 MPa]", "11 strength.minimum.rows[2][1]: 1,2 mm", "1.2 mm"],
    ["at a key of its own", "relativeCost: 1.4", "relativeCost: 1,4", "18 relativeCost: 1,4", "1.4"],
    ["without a unit, in braces", "exponent: 0.16", "exponent: 0,16", "12 strength.fit.exponent: 0,16", "0.16"],
  ])("a decimal comma %s is told as one", (_, part, replacement, place, fix) => {
    expect(problemsOf(full.replace(part, replacement))).toEqual([`steel.yaml:${place} has a comma in its number; write ${fix}`]);
  });

  it("a fatigue range that grows with the lower stress", () => {
    expect(problemsOf(full.replace("[300 MPa, 650 MPa]", "[300 MPa, 800 MPa]"))).toEqual([
      expect.stringMatching(/^steel\.yaml:\d+ fatigue\.unpeened\[2\]: the range is wider than in the row before/),
    ]);
  });

  it("two pieces of a fit that do not join", () => {
    const pieces = `
    - { at: 1 mm, value: 2 GPa, exponent: 0.1, diameter: { min: 1 mm, max: 2 mm } }
    - { at: 1 mm, value: 2 GPa, exponent: 0.2, diameter: { min: 3 mm, max: 4 mm } }`;
    expect(problemsOf(full.replace(/ {2}fit: .*/, `  fit:${pieces}`))).toEqual([
      "steel.yaml:14 strength.fit[2]: it does not begin where the piece before it ends; write that diameter as its min",
    ]);
  });

  it("all of it at once, by line", () => {
    const violated = full.replace("7850 kg/m^3", "7850").replace("120 degC", "120").replace("2 mm, plus", "2, plus");
    expect(problemsOf(violated).map((line) => line.split(" ")[0])).toEqual(["steel.yaml:4", "steel.yaml:15", "steel.yaml:17"]);
  });

  it("a text that is no YAML, or none at all", () => {
    expect(problemsOf("name: [a\nsource: b")[0]).toMatch(/^steel\.yaml:2 text: not YAML here; /);
    expect(problemsOf("")).toEqual(["steel.yaml file: nothing came; write the entry"]);
    expect(problemsOf("just words")[0]).toMatch(/^steel\.yaml:1 file: "just words" came; write keys with values: name, /);
  });

  it("brackets that nest too deeply, once", () => {
    expect(problemsOf(`name: ${"[".repeat(20_000)}`)).toEqual(["steel.yaml:1 text: not YAML here; brackets nest too deeply"]);
  });

  it("aliases that would grow a thousandfold, each once with its lines, and not grown", () => {
    const bomb = [
      "a: &a [x, x, x, x, x, x, x, x, x, x]",
      "b: &b [*a, *a, *a, *a, *a, *a, *a, *a]",
      "name: &c [*b, *b, *b, *b, *b, *b]",
      "source: *b",
    ];
    expect(problemsOf(bomb.join("\n"))).toEqual([
      "steel.yaml:2 text: *a stands for another value, 8 times in this line; write it out",
      "steel.yaml:3 text: *b stands for another value, 7 times in lines 3 and 4; write it out",
    ]);
  });
});
