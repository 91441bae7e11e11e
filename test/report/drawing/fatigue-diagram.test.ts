import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Brief, FatigueLine } from "../../../src/model.ts";
import { type FatiguePlot, fatigueDiagram, fatiguePlot } from "../../../src/report/drawing/fatigue-diagram.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { read } from "../../brief/reading.ts";
import { spring, brief as staticBrief } from "../fixture.ts";

const demo = (name: string): Brief => read(readFileSync(`reports/${name}.yaml`, "utf8"), `reports/${name}.yaml`);
const shuttle = demo("shuttle-return");
const dosing = demo("dosing-plunger");

/** Height of the bounding line at a stress, read between its points. */
function boundAt({ bound }: FatiguePlot, across: number): number {
  const i = Math.max(
    1,
    bound.findIndex((stress) => stress.across >= across),
  );
  const [a, b] = [bound[i - 1]!, bound[i]!];
  return a.up + ((b.up - a.up) * (across - a.across)) / (b.across - a.across);
}

describe("the picture of how fatigue was judged", () => {
  it.each(["goodman", "gerber", "sines", "life"] as const)(
    "by %s, the duty grown by the engine's safety ends on the line",
    (line: FatigueLine) => {
      const asked: Brief = { ...shuttle, limits: { ...shuttle.limits, fatigue: { safety: 1.1, line } } };
      const [design] = sweep(asked).designs;
      const plot = fatiguePlot(asked, design!)!;
      const [, end] = plot.growth;
      // A parabola drawn in straight pieces lies a little inside.
      expect(boundAt(plot, end.across) / end.up).toBeCloseTo(1, 2);
      expect(boundAt(plot, plot.data[0]!.across) / plot.data[0]!.up).toBeCloseTo(1, 2);
    },
  );

  it("on the material's own diagram, the range grown by the engine's safety ends on the line", () => {
    const [design] = sweep(dosing).designs;
    const plot = fatiguePlot(dosing, design!)!;
    const [, end] = plot.growth;
    expect(boundAt(plot, end.across)).toBeCloseTo(end.up, -3);
    expect(plot.data.map(({ up }) => up / 1e6)).toEqual([680, 820, 960, 1050]);
  });

  it("is in the reader's units and says what it shows", () => {
    const [design] = sweep(shuttle).designs;
    const drawn = fatigueDiagram(shuttle, design!) ?? "";
    expect(drawn).toContain(">amplitude, ksi<");
    expect(drawn).toContain("<title>How fatigue was judged: amplitude over mean stress");
    expect(drawn).not.toMatch(/NaN|Infinity/);
  });

  it("is not drawn in static duty, nor where fatigue was not judged", () => {
    const cyclic = { leastForce: 40, greatestForce: 110, stressAmplitude: 155e6, meanStress: 365e6 };
    expect(fatigueDiagram(staticBrief, spring())).toBeNull();
    expect(fatigueDiagram(staticBrief, spring({ cyclic }))).toBeNull();
  });
});
