import { readFileSync } from "node:fs";
import path from "node:path";
import { Ajv } from "ajv";
import { csvParse } from "d3-dsv";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { briefKeys } from "../../src/brief/keys.ts";
import { starterBrief } from "../../src/brief/starter-brief.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { endsSchema, materialSchema, wiresSchema } from "../../src/catalog/schema.ts";
import { headLines } from "../../src/catalog/source-text.ts";
import { shippedBriefSchema } from "../../src/cli/schema.ts";
import { readShelf } from "../../src/disk/files.ts";
import { briefText, type Parts, problemsOf } from "../brief/reading.ts";
import { problemsOf as problemsOfReading } from "../hostile/answer.ts";
import { briefTexts } from "../hostile/brief-texts.ts";
import { filesBelow, root, textOf } from "../house/tree.ts";
import { RANDOM } from "../property/briefs.ts";

/** Judges values by a schema as an editor does; the faults found, none where it is met. */
function judge(schema: string): (value: unknown) => readonly string[] {
  const validate = new Ajv({ allErrors: true, allowUnionTypes: true }).compile(JSON.parse(schema));
  return (value) => {
    validate(value);
    return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
  };
}

const brief = judge(shippedBriefSchema());
const material = judge(materialSchema());
const ends = judge(endsSchema());
const wires = judge(wiresSchema());

const rowsOf = (text: string) =>
  csvParse(text.split("\n").slice(headLines(text).length).join("\n")).map((row) =>
    Object.fromEntries(Object.entries(row).filter(([, cell]) => cell !== "")),
  );

/** The files of the tree that are briefs and materials, by a key that only such a file has at its top. */
const yamlWith = (key: string) =>
  filesBelow().filter((file) => file.endsWith(".yaml") && new RegExp(`^${key}:`, "m").test(textOf(file)));
const shelf = readShelf();

describe("the schema of a brief", () => {
  it.each(yamlWith("practice"))("is met by %s", (file) => {
    expect(brief(parse(textOf(file)))).toEqual([]);
  });

  it("is met by the starter brief, as it stands and with every comment made a key", () => {
    expect(brief(parse(starterBrief()))).toEqual([]);
    expect(brief(parse(starterBrief("brief.schema.json")))).toEqual([]);
  });

  it("is met by any brief that reads", () => {
    fc.assert(
      fc.property(fc.boolean().chain(briefTexts), (text) => {
        expect(problemsOf(text)).toEqual([]);
        expect(brief(parse(text))).toEqual([]);
      }),
      RANDOM,
    );
  });

  const right: readonly (readonly [string, Parts])[] = [
    ["a bare share", { envelope: "envelope: { bore: 40 mm, clearance: 5 % }" }],
    ["a temperature below zero of its scale", { service: "service: { temperature: -10 degC }" }],
    ["marks in units", { service: "service: { temperature: 60 °C }", load: "load: { force: 20 N ± 2 N, deflection: 0.01 m }" }],
    [
      "a grade that YAML takes for a number",
      { practice: "practice: en13906", limits: "limits: { loadTolerance: { grade: 2 } }" },
    ],
    ["a title that YAML takes for a number", { rank: "title: 2026" }],
    ["a limit that is off", { limits: "limits: { index: off, clash: off, freeLength: off }" }],
    ["one word to rank by", { rank: "rank: mass" }],
    [
      "a life as a person writes it",
      { service: "service: { cycles: 1e6, surface: peened }", limits: "limits: { fatigue: off }" },
    ],
  ];
  it.each(right)("is met, as the reader is content, by %s", (_, parts) => {
    expect(problemsOf(briefText(parts))).toEqual([]);
    expect(brief(parse(briefText(parts)))).toEqual([]);
  });

  const wrong: readonly (readonly [string, Parts])[] = [
    ["an unknown key at the top", { rank: "rnk: mass" }],
    ["an unknown key in a section", { envelope: "envelope: { boar: 20 mm }" }],
    ["an unknown key of a point", { load: "load: { points: [{ length: 9 mm, force: 1 N, farce: 2 N }], rate: 1 N/mm }" }],
    ["an unknown practice", { practice: "practice: handbok" }],
    ["an unknown word", { service: "service: { seats: guide }" }],
    ["an unknown merit figure", { rank: "rank: [mass, freelenght]" }],
    ["a merit figure twice", { rank: "rank: [mass, mass]" }],
    ["a name in no catalog", { sweep: "sweep: { wires: [iso-r21], materials: [astm-a228], ends: [squared] }" }],
    ["one name where a list is due", { sweep: "sweep: { wires: iso-r20, materials: [astm-a228], ends: [squared] }" }],
    ["a length without a unit", { load: "load: { force: 20 N, deflection: 10 }" }],
    ["a quoted length without a unit", { load: 'load: { force: 20 N, deflection: "1e1" }' }],
    ["a pure number with a unit", { service: "service: { cycles: 1e6 Hz }" }],
    ["a length below zero", { envelope: "envelope: { bore: -20 mm }" }],
    ["a bare window", { envelope: "envelope: { freeLength: 60 mm }" }],
    ["a window with neither end", { envelope: "envelope: { freeLength: {} }" }],
    ["a number where a section is due", { load: "load: 45 N" }],
    ["a list where a section is due", { envelope: "envelope: [26 mm]" }],
    ["no practice", { practice: "" }],
    ["no load", { load: "" }],
    ["no sweep", { sweep: "" }],
    ["a word that the key does not take", { envelope: "envelope: { freeLength: off }" }],
  ];
  it.each(wrong)("is broken, as the reader refuses it, by %s", (_, parts) => {
    expect(problemsOf(briefText(parts))).not.toEqual([]);
    expect(brief(parse(briefText(parts)))).not.toEqual([]);
  });

  it("asks for the keys that the reader misses, and for no other", () => {
    const whole: Parts = {
      load: "load: { rate: { min: 1 N/mm, max: 2 N/mm }, points: [{ length: 40 mm, force: 20 N }] }",
      limits: "limits: { buckling: { safety: 1 }, surge: { multiple: 13 }, loadTolerance: { grade: commercial } }",
      sweep:
        "sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared], meanDiameter: { step: 1 mm }, freeLength: { step: 1 mm } }",
    };
    expect(problemsOf(briefText(whole))).toEqual([]);
    const needed = briefKeys.filter(({ path, required }) => required && !path.startsWith("design."));
    expect(needed.length).toBeGreaterThan(8);
    for (const { path } of needed) {
      const value = parse(briefText(whole));
      const steps = path.replace("[]", ".0").split(".");
      const parent = steps.slice(0, -1).reduce((at, step) => at[step], value);
      delete parent[steps.at(-1) as string];
      expect(brief(value), path).not.toEqual([]);
      expect(
        problemsOf(JSON.stringify(value)).map(({ code, key }) => [code, key]),
        path,
      ).toContainEqual(["missing", path.replace("[]", "[1]")]);
    }
  });
});

describe("the schema of a material", () => {
  it.each(yamlWith("density"))("is met by %s", (file) => {
    expect(material(parse(textOf(file)))).toEqual([]);
  });

  it("is met by the material that the guide shows", () => {
    const shown = [...textOf("reports/guide.md").matchAll(/^```yaml\n([\s\S]*?)^```/gm)].map(([, text]) => text as string);
    const materials = shown.filter((text) => /^density:/m.test(text));
    expect(materials).toHaveLength(1);
    for (const text of materials) expect(material(parse(text))).toEqual([]);
  });

  const [name, text] = [...shelf.materials].find(([, { text }]) => text.includes("next-row")) as [string, { text: string }];
  it.each([
    ["an unknown key", (right: string) => `${right}\ncolour: grey\n`],
    ["an unknown key in a section", (right: string) => right.replace(/max: /, "most: ")],
    ["an unknown word", (right: string) => right.replace("next-row", "nextrow")],
    ["a density without a unit", (right: string) => right.replace(/^density:.*$/m, "density: 7850")],
    ["no source", (right: string) => right.replace(/^source:.*$/m, "")],
    ["rows of three", (right: string) => right.replace(/\[\[?(\d[^\],]*), ([^\]]*)\]/, (row) => row.replace(",", ", 1 mm,"))],
  ])(`of the files, ${name} among them, is broken, as the reader refuses it, by %s`, (_, spoil) => {
    const spoiled = spoil(text.text);
    expect(spoiled).not.toBe(text.text);
    expect(problemsOfReading(() => readMaterial({ file: "spoiled.yaml", text: spoiled }))).not.toEqual([]);
    expect(material(parse(spoiled))).not.toEqual([]);
  });
});

describe("the schemas of end styles and wires", () => {
  it("are met by what is shipped", () => {
    expect(ends(parse(shelf.ends.text))).toEqual([]);
    for (const [name, { text }] of shelf.wires) expect(wires(rowsOf(text)), name).toEqual([]);
  });

  it("are met by a stock with prices, and broken by a column that is none", () => {
    const stock = readFileSync(path.join(root, "reports", "dosing-wire.yaml"), "utf8");
    expect(material(parse(stock))).toEqual([]);
    expect(wires(rowsOf("label,diameter,price,materials\nA7,0.7 mm,4.2 / kg,en-sh\n"))).toEqual([]);
    expect(wires(rowsOf("label,diameter,colour\nA7,0.7 mm,grey\n"))).not.toEqual([]);
    expect(wires(rowsOf("label,diameter\nA7,0.7\n"))).not.toEqual([]);
    expect(
      ends([{ name: "plain", deadTurns: 0, solidExtra: 1, pitchTurns: 0, pitchWires: 1, closed: "no", ground: false }]),
    ).not.toEqual([]);
  });
});
