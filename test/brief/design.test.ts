import { describe, expect, it } from "vitest";
import { readCheckBrief } from "../../src/brief/read.ts";
import type { CheckBrief } from "../../src/model.ts";
import { type Problem, ProblemError } from "../../src/problem.ts";
import { shipped } from "../catalog/shipped.ts";

const load = "load: { force: 20 N, deflection: 10 mm }";

function read(design: string): CheckBrief {
  return readCheckBrief(`practice: handbook\n${load}\ndesign: { ${design} }\n`, "quoted.yaml", shipped);
}

function problemsOf(design: string): readonly Problem[] {
  try {
    read(design);
    return [];
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
}

const settled = "wire: 1.2 mm, material: astm-a228, ends: squared, meanDiameter: 12 mm, totalTurns: 10";
const without = (key: string) =>
  settled
    .split(", ")
    .filter((part) => !part.startsWith(key))
    .join(", ");

describe("a design", () => {
  it("reads in SI with its catalog entries, and needs no sweep", () => {
    const { design, sweep } = read(`${settled}, freeLength: 2 in, rate: 1.5 N/mm`);
    expect(design).toMatchObject({ material: { name: "astm-a228" }, ends: { name: "squared" }, totalTurns: 10, rate: 1500 });
    expect(design.meanDiameter).toBeCloseTo(0.012, 15);
    expect(design.freeLength).toBeCloseTo(0.0508, 15);
    expect(design.wire).toEqual({ label: "1.2 mm", diameter: expect.closeTo(0.0012, 15), series: "as given" });
    expect(sweep).toMatchObject({ wires: [{ wires: [design.wire] }], materials: [design.material], ends: [design.ends] });
  });

  it.each([
    ["us-music 16", "16", 0.037 * 0.0254],
    ["us-music 7/0", "7/0", 0.003 * 0.0254],
    ["en-10270 0.9 mm", "0.9 mm", 0.0009],
  ])("takes its wire from a series: %s", (text, label, diameter) => {
    const { wire } = read(`wire: ${text}, ${without("wire")}`).design;
    expect(wire).toMatchObject({ label, series: text.split(" ")[0] });
    expect(wire.diameter).toBeCloseTo(diameter, 12);
  });

  it.each([
    ["outsideDiameter: 13.2 mm, activeTurns: 8"],
    ["insideDiameter: 10.8 mm, rate: 2 N/mm"],
    ["meanDiameter: 12 mm, totalTurns: 10, activeTurns: 8, outsideDiameter: 20 mm"],
  ])("is settled by %s, and whether more agrees is no question of input", (data) => {
    expect(problemsOf(`wire: 1.2 mm, material: astm-a228, ends: squared, ${data}`)).toEqual([]);
  });

  it("takes no default for a rank, which one spring does not have", () => {
    expect(read(settled).defaults.map(({ key }) => key)).not.toContain("rank");
  });
});

describe("in a design", () => {
  it.each([
    ["no wire", without("wire"), "missing", "design.wire", /1\.2 mm/],
    ["no material", without("material"), "missing", "design.material", /astm-a228/],
    ["no ends", without("ends"), "missing", "design.ends", /squared-ground/],
    ["no diameter", without("meanDiameter"), "missing", "design", /outsideDiameter, insideDiameter, meanDiameter/],
    ["neither turns nor rate", without("totalTurns"), "missing", "design", /totalTurns or activeTurns, or the rate/],
    ["an unknown series", `wire: us-musik 16, ${without("wire")}`, "unknownName", "design.wire", /us-music/],
    ["a size that the series has not", `wire: us-music 99, ${without("wire")}`, "unknownSize", "design.wire", /nearest is/],
    ["a series without a size", `wire: us-music, ${without("wire")}`, "noSize", "design.wire", /write us-music and a label/],
    ["a wire without unit", `wire: 1.2, ${without("wire")}`, "noUnit", "design.wire", /1\.2 mm/],
    ["an unknown material", `material: astm-a288, ${without("material")}`, "unknownName", "design.material", /astm-a228/],
    ["a tolerance", `${settled}, freeLength: 60 mm ± 1 mm`, "noTolerance", "design.freeLength", /exact/],
    [
      "a mean diameter within the wire",
      `meanDiameter: 1 mm, ${without("meanDiameter")}`,
      "noHole",
      "design.meanDiameter",
      /hole/,
    ],
    ["an outside diameter of two wires", `outsideDiameter: 2.4 mm, ${settled}`, "noHole", "design.outsideDiameter", /twice/],
    [
      "turns that are all dead",
      `totalTurns: 2, ${without("totalTurns")}`,
      "noActiveTurns",
      "design.totalTurns",
      /squared ends take 2/,
    ],
    ["an unknown key", `${settled}, colour: red`, "unknownKey", "design.colour", /totalTurns/],
  ])("%s is one problem that says what is right", (_title, design, code, key, fix) => {
    const problems = problemsOf(design);
    expect(problems.map((problem) => [problem.code, problem.key, problem.line])).toEqual([[code, key, 3]]);
    expect(`${problems[0]?.got}; ${problems[0]?.want}`).toMatch(fix);
  });

  it("everything that is missing is said at once", () => {
    expect(problemsOf("freeLength: 60 mm").map(({ key }) => key)).toEqual([
      "design.wire",
      "design.material",
      "design.ends",
      "design",
      "design",
    ]);
  });

  it("ends that the practice does not know are refused", () => {
    const text = `practice: en13906\n${load}\ndesign: { ${settled.replace("squared", "plain")} }\n`;
    expect(() => readCheckBrief(text, "quoted.yaml", shipped)).toThrow(/quoted.yaml:3 design.ends: .*plain/);
  });
});
