import { compile } from "vega-lite";
import { describe, expect, it } from "vitest";
import { giveSpans, spanSignals } from "../../src/report/chart-spans.ts";
import { axisSignals, chartRow, pointWords, scatterSpec } from "../../src/report/charts.ts";
import { endShapes, shapePath } from "../../src/report/end-shapes.ts";
import { ends, result, spring } from "./fixture.ts";

describe("the scatter", () => {
  it.each(["light", "dark"] as const)("compiles for %s ground without a warning", (theme) => {
    const said: unknown[] = [];
    const hear = (...words: unknown[]) => {
      said.push(words);
      return logger;
    };
    const pass = () => logger;
    const logger = { level: pass, error: hear, warn: hear, info: pass, debug: pass };
    const spec = scatterSpec(result, 100, theme) as Parameters<typeof compile>[0];
    const { data = [] } = compile(spec, { logger: logger as never }).spec;
    expect(said).toEqual([]);
    expect(data.map(({ name }) => name)).toEqual(expect.arrayContaining(["designs", "front", "chosen"]));
  });

  it("carries no data of its own and does not change the result it is made for", () => {
    const before = structuredClone(result);
    expect(JSON.stringify(scatterSpec(result, 100, "light"))).not.toContain('"values"');
    expect(result).toEqual(before);
  });

  it("names its axes with their units, whichever two figures the front is of", () => {
    const spec = JSON.stringify(scatterSpec({ ...result, frontAxes: ["mass", "solidSafety"] }, 100, "light"));
    expect(spec).toContain('"x":{"field":"mass","type":"quantitative","axis":{"title":{"expr":"acrossTitle"}}');
    expect(spec).toContain('{"name":"acrossTitle","value":"mass, g"},{"name":"upTitle","value":"safety at solid"}');
  });

  it("is headed anew for a reader of other units", () => {
    const titles = axisSignals(["outsideDiameter", "mass"], { length: "in", force: "lbf" });
    expect(titles).toEqual({ acrossTitle: "outside diameter, in", upTitle: "mass, lb" });
  });

  it("leaves end styles to the page's legend, each with a mark that stays its own", () => {
    const spec = scatterSpec(
      { ...result, brief: { ...result.brief, sweep: { ...result.brief.sweep, ends: [...ends].reverse() } } },
      9,
      "light",
    );
    expect(JSON.stringify(spec)).toContain(
      '"domain":["squared-ground","squared","plain-ground","plain"],"range":["circle","square","cross","diamond"]',
    );
    for (const shape of endShapes) expect(shapePath(shape)).toMatch(/^M.*Z$/);
  });

  it("lets a page set its axes, and draws nothing beyond them", () => {
    const spec = compile(scatterSpec(result, 100, "light") as Parameters<typeof compile>[0]).spec;
    giveSpans(spec as Parameters<typeof giveSpans>[0]);
    const domains = spec.scales?.filter(({ name }) => name === "x" || name === "y").map(({ domainRaw }) => domainRaw);
    expect(domains).toEqual([{ signal: spanSignals.x }, { signal: spanSignals.y }]);
    expect(spec.signals?.filter(({ name }) => name === spanSignals.x || name === spanSignals.y)).toHaveLength(2);
    const drawn = spec.marks?.filter(({ name }) => name?.startsWith("layer_")) ?? [];
    expect(drawn.length).toBeGreaterThan(2);
    expect(drawn.every(({ clip }) => clip === true)).toBe(true);
  });

  it("tells of a point its figures with their units, those of the axes first", () => {
    const units = { length: "mm", force: "N" } as const;
    const words = pointWords(chartRow(spring(), 7, units, result.frontAxes), result.frontAxes, units);
    expect(words.slice(0, 4)).toEqual([
      ["wire", "W20"],
      ["material", "shop-steel"],
      ["ends", "squared-ground"],
      ["outside diameter, mm", "18"],
    ]);
    expect(new Set(words.map(([label]) => label)).size).toBe(words.length);
  });

  it("draws a spring in the brief's units", () => {
    const row = chartRow(spring(), 7, { length: "in", force: "lbf" }, result.frontAxes);
    expect(row).toMatchObject({ id: 7, wire: "W20", ends: "squared-ground" });
    // 58 mm = 58 / 25.4 in, by definition of the inch
    expect(row.freeLength).toBeCloseTo(58 / 25.4, 8);
  });
});
