import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import type { Brief, Design, Order, ToleranceFigures } from "../../../src/model.ts";
import { dataSheet } from "../../../src/report/datasheet/datasheet.ts";
import { sheetPage } from "../../../src/report/datasheet/page.ts";
import { brief, material, spring } from "../fixture.ts";

const hostile = '<img src=x onerror="alert(1)">';
const tolerance: ToleranceFigures = {
  grade: 2,
  wireDiameter: 0.00002,
  wireSource: material.source,
  coilDiameter: 0.00035,
  freeLength: 0.0011,
  points: [
    { name: "closed", force: 4.2, leastForce: null, greatestForce: null },
    { name: "open", force: null, leastForce: null, greatestForce: null },
  ],
};

/** The text of the value beside a label, in the list or table where it stands, with × for a ticked box. */
function fieldOf(sheet: string, label: string): string {
  const [, after = ""] = sheet.split(new RegExp(`<(?:dt|th scope="row")>${label}</(?:dt|th)>`));
  return (after.split(/<\/dd>|<\/tr>/)[0] ?? "")
    .replace(/<span class="blank"[^>]*>/g, "____")
    .replace(/<[^>]+>/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}

const sheetOf = (order?: Order, changes: Partial<Brief> = {}, design: Partial<Design> = {}) =>
  dataSheet({ ...brief, ...changes, ...(order && { order }) }, spring({ tolerance, ...design }));

describe("what the brief states of the order", () => {
  it("stands on the sheet, the known boxes ticked", () => {
    const sheet = sheetOf({
      hand: "left",
      governing: "outside",
      free: ["turns", "wire"],
      quantity: 1500,
      finish: "oiled",
      drawing: "A-1042",
      notes: "in bags",
    });
    expect(fieldOf(sheet, "Hand of coil")).toBe("right × left either");
    expect(fieldOf(sheet, "Diameter held")).toBe("× outside mean inside");
    expect(fieldOf(sheet, "Left free")).toBe("free length × turns × wire coil diameter");
    expect(fieldOf(sheet, "Quantity")).toBe("1,500");
    expect(fieldOf(sheet, "Finish")).toBe("oiled");
    expect(fieldOf(sheet, "Drawing no.")).toBe("A-1042");
    expect(fieldOf(sheet, "Notes")).toBe("in bags");
    expect(sheet).toContain("left-hand.");
  });

  it("puts what the maker may adjust, and diameters that do not govern, in parentheses and without tolerance", () => {
    const sheet = sheetOf({ governing: "outside", free: ["turns", "free length"] });
    expect(fieldOf(sheet, "Outside diameter")).toBe("18 ± 0.35 0.7087"); // 18 mm / 25.4, by definition of the inch
    expect(fieldOf(sheet, "Inside diameter")).toBe("(14) (0.5512)");
    expect(fieldOf(sheet, "Free length")).toBe("(58) (2.283)");
    expect(fieldOf(sheet, "Total turns")).toBe("(9)");
    expect(fieldOf(sheet, "Wire diameter")).toBe("2 ± 0.02 0.07874");
  });
});

describe("what the brief leaves open", () => {
  it("is a line or a box to fill in, never a value", () => {
    const sheet = sheetOf();
    expect(fieldOf(sheet, "Hand of coil")).toBe("right left either");
    expect(fieldOf(sheet, "Left free")).toBe("free length turns wire coil diameter");
    for (const label of ["Finish", "Quantity", "Notes", "Drawing no.", "Date", "Name", "Frequency", "Loss of load allowed"]) {
      expect(fieldOf(sheet, label)).toBe("____");
    }
    expect(fieldOf(sheet, "Load cycles")).toBe("____ judged static");
    expect(sheet).toContain("the hand is not stated");
  });

  it("ticks no box for a default, but says what the figures rest on", () => {
    const defaults = [{ key: "service.surface", text: "unpeened", source: "default of coilsieve" }];
    expect(fieldOf(sheetOf(undefined, { defaults }), "Surface")).toBe("unpeened peened judged unpeened");
    expect(fieldOf(sheetOf(), "Surface")).toBe("× unpeened peened");
  });

  it("includes tolerances that no table gives", () => {
    const unknown = { ...tolerance, wireDiameter: null, wireSource: null, coilDiameter: null };
    const sheet = sheetOf(undefined, {}, { tolerance: unknown });
    expect(fieldOf(sheet, "Wire diameter")).toBe("2 ____ 0.07874");
    expect(fieldOf(sheet, "Size")).toBe("2 mm W20 of shop-wire");
    expect(fieldOf(sheet, "2 open")).toMatch(/95 N to 125 N ____$/);
  });
});

describe("the figures on the sheet", () => {
  it("give each load point with the brief's own window and what the grade allows", () => {
    expect(fieldOf(sheetOf(), "1 closed")).toMatch(/^50 8 .* 36 N to 54 N ± 4.2 N$/);
    expect(fieldOf(sheetOf(), "Solid, for information")).toMatch(/^18 40 227.7 /);
  });

  it("say by which grade tolerances stand, and whether the brief asked it", () => {
    expect(sheetOf()).toContain("the brief asks none");
    const limits = { ...brief.limits, loadTolerance: { grade: 2 } } as const;
    expect(sheetOf(undefined, { limits, practice: "en13906" })).toMatch(/grade 2 \(EN 15800[^)]*\), as the brief asks/);
  });

  it("say that the free length is after set removal where set is removed", () => {
    const removed = sheetOf(undefined, { service: { ...brief.service, set: "removed" } });
    expect(fieldOf(removed, "Set")).toBe("as wound × removed free length is after set removal");
    expect(removed).toContain("Free length, set removed");
    expect(sheetOf()).not.toContain("set removal");
  });

  it("give cyclic duty where the load is cyclic", () => {
    const cyclic = { leastForce: 40, greatestForce: 110, stressAmplitude: 155e6, meanStress: 365e6 };
    const service = { ...brief.service, cycles: 1e6, frequency: 3 };
    const sheet = sheetOf(undefined, { service }, { cyclic, fatigueSafety: 1.4 });
    expect(fieldOf(sheet, "Load cycles")).toBe("1,000,000");
    expect(fieldOf(sheet, "Shear stress")).toBe("365 MPa ± 155 MPa corrected");
    expect(fieldOf(sheet, "Stroke")).toBe("12 mm");
  });

  it("leave the stroke open where one point alone is given", () => {
    const [point] = spring().points;
    expect(fieldOf(sheetOf(undefined, {}, { points: point ? [point] : [] }), "Stroke")).toBe("____");
  });
});

describe("the page of the sheet", () => {
  it("runs nothing, fetches nothing, and lets only its own style apply, by its hash", async () => {
    const page = await sheetPage(brief, spring());
    const style = /<style>([\s\S]*?)<\/style>/.exec(page)?.[1] ?? "";
    const digest = createHash("sha256").update(style, "utf8").digest("base64");
    expect(page).toContain(`content="default-src 'none'; style-src 'sha256-${digest}'; base-uri 'none'; form-action 'none'"`);
    expect(page).not.toMatch(/<script|\sstyle="|\son[a-z]+="|\ssrc=|\shref=|@import|url\(/i);
  });

  it("keeps every text of the brief and its catalogs text", async () => {
    const named = (name: string) => ({ ...material, name, source: hostile });
    const load = { kind: "forceAtDeflection", force: { min: 40, max: 50 }, deflection: 0.02 } as const;
    const order = { finish: hostile, drawing: hostile, notes: hostile };
    const sweep = { ...brief.sweep, materials: [named(hostile)] };
    const points = [{ ...spring().points[0], name: hostile }] as Design["points"];
    const spoilt = { ...brief, title: hostile, load, order, sweep };
    const page = await sheetPage(spoilt, spring({ material: hostile, wire: hostile, series: hostile, points, tolerance }));
    expect(page).not.toContain("<img");
    expect(page.match(/&lt;img/g)?.length).toBeGreaterThan(8);
  });
});
