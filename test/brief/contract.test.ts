import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { read } from "./reading.ts";

function readContract(name: string) {
  const path = fileURLToPath(new URL(`contract/${name}.yaml`, import.meta.url));
  return read(readFileSync(path, "utf8"), path);
}

const lbf = 4.4482216152605;
const inch = 0.0254;

describe("one brief of each kind reads as it stands", () => {
  it("force at deflection, in inches", () => {
    const brief = readContract("force-at-deflection");
    expect(brief.load.kind).toBe("forceAtDeflection");
    expect(brief.load).toMatchObject({ force: { nominal: 20 * lbf, min: 20 * lbf, max: 20 * lbf } });
    expect(brief.envelope.freeLength?.max).toBeCloseTo(4 * inch, 15);
    expect(brief.sweep).toMatchObject({ turns: "any" });
    expect(brief.sweep.meanDiameter).toEqual({ step: expect.closeTo(0.0005 * inch, 15) });
    expect(brief.units).toEqual({ length: "in", force: "lbf" });
    expect(brief.service.strength).toBe("fit");
    expect(brief.rank).toEqual(["relativeCost"]);
  });

  it("two points, with cycles and fatigue off, by the European practice", () => {
    const brief = readContract("points");
    expect(brief).toMatchObject({ practice: "en13906", units: { length: "mm", force: "N" } });
    expect(brief.load).toMatchObject({ kind: "points", points: [{ name: "closed" }, { name: "open" }] });
    expect(brief.load.kind === "points" && brief.load.points[0]?.force.min).toBeCloseTo(40.5, 12);
    expect(brief.service).toMatchObject({ cycles: 2e6, frequency: 3, temperature: expect.closeTo(333.15, 10) });
    expect(brief.limits.fatigue).toBe("off");
    // Cyclic duty: half as much gap again is left before solid.
    expect(brief.limits.clash).toEqual({ minimumGap: 1.5 });
  });

  it("a rate with a tolerance and one point", () => {
    const brief = readContract("rate-and-point");
    expect(brief.load).toMatchObject({ kind: "rateAndPoint", point: { name: "latched" } });
    expect(brief.load.kind === "rateAndPoint" && brief.load.rate.nominal).toBeCloseTo((18 * lbf) / inch, 8);
    expect(brief.load.kind === "rateAndPoint" && brief.load.rate.max).toBeCloseTo((18.9 * lbf) / inch, 8);
    expect(brief.rank).toEqual(["mass", "outsideDiameter"]);
  });

  it("a rate window and the largest force, with wires and material from files beside the brief", () => {
    const brief = readContract("rate-window");
    expect(brief.load).toMatchObject({ kind: "rateAndLargestForce", largestForce: 1000 * lbf });
    expect(brief.sweep).toMatchObject({ meanDiameter: "exact", turns: "whole", materials: [{ name: "benchmark-steel" }] });
    expect(brief.limits).toMatchObject({ solidStress: "off", buckling: "off", surge: "off", clash: { ofSolidLength: 0.05 } });
    expect(brief.limits.workingStress).toEqual({ max: expect.closeTo(189e3 * (lbf / inch ** 2), 0), factor: "wahl" });
  });

  it("a large walk over materials of files", () => {
    const brief = readContract("timing-walk");
    expect(brief.load).toMatchObject({ kind: "rateAndPoint", rate: { min: 7200, max: 8800 } });
    expect(brief.limits).toMatchObject({ workingStress: "off", surge: { multiple: 20 }, turns: { min: 3, max: 30 } });
    expect(brief.sweep.materials.map(({ name }) => name)).toEqual(["bench-m01", "bench-m02"]);
  });
});
