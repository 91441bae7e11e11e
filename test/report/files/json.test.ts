import { describe, expect, it } from "vitest";
import { designJson, resultJson } from "../../../src/report/files/json.ts";
import { nothing, result, spring } from "../fixture.ts";

describe("a result as JSON", () => {
  const read = JSON.parse(resultJson(result));

  it("has the names of the model in a fixed order and ends with a line break", () => {
    expect(Object.keys(read)).toEqual([
      "brief",
      "practice",
      "walked",
      "rejected",
      "feasible",
      "designs",
      "front",
      "frontAxes",
      "tableEnds",
      "warnings",
    ]);
    expect(resultJson(result)).toMatch(/\}\n$/);
  });

  it("gives designs in SI as they are", () => {
    expect(read.designs).toEqual(result.designs);
  });

  it("names the catalog entries that the brief chose, with their sources and without their rows", () => {
    expect(read.brief.sweep.wires).toEqual([{ name: "shop-wire", source: "invented, for tests" }]);
    expect(read.brief.sweep.materials[1]).toEqual({ name: "shop-steel-hard", source: "invented, for tests" });
    expect(read.brief.sweep.ends).toEqual(["plain", "plain-ground", "squared", "squared-ground"]);
    expect(read.brief.asked).toEqual(result.brief.asked);
    expect(read.brief.limits).toEqual(result.brief.limits);
  });

  it("never holds the sample, and the nearest misses only where there are any", () => {
    expect(JSON.parse(resultJson({ ...result, sample: [] }))).not.toHaveProperty("sample");
    expect(read).not.toHaveProperty("nearest");
    expect(JSON.parse(resultJson(nothing)).nearest[0].limit).toBe("freeLength");
  });

  it("writes null for what is not finite", () => {
    const odd = { ...result, designs: [spring({ workingSafety: Number.POSITIVE_INFINITY, surgeFrequency: Number.NaN })] };
    expect(resultJson(odd)).not.toMatch(/Infinity|NaN/);
    expect(JSON.parse(resultJson(odd)).designs[0].workingSafety).toBeNull();
  });

  it("is the same bytes for the same result, which it leaves unchanged", () => {
    const before = structuredClone(result);
    expect(resultJson(result)).toBe(resultJson(structuredClone(result)));
    expect(result).toEqual(before);
  });
});

describe("one design as JSON", () => {
  it("has its brief and its figures in the form that the whole result gives them", () => {
    const [design] = result.designs;
    const whole = JSON.parse(resultJson(result));
    expect(JSON.parse(designJson(result.brief, design!))).toEqual({
      brief: whole.brief,
      practice: whole.practice,
      design: whole.designs[0],
    });
    expect(designJson(result.brief, design!)).toMatch(/\}\n$/);
  });
});
