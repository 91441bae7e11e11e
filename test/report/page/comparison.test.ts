import { describe, expect, it } from "vitest";
import { springStates } from "../../../src/report/drawing/lengths-shown.ts";
import { loadLengthLines } from "../../../src/report/drawing/load-curve.ts";
import { sideBySide } from "../../../src/report/drawing/side-by-side.ts";
import { comparisonRows } from "../../../src/report/page/comparison.ts";
import { brief, ends, spring } from "../fixture.ts";

const metric = { length: "mm", force: "N" } as const;
const light = spring({ mass: 0.01, solidSafety: 1.2 });
const strong = spring({ mass: 0.014, solidSafety: 1.5, meanDiameter: 0.018, freeLength: 0.07, forceAtSolid: 300 });
const rowOf = (label: string, springs = [light, strong]) => comparisonRows(springs, brief).find((row) => row.label === label);

describe("springs side by side, figure by figure", () => {
  it("mark the least mass and the greatest safety as best, in words", () => {
    expect(rowOf("mass")?.cells).toEqual([{ text: "10 g", best: "least" }, { text: "14 g" }]);
    expect(rowOf("safety at solid")?.cells).toEqual([{ text: "1.2" }, { text: "1.5", best: "greatest" }]);
  });

  it("mark no end of a figure that depends on what the spring is for", () => {
    expect(rowOf("mean diameter")).toMatchObject({ same: false, cells: [{ text: "16 mm" }, { text: "18 mm" }] });
    expect(rowOf("mean diameter")?.cells.some(({ best }) => best)).toBe(false);
  });

  it("mark nothing where a reader sees no difference", () => {
    expect(rowOf("wire diameter")).toMatchObject({ same: true });
    expect(rowOf("mass", [light, spring({ mass: 0.01 + 1e-9 })])?.cells).toEqual([{ text: "10 g" }, { text: "10 g" }]);
  });

  it("take a spring that never buckles for the last to", () => {
    const cells = rowOf("buckles at", [spring({ bucklingDeflection: 0.03 }), light])?.cells;
    expect(cells).toEqual([{ text: "30 mm" }, { text: "never", best: "greatest" }]);
  });

  it("leave a safety in cyclic load out where no load is cyclic", () => {
    expect(rowOf("fatigue safety")).toBeUndefined();
    expect(rowOf("fatigue safety", [spring({ fatigueSafety: 1.3 }), light])?.cells[0]?.text).toBe("1.3");
  });

  it("have the force at each load point", () => {
    expect(rowOf("force at closed")?.cells).toHaveLength(2);
    expect(rowOf("length at open")).toMatchObject({ same: true });
  });
});

describe("springs drawn side by side", () => {
  const drawn = (width: number) =>
    sideBySide(
      [light, strong].map((design, i) => ({ name: "AB"[i]!, design, ends: ends[3]!, state: springStates(brief, design)[0]! })),
      metric,
      width,
      "right",
    );
  const tall = (svg: string) =>
    [...svg.matchAll(/class="view view-free"><svg x="0" y="[-\d.]+" width="([\d.]+)"/g)].map(([, width]) => Number(width));

  it.each([330, 900])("stand on one seat and to one scale at a width of %i", (width) => {
    const svg = drawn(width);
    const [a = 0, b = 0] = tall(svg);
    expect(b / a).toBeCloseTo(strong.freeLength / light.freeLength, 3);
    expect(new Set([...svg.matchAll(/translate\([\d.]+ ([\d.]+)\)/g)].map(([, seat]) => seat)).size).toBe(1);
    expect(svg).not.toContain("NaN");
    for (const words of ["A: Ø 18 mm", "B: Ø 20 mm", "58 mm", "70 mm"]) expect(svg).toContain(words);
  });
});

describe("force over length of several springs", () => {
  const lines = [light, strong].map((design, i) => ({ name: "AB"[i]!, design, clashAllowance: 0.003 }));
  const svg = loadLengthLines(brief, lines);
  const paths = (kind: string) => [
    ...svg.matchAll(new RegExp(`<path class="${kind}"[^>]* d="M([\\d.]+) [\\d.]+L([\\d.]+)`, "g")),
  ];

  it("has a line for each, told apart by its dashes, with its points, solid and the room asked before it", () => {
    expect(paths("line")).toHaveLength(2);
    // Its line, and its line in the legend.
    expect(svg.match(/stroke-dasharray="7 3"/g)).toHaveLength(2);
    expect(svg.match(/class="dot"/g)).toHaveLength(4);
    expect(svg.match(/class="dot-solid"/g)).toHaveLength(2);
    expect(paths("allowance")).toHaveLength(2);
  });

  it("draws the window of a length that they share once", () => {
    expect(svg.match(/class="window"/g)).toHaveLength(2);
  });

  it("starts the longest spring at the left edge and scales the allowance with the lengths", () => {
    const [, second] = paths("line").map(([, from, to]) => [Number(from), Number(to)] as const);
    const [, band] = paths("allowance").map(([, from, to]) => [Number(from), Number(to)] as const);
    const scale = (second![1] - second![0]) / (strong.freeLength - strong.solidLength);
    expect(second![0]).toBe(46);
    expect((band![1] - band![0]) / scale).toBeCloseTo(0.003, 4);
  });

  it("has no band where no room is asked", () => {
    expect(loadLengthLines(brief, [{ ...lines[0]!, clashAllowance: 0 }])).not.toContain("allowance");
  });
});
