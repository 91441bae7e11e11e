import { describe, expect, it } from "vitest";
import { type Compared, judge, misfitWords } from "../../src/explorer/spring/recheck.ts";
import type { Brief, Design } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { read } from "../brief/reading.ts";
import { brief } from "../report/fixture.ts";

const comparedOf = (asked: Brief, place = 0): Compared => ({ name: "A", brief: asked, design: sweep(asked).designs[place]! });
const compared = comparedOf(brief, 3);

/** One brief of each kind of load. */
const kinds: readonly (readonly [string, Brief])[] = [
  ["points", brief],
  ...[
    "load: { force: 20 N, deflection: 10 mm }",
    "load: { rate: 2 N/mm ± 5 %, points: [{ name: latched, length: 40 mm, force: 20 N ± 5 % }] }",
    "load: { rate: { min: 2 N/mm, max: 3 N/mm }, largestForce: 60 N }",
  ].map((load) => {
    const sweep = "sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared-ground, squared] }";
    const asked = read(`practice: handbook\n${load}\n${sweep}\n`);
    return [asked.load.kind, asked] as const;
  }),
];

describe("a compared spring", () => {
  it.each(kinds)("fits the brief that it was chosen under, with the figures that it had: %s", (_kind, asked) => {
    const one = comparedOf(asked);
    const judged = judge(one, asked);
    expect(misfitWords(judged)).toBe("");
    const { margins: _, tolerance: _t, ...figures } = one.design;
    for (const [name, value] of Object.entries(figures)) {
      const now = judged.design[name as keyof typeof figures];
      if (typeof value === "number") expect(now, name).toBeCloseTo(value, 9);
      else if (name !== "points" && name !== "hot" && name !== "cyclic" && name !== "costParts" && name !== "freeLengthRange")
        expect(now, name).toEqual(value);
    }
    const ends = ({ freeLengthRange: range }: Design) => [range?.min, range?.max].map((end) => expect.closeTo(end as number, 9));
    expect([judged.design.freeLengthRange?.min, judged.design.freeLengthRange?.max]).toEqual(ends(one.design));
    expect(judged.design.points.map(({ force }) => force)).toEqual(
      one.design.points.map(({ force }) => expect.closeTo(force, 9)),
    );
  });

  it("stays where the brief becomes tighter, and says what it breaks", () => {
    const bore = compared.design.outsideDiameterAtSolid * 1.02;
    const judged = judge(compared, { ...brief, envelope: { ...brief.envelope, bore } });
    expect(judged.breaks).toEqual(["outside diameter at solid"]);
    expect(misfitWords(judged)).toBe("Does not fit any more: breaks outside diameter at solid.");
    expect(judged.design.meanDiameter).toBe(compared.design.meanDiameter);
  });

  it("is held to loads that have changed, at the free length that it was added with", () => {
    const load = structuredClone(brief.load) as Extract<Brief["load"], { kind: "points" }>;
    const points = load.points.map((point, i) => (i === 1 ? { ...point, force: { min: 200, max: 220 } } : point));
    const judged = judge(compared, { ...brief, load: { kind: "points", points } });
    expect(judged.breaks).toContain("force at open");
    expect(judged.design.freeLength).toBe(compared.design.freeLength);
  });

  it("says what of it is no longer swept", () => {
    const others = brief.sweep.materials.filter(({ name }) => name !== compared.design.material);
    const judged = judge(compared, { ...brief, sweep: { ...brief.sweep, materials: others, ends: [] } });
    expect(misfitWords(judged)).toBe(`No longer swept: material ${compared.design.material}, ${compared.design.ends} ends.`);
  });

  it("knows the room that it must leave before solid", () => {
    // 15 % of its largest working deflection is asked
    const { clashAllowance } = judge(compared, brief);
    expect(clashAllowance).toBeCloseTo(0.15 * (compared.design.freeLength - 0.038), 12);
  });
});
