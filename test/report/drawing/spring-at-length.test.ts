import { describe, expect, it } from "vitest";
import type { Brief, Design } from "../../../src/model.ts";
import { type SpringState, springStates } from "../../../src/report/drawing/lengths-shown.ts";
import { stateDrawing } from "../../../src/report/drawing/spring-at-length.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { brief, ends, spring } from "../fixture.ts";

const squaredGround = ends[3]!;
const metric = { length: "mm", force: "N" } as const;

/** The best spring of the brief under a practice, with figures that the engine worked out. */
function best(practice: Brief["practice"]): readonly [Brief, Design] {
  const asked: Brief = { ...brief, practice, sweep: { ...brief.sweep, ends: ends.slice(2) } };
  return [asked, sweep(asked).designs[0]!];
}

describe("the lengths at which a spring is looked at", () => {
  it.each(["handbook", "en13906"] as const)("are free, the load points and solid, by %s", (practice) => {
    const [asked, design] = best(practice);
    const states = springStates(asked, design);
    expect(states.map(({ name }) => name)).toEqual(["free", "closed", "open", "solid"]);
    expect(states.map(({ length }) => length)).toEqual([design.freeLength, 0.05, 0.038, design.solidLength]);
    expect(states[0]).toMatchObject({ force: 0, outsideDiameter: design.outsideDiameter });
    expect(states.at(-1)).toMatchObject({ force: design.forceAtSolid, outsideDiameter: design.outsideDiameterAtSolid });
    const diameters = states.map(({ outsideDiameter }) => outsideDiameter);
    expect(diameters).toEqual([...diameters].sort((a, b) => a - b));
    expect(new Set(diameters).size).toBe(4);
  });

  it("have by handbook the diameter that keeps the wire's length in a turn", () => {
    const [asked, design] = best("handbook");
    const { activeTurns, wireDiameter, freeLength } = design;
    const wires = design.ends === "squared" ? 3 : 2;
    const turn = (length: number, mean: number) => Math.hypot(Math.PI * mean, (length - wires * wireDiameter) / activeTurns);
    for (const { length, outsideDiameter } of springStates(asked, design))
      expect(turn(length, outsideDiameter - wireDiameter)).toBeCloseTo(turn(freeLength, design.meanDiameter), 12);
  });
});

describe("the drawing at one length", () => {
  const design = spring();
  const states = springStates(brief, design);
  const drawn = (state: SpringState, width = 640) => stateDrawing(design, squaredGround, state, metric, width);
  const seatOf = (svg: string) => /translate\(([\d.]+) ([\d.]+)\) rotate\(-90\)/.exec(svg)?.slice(1).map(Number);
  const tallOf = (svg: string) => Number(/class="view view-\w+"><svg x="0" y="[-\d.]+" width="([\d.]+)"/.exec(svg)?.[1]);

  it("keeps scale and seat, so that the spring is seen to shorten", () => {
    const pictures = states.map((state) => drawn(state));
    expect(new Set(pictures.map((svg) => String(seatOf(svg)))).size).toBe(1);
    expect(new Set(pictures.map((svg) => /viewBox="[^"]*"/.exec(svg)?.[0])).size).toBe(1);
    for (const [i, svg] of pictures.entries())
      expect(tallOf(svg) / tallOf(pictures[0]!)).toBeCloseTo(states[i]!.length / design.freeLength, 3);
  });

  it("names length, force and diameters of that length in the reader's units", () => {
    for (const words of ["58 mm", "free", "no force", "Ø 18 mm outside", "Ø 14 mm inside", "wire Ø 2 mm"])
      expect(drawn(states[0]!)).toContain(words);
    // 18.5 mm less twice 2 mm
    for (const words of ["18 mm", "solid", "227.7 N", "Ø 18.5 mm outside", "Ø 14.5 mm inside", "grown by 0.5 mm"])
      expect(drawn(states.at(-1)!)).toContain(words);
    const inch = stateDrawing(design, squaredGround, states[0]!, { length: "in", force: "lbf" });
    // 58 mm = 2.283 in, by definition of the inch
    expect(inch).toContain("2.283 in");
  });

  it.each([330, 640])("keeps the spring and the note on the wire inside a width of %i", (width) => {
    for (const state of states) {
      const svg = drawn(state, width);
      const [, high = Number.NaN] = /viewBox="0 0 \d+ (\d+)"/.exec(svg)?.map(Number) ?? [];
      const places = [...svg.matchAll(/<text [^>]*x="([\d.-]+)" y="([\d.-]+)"/g)].map(([, x, y]) => [Number(x), Number(y)]);
      expect(places.length).toBeGreaterThan(6);
      for (const [x, y] of places) {
        expect(x).toBeGreaterThan(0);
        expect(x).toBeLessThan(width);
        expect(y).toBeGreaterThan(8);
        expect(y).toBeLessThan(high - 2);
      }
    }
  });

  it("keeps a load point's name text", () => {
    const state: SpringState = { ...states[1]!, name: "<b>&" };
    expect(drawn(state)).toContain("&lt;b&gt;&amp;");
    expect(drawn(state)).not.toContain("<b>");
  });
});
