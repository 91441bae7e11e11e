import { describe, expect, it } from "vitest";
import { briefText, type Parts, read } from "./reading.ts";

function taken(parts: Parts): Record<string, string> {
  return Object.fromEntries(read(briefText(parts)).defaults.map(({ key, text }) => [key, text]));
}

describe("defaults", () => {
  it("lists every default that a silent brief takes, each with its source", () => {
    expect(taken({})).toEqual({
      "sweep.turns": "quarter",
      "service.seats": "parallel plates",
      "service.set": "as wound",
      "service.surface": "unpeened",
      "service.strength": "minimum",
      "limits.index": "{ min: 4, max: 12 }",
      "limits.turns": "{ min: 3, max: 15 }",
      "limits.clash": "{ ofDeflection: 0.15 }",
      "limits.solidStress": "{ safety: 1.2 }",
      "limits.buckling": "{ safety: 1 }",
      rank: "mass",
    });
    for (const { source } of read(briefText({})).defaults) expect(source).not.toBe("");
  });

  it("keeps the practice's other half of a window that is half given, and lists that half", () => {
    const parts = { limits: "limits: { index: { min: 5 }, turns: { max: 9 } }" };
    expect(read(briefText(parts)).limits).toMatchObject({ index: { min: 5, max: 12 }, turns: { min: 3, max: 9 } });
    expect(taken(parts)).toMatchObject({ "limits.index.max": "12", "limits.turns.min": "3" });
    expect(taken(parts)).not.toHaveProperty("limits.index");
  });

  it("takes other thresholds under the European practice", () => {
    const parts = { practice: "practice: en13906" };
    expect(taken(parts)).toMatchObject({
      "limits.index": "{ min: 4, max: 20 }",
      "limits.clash": "n (0.0015 D²/d + 0.1 d)",
      "limits.solidStress": "{ safety: 1 }",
    });
    expect(read(briefText(parts)).limits.clash).toEqual({ minimumGap: 1 });
  });

  it("lists surge only with a frequency and buckling only where the spring is not guided", () => {
    expect(taken({ service: "service: { frequency: 3 Hz, seats: guided }" })).toMatchObject({
      "limits.surge": "{ multiple: 15 }",
    });
    expect(taken({ service: "service: { frequency: 3 Hz, seats: guided }" })).not.toHaveProperty("limits.buckling");
  });

  it("takes a far end that stays on a seat where seats are clamped and free, and says so, and nowhere else", () => {
    expect(taken({ service: "service: { seats: clamped and free }" })).toMatchObject({ "service.farEnd": "on a seat" });
    expect(taken({ service: "service: { seats: clamped and free, farEnd: free }" })).not.toHaveProperty("service.farEnd");
    expect(taken({ service: "service: { seats: pivots }" })).not.toHaveProperty("service.farEnd");
  });

  it("steps the mean diameter by 0.1 mm, by 0.005 in where the load is written in inches, and by nothing where it is solved", () => {
    const walked = "sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared], turns: any }";
    expect(read(briefText({ sweep: walked })).sweep.meanDiameter).toEqual({ step: 0.0001 });
    const inches = { load: "load: { force: 4 lbf, deflection: 1 in }", sweep: walked };
    expect(read(briefText(inches)).sweep.meanDiameter).toEqual({ step: expect.closeTo(0.005 * 0.0254, 15) });
    expect(taken(inches)).toMatchObject({ "sweep.meanDiameter": "{ step: 0.005 in }" });
    expect(read(briefText({})).sweep.meanDiameter).toBe("exact");
  });

  it("takes the stress factor of the working stress from the set", () => {
    const limits = "limits: { workingStress: { max: 700 MPa } }";
    expect(read(briefText({ limits })).limits.workingStress).toEqual({ max: 7e8, factor: "bergstrasser" });
    const removed = read(briefText({ limits, service: "service: { set: removed }" }));
    expect(removed.limits.workingStress).toEqual({ max: 7e8, factor: "direct" });
    expect(removed.defaults.map(({ key }) => key)).toContain("limits.workingStress.factor");
  });

  it("leaves no clearance unless asked, and lists that beside a bore or rod only", () => {
    expect(taken({ envelope: "envelope: { bore: 20 mm }" })).toMatchObject({ "envelope.clearance": "0 %" });
    expect(taken({ envelope: "envelope: { freeLength: { max: 60 mm } }" })).not.toHaveProperty("envelope.clearance");
  });

  it("titles a brief by the base name of its file", () => {
    expect(read(briefText({}), "springs/gate latch.yaml").title).toBe("gate latch");
  });
});
