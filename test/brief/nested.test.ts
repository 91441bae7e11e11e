import { describe, expect, it } from "vitest";
import { readCheckBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf, readTextBeside } from "../../src/disk/files.ts";
import { describeProblems, points, sweepOf } from "./problem-cases.ts";
import { briefText, problemsOf, read } from "./reading.ts";

const two = points("{ length: 50 mm, force: 20 N }", "{ length: 40 mm, force: 50 N ± 5 % }");
const window = "force: { min: 20 N, max: 25 N }";
const nested = (load: string) => ({ load, rank: "nested: 2" });

describe("a brief with nested: 2", () => {
  it.each([
    ["two points with nominals", two],
    ["a rate and a point with nominals", "load: { rate: 3 N/mm ± 5 %, points: [{ length: 40 mm, force: 50 N }] }"],
  ])("reads with %s, for they fix one rate and one free length", (_title, load) => {
    expect(read(briefText(nested(load))).nested).toBe(2);
  });

  it("says that no clearance between the springs is taken where none is asked, and takes one without bore or rod", () => {
    const silent = read(briefText(nested(two)));
    expect(silent.defaults).toContainEqual({ key: "envelope.clearance", text: "0 %", source: "none unless asked" });
    const asked = read(briefText({ ...nested(two), envelope: "envelope: { clearance: 1 mm }" }));
    expect(asked.envelope).toEqual({ clearance: { length: 0.001 } });
  });

  it("is not judged by check, which takes one spring", () => {
    const text = `${briefText(nested(two))}design: { wire: 2 mm, material: astm-a228, ends: squared, meanDiameter: 16 mm, totalTurns: 9 }`;
    expect(() => readCheckBrief(text, "pair.yaml", lookupOn(readShelf(), readTextBeside))).toThrow(
      /^pair\.yaml:7 nested: beside a design; check judges one spring; leave nested out$/,
    );
  });
});

describeProblems("a nested brief", [
  ["any number but two", { load: two, rank: "nested: 3" }, "unknownWord", "nested", /It takes 2/],
  ["a section", { load: two, rank: "nested: {}" }, "wrongKind", "nested", /write 2/],
  [
    "no load at a length",
    nested("load: { force: 20 N, deflection: 10 mm }"),
    "nestedLoad",
    "load",
    /no free length; .*two points/,
  ],
  [
    "a rate with a largest force",
    nested("load: { rate: 3 N/mm, largestForce: 50 N }"),
    "nestedLoad",
    "load",
    /no free length; .*two points/,
  ],
  [
    "a point without a nominal",
    nested(points(`{ name: resting, length: 50 mm, ${window} }`, "{ length: 40 mm, force: 50 N }")),
    "nestedLoad",
    "load",
    /force at resting is a window.*nominal/,
  ],
  [
    "a third point",
    nested(points("{ length: 50 mm, force: 20 N }", "{ length: 45 mm, force: 35 N }", "{ length: 40 mm, force: 50 N }")),
    "nestedLoad",
    "load",
    /3 points leave the rate a window; .*two points/,
  ],
  [
    "a rate without a nominal",
    nested(`load: { rate: { min: 2 N/mm, max: 3 N/mm }, points: [{ name: resting, length: 50 mm, ${window} }] }`),
    "nestedLoad",
    "load",
    /the rate and the force at resting is a window/,
  ],
  [
    "turns that are not counted",
    { ...nested(two), sweep: sweepOf("turns: any") },
    "nestedTurns",
    "sweep.turns",
    /quarter, half or whole/,
  ],
]);

describe("problems of a nested brief", () => {
  it("come together with all others", () => {
    const text = briefText({
      ...nested("load: { force: 20 N, deflection: 10 mm }"),
      sweep: sweepOf("turns: any"),
      limits: "limits: { clash: 1 }",
    });
    expect(problemsOf(text).map(({ code }) => code)).toEqual(["nestedLoad", "nestedTurns", "wrongKind"]);
  });
});
