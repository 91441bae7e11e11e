import { describe, expect, it } from "vitest";
import { Families, type FamilyVisitor, turnsRows, wiresFor } from "../../src/enumerate/combinations.ts";
import type { Brief, EndStyle, Material, Wire, WireSeries } from "../../src/model.ts";

const endsOf = (name: string, deadTurns: number): EndStyle => ({
  name,
  deadTurns,
  solidExtra: 0,
  pitchTurns: 0,
  pitchWires: 2,
  closed: true,
  ground: true,
});
const [plain, ground, squared] = [endsOf("plain", 0), endsOf("plain-ground", 1), endsOf("squared", 2)];
const wire = (label: string, diameter: number, series = "one"): Wire => ({ label, diameter, series });
const material = (name: string): Material => ({ name }) as Material;
const always = () => true;

describe("turns", () => {
  it.each([
    ["quarter", 0.25],
    ["half", 0.5],
    ["whole", 1],
  ] as const)("rise through the window by the %s, both ends of it included", (step, size) => {
    const rows = turnsRows([squared], step, { min: 3, max: 5 });
    expect(rows.map(({ activeTurns }) => activeTurns)).toEqual(Array.from({ length: 2 / size + 1 }, (_, i) => 3 + i * size));
    expect(rows[0]?.members).toEqual([{ ends: 0, totalTurns: 5 }]);
  });

  it("are those whose totals are whole multiples of the step", () => {
    const half = endsOf("half a turn dead", 0.5);
    expect(turnsRows([half], "whole", { min: 3, max: 5 }).map(({ activeTurns }) => activeTurns)).toEqual([3.5, 4.5]);
  });

  it("reach the ends of a window that rounding has moved by a billionth of a step, and no further", () => {
    const within = (slack: number) =>
      turnsRows([plain], "whole", { min: 3 + slack, max: 5 - slack }).map(({ activeTurns }) => activeTurns);
    expect(within(9e-10)).toEqual([3, 4, 5]);
    expect(within(1e-8)).toEqual([4]);
  });

  it("share a row where styles come to the same count, and rise whatever the order of the styles", () => {
    const rows = turnsRows([squared, plain, ground], "whole", { min: 3, max: 4 });
    expect(rows).toEqual([
      {
        activeTurns: 3,
        members: [
          { ends: 0, totalTurns: 5 },
          { ends: 1, totalTurns: 3 },
          { ends: 2, totalTurns: 4 },
        ],
      },
      {
        activeTurns: 4,
        members: [
          { ends: 0, totalTurns: 6 },
          { ends: 1, totalTurns: 4 },
          { ends: 2, totalTurns: 5 },
        ],
      },
    ]);
    const uneven = turnsRows([endsOf("half a turn dead", 0.5), plain], "whole", { min: 3, max: 4 });
    expect(uneven.map(({ activeTurns }) => activeTurns)).toEqual([3, 3.5, 4]);
  });

  it("are never none or less", () => {
    expect(turnsRows([squared], "half", { min: 0, max: 1 }).map(({ activeTurns }) => activeTurns)).toEqual([0.5, 1]);
  });

  it("are one row of every style, to follow from the diameter, where any will do", () => {
    expect(turnsRows([plain, squared], "any", { min: 3, max: 5 })).toEqual([
      {
        activeTurns: Number.NaN,
        members: [
          { ends: 0, totalTurns: Number.NaN },
          { ends: 1, totalTurns: Number.NaN },
        ],
      },
    ]);
  });
});

describe("wires", () => {
  const seriesOf = (...wires: Wire[]): WireSeries => ({ name: "some", source: "invented", wires });

  it("rise in diameter, each size once, the first series standing for it", () => {
    const found = wiresFor(
      material("steel"),
      [seriesOf(wire("b", 2e-3), wire("a", 1e-3)), seriesOf(wire("b again", 2e-3, "two"), wire("c", 3e-3, "two"))],
      always,
    );
    expect(found.map(({ label }) => label)).toEqual(["a", "b", "c"]);
  });

  it("are of one size where nine digits of it are the same", () => {
    const count = (diameter: number) =>
      wiresFor(material("steel"), [seriesOf(wire("a", 2e-3), wire("b", diameter))], always).length;
    expect([count(2e-3 * (1 + 1e-11)), count(2e-3 * (1 + 1e-7))]).toEqual([1, 2]);
  });

  it("are those of the first series that sells the size in the material, or of the first at all", () => {
    const series = [
      seriesOf(wire("first", 2e-3)),
      seriesOf(wire("sold", 2e-3, "two")),
      seriesOf(wire("sold too", 2e-3, "three")),
    ];
    const soldIn = (...labels: string[]) =>
      wiresFor(material("steel"), series, ({ label }) => labels.includes(label)).map(({ label }) => label);
    expect(soldIn("sold", "sold too")).toEqual(["sold"]);
    expect(soldIn("first", "sold")).toEqual(["first"]);
    expect(soldIn()).toEqual(["first"]);
  });
});

/** Two materials, two wires, three rows of turns: of the first plain ends alone, then plain and squared, then squared alone. */
const brief = {
  sweep: {
    materials: [material("steel"), material("brass")],
    wires: [{ name: "some", source: "invented", wires: [wire("thin", 1e-3), wire("thick", 2e-3)] }],
    ends: [plain, endsOf("dead by half", 0.5)],
    turns: "whole",
  },
} as unknown as Brief;
const families = () => new Families(brief, { min: 2, max: 4 }, always);

/** All that a visitor is told, in words; it refuses a material and wire as asked. */
function told(
  walked: Families,
  from: number,
  to: number,
  refuses: (material: number, wire: Wire) => boolean = () => false,
  skips?: (pair: number, ends: number, totalTurns: number) => boolean,
): string[] {
  const words: string[] = [];
  const visitor: FamilyVisitor = {
    enter(material, { label }, count) {
      words.push(`enter ${material} ${label} with ${count}`);
      return !refuses(material, wire(label, 1));
    },
    turns: (activeTurns) => words.push(`turns ${activeTurns} of strip ${walked.slice}`),
    family: (ends, totalTurns) => words.push(`family ${ends} ${totalTurns} at ${walked.index}`),
    finish: () => words.push("finish"),
  };
  walked.visit(visitor, from, to, skips);
  return words;
}

describe("families", () => {
  // Active turns 2, 2.5, 3, 3.5, 4: five rows of one style each.
  it("are counted, and so are the strips of them", () => {
    expect([families().slices, families().count]).toEqual([20, 20]);
    const shared = new Families({ ...brief, sweep: { ...brief.sweep, ends: [plain, squared] } }, { min: 2, max: 4 }, always);
    expect([shared.slices, shared.count]).toEqual([12, 24]);
  });

  it("are told by material, wire, turns and ends, each with its place among all", () => {
    const all = told(families(), 0, 20);
    expect(all.slice(0, 5)).toEqual([
      "enter 0 thin with 5",
      "turns 2 of strip 0",
      "family 0 2 at 0",
      "turns 2.5 of strip 1",
      "family 1 3 at 1",
    ]);
    expect(all.filter((word) => word.startsWith("enter"))).toEqual([
      "enter 0 thin with 5",
      "enter 0 thick with 5",
      "enter 1 thin with 5",
      "enter 1 thick with 5",
    ]);
    expect(all.filter((word) => word.startsWith("family")).map((word) => Number(word.split(" at ")[1]))).toEqual([
      ...Array(20).keys(),
    ]);
    expect(all.at(-1)).toBe("finish");
  });

  it.each([1, 3, 7, 12, 19])("walked in two parts at strip %d are the same families, at the same places", (slice) => {
    const parts = [...told(families(), 0, slice), ...told(families(), slice, 20)];
    const telling = (words: readonly string[]) => words.filter((word) => /^family|^turns/.test(word));
    expect(telling(parts)).toEqual(telling(told(families(), 0, 20)));
    const entered = parts.filter((word) => word.startsWith("enter")).map((word) => Number(word.split(" with ")[1]));
    expect(entered.reduce((sum, count) => sum + count, 0)).toBe(20);
  });

  it("that are refused with their material and wire are not told of, and the next ones are", () => {
    const words = told(families(), 0, 20, (material, { label }) => material === 0 && label === "thin");
    expect(words.slice(0, 3)).toEqual(["enter 0 thin with 5", "enter 0 thick with 5", "turns 2 of strip 5"]);
    expect(words.filter((word) => word.startsWith("family"))).toHaveLength(15);
    expect(words[3]).toBe("family 0 2 at 5");
  });

  it("that are left out keep their places", () => {
    const words = told(
      families(),
      0,
      20,
      () => false,
      (pair, ends, totalTurns) => !(pair === 2 && ends === 1 && totalTurns === 4),
    );
    expect(words.filter((word) => word.startsWith("family"))).toEqual(["family 1 4 at 13"]);
  });

  it("are found again by material and wire, ends and total turns", () => {
    const place = families().indexing();
    expect([place(0, 0, 2), place(0, 1, 3), place(2, 1, 4), place(3, 0, 4)]).toEqual([0, 1, 13, 19]);
    expect([place(0, 0, 5), place(0, 2, 2), place(0, 1, 2)]).toEqual([undefined, undefined, undefined]);
  });
});
