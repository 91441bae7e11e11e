import { describe, expect, it } from "vitest";
import { loadLengthDiagram } from "../../../src/report/drawing/load-curve.ts";
import { brief, spring } from "../fixture.ts";

const dots = (svg: string) => [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)"/g)].map(([, x, y]) => [Number(x), Number(y)]);

describe("the load-length diagram", () => {
  const { rate } = spring();
  const design = spring({ forceAtSolid: rate * 0.04 });
  const svg = loadLengthDiagram(brief, design);

  it("sets points and solid on one straight line from the free length, as the law of a linear spring asks", () => {
    const [x0, y0, x1, y1] = (/stroke-width="1.4" d="M([\d.]+) ([\d.]+)L([\d.]+) ([\d.]+)"/.exec(svg) ?? [])
      .slice(1)
      .map(Number) as [number, number, number, number];
    expect(dots(svg).length).toBe(3);
    for (const [x = 0, y = 0] of dots(svg)) expect((y - y0) / (x - x0)).toBeCloseTo((y1 - y0) / (x1 - x0), 2);
    expect(dots(svg).at(-1)).toEqual([x1, y1]);
  });

  it("names points by their number and force, and by their number alone where there are many", () => {
    expect(svg).toContain(">2: 113.7 N<"); // 81.5e9 * 0.002^4 / (8 * 0.016^3 * 7) * 0.020 = 113.70
    const [point] = design.points;
    const many = loadLengthDiagram(brief, { ...design, points: point ? [point, point, point, point] : [] });
    expect(many).toContain(">4<");
    expect(many).not.toContain(">4:");
  });

  it("shows the windows that the brief asks", () => {
    expect(svg.match(/class="window"/g)?.length).toBe(2);
  });

  it("counts its axes in round numbers of the reader's units", () => {
    const texts = (picture: string, anchor: string) =>
      [...picture.matchAll(new RegExp(`text-anchor="${anchor}">([\\d.]+)<`, "g"))].map(([, text]) => text);
    expect(texts(svg, "middle")).toEqual(["20", "30", "40", "50"]);
    expect(texts(svg, "end")).toEqual(["0", "50", "100", "150", "200"]);
    const inch = loadLengthDiagram({ ...brief, units: { length: "in", force: "lbf" } }, design);
    expect(texts(inch, "middle")).toEqual(["1.0", "1.5", "2.0"]);
    expect(inch).toContain("force, lbf");
  });

  it("holds the highest window also above the force at solid", () => {
    const [first, second] = brief.load.kind === "points" ? brief.load.points : [];
    const points = first && second ? [first, { ...second, force: { min: 95, max: 500 } }] : [];
    const tall = loadLengthDiagram({ ...brief, load: { kind: "points", points } }, design);
    for (const [, y] of tall.matchAll(/class="window"[^>]*V([\d.]+)/g)) expect(Number(y)).toBeGreaterThanOrEqual(0);
  });
});
