import { describe, expect, it } from "vitest";
import { tableEnds, tableEndsOf } from "../../src/constrain/table-ends.ts";
import type { Brief, Material, Wire } from "../../src/model.ts";
import { type Change, plainBrief, STEEL, WIRE } from "./plain.ts";

/** Wires of given diameters, mm; those named `sold` in brass only. */
const wires = (diameters: readonly number[], inBrass: readonly number[] = []): Wire[] =>
  diameters.map((mm) => ({
    ...WIRE,
    label: `${mm} mm`,
    diameter: mm / 1000,
    ...(inBrass.includes(mm) ? { soldIn: ["brass"] } : {}),
  }));
const briefOf = (sizes: readonly Wire[], material: Partial<Material> = {}, change: Change = {}): Brief => {
  const brief = plainBrief({ ...change, material });
  return { ...brief, sweep: { ...brief.sweep, wires: [{ name: "invented", source: "invented", wires: sizes }] } };
};
const at = (mm: number) => [{ material: "steel", wireDiameter: mm / 1000 }];
const rows = (...diameters: number[]): Partial<Material> => ({
  strength: {
    minimum: {
      between: "next-row",
      rows: diameters.map((mm) => ({ diameter: mm / 1000, strength: 1500e6 })),
    },
  },
});

describe("the ends of the tables at which an answer stands", () => {
  it("a best design in the thickest size that is covered, where the series go on", () => {
    const brief = briefOf(wires([3, 4, 5, 6, 8]));
    expect(tableEnds(brief, at(5))).toEqual([
      { material: "steel", end: "thickest", size: 0.005, next: 0.006, because: "stated" },
    ]);
    expect(tableEnds(brief, at(4))).toEqual([]);
  });

  it("or in the thinnest", () => {
    const brief = briefOf(wires([0.3, 0.4, 0.6, 1]));
    expect(tableEnds(brief, at(0.6))).toEqual([
      { material: "steel", end: "thinnest", size: 0.0006, next: 0.0004, because: "stated" },
    ]);
  });

  it("none where it is the brief's own series that end", () => {
    expect(tableEnds(briefOf(wires([3, 4])), at(4))).toEqual([]);
  });

  it("say whether rows of strength, a fit, moduli or what a series is sold in ends there", () => {
    const because = (brief: Brief, mm = 4) => tableEnds(brief, at(mm)).map((one) => one.because);
    const fit = [{ at: 1e-3, value: 2e9, exponent: 0.1, diameter: { min: 1e-3, max: 4.5e-3 } }];
    const moduli = [{ upTo: 4.5e-3, youngsModulus: 206e9, shearModulus: 80e9 }];
    expect(because(briefOf(wires([3, 4, 5]), rows(1, 4)))).toEqual(["rows"]);
    expect(because(briefOf(wires([3, 4, 5]), { strength: { fit } }))).toEqual(["fit"]);
    expect(because(briefOf(wires([3, 4, 5]), { moduli }))).toEqual(["moduli"]);
    expect(because(briefOf(wires([3, 4, 5], [5])))).toEqual(["soldIn"]);
    expect(because(briefOf(wires([3, 4, 5], [5]), {}, { limits: { lifted: ["wire"] } }))).toEqual([]);
  });

  it("of every material, and both ends, where nothing fits", () => {
    const brief = briefOf(wires([0.4, 1, 4, 6]));
    const ends = tableEnds(brief, []).map(({ end, next }) => [end, next]);
    expect(ends).toEqual([
      ["thinnest", 0.0004],
      ["thickest", 0.006],
    ]);
  });

  it("a material of which no size could be tried is named with the sizes that it covers", () => {
    expect(tableEnds(briefOf(wires([6, 8])), [])).toEqual([
      { material: "steel", end: "all", size: 0.005, next: 0.006, because: "stated" },
    ]);
    expect(tableEnds(briefOf(wires([3], [3])), [])).toEqual([
      { material: "steel", end: "all", size: 0.003, next: 0.003, because: "soldIn" },
    ]);
  });

  it("of one given spring, with no series to go on", () => {
    const ends = (mm: number) => tableEndsOf(STEEL, "minimum", mm / 1000);
    expect(ends(5)).toEqual([{ material: "steel", end: "thickest", size: 0.005, because: "stated" }]);
    expect(ends(0.5)).toEqual([{ material: "steel", end: "thinnest", size: 0.0005, because: "stated" }]);
    expect(ends(4)).toEqual([]);
  });
});
