import { compile } from "vega-lite";
import { describe, expect, it } from "vitest";
import { keepMaterials, massSpec } from "../../../src/report/charts/mass.ts";
import {
  axisFigures,
  axisSignals,
  chartRow,
  endShapes,
  giveSpans,
  scatterSpec,
  shapePath,
  spanSignals,
  type Theme,
} from "../../../src/report/charts/scatter.ts";
import { PRICE_STEPS, sensitivitySpec } from "../../../src/report/charts/sensitivity.ts";

import { wiresSpec } from "../../../src/report/charts/wires.ts";
import { ends, result, spring } from "../fixture.ts";

/** A spec compiled, and what the compiler said of it. */
function compiled(spec: object) {
  const said: unknown[] = [];
  const hear = (...words: unknown[]) => {
    said.push(words);
    return logger;
  };
  const pass = () => logger;
  const logger = { level: pass, error: hear, warn: hear, info: pass, debug: pass };
  return { ...compile(spec as Parameters<typeof compile>[0], { logger: logger as never }).spec, said };
}

const themes = ["light", "dark"] as const;
const views = [
  { name: "mass against wire diameter", make: massSpec, data: ["designs", "chosen", "pointed"] },
  { name: "the map of wires", make: wiresSpec, data: ["fields", "chosen"] },
  { name: "the prices", make: (theme: Theme) => sensitivitySpec(theme, PRICE_STEPS), data: ["bars"] },
].flatMap((view) => themes.map((theme) => ({ ...view, theme })));

describe.each(views)("$name for $theme ground", ({ make, data: names, theme }) => {
  it("compiles without a warning and names its data", () => {
    const { said, data = [] } = compiled(make(theme));
    expect(said).toEqual([]);
    expect(data.map(({ name }) => name)).toEqual(expect.arrayContaining(names));
  });

  it("carries no data of its own", () => {
    expect(JSON.stringify(make(theme))).not.toContain('"values"');
  });
});

describe("mass against wire diameter", () => {
  it("keeps the colour, shape and place of a material, whichever others fit", () => {
    const chart = compiled(massSpec("light"));
    keepMaterials(chart, result);
    const { scales = [] } = chart;
    const names = result.brief.sweep.materials.map(({ name }) => name);
    for (const name of ["color", "shape", "xOffset"]) expect(scales.find((scale) => scale.name === name)?.domain).toEqual(names);
  });
});

describe("the scatter", () => {
  it.each(themes)("compiles for %s ground without a warning", (theme) => {
    const { said, data = [] } = compiled(scatterSpec(result, 100, theme));
    expect(said).toEqual([]);
    expect(data.map(({ name }) => name)).toEqual(expect.arrayContaining(["designs", "front", "chosen", "pointed"]));
  });

  it("carries no data of its own and does not change the result it is made for", () => {
    const before = structuredClone(result);
    expect(JSON.stringify(scatterSpec(result, 100, "light"))).not.toContain('"values"');
    expect(result).toEqual(before);
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
    const drawn = spec.marks?.filter(({ name }) => name?.endsWith("_marks")) ?? [];
    expect(drawn.length).toBeGreaterThan(2);
    expect(drawn.every(({ clip }) => clip === true)).toBe(true);
  });

  it("begins with the two figures of the front, their units named", () => {
    const { signals = [] } = compiled(scatterSpec({ ...result, frontAxes: ["mass", "solidSafety"] }, 100, "light"));
    const begins = Object.fromEntries(signals.map((signal) => [signal.name, (signal as { value?: unknown }).value]));
    expect(begins).toMatchObject({
      acrossFigure: "mass",
      acrossTitle: "mass, g",
      upFigure: "solidSafety",
      upTitle: "safety at solid",
    });
  });

  it("takes any two figures that springs are ranked by, in the reader's units", () => {
    const row = chartRow(spring(), 7, { length: "in", force: "lbf" }, result.frontAxes);
    expect(axisFigures.map((name) => typeof row[name])).toEqual(axisFigures.map(() => "number"));
    expect(axisSignals(["freeLength", "relativeCost"], { ...result.brief, units: { length: "in", force: "lbf" } })).toEqual({
      acrossFigure: "freeLength",
      acrossTitle: "free length, in",
      upFigure: "relativeCost",
      upTitle: "relative cost",
    });
  });

  it("draws a spring in the brief's units", () => {
    const row = chartRow(spring(), 7, { length: "in", force: "lbf" }, result.frontAxes);
    expect(row).toMatchObject({ id: 7, wire: "W20", ends: "squared-ground" });
    // 58 mm = 58 / 25.4 in, by definition of the inch
    expect(row.freeLength).toBeCloseTo(58 / 25.4, 8);
  });
});
