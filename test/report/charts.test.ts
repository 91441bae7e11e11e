import { compile } from "vega-lite";
import { describe, expect, it } from "vitest";
import { chartRow, scatterSpec } from "../../src/report/charts.ts";
import { result, spring } from "./fixture.ts";

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
    expect(spec).toContain('"field":"mass","type":"quantitative","title":"mass, g"');
    expect(spec).toContain('"field":"solidSafety","type":"quantitative","title":"safety at solid"');
  });

  it("draws a spring in the brief's units", () => {
    const row = chartRow(spring(), 7, { length: "in", force: "lbf" }, result.frontAxes);
    expect(row).toMatchObject({ id: 7, wire: "W20", ends: "squared-ground" });
    // 58 mm = 58 / 25.4 in, by definition of the inch
    expect(row.freeLength).toBeCloseTo(58 / 25.4, 8);
  });
});
