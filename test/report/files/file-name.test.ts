import { describe, expect, it } from "vitest";
import { fileName } from "../../../src/report/files/file-name.ts";

describe("a file named after a brief's title", () => {
  it.each([
    ["Latch plunger spring (invented example)", "chart", "svg", "latch-plunger-spring-invented-example-chart.svg"],
    ["../../etc/passwd", "springs", "csv", "etc-passwd-springs.csv"],
    ["Ressort à 12 N", "rank 3 drawing", "svg", "ressort-à-12-n-rank-3-drawing.svg"],
    ["弹簧", "rank 1", "json", "弹簧-rank-1.json"],
    ["CON", "check", "yaml", "con-check.yaml"],
    ["<img src=x>\u202e\u0000", "chart", "png", "img-src-x-chart.png"],
    ["...", "chart", "png", "chart.png"],
  ])("%s is one plain name", (title, what, ending, name) => {
    expect(fileName(title, what, ending)).toBe(name);
  });

  it("is short however long the title is", () => {
    expect(fileName("long words ".repeat(50), "chart", "svg").length).toBeLessThan(80);
  });
});
