import { csvParseRows } from "d3-dsv";
import { describe, expect, it } from "vitest";
import type { Brief } from "../../../src/model.ts";
import { pairsCsv } from "../../../src/report/files/csv.ts";
import { pairsJson } from "../../../src/report/files/json.ts";
import { pairsTable } from "../../../src/report/terminal/pairs-table.ts";
import { nestedSweep } from "../../../src/studies/nested.ts";
import { demo, small } from "./briefs.ts";

const result = nestedSweep(demo);
const table = pairsTable(result, { width: 80, colour: false });
const none = nestedSweep({ ...small, envelope: { bore: 0.03, clearance: { length: 0.01 } } } satisfies Brief);

describe("the table of pairs", () => {
  it("has a line for each pair and none wider than the terminal", () => {
    const ranked = table.split("\n\n")[1]?.split("\n") ?? [];
    expect(ranked.slice(-result.pairs.length).map((line) => Number(line.trim().split(/ +/)[0]))).toEqual(
      result.pairs.map(({ rank }) => rank),
    );
    expect(table.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it("shows the best pair in full: each spring's force at each point, and what they give together", () => {
    const [pair] = result.pairs;
    const newtons = (force: number | undefined) => `${Number((force as number).toFixed(1))} N`;
    const [outer, inner] = [newtons(pair?.outer.points[0]?.force), newtons(pair?.inner.points[0]?.force)];
    expect(table).toMatch(new RegExp(`force at raised +${outer} +${inner} +400 N`));
    expect(table).toMatch(/hand +right +left/);
  });

  it("says how the load is shared, which shares were tried, and what clearance is left", () => {
    const words = table.replace(/\s+/g, " ");
    expect(words).toContain("share this load by their rates at every length");
    expect(words).toContain("from 10 % to 90 % in steps of 2 %");
    expect(words).toContain("Between them 5 % of the outer's inside diameter is left with the inner solid.");
    const bare = { ...result, brief: { ...demo, envelope: {} } };
    expect(pairsTable(bare, { width: 80, colour: false }).replace(/\s+/g, " ")).toContain("No clearance between them is asked.");
  });

  it("cautions about hands, guides and wear, and about pairs that a maker's tolerance could make touch", () => {
    const words = table.replace(/\s+/g, " ");
    for (const caution of [/opposite hands/, /Guide both/, /they wear/]) expect(words).toMatch(caution);
    const tight = result.pairs.filter(({ toleranceRoom }) => (toleranceRoom ?? 0) < 0).map(({ rank }) => rank);
    expect(tight.length).toBeGreaterThan(0);
    expect(words).toContain(`rank ${tight.join(", ")}. With both diameters`);
  });

  it("gives materials of outer and inner by letters with a key", () => {
    const meanings = /Material of outer and inner: a (\S+), b (\S+)\./.exec(table)?.slice(1) ?? [];
    const [first] = result.pairs;
    const letters = [first?.outer, first?.inner].map((spring) => "ab"[meanings.indexOf(spring?.material as string)]);
    expect(table).toMatch(new RegExp(`^ +1 .* ${letters.join(" ")}$`, "m"));
  });

  it("tells where springs fell in either place", () => {
    const { outer, inner } = result.roles;
    const count = (value = 0) => value.toLocaleString("en-US");
    const line = new RegExp(`solidStress +${count(outer.rejected.solidStress)} +${count(inner.rejected.solidStress)}`);
    expect(table).toMatch(line);
  });

  it("says what the nearest pair lacks where none fits", () => {
    const words = pairsTable(none, { width: 80, colour: false }).replace(/\s+/g, " ");
    expect(none.pairsFit).toBe(0);
    expect(words).toContain(
      `the nearest lacks ${Number((1000 * (none.lacking as number)).toPrecision(4))} mm between its springs`,
    );
    expect(words).not.toContain("Rank 1");
  });
});

describe("JSON of pairs", () => {
  it("holds the result in SI under the names of the model, catalog entries by name", () => {
    const parsed = JSON.parse(pairsJson(result));
    expect(parsed.pairs).toEqual(JSON.parse(JSON.stringify(result.pairs)));
    expect(parsed).toMatchObject({ practice: "handbook", nested: 2, walked: result.walked, pairsFit: result.pairsFit });
    expect(parsed.brief.sweep.ends).toEqual(["squared-ground"]);
  });
});

describe("CSV of pairs", () => {
  const [head = "", ...rows] = pairsCsv(result).trimEnd().split("\r\n");
  const heads = head.split(",");

  it("has a row for each pair, with the figures of the pair and of both springs", () => {
    expect(rows).toHaveLength(result.pairs.length);
    expect(heads.slice(0, 3)).toEqual(["rank", "share (%)", "mass (g)"]);
    expect(new Set(heads).size).toBe(heads.length);
    // Only the outer answers to the bore, and only the inner to the rod.
    const figures = (role: string) => heads.filter((name) => name.startsWith(`${role}.`)).map((name) => name.slice(6));
    expect(figures("outer").filter((name) => name !== "margin.outsideDiameter")).toEqual(
      figures("inner").filter((name) => name !== "margin.insideDiameter"),
    );
  });

  it("gives each figure in the unit of its head", () => {
    const [cells = []] = csvParseRows(rows[0] ?? "");
    const cell = (name: string) => cells[heads.indexOf(name)];
    const [pair] = result.pairs;
    expect(Number(cell("mass (g)"))).toBeCloseTo(1000 * (pair?.mass as number), 6);
    expect(Number(cell("inner.outsideDiameter (mm)"))).toBeCloseTo(1000 * (pair?.inner.outsideDiameter as number), 6);
    expect([cell("outer.hand"), cell("inner.hand")]).toEqual(["right", "left"]);
  });

  it("of no pairs is a head alone", () => {
    expect(pairsCsv(none).trimEnd().split("\r\n")).toHaveLength(1);
  });
});
