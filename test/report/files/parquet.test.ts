import { describe, expect, it } from "vitest";
import type { Design } from "../../../src/model.ts";
import { parquetRows } from "../../../src/report/files/parquet.ts";
import { figureWords } from "../../../src/report/text/labels.ts";
import { brief, spring } from "../fixture.ts";
import { arrowTable, rowsOf } from "./arrow-table.ts";

/** The file of some designs, and how many times bytes were handed on. */
function written(designs: readonly Design[], sample = designs[0], of = brief) {
  const pieces: Buffer[] = [];
  const rows = parquetRows(of, sample, (bytes) => pieces.push(Buffer.from(bytes)));
  for (const design of designs) rows.add(design);
  rows.finish();
  return { bytes: Buffer.concat(pieces), handedOn: pieces.length };
}

const read = (designs: readonly Design[]) => arrowTable(written(designs).bytes);

describe("designs as Parquet, read by another implementation", () => {
  it("hold every figure in SI as it is, with null for one that does not exist", () => {
    const designs = [spring(), spring({ bucklingDeflection: 0.03, wireDiameter: 0.0022 })];
    const rows = rowsOf(read(designs));
    expect(rows.length).toBe(2);
    for (const [i, design] of designs.entries()) {
      const { rank, ...figures } = figureWords;
      for (const name of Object.keys(figures) as (keyof typeof figures)[]) expect(rows[i]?.[name], name).toBe(design[name]);
    }
    expect(rows[0]?.bucklingDeflection).toBeNull();
  });

  it("hold texts, points by their names and margins by their limits", () => {
    const [row] = rowsOf(read([spring()]));
    expect(row).toMatchObject({ material: "shop-steel", wire: "W20", series: "shop-wire", ends: "squared-ground" });
    expect(row).toMatchObject({ lengthAtClosed: 0.05, stressAtOpen: 520e6, shareOfDeflectionAtOpen: 0.5 });
    expect(row).toMatchObject({ marginOfIndex: 0.33, marginOfSolidStress: 0.017 });
    expect(row).not.toHaveProperty("rank");
  });

  it("have no two columns that differ by capitals only, whatever points are called", () => {
    const [first, second] = spring().points;
    const named = [
      { ...first, name: "solid" },
      { ...second, name: "Solid!" },
      { ...second, name: "?" },
    ] as Design["points"];
    const table = read([spring({ points: named })]);
    const names = table.schema.fields.map(({ name }) => name);
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
    expect(names).toEqual(expect.arrayContaining(["forceAtSolid", "forceAtSolid2", "forceAtSolid3", "forceAt"]));
    expect(rowsOf(table)[0]).toMatchObject({ forceAtSolid: spring().forceAtSolid, forceAtSolid2: first?.force });
  });

  it("say the unit of every column that is a number", () => {
    const table = read([spring()]);
    const units = JSON.parse(table.schema.metadata.get("units") ?? "") as Record<string, string>;
    const numbers = table.schema.fields.filter(({ type }) => `${type}` === "Float64").map(({ name }) => name);
    expect(Object.keys(units).sort()).toEqual([...numbers].sort());
    expect(units).toMatchObject({
      wireDiameter: "m",
      rate: "N/m",
      stressAtSolid: "Pa",
      mass: "kg",
      index: "1",
      pitchAngle: "rad",
    });
    expect(table.schema.metadata.get("title")).toBe(brief.title);
  });

  it("say the currency of a cost that is money", () => {
    const wires = brief.sweep.wires.map((series) => ({
      ...series,
      currency: "crowns",
      wires: series.wires.map((wire) => ({ ...wire, price: 4 })),
    }));
    const { bytes } = written([spring()], spring(), { ...brief, sweep: { ...brief.sweep, wires } });
    expect(JSON.parse(arrowTable(bytes).schema.metadata.get("units") ?? "")).toMatchObject({
      relativeCost: "crowns",
      mass: "kg",
    });
  });

  it("keep any text, and null what is not finite", () => {
    const [row] = rowsOf(read([spring({ material: 'ä "b"\n😀', surgeFrequency: Number.POSITIVE_INFINITY })]));
    expect(row).toMatchObject({ material: 'ä "b"\n😀', surgeFrequency: null });
  });

  it("are handed on a row group at a time, and are all there", () => {
    const one = spring();
    const designs = Array.from({ length: 41_000 }, (_, i) => ({ ...one, mass: i / 1e6, material: `m${i % 3}` }));
    const { bytes, handedOn } = written(designs);
    expect(handedOn).toBe(4);
    const table = arrowTable(bytes);
    expect(table.numRows).toBe(designs.length);
    expect([...(table.getChild("mass") ?? [])]).toEqual(designs.map(({ mass }) => mass));
    expect([...(table.getChild("material") ?? [])]).toEqual(designs.map(({ material }) => material));
  });

  it("are a table without rows where nothing fits", () => {
    const table = arrowTable(written([]).bytes);
    expect(table.numRows).toBe(0);
    expect(table.schema.fields.map(({ name }) => name)).toContain("wireDiameter");
  });
});
