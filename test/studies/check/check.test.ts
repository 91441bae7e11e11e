import { describe, expect, it } from "vitest";
import { springRate } from "../../../src/mechanics/rate.ts";
import { ProblemError } from "../../../src/problem.ts";
import { checkOf, checkOfData, failing } from "./quoted.ts";

describe("a check", () => {
  it("passes a spring of which every limit holds, and says what each was held against", () => {
    const result = checkOf({});
    expect(failing(result)).toEqual([]);
    expect(result).toMatchObject({ passes: true, disagreements: [], quotedRate: null, notes: [], practice: "handbook" });
    const [open, , , closed] = result.entries;
    expect(open).toMatchObject({ limit: "load", point: "open", sense: "least", dimension: "force" });
    expect(open?.source).toEqual({ from: "brief", key: "load.points[1].force", text: "40 N ± 10 %" });
    expect(closed?.value).toBeCloseTo(result.design.rate * 0.018, 9);
  });

  it("judges the rate as wire, diameter and turns give it, at the free length given", () => {
    const { design } = checkOf({});
    expect(design.rate).toBeCloseTo(springRate(design.shearModulus, 0.002, 0.016, 8), 9);
    expect(design.freeLength).toBeCloseTo(0.044, 15);
    expect(design.points.map(({ force }) => force / design.rate)).toEqual([expect.closeTo(0.008, 12), expect.closeTo(0.018, 12)]);
  });

  it("leaves its input unchanged", () => {
    const { brief } = checkOf({});
    const copy = structuredClone(brief);
    expect(checkOf({}).brief).toEqual(copy);
    expect(brief).toEqual(copy);
  });

  it.each([
    [
      "a force outside its window",
      {
        load: "load: { points: [{ name: open, length: 36 mm, force: 33 N ± 10 % }, { name: shut, length: 26 mm, force: 89 N ± 10 % }] }",
      },
      ["load open most"],
    ],
    ["a bore too small at solid", { envelope: "envelope: { bore: 18.05 mm }" }, ["outsideDiameter outsideDiameterAtSolid most"]],
    ["a rod too large", { envelope: "envelope: { rod: 14.5 mm }" }, ["insideDiameter least"]],
    ["a free length too long", { envelope: "envelope: { freeLength: { max: 43 mm } }" }, ["freeLength most"]],
    ["an index out of its window", { limits: "limits: { index: { min: 9 } }" }, ["index least"]],
    ["turns out of their window", { limits: "limits: { turns: { max: 7 } }" }, ["turns most"]],
    [
      "heat beyond the material",
      { service: "service: { temperature: 300 degC }", limits: "limits: { hotForce: off }" },
      ["temperature most"],
    ],
    [
      "a force that heat takes out of its window",
      {
        load: "load: { points: [{ length: 36 mm, force: { min: 39 N, max: 45 N } }, { length: 26 mm, force: { min: 80 N, max: 95 N } }] }",
        service: "service: { temperature: 110 degC }",
      },
      ["hotForce least"],
    ],
    ["a swinging load too quick", { service: "service: { frequency: 40 Hz }" }, ["surge least"]],
    ["a stress too high", { limits: "limits: { solidStress: { max: 300 MPa } }" }, ["solidStress most"]],
    ["too little left before solid", { limits: "limits: { clash: { length: 12 mm } }" }, ["clash least"]],
  ])("fails %s, and that alone", (_title, parts, names) => {
    const result = checkOf(parts);
    expect(failing(result)).toEqual(names);
    expect(result.passes).toBe(false);
  });

  it("names who set each threshold", () => {
    const { entries } = checkOf({
      envelope: "envelope: { bore: 20 mm, rod: 8 mm, freeLength: { max: 55 mm } }",
      limits: "limits: { index: { min: 5 } }",
    });
    const sources = Object.fromEntries(
      entries.map(({ limit, sense, source }) => [`${limit} ${sense}`, [source.from, source.key, source.text]]),
    );
    expect(sources).toMatchObject({
      "index least": ["brief", "limits.index.min", "5"],
      "index most": ["practice", "limits.index.max", "Shigley eq. 10-18"],
      "turns most": ["practice", "limits.turns", "Shigley eq. 10-19"],
      "outsideDiameter most": ["brief", "envelope.bore", "20 mm"],
      "insideDiameter least": ["brief", "envelope.rod", "8 mm"],
      "freeLength most": ["brief", "envelope.freeLength.max", "55 mm"],
      "solidStress least": ["practice", "limits.solidStress", "Shigley eq. 10-21"],
      "wire most": ["material", undefined, expect.stringContaining("A228")],
    });
  });

  it("writes values and bounds as a brief does: safeties and shares, not the stress and length behind them", () => {
    const { entries, design } = checkOf({});
    const entry = (name: string) => entries.find(({ limit }) => limit === name);
    expect(entry("solidStress")).toMatchObject({ bound: 1.2, sense: "least", dimension: "number" });
    expect(entry("solidStress")?.value).toBeCloseTo(design.solidSafety, 9);
    expect(entry("clash")).toMatchObject({ bound: 0.15, sense: "least", dimension: "share" });
    expect(entry("clash")?.value).toBeCloseTo((0.044 - 0.018 - design.solidLength) / 0.018, 9);
  });
});

describe("a margin is 1 - value/limit of what is at most, value/limit - 1 of what is at least, by the numbers that stand beside it", () => {
  const strict =
    "limits: { solidStress: { safety: 1.9 }, workingStress: { safety: 2.6 }, buckling: { safety: 9 }, clash: { ofDeflection: 0.4 } }";
  it.each([
    ["safeties and shares", { limits: strict }],
    ["stresses", { limits: "limits: { solidStress: { max: 500 MPa }, workingStress: { max: 400 MPa } }" }],
    ["a multiple of the frequency", { service: "service: { frequency: 40 Hz }" }],
    ["cyclic duty", { service: "service: { cycles: 1e6 }", limits: "limits: { fatigue: { safety: 2 } }" }],
    ["the European practice", { practice: "practice: en13906" }],
  ])("%s", (_, parts) => {
    const { entries, design } = checkOf(parts);
    for (const { value, bound, sense, margin, limit } of entries) {
      expect(margin, limit).toBeCloseTo(Math.min(1, sense === "most" ? 1 - value / bound : value / bound - 1), 9);
    }
    for (const [limit, margin] of Object.entries(design.margins)) {
      const own = entries.filter((entry) => entry.limit === limit);
      expect(margin, limit).toBeCloseTo(Math.min(...own.map((entry) => entry.margin)), 9);
    }
  });

  it("so a safety of 1.1 where 1.2 is asked is 8.3 % short", () => {
    const safety = checkOf({}).design.solidSafety;
    const { entries } = checkOf({ limits: `limits: { solidStress: { safety: ${(safety * 1.2) / 1.1} } }` });
    expect(entries.find(({ limit }) => limit === "solidStress")?.margin).toBeCloseTo(1.1 / 1.2 - 1, 9);
  });

  it("a temperature counts from 20 °C, at which springs are tested: half of the rise that the material bears leaves half", () => {
    const material = checkOf({}).brief.design.material.temperature.max;
    const at = (kelvin: number) => {
      const { entries, design } = checkOf({ service: `service: { temperature: ${kelvin} K }` });
      const margin = entries.find(({ limit }) => limit === "temperature")?.margin;
      expect(design.margins.temperature).toBe(margin);
      return margin;
    };
    expect(at((material + 293.15) / 2)).toBeCloseTo(0.5, 9);
    expect(at(material)).toBe(0);
    expect(at(material + (material - 293.15) / 4)).toBeCloseTo(-0.25, 9);
    expect(at(250)).toBe(1);
  });
});

describe("a load of another kind is judged at its own points", () => {
  it("the force at a deflection from free, with the room left before solid", () => {
    const { entries } = checkOf({ load: "load: { force: 89 N ± 5 %, deflection: 18 mm }" });
    expect(entries[0]).toMatchObject({ limit: "load", point: "loaded", value: expect.closeTo(89, 0) });
    expect(entries.find(({ limit }) => limit === "clash")?.value).toBeCloseTo(6 / 18, 6);
  });

  it("the deflection at a largest force, with the rate against its window", () => {
    const result = checkOf({ load: "load: { rate: 4 N/mm ± 10 %, largestForce: 100 N }" });
    expect(failing(result)).toEqual(["rate most"]);
    expect(result.design.points[0]?.deflection).toBeCloseTo(100 / result.design.rate, 12);
    expect(result.entries.find(({ limit }) => limit === "clash")?.value).toBeLessThan(0.25);
  });

  it("a largest force that presses it solid fails", () => {
    expect(failing(checkOf({ load: "load: { rate: 4.9 N/mm ± 10 %, largestForce: 200 N }" }))).toContain("clash least");
  });

  it("a rate and a point", () => {
    const load = "load: { rate: 4.8 N/mm ± 5 %, points: [{ name: shut, length: 26 mm, force: { min: 95 N, max: 105 N } }] }";
    expect(failing(checkOf({ load }))).toEqual(["load shut least"]);
  });

  it("a spring too short to reach a point pushes with nothing there, not with less", () => {
    const { entries, design } = checkOfData("meanDiameter: 16 mm, totalTurns: 10, freeLength: 35 mm");
    expect(entries[0]).toMatchObject({ point: "open", value: 0, margin: -1, passes: false });
    expect(design.cyclic).toBeNull();
  });

  it("a point without force is where it is free, and longer fails", () => {
    const load =
      "load: { points: [{ name: free, length: 44 mm, force: 0 N }, { name: shut, length: 26 mm, force: 89 N ± 10 % }] }";
    expect(failing(checkOf({ load }))).toEqual([]);
    const long = checkOfData("meanDiameter: 16 mm, totalTurns: 10, freeLength: 44.5 mm", { load });
    expect(failing(long)).toEqual(["load free most"]);
    expect(long.entries[0]?.margin).toBeGreaterThan(-1);
  });

  it("notes that an exact load allows no difference", () => {
    const result = checkOf({ load: "load: { force: 97 N, deflection: 20 mm }" });
    expect(result.notes).toContain("exactLoad");
    expect(result.passes).toBe(false);
  });
});

describe("without the allowance the spring must still not be solid in work", () => {
  it.each(["limits: { clash: off }", "limits: { clash: { length: 0 mm } }", "limits: { clash: { ofDeflection: 0 } }"])(
    "%s",
    (limits) => {
      const clash = (freeLength: string) =>
        checkOfData(`meanDiameter: 16 mm, totalTurns: 10, freeLength: ${freeLength}`, {
          limits,
          load: "load: { force: { min: 1 N, max: 200 N }, deflection: 20 mm }",
        }).entries.find(({ limit }) => limit === "clash");
      expect(clash("40 mm")).toMatchObject({ passes: true, margin: expect.closeTo(0, 9) });
      expect(clash("39.9 mm")).toMatchObject({ passes: false, margin: expect.closeTo(-0.005, 9) });
    },
  );
});

describe("what is left out", () => {
  it("a free length is taken as the load sets it, and that is noted", () => {
    const { design, notes } = checkOfData("meanDiameter: 16 mm, totalTurns: 10", {
      load: "load: { force: 89 N ± 5 %, deflection: 18 mm }",
    });
    expect(notes).toEqual(["freeLengthByLoad"]);
    expect(design.freeLength).toBeCloseTo(design.solidLength + 0.018 * 1.15, 12);
  });

  it("turns follow from the rate, and that is noted", () => {
    const { design, notes, quotedRate } = checkOfData("meanDiameter: 16 mm, rate: 4.84 N/mm, freeLength: 44 mm");
    expect(notes).toEqual(["turnsFromRate"]);
    expect(quotedRate).toBeNull();
    expect(design.rate).toBeCloseTo(4840, 9);
    expect(design.totalTurns).toBeCloseTo(design.activeTurns + 2, 12);
  });

  it("a size nobody sells in the material is noted, for a wire may be any", () => {
    const { notes, entries } = checkOf({
      design:
        "design: { wire: us-music 32, material: astm-a229, ends: squared-ground, meanDiameter: 16 mm, totalTurns: 10, freeLength: 44 mm }",
    });
    expect(notes).toEqual(["notSold"]);
    expect(entries.filter(({ limit }) => limit === "wire").every(({ passes }) => passes)).toBe(true);
  });

  it("a material that is not made in the size has no figures, so it is an error of input", () => {
    const thick = () =>
      checkOf({ design: "design: { wire: 20 mm, material: astm-a228, ends: squared, meanDiameter: 160 mm, totalTurns: 9 }" });
    expect(thick).toThrow(ProblemError);
    expect(thick).toThrow(/20 mm is outside the sizes that the tables at hand cover for astm-a228, 0.1016 mm to 6.35 mm,/);
  });
});
