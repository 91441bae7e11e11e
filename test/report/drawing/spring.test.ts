import { describe, expect, it } from "vitest";
import type { EndStyle } from "../../../src/model.ts";
import { springDrawing } from "../../../src/report/drawing/spring.ts";
import { ends, spring } from "../fixture.ts";

const metric = { length: "mm", force: "N" } as const;
const byName = (name: string) => ends.find((style) => style.name === name) as EndStyle;

describe("the drawing", () => {
  const svg = springDrawing(spring(), byName("squared-ground"), metric, 640);
  const view = (name: string) => svg.split(`<g class="view view-${name}">`)[1] ?? "";
  const box = (name: string) =>
    (/viewBox="([^"]+)"/.exec(view(name))?.[1] ?? "").split(" ").map(Number) as [number, number, number, number];

  it("shows the free and the solid length to one scale", () => {
    const design = spring();
    expect(box("solid")[2] / box("free")[2]).toBeCloseTo(design.solidLength / design.freeLength, 3);
  });

  it("keeps its parts within its width at every width", () => {
    for (const width of [330, 640]) {
      const drawn = springDrawing(spring(), byName("squared-ground"), metric, width);
      const [left, , length] = (/class="view view-free"><svg [^>]*viewBox="([^"]+)"/.exec(drawn)?.[1] ?? "")
        .split(" ")
        .map(Number) as [number, number, number];
      expect(left).toBeGreaterThan(0);
      expect(left + length).toBeLessThan(width);
    }
  });

  it("names its dimensions in the reader's units", () => {
    for (const words of ["free 58 mm", "solid 18 mm", "Ø 18 mm", "Ø 16 mm", "wire Ø 2 mm", "9 turns, 7 active"])
      expect(svg).toContain(words);
    // 18 mm = 0.7087 in, by definition of the inch
    expect(springDrawing(spring(), byName("squared-ground"), { length: "in", force: "lbf" })).toContain("Ø 0.7087 in");
  });

  it("draws one front half for each turn in each view", () => {
    expect(
      view("free")
        .split("view-solid")[0]
        ?.match(/class="wire-front"/g)?.length,
    ).toBe(9);
  });

  it("cuts ground ends flat and leaves others round", () => {
    expect(view("free").split("</g><g>")[0]).toContain("wire-face");
    expect(springDrawing(spring(), byName("squared"), metric)).not.toContain("wire-face");
  });

  it("shows a left-hand coil turned over about its axis, and the wire's note still at its top", () => {
    const drawn = springDrawing(spring(), byName("squared-ground"), metric, 640, "left");
    const box = /<g class="view view-free"><svg [^>]*viewBox="[\d.-]+ ([\d.-]+) [\d.-]+ ([\d.]+)"/.exec(drawn);
    const axis = Number(box?.[1]) + Number(box?.[2]) / 2;
    const mirror = /matrix\(1 0 0 -1 0 ([\d.]+)\)"><g class="view view-free"/.exec(drawn)?.[1];
    expect(Number(mirror)).toBeCloseTo(2 * axis, 1);
    const top = (svg: string) => /class="dimension-arrow" fill="[^"]*" d="M[\d.]+ ([\d.]+)l1.6/.exec(svg)?.[1];
    expect(top(drawn)).toBe(top(svg));
  });

  it("escapes a name from the brief", () => {
    expect(springDrawing(spring({ ends: "<script>" }), byName("plain"), metric)).not.toContain("<script>");
  });
});
