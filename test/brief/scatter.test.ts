import { describe, expect, it } from "vitest";
import { writeBrief } from "../../src/brief/write.ts";
import { describeProblems } from "./problem-cases.ts";
import { briefText, type Parts, read } from "./reading.ts";

const scatter = (text: string) => ({ service: `service: { scatter: { ${text} } }` });

describeProblems("service.scatter", [
  [
    "a draw that is no section",
    { service: "service: { scatter: 2000 }" },
    "wrongKind",
    "service.scatter",
    /set of keys, such as/,
  ],
  ["no draws", scatter("draws: 0"), "range", "service.scatter.draws", /above zero/],
  ["fewer draws than none", scatter("draws: -5"), "range", "service.scatter.draws", /above zero/],
  ["one draw, which has no spread", scatter("draws: 1"), "range", "service.scatter.draws", /whole number from 2 to 100000/],
  ["half a draw", scatter("draws: 20.5"), "range", "service.scatter.draws", /whole number from 2 to 100000/],
  [
    "more draws than a person waits for",
    scatter("draws: 1e9"),
    "range",
    "service.scatter.draws",
    /whole number from 2 to 100000/,
  ],
  ["draws that are no number", scatter("draws: NaN"), "notANumber", "service.scatter.draws", /NaN/],
  ["draws with a unit", scatter("draws: 20 mm"), "hasUnit", "service.scatter.draws", /20, a pure number/],
  ["a shape that nobody draws", scatter("shape: normall"), "unknownWord", "service.scatter.shape", /did you mean normal\?/],
  ["a seed below zero", scatter("seed: -1"), "range", "service.scatter.seed", /zero or more/],
  ["a seed beyond the generator's", scatter("seed: 4294967296"), "range", "service.scatter.seed", /from 0 to 4294967295/],
  ["a grade of the other practice", scatter("grade: 2"), "gradeOfPractice", "service.scatter.grade", /write commercial/],
  ["a tolerance below zero", scatter("turns: -0.1"), "range", "service.scatter.turns", /zero or more/],
  ["a tolerance without its unit", scatter("wireDiameter: 0.02"), "noUnit", "service.scatter.wireDiameter", /0.02 mm/],
  ["a tolerance in another unit", scatter("freeLength: 2 N"), "wrongDimension", "service.scatter.freeLength", /length/],
  ["a modulus that may vanish", scatter("modulus: 100 %"), "range", "service.scatter.modulus", /less than 100 %/],
  ["a key that is not there", scatter("coildiameter: 1 mm"), "unknownKey", "service.scatter.coildiameter", /coilDiameter/],
  [
    "wire of which no tolerance is published",
    { sweep: "sweep: { wires: [iso-r20], materials: [astm-a228, astm-a313-302], ends: [squared] }", ...scatter("") },
    "noTolerance",
    "service.scatter.wireDiameter",
    /wire of astm-a313-302 .*write wireDiameter/,
  ],
  [
    "ends of which no tolerance on length is published",
    { sweep: "sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared, plain] }", ...scatter("") },
    "noTolerance",
    "service.scatter.freeLength",
    /plain ends.*write freeLength/,
  ],
]);

describeProblems("a rank by yield", [
  ["yield where none are drawn", { rank: "rank: [yield, mass]" }, "yieldOfNone", "rank", /service: \{ scatter:/],
  ["yield alone", { ...scatter(""), rank: "rank: yield" }, "yieldFirst", "rank", /write \[yield, mass\]/],
  ["yield after a figure", { ...scatter(""), rank: "rank: [mass, yield]" }, "yieldFirst", "rank", /write \[yield, mass\]/],
]);

describe("a scatter that reads", () => {
  const taken = (parts: Parts) =>
    Object.fromEntries(
      read(briefText(parts))
        .defaults.filter(({ key }) => key.startsWith("service.scatter."))
        .map(({ key, text, source }) => [key.replace("service.scatter.", ""), `${text} (${source})`]),
    );

  it("takes what it leaves out from coilsieve, the standard of the wire and the practice, and says each", () => {
    const parts = scatter("");
    expect(read(briefText(parts)).service.scatter).toEqual({
      draws: 2000,
      shape: "normal",
      seed: 1,
      grade: "commercial",
      turns: 0.25,
      modulus: 0.02,
    });
    expect(Object.keys(taken(parts)).sort()).toEqual(
      ["coilDiameter", "draws", "freeLength", "grade", "modulus", "seed", "shape", "turns", "wireDiameter"].sort(),
    );
    expect(taken(parts)).toMatchObject({
      wireDiameter: "as the standard of the wire has it (the material's file)",
      modulus: "2 % (common practice, no source)",
    });
  });

  it("takes nothing where it states all, and keeps a tolerance of nothing", () => {
    const all =
      "draws: 300, shape: uniform, seed: 0, grade: commercial, wireDiameter: 0 mm, coilDiameter: 0.008 in, turns: 0, freeLength: 0.5 mm, modulus: 0 %";
    expect(taken(scatter(all))).toEqual({});
    expect(read(briefText(scatter(all))).service.scatter).toEqual({
      draws: 300,
      shape: "uniform",
      seed: 0,
      grade: "commercial",
      wireDiameter: 0,
      coilDiameter: 0.008 * 0.0254,
      turns: 0,
      freeLength: 0.0005,
      modulus: 0,
    });
  });

  it("follows the grade that the load is held to, and asks no grade where nothing is left to one", () => {
    const european = { practice: "practice: en13906", limits: "limits: { loadTolerance: { grade: 3 } }" };
    expect(read(briefText({ ...european, ...scatter("") })).service.scatter?.grade).toBe(3);
    expect(taken({ ...european, ...scatter("") })).toMatchObject({ grade: "3 (limits.loadTolerance)" });
    expect(taken(scatter("coilDiameter: 0.2 mm, freeLength: 0.5 mm"))).not.toHaveProperty("grade");
  });

  it("puts yield before the figures by which the best are chosen", () => {
    const { rank, yieldFirst } = read(briefText({ ...scatter(""), rank: "rank: [yield, outsideDiameter, mass]" }));
    expect({ rank, yieldFirst }).toEqual({ rank: ["outsideDiameter", "mass"], yieldFirst: true });
  });

  it.each([
    ["as it is taken", scatter(""), ""],
    ["as it is stated", scatter("draws: 500, shape: uniform, seed: 9, grade: commercial, modulus: 1 %, turns: 0.1"), ""],
    ["with a rank by yield", scatter("wireDiameter: 0.001 in"), "rank: [yield, mass]"],
  ])("is written as it reads, %s", (_title, parts, rank) => {
    const brief = read(briefText({ ...parts, rank }));
    expect(read(writeBrief(brief))).toEqual(brief);
  });

  it("is refused beside nested springs", () => {
    const nested = `nested: 2\n${briefText({ load: "load: { rate: 2 N/mm ± 5 %, points: [{ length: 40 mm, force: 10 N ± 1 N }] }", ...scatter("") })}`;
    expect(() => read(nested)).toThrow(/service.scatter: beside nested springs; single springs are drawn/);
  });
});
