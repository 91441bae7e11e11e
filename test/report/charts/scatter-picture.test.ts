import { parse, type Spec, View } from "vega";
import { compile } from "vega-lite";
import { describe, expect, it } from "vitest";
import { chartRow, scatterSpec } from "../../../src/report/charts/scatter.ts";
import { paperChart } from "../../../src/report/charts/scatter-picture.ts";
import { brief, result } from "../fixture.ts";

const compiled = compile(scatterSpec(result, 3, "light") as Parameters<typeof compile>[0]).spec as Spec;
const words = { colour: "wireDiameter", drawn: "All 3 springs that fit are drawn." } as const;

async function svgOf(title: string): Promise<string> {
  const spec = paperChart(compiled, { ...brief, title }, words);
  const view = new View(parse(spec), { renderer: "none" });
  const rows = result.designs.map((design, id) => chartRow(design, id, brief.units, result.frontAxes));
  await view.data("designs", rows).data("front", rows.slice(0, 1)).runAsync();
  return view.toSVG();
}

describe("the scatter on paper", () => {
  it("says by itself what it shows: title, axes and colour with units, ends, the front, and that it screens only", async () => {
    const svg = await svgOf(brief.title);
    for (const text of [
      "Latch plunger (invented)",
      "outside diameter, mm",
      "free length, mm",
      "wire diameter, mm",
      "squared-ground",
      "All 3 springs that fit are drawn. The line joins the front",
      "Screening only",
    ])
      expect(svg).toContain(text);
    expect(svg).toContain('fill="#ffffff"');
  });

  it("keeps markup in a title text", async () => {
    const svg = await svgOf("<script>alert(1)</script> & co");
    expect(svg).toContain("&lt;script&gt;alert(1)&lt;/script&gt; &amp; co");
    expect(svg).not.toContain("<script");
  });

  it("leaves the chart it is made of as it was", () => {
    const before = structuredClone(compiled);
    paperChart(compiled, brief, words);
    expect(compiled).toEqual(before);
  });
});
