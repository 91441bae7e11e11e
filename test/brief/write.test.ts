import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { readCheckBrief } from "../../src/brief/read.ts";
import { starterBrief } from "../../src/brief/starter-brief.ts";
import { writeBrief } from "../../src/brief/write.ts";
import { exactText, yamlText } from "../../src/brief/yaml-text.ts";

import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf, readTextBeside } from "../../src/disk/files.ts";
import { readQuantity } from "../../src/units/read.ts";
import { briefText, type Parts, read } from "./reading.ts";

const lookup = lookupOn(readShelf(), readTextBeside);
const pathOf = (name: string) => fileURLToPath(new URL(name, import.meta.url));
const filesIn = (folder: string) =>
  readdirSync(pathOf(folder))
    .filter((name) => name.endsWith(".yaml"))
    .map((name) => pathOf(`${folder}/${name}`));

describe("a brief that is written reads back as the same brief", () => {
  const files = [...filesIn("../../reports"), ...filesIn("contract")].filter((path) => {
    const text = readFileSync(path, "utf8");
    return /^load:/m.test(text) && /^sweep:/m.test(text);
  });

  it.each(files)("%s", (path) => {
    const brief = read(readFileSync(path, "utf8"), path);
    expect(read(writeBrief(brief), path)).toEqual(brief);
  });

  it("the starter brief", () => {
    expect(read(writeBrief(read(starterBrief())))).toEqual(read(starterBrief()));
  });

  const cases: readonly (readonly [string, Parts])[] = [
    [
      "windows of bore and rod",
      { envelope: "envelope: { bore: { min: 20 mm, max: 21 mm }, rod: 8 mm ± 0.5 mm, clearance: 0.1 mm }" },
    ],
    [
      "cyclic duty with a line",
      { service: "service: { cycles: 1e6, surface: peened }", limits: "limits: { fatigue: { line: gerber } }" },
    ],
    [
      "the usual line, said",
      { service: "service: { cycles: 1e6 }", limits: "limits: { fatigue: { line: goodman, safety: 1.2 } }" },
    ],
    ["a line in static duty", { limits: "limits: { fatigue: { line: sines } }" }],
    ["stresses", { limits: "limits: { workingStress: { max: 700 MPa, factor: wahl }, solidStress: { safety: 1.1 } }" }],
    ["a stress factor taken", { limits: "limits: { workingStress: { safety: 1.1 } }" }],
    ["a grade", { limits: "limits: { loadTolerance: { grade: commercial } }" }],
    ["half a window", { limits: "limits: { index: { min: 5 }, turns: { max: 9 } }" }],
    [
      "every limit off",
      {
        limits: `limits: { ${["index", "clash", "workingStress", "solidStress", "buckling", "surge", "fatigue", "loadTolerance", "outsideDiameter", "insideDiameter", "freeLength", "solidLength", "temperature", "wire"].map((name) => `${name}: off`).join(", ")} }`,
      },
    ],
    ["a far end that is free", { service: "service: { seats: clamped and free, farEnd: free }" }],
    ["guided seats", { service: "service: { seats: guided, frequency: 3 Hz, temperature: 140 degF }" }],
    [
      "an order",
      { rank: 'order: { hand: left, free: free length, quantity: 500, finish: "oiled, light", notes: "pack: flat # not bulk" }' },
    ],
    ["weights of operations", { rank: "cost: { grind: 0.3, set: 0.1 }" }],
    ["several figures of rank", { rank: "rank: [mass, outsideDiameter]" }],
  ];
  it.each(cases)("%s", (_title, parts) => {
    const brief = read(briefText(parts));
    expect(read(writeBrief(brief))).toEqual(brief);
  });

  it.each([
    "a: b",
    "# not a comment",
    "off",
    "- x",
    "[list]",
    'say "hi"',
    "{ x }",
    "tab\there",
    "two\nlines",
    "-0",
    "&anchor",
    "é ± ½",
  ])("a title such as %j", (title) => {
    const brief = read(`title: ${JSON.stringify(title)}\n${briefText({})}`);
    expect(brief.title).toBe(title);
    expect(read(writeBrief(brief))).toEqual(brief);
  });

  it("one with a design, whatever says its wire", () => {
    for (const wire of ["1.2 mm", "us-music 7/0", "en-10270 0.9 mm"]) {
      const text = `practice: handbook
load: { rate: 2 N/mm ± 5 %, points: [{ name: "shut: at rest", length: 40 mm, force: 10 N ± 1 N }] }
design: { wire: ${wire}, material: astm-a228, ends: squared, outsideDiameter: 13.2 mm, activeTurns: 8, rate: 1.5 N/mm }
`;
      const brief = readCheckBrief(text, "quoted.yaml", lookup);
      expect(readCheckBrief(writeBrief(brief), "quoted.yaml", lookup)).toEqual(brief);
    }
  });

  it("values without an author's words are written in the brief's units", () => {
    const brief = read(
      briefText({ load: "load: { force: 20 lbf ± 10 %, deflection: 1.5 in }", envelope: "envelope: { bore: 1 in }" }),
    );
    const bare = { ...brief, asked: brief.asked.filter(({ key }) => key !== "load.force" && key !== "envelope.bore") };
    expect(writeBrief({ ...bare, envelope: { bore: 0.0508 } })).toMatch(/force: 20 lbf ± 2 lbf[\s\S]*bore: 2 in/);
  });
});

describe("a number that is written", () => {
  it.each([
    [0.0114, "length", "mm", "11.4 mm"],
    [0.86 * 0.0254, "length", "in", "0.86 in"],
    [1 / 3, "length", "in", undefined],
    [0.1 + 0.2, "force", "mm", undefined],
    [1234.5678, "rate", "in", undefined],
    [333.15, "temperature", "mm", "60 °C"],
    [7.393884815173503, "number", "in", "7.393884815173503"],
  ] as const)("%d reads back to within rounding", (value, dimension, length, text) => {
    const written = exactText(value, dimension, { length, force: length === "in" ? "lbf" : "N" });
    if (text !== undefined) expect(written).toBe(text);
    const back = readQuantity(written, dimension);
    expect("value" in back && Math.abs(back.value / value - 1)).toBeLessThan(4e-16);
  });
});

describe("YAML text", () => {
  it("leaves out what is undefined, and keeps short sections on one line", () => {
    expect(yamlText({ a: "x", b: undefined, c: { d: "1 mm", e: undefined }, f: ["g", "h, i"] })).toBe(
      'a: x\nc: { d: 1 mm }\nf: [g, "h, i"]\n',
    );
  });

  it("writes a list of sections item by item", () => {
    expect(yamlText({ load: { points: [{ name: "shut", length: "1 in" }] } })).toBe(
      "load:\n  points:\n    - { name: shut, length: 1 in }\n",
    );
  });
});
