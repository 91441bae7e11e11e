import { describe, expect, it } from "vitest";
import { keyAt } from "../../src/brief/keys.ts";
import { fieldText, quantityText, travelOf } from "../../src/explorer/controls/bound-steps.ts";
import { boundsOf } from "../../src/explorer/controls/bounds.ts";
import type { Brief } from "../../src/model.ts";
import { limitWords } from "../../src/report/text/labels.ts";
import { readQuantity } from "../../src/units/read.ts";
import { brief } from "../report/fixture.ts";

const metric = { length: "mm", force: "N" } as const;
const inch = { length: "in", force: "lbf" } as const;
const valueAt = (of: Brief, key: string) => boundsOf(of).find((bound) => bound.key === key)?.value;
const busy: Brief = {
  ...brief,
  service: { ...brief.service, cycles: 1e6, frequency: 3 },
  limits: {
    ...brief.limits,
    workingStress: { max: 7e8, factor: "wahl" },
    surge: { multiple: 15 },
    fatigue: { safety: 1.5, line: "goodman" },
    clash: { ofSolidLength: 0.1 },
  },
};

describe("the bounds of a brief", () => {
  it("carry the values of the brief, or of the practice where it is silent", () => {
    expect(valueAt(brief, "envelope.bore")).toBe(0.024);
    expect(valueAt(brief, "envelope.rod")).toBe(0.011);
    expect(valueAt(brief, "envelope.clearance")).toBe(0.05);
    expect(valueAt(brief, "envelope.freeLength.max")).toBe(0.07);
    expect(valueAt(brief, "limits.index.max")).toBe(12);
    expect(valueAt(brief, "limits.solidStress.safety")).toBe(1.2);
    expect(valueAt(brief, "limits.clash.ofDeflection")).toBe(0.15);
  });

  it("are offered without a value where nothing is set", () => {
    const keys = boundsOf(brief).filter(({ value }) => value === undefined);
    expect(keys.map(({ key }) => key)).toEqual(
      expect.arrayContaining(["envelope.outsideDiameter.max", "envelope.freeLength.min", "limits.workingStress.safety"]),
    );
  });

  it("ask of duty only what the service has", () => {
    const asked = (of: Brief) => boundsOf(of).map(({ limit }) => limit);
    expect(asked(brief)).not.toContain("surge");
    expect(asked(busy)).toEqual(expect.arrayContaining(["surge", "fatigue", "buckling"]));
    expect(asked({ ...brief, service: { ...brief.service, seats: "guided" } })).not.toContain("buckling");
  });

  it("stand at keys that a brief has, with the dimension that its reader wants, in the order in which a candidate falls", () => {
    for (const of of [brief, busy]) {
      const bounds = boundsOf(of);
      for (const { key, dimension } of bounds) {
        const isEnd = /\.(min|max)$/.test(key) && !key.startsWith("limits.workingStress");
        if (key !== "envelope.clearance") expect(keyAt(isEnd ? key.replace(/\.\w+$/, "") : key).dimension).toBe(dimension);
      }
      const order = Object.keys(limitWords);
      const places = bounds.map(({ limit }) => order.indexOf(limit));
      expect(places).toEqual([...places].sort((a, b) => a - b));
    }
  });

  it("keep the end that counts of a bore that is a window", () => {
    const asked = [{ key: "envelope.bore.min", text: "24 mm", dimension: "length", value: 0.024 }] as const;
    expect(valueAt({ ...brief, asked }, "envelope.bore.min")).toBe(0.024);
  });
});

describe("the field of a bound", () => {
  const bore = { limit: "outsideDiameter", key: "envelope.bore", label: "bore", dimension: "length", value: 0.016 } as const;

  it("holds the brief's own text in the unit shown, else its value in that unit", () => {
    expect(fieldText(bore, "16.00 mm", metric)).toBe("16.00 mm");
    expect(fieldText(bore, "16.00 mm", inch)).toBe("0.62992 in");
    expect(fieldText(bore, undefined, metric)).toBe("16 mm");
    expect(fieldText({ ...bore, value: undefined as never }, undefined, metric)).toBe("");
  });

  it("is put as text that the brief's reader reads to the same number", () => {
    expect(readQuantity(quantityText(17.2, "length", metric), "length")).toEqual({ value: 0.0172 });
    expect(readQuantity(quantityText(0.65, "length", inch), "length")).toEqual({ value: 0.65 * 0.0254 });
    expect(readQuantity(quantityText(15, "share", metric), "share")).toEqual({ value: 0.15 });
    expect(readQuantity(quantityText(1.2, "number", metric), "number")).toEqual({ value: 1.2 });
    expect(readQuantity(quantityText(700, "stress", metric), "stress")).toEqual({ value: 7e8 });
  });

  it("has a slider about its value, from nothing where it may be nothing", () => {
    expect(travelOf(bore, metric)).toEqual({ low: 8, high: 24, step: 0.2 });
    const none = { limit: "outsideDiameter", key: "envelope.clearance", label: "clearance", dimension: "share" } as const;
    expect(travelOf({ ...none, value: 0, mayBeZero: true }, metric)).toEqual({ low: 0, high: 20, step: 0.2 });
    expect(travelOf({ ...none, value: 0.05, mayBeZero: true }, metric)).toMatchObject({ low: 0, high: 10 });
  });
});
