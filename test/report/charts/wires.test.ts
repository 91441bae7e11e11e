import { describe, expect, it } from "vitest";
import type { WireFunnel } from "../../../src/model.ts";
import { soldSizes, wireFields, wireSentence, wireSizes, wiresSentence, wireTable } from "../../../src/report/charts/wires.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { brief } from "../fixture.ts";

const mm = { length: "mm", force: "N" } as const;

const row = (changes: Partial<WireFunnel>): WireFunnel => ({
  material: "hard",
  series: "shop",
  wire: "W",
  wireDiameter: 0.001,
  walked: 100,
  rejected: { index: 60, solidStress: 40 },
  feasible: 0,
  ...changes,
});

/** Thin wire that fails, two that fit, thick wire that fails, one that nobody sells. */
const rows: readonly WireFunnel[] = [
  row({ wireDiameter: 0.0008, rejected: { wire: 10 }, walked: 10 }),
  row({}),
  row({ wireDiameter: 0.0016, rejected: { index: 60, solidStress: 30 }, feasible: 10 }),
  row({ wireDiameter: 0.0018, rejected: { index: 60, clash: 20 }, feasible: 20 }),
  row({ wireDiameter: 0.002, rejected: { index: 60, outsideDiameter: 40 } }),
  row({ material: "soft", wireDiameter: 0.0016, rejected: { index: 100 } }),
];

describe("the tally by wire in words", () => {
  const sizes = wireSizes(rows, mm, null);

  it("puts sizes that several materials share together, thinnest first", () => {
    expect(sizes.map(({ label }) => label)).toEqual(["0.8 mm", "1 mm", "1.6 mm", "1.8 mm", "2 mm"]);
    expect(sizes[2]).toMatchObject({ walked: 200, feasible: 10, rejected: { index: 160, solidStress: 30 } });
    expect(wireSizes(rows, mm, "soft")).toMatchObject([{ label: "1.6 mm", walked: 100, rejected: { index: 100 } }]);
  });

  it("leaves sizes that nobody sells to the sentence, unless there is no other", () => {
    expect(soldSizes(sizes)).toEqual(sizes.slice(1));
    expect(soldSizes(sizes.slice(0, 1))).toEqual(sizes.slice(0, 1));
  });

  it("says in which sizes something fits, and how far thinner and thicker wire gets", () => {
    expect(wiresSentence(sizes)).toBe(
      "Springs fit in 2 of 5 wire sizes, 1.6 mm to 1.8 mm. Thinner wire gets no further than solid stress (1 size). " +
        "Thicker wire gets no further than outside diameter (1 size). 1 of the sizes is not made or sold in what is asked.",
    );
    expect(wiresSentence(wireSizes(rows, mm, "soft"))).toBe(
      "Nothing fits in any of 1 wire size. Their candidates get no further than index (1 size).",
    );
  });

  it("says what became of the candidates of one size, the largest share first", () => {
    expect(wireSentence(sizes[2]!)).toBe("1.6 mm: 200 tried, 10 fit (5.0 %). 80.0 % rejected by index, 15.0 % by solid stress.");
    expect(wireSentence(sizes[1]!)).toBe(
      "1 mm: 100 tried, none fits. 60.0 % rejected by index, 40.0 % by solid stress. The last is rejected by solid stress.",
    );
    expect(wireSentence(sizes[0]!)).toBe("0.8 mm: 10 tried, none fits. 100.0 % are of material not made or sold in this size.");
  });

  it("tells sizes apart whose first digits are the same", () => {
    const near = [0.07874, 0.078741].map((inches) => row({ wireDiameter: 0.0254 * inches }));
    expect(wireSizes(near, { length: "in", force: "lbf" }, null).map(({ label }) => label)).toEqual([
      "0.07874 in",
      "0.078741 in",
    ]);
  });

  it("gives the map and the table the same counts, all of a real sweep", () => {
    const result = sweep(brief, { byWire: true });
    const all = wireSizes(result.wires ?? [], brief.units, null);
    const fields = wireFields(all);
    expect(fields.reduce((sum, { count }) => sum + count, 0)).toBe(result.walked);
    expect(fields.filter(({ fits }) => fits).reduce((sum, { count }) => sum + count, 0)).toBe(result.feasible);
    for (const { row: place } of fields) {
      const fractions = fields.filter((field) => field.row === place).map(({ fraction }) => fraction);
      expect(fractions.reduce((sum, fraction) => sum + fraction, 0)).toBeCloseTo(1, 12);
    }
    const { head, rows: lines } = wireTable(all);
    expect(head.slice(0, 2)).toEqual(["wire", "tried"]);
    expect(head.at(-1)).toBe("fits");
    for (const line of lines) {
      const [tried = 0, ...counts] = line.slice(1).map((text) => Number(String(text).replaceAll(",", "").replace("–", "0")));
      expect(counts.reduce((sum, count) => sum + count, 0)).toBe(tried);
    }
  });
});
