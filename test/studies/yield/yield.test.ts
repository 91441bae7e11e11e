import { describe, expect, it } from "vitest";
import { ProblemError } from "../../../src/problem.ts";
import { unitDeviates, VARYING } from "../../../src/studies/samples.ts";
import { checkOf, failing, spring } from "../check/quoted.ts";
import { checkDrawn, drawnAbout } from "./drawn.ts";

const wide = { freeLength: "1 mm", turns: "0.1", coilDiameter: "0.2 mm", modulus: "2 %", wireDiameter: "0.02 mm" };
/** Four standard errors of a half. */
const fourErrors = (draws: number) => 4 * Math.sqrt(0.25 / draws);
const fallen = (falls: object) => Object.values(falls).reduce((sum: number, count: number) => sum + count, 0);

describe("springs drawn about a spring", () => {
  it("all meet what it meets where nothing varies, and none where it does not", () => {
    expect(drawnAbout({})).toMatchObject({ share: 1, standardError: 0, falls: {} });
    const failing = {
      load: "load: { points: [{ name: open, length: 36 mm, force: 30 N ± 1 % }, { name: shut, length: 26 mm, force: 80 N ± 1 % }] }",
    };
    expect(drawnAbout({}, failing)).toMatchObject({ share: 0, standardError: 0, falls: { load: 2000 } });
  });

  it("all meet windows and limits that are wide enough", () => {
    const load =
      "load: { points: [{ name: open, length: 36 mm, force: 40 N ± 60 % }, { name: closed, length: 26 mm, force: 89 N ± 60 % }] }";
    expect(drawnAbout(wide, { load, limits: "limits: { solidStress: off }" }).share).toBe(1);
  });

  it.each(["normal", "uniform"])("half of them pass a limit that the design stands on: %s", (shape) => {
    const envelope = "envelope: { freeLength: { max: 44 mm } }";
    const { share, standardError, falls, draws } = drawnAbout({ freeLength: "0.2 mm", shape, draws: "10000" }, { envelope });
    expect(Math.abs(share - 0.5)).toBeLessThan(fourErrors(draws));
    expect(standardError).toBeCloseTo(Math.sqrt((share * (1 - share)) / draws), 15);
    expect(Object.keys(falls)).toEqual(["freeLength"]);
  });

  it("half of them pass a force window that the design stands at the end of", () => {
    const force = checkOf({}).design.points.map((point) => point.force);
    const load = `load: { points: [{ name: open, length: 36 mm, force: { min: ${force[0]} N, max: 900 N } }, { name: closed, length: 26 mm, force: { min: 1 N, max: 900 N } }] }`;
    const { share, forces, draws } = drawnAbout({ freeLength: "0.2 mm", draws: "10000" }, { load });
    expect(Math.abs(share - 0.5)).toBeLessThan(fourErrors(draws));
    expect(forces[0]).toMatchObject({ name: "open", below: Math.round((1 - share) * draws), above: 0 });
    expect(forces[1]).toMatchObject({ name: "closed", below: 0, above: 0 });
  });

  it("are each counted once, the load before limits, limits in the order in which a candidate falls", () => {
    const parts = {
      envelope: "envelope: { bore: 18.15 mm, freeLength: { max: 44.2 mm } }",
      limits: "limits: { solidStress: { max: 720 MPa } }",
    };
    const { share, falls, draws, forces } = drawnAbout(wide, parts);
    expect(Object.keys(falls)).toEqual(["load", "outsideDiameter", "freeLength", "solidStress"]);
    expect(share * draws + fallen(falls)).toBeCloseTo(draws, 9);
    const outside = forces.map(({ below = 0, above = 0 }) => below + above);
    expect(falls.load).toBeGreaterThanOrEqual(Math.max(...outside));
    expect(falls.load).toBeLessThanOrEqual((outside[0] as number) + (outside[1] as number));
  });

  it("are judged as `check` judges each of them", () => {
    const draws = 60;
    const limits = "limits: { solidStress: { max: 735 MPa }, buckling: { safety: 1.2 }, index: off, turns: off, clash: off }";
    const envelope = "envelope: { bore: 18.2 mm, rod: 13.85 mm, freeLength: { max: 44.5 mm } }";
    const within = { ...wide, modulus: "0 %" };
    const { share } = drawnAbout({ ...within, draws: `${draws}`, shape: "uniform" }, { limits, envelope });
    const deviates = unitDeviates({ draws, shape: "uniform", seed: 1 });
    let passing = 0;
    for (let draw = 0; draw < draws; draw++) {
      const [wire = 0, coil = 0, turns = 0, length = 0] = deviates.slice(draw * VARYING.length);
      const data = `meanDiameter: ${16 + 0.2 * coil} mm, totalTurns: ${10 + 0.1 * turns}, freeLength: ${44 + length} mm`;
      const design = `design: { ${spring.replace("2 mm", `${2 + 0.02 * wire} mm`)}, ${data} }`;
      if (failing(checkOf({ design, limits, envelope })).filter((entry) => !entry.startsWith("rate")).length === 0) passing++;
    }
    expect(passing).toBeGreaterThan(5);
    expect(passing).toBeLessThan(draws - 5);
    expect(share).toBe(passing / draws);
  });

  it("are held neither to turns, index and the clash allowance, nor to the combined tolerance of force", () => {
    const limits =
      "limits: { turns: { max: 8 }, index: { max: 8 }, clash: { length: 6 mm }, loadTolerance: { grade: commercial } }";
    const { falls } = drawnAbout(wide, { limits });
    for (const name of ["turns", "index", "clash", "loadTolerance"]) expect(falls).not.toHaveProperty(name);
  });

  it("must still not be solid in work", () => {
    const load = "load: { rate: { min: 1 N/mm, max: 9 N/mm }, largestForce: 118 N }";
    const { falls, forces } = drawnAbout({ freeLength: "2 mm" }, { load, limits: "limits: { clash: off }" });
    expect(falls.clash).toBeGreaterThan(0);
    expect(forces).toEqual([]);
  });

  it("are not held to a force or rate that is asked exactly", () => {
    const load =
      "load: { points: [{ name: open, length: 36 mm, force: 39 N }, { name: closed, length: 26 mm, force: 89 N ± 10 % }] }";
    const { share, forces } = drawnAbout({ freeLength: "0.2 mm" }, { load });
    expect(share).toBe(1);
    expect(forces[0]).not.toHaveProperty("below");
    expect(forces[1]).toMatchObject({ below: 0, above: 0 });
    const exact = drawnAbout({ modulus: "1 %" }, { load: "load: { rate: 4.9 N/mm, largestForce: 90 N }" });
    expect(exact.falls).not.toHaveProperty("rate");
  });

  it("are held to a window of rate that is asked", () => {
    const rate = checkOf({}).design.rate / 1000;
    const load = `load: { rate: { min: 1 N/mm, max: ${rate} N/mm }, largestForce: 60 N }`;
    const { falls, share, draws } = drawnAbout({ modulus: "1 %", draws: "10000" }, { load });
    expect(Math.abs(share - 0.5)).toBeLessThan(fourErrors(draws));
    expect(Object.keys(falls)).toEqual(["rate"]);
  });

  it("say what they were drawn within: what is stated, else the standard of the wire and the grade", () => {
    const { design } = checkOf({ service: "service: { scatter: { freeLength: 0.3 mm } }" });
    const { wireDiameter, coilDiameter } = design.tolerance;
    expect(design.scatter?.tolerances).toEqual({ wireDiameter, coilDiameter, turns: 0.25, freeLength: 0.0003, modulus: 0.02 });
  });

  it("are none where the tables do not reach a tolerance left to them, and the result says so", () => {
    const limits = "limits: { index: off }";
    const design = `design: { ${spring}, meanDiameter: 34 mm, totalTurns: 10, freeLength: 44 mm }`;
    const result = checkOf({ limits, design, service: "service: { scatter: {} }" });
    expect(result.design.tolerance.coilDiameter).toBeNull();
    expect(result.design.scatter).toBeNull();
    expect(result.warnings).toContain("scatterUnknown");
  });

  it.each([
    ["wireDiameter", "2 mm"],
    ["coilDiameter", "14 mm"],
    ["turns", "8"],
    ["freeLength", "44 mm"],
  ])("are refused where a tolerance of %s, %s, would leave none of it", (name, text) => {
    expect(() => checkDrawn({ [name]: text })).toThrow(ProblemError);
    expect(() => checkDrawn({ [name]: text })).toThrow(new RegExp(`^service.scatter.${name}: .*without .*; write`));
  });

  it("do not change how the spring itself is judged", () => {
    const { design, entries, passes } = checkOf({});
    const drawn = checkDrawn(wide);
    const { scatter, ...figures } = drawn.design;
    expect(scatter?.draws).toBe(2000);
    expect(figures).toEqual(design);
    expect([drawn.entries, drawn.passes]).toEqual([entries, passes]);
  });
});
