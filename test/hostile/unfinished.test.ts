import { describe, expect, it } from "vitest";
import { readBrief, readCheckBrief } from "../../src/brief/read.ts";
import { readEnds } from "../../src/catalog/ends.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { readWireSeries } from "../../src/catalog/wires.ts";
import { type Problem, problemLine } from "../../src/problem.ts";
import { check } from "../../src/studies/check.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { lookup, problemsOf, runs } from "./answer.ts";

/** A text as a tree: keys, lists, and values as they are typed. */
type Tree = string | readonly Tree[] | { readonly [key: string]: Tree };
type Path = readonly (string | number)[];

/** What stands at a place while a person types there, or by mistake. */
const typed = ["", "~", "null", '""', "true", "off", "7", "7 mm", "-7 N", "2026-01-02", "[]", "[1 mm]", "[[]]", "{}", "{ a: 1 }"];
const typedToo = [...typed, "{ max }", "{ max: }", "{ min: , max: }", '{ max: "" }', "{ max: [1 mm] }", "{ min: { a: 1 } }", "?"];

const points = [
  { name: "rest", length: "46 mm", force: { min: "18 N", max: "24 N" } },
  { name: "pressed", length: "32 mm", force: "48 N ± 10 %" },
];
const around: Tree = {
  title: "invented",
  practice: "handbook",
  envelope: {
    bore: "40 mm",
    rod: "3 mm",
    clearance: "0.2 mm",
    outsideDiameter: { max: "30 mm" },
    insideDiameter: { min: "4 mm" },
    freeLength: { min: "10 mm", max: "80 mm" },
    solidLength: { max: "60 mm" },
  },
  service: { seats: "guided", set: "as wound", surface: "unpeened", strength: "minimum", cycles: "1e6", frequency: "3 Hz" },
  limits: {
    index: { min: "4", max: "12" },
    turns: { min: "3", max: "15" },
    clash: { ofDeflection: "0.15" },
    workingStress: { max: "900 MPa" },
    solidStress: { safety: "1.1" },
    buckling: { safety: "1" },
    surge: { multiple: "13" },
    fatigue: { safety: "1.1", line: "goodman" },
    loadTolerance: { grade: "commercial" },
  },
  cost: { grind: "0.1", set: "0.1", peen: "0.1", relieve: "0.1" },
  rank: ["mass", "solidSafety"],
  order: { hand: "right", governing: "outside", free: ["turns"], quantity: "500", finish: "oiled", drawing: "A1", notes: "none" },
};
const tried: Tree = { wires: ["iso-r10"], materials: ["astm-a228"], ends: ["squared-ground"], turns: "whole" };
const scatter: Tree = {
  draws: "20",
  shape: "normal",
  seed: "3",
  grade: "commercial",
  wireDiameter: "0.01 mm",
  turns: "0.1",
  modulus: "2 %",
};
const briefs: Readonly<Record<string, Tree>> = {
  points: { ...around, load: { points }, sweep: { ...tried, meanDiameter: { step: "1 mm" } } },
  deflection: { ...around, load: { force: "30 N", deflection: "10 mm" }, sweep: { ...tried, meanDiameter: "exact" } },
  "a rate and a point": {
    ...around,
    load: { rate: { min: "1 N/mm", max: "3 N/mm" }, points: [points[1] as Tree] },
    sweep: tried,
  },
  "a rate and a force": { ...around, load: { rate: "2 N/mm ± 5 %", largestForce: "60 N" }, sweep: { ...tried, turns: "half" } },
  scatter: {
    practice: "handbook",
    load: { points },
    sweep: tried,
    service: { seats: "guided", scatter },
    rank: ["yield", "mass"],
  },
};
const given: Tree = {
  ...around,
  load: { force: "30 N", deflection: "10 mm" },
  design: {
    material: "astm-a228",
    wire: "1.6 mm",
    ends: "squared-ground",
    outsideDiameter: "15 mm",
    insideDiameter: "11.8 mm",
    meanDiameter: "13.4 mm",
    totalTurns: "9",
    activeTurns: "7",
    freeLength: "40 mm",
    rate: "2 N/mm",
  },
};

const material: Tree = {
  name: "shop-steel",
  source: "invented",
  class: "cold drawn",
  density: "7850 kg/m^3",
  moduli: [
    { upTo: "1 mm", youngsModulus: "206 GPa", shearModulus: "81.5 GPa" },
    { youngsModulus: "205 GPa", shearModulus: "80 GPa" },
  ],
  modulusLoss: { perKelvin: "0.3e-3", source: "invented" },
  strength: {
    minimum: {
      between: "interpolate",
      rows: [
        ["0.5 mm", "2200 MPa"],
        ["8 mm", "1400 MPa"],
      ],
      confidence: "low",
    },
    fit: { at: "1 mm", value: "1980 MPa", exponent: "0.16", diameter: { min: "0.1 mm", max: "12 mm" }, confidence: "low" },
  },
  allowable: { asWound: "45 %", setRemoved: "60 %" },
  wireTolerance: [{ upTo: "8 mm", plusMinus: "0.04 mm" }],
  temperature: { max: "120 degC" },
  relativeCost: "1.4",
  notes: ["invented"],
  fatigue: { source: "invented", cycles: "1e7", unpeened: [["0 MPa", "450 MPa"]], peened: [["0 MPa", "500 MPa"]] },
  relaxation: { source: "invented", points: [{ temperature: "100 degC", stress: "800 MPa", time: "48 h", loss: "5 %" }] },
  operations: { grind: "0.2", set: "0.1", peen: "0.1", relieve: "0" },
};
const ends: Tree = [
  { name: "own", deadTurns: "2", solidExtra: "1", pitchTurns: "0", pitchWires: "3", closed: "true", ground: "false" },
];

/** Every place of a tree at which something stands. */
function placesIn(tree: Tree, at: Path = []): Path[] {
  const inner = typeof tree === "string" ? [] : Object.entries(tree).flatMap(([key, value]) => placesIn(value, [...at, key]));
  return at.length === 0 ? inner : [at, ...inner];
}

/** What is typed at each place of a tree: nothing, and of the rest each fourth in turn; all of it where the search is long. */
function typings(tree: Tree): readonly (readonly [Path, string])[] {
  const apart = runs < 60 ? 4 : 1;
  return placesIn(tree).flatMap((place, i) =>
    typedToo.filter((value, j) => value === "" || (i + j) % apart === 0).map((value) => [place, value] as const),
  );
}

/** The text of a tree with something else typed at one place; each key of the top has a line of its own. */
function textWith(tree: Tree, at: Path, value: string): string {
  const shown = (node: Tree, path: Path): string => {
    if (path.length === at.length && path.every((key, i) => key === at[i])) return value;
    if (typeof node === "string") return node;
    const inner = Object.entries(node).map(([key, one]) => [key, shown(one, [...path, key])] as const);
    if (Array.isArray(node))
      return path.length === 0
        ? inner.map(([, text]) => `- ${text}\n`).join("")
        : `[${inner.map(([, text]) => text).join(", ")}]`;
    if (path.length === 0) return inner.map(([key, text]) => `${key}: ${text}\n`).join("");
    return `{ ${inner.map(([key, text]) => `${key}: ${text}`).join(", ")} }`;
  };
  return shown(tree, []);
}

/** A place at which nothing stands. */
const nowhere: Path = ["nowhere"];

/**
 * What is owed to a text that is not finished: each problem at a line, with the key and what would be right. What a reader finds no
 * fault in may still be impossible to draw or to judge, which is told by its key.
 */
function owes(problems: readonly Problem[], file: string): void {
  for (const problem of problems) {
    const line = problemLine(problem);
    expect(line).toMatch(new RegExp(`^(${file}:\\d+ |service|design)\\S.*: .+; .+`));
    expect(line).not.toMatch(/undefined|NaN|\[object|a fault of/);
  }
}

describe("a brief that is not finished at one place", () => {
  it("is whole where nothing is left out", () => {
    for (const tree of Object.values(briefs))
      expect(problemsOf(() => readBrief(textWith(tree, nowhere, ""), "b.yaml", lookup))).toEqual([]);
    expect(problemsOf(() => readCheckBrief(textWith(given, nowhere, ""), "b.yaml", lookup))).toEqual([]);
  });

  it.each(Object.entries(briefs))("is swept or told with key, line and what would be right: %s", (_title, tree) => {
    for (const [place, value] of typings(tree)) {
      const problems = problemsOf(() => sweep(readBrief(textWith(tree, place, value), "b.yaml", lookup), { top: 2 }));
      owes(problems, "b.yaml");
      // A list may end in a comma.
      const inList = /^\d+$/.test(String(place.at(-1)));
      if (value === '""' || (value === "" && !inList))
        expect(
          problems.map(({ key }) => key),
          `${place}`,
        ).not.toEqual([]);
    }
  });

  it("with a design is judged or told", () => {
    for (const [place, value] of typings(given)) {
      owes(
        problemsOf(() => check(readCheckBrief(textWith(given, place, value), "b.yaml", lookup))),
        "b.yaml",
      );
    }
  });

  it.each([
    ["freeLength: { max: }", "envelope.freeLength.max", "is empty"],
    ["freeLength: { max }", "envelope.freeLength.max", "is empty"],
    ['freeLength: { max: "" }', "envelope.freeLength.max", "is empty"],
    ["freeLength: { max: [1 mm] }", "envelope.freeLength.max", "is a list"],
    ["freeLength: { max: { a: 1 } }", "envelope.freeLength.max", "is a set of keys"],
    ["solidLength: { min: }", "envelope.solidLength.min", "is empty"],
  ])("%s says what would be right there", (window, key, got) => {
    const text = `practice: handbook\nload: { force: 30 N, deflection: 10 mm }\nsweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared] }\nenvelope: { ${window} }\n`;
    const example = key.includes("solid") ? "35 mm" : "80 mm";
    expect(problemsOf(() => readBrief(text, "b.yaml", lookup)).map(problemLine)).toEqual([
      `b.yaml:4 ${key}: ${got}; write a quantity, such as ${example}`,
    ]);
  });

  it.each(["{ min: , max: 9 N }", "{ min: [1 N], max: 9 N }"])("a load point's force of %s names its end", (force) => {
    const text = textWith(briefs.points as Tree, ["load", "points", "1", "force"], force);
    expect(problemsOf(() => readBrief(text, "b.yaml", lookup))).toMatchObject([{ key: "load.points[2].force.min" }]);
  });
});

describe("a catalog that is not finished at one place", () => {
  it.each([
    ["a material", material, (text: string) => readMaterial({ file: "c.yaml", text })],
    ["end styles", ends, (text: string) => readEnds({ file: "c.yaml", text })],
  ])("is read or told with key, line and what would be right: %s", (_title, tree, act) => {
    expect(problemsOf(() => act(textWith(tree, nowhere, "")))).toEqual([]);
    for (const [place, value] of typings(tree)) {
      owes(
        problemsOf(() => act(textWith(tree, place, value))),
        "c.yaml",
      );
    }
  });

  it("is read or told: a stock", () => {
    const cells = [
      ["label", "diameter", "price", "materials"],
      ["A1", "1.6 mm", "4 / kg", "astm-a228"],
    ];
    for (const [row, line] of cells.entries()) {
      for (const column of line.keys()) {
        for (const value of [...typedToo, ","]) {
          const text = cells
            .map((all, i) => all.map((cell, j) => (i === row && j === column ? value : cell)).join(","))
            .join("\n");
          owes(
            problemsOf(() => readWireSeries({ file: "c.csv", text }, "c")),
            "c.csv",
          );
        }
      }
    }
  });
});
