import { describe, expect, it } from "vitest";
import type { Brief, Material } from "../../../src/model.ts";
import { marginRows, tightest } from "../../../src/report/page/margins.ts";
import { brief, spring } from "../fixture.ts";

describe("margins", () => {
  it("come in the order in which candidates fall, the tightest named", () => {
    const rows = marginRows(spring(), brief);
    expect(rows.map(({ limit }) => limit)).toEqual([
      "turns",
      "index",
      "outsideDiameter",
      "insideDiameter",
      "rate",
      "freeLength",
      "clash",
      "solidStress",
    ]);
    expect(tightest(rows, brief)?.limit).toBe("solidStress");
  });

  it("say met by construction where the loads pin the rate, and at the limit elsewhere", () => {
    const pinned = {
      ...brief,
      load: { kind: "forceAtDeflection", force: { nominal: 20, min: 20, max: 20 }, deflection: 0.02 },
    } as const;
    const rows = marginRows(spring({ margins: { index: 0, rate: 0, clash: 0, solidStress: 0.1 } }), pinned);
    expect(rows.map(({ words }) => words)).toEqual(["at the limit", "met by construction", "met by construction", "10 %"]);
    expect(tightest(rows, pinned)?.limit).toBe("index");
  });

  it.each([
    ["mm", "33 %, 40 °C left"],
    ["in", "33 %, 72 °F left"],
  ] as const)("say of a temperature how many degrees are left, in %s", (length, words) => {
    const [material] = brief.sweep.materials as readonly [Material];
    const asked: Brief = {
      ...brief,
      units: { ...brief.units, length },
      service: { ...brief.service, temperature: 373.15 },
      sweep: { ...brief.sweep, materials: [{ ...material, temperature: { max: 413.15 } }] },
    };
    expect(marginRows(spring({ material: material.name, margins: { temperature: 1 / 3 } }), asked)[0]?.words).toBe(words);
  });
});
