import { describe, expect, it } from "vitest";
import { limitsFor } from "../../src/constrain/limits/limits.ts";
import { resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import type { Brief, Limits, Load } from "../../src/model.ts";
import { brief } from "../report/fixture.ts";
import { quoted, tableOf, textOf, underHeading } from "./tree.ts";

const force = { min: 10, max: 20 };
const nominal = { nominal: 15, min: 15, max: 15 };
const rate = { min: 500, max: 2000 };
const fixed = { nominal: 1000, min: 1000, max: 1000 };
const point = { name: "loaded", length: 0.04, force: nominal };

/** The kinds of load in the order of the table's columns; where the rate is fixed the turns follow from the diameter. */
const loads: readonly { readonly load: Load; readonly follows: boolean }[] = [
  { load: { kind: "forceAtDeflection", force: nominal, deflection: 0.02 }, follows: true },
  { load: { kind: "rateAndPoint", rate: fixed, point }, follows: true },
  {
    load: {
      kind: "points",
      points: [
        { ...point, force },
        { name: "closed", length: 0.03, force: { min: 30, max: 40 } },
      ],
    },
    follows: false,
  },
  { load: { kind: "rateAndPoint", rate, point }, follows: false },
  { load: { kind: "rateAndLargestForce", rate, largestForce: 60 }, follows: false },
  { load: { kind: "forceAtDeflection", force, deflection: 0.02 }, follows: false },
];

const limits: Limits = {
  index: { min: 4, max: 12 },
  turns: { min: 3, max: 15 },
  clash: { ofDeflection: 0.15 },
  workingStress: { max: 7e8, factor: "wahl" },
  solidStress: { safety: 1.2 },
  buckling: { safety: 1 },
  surge: { multiple: 15 },
  fatigue: { safety: 1.5, line: "goodman" },
  loadTolerance: { grade: "commercial" },
  lifted: [],
};

/** A brief that asks every bound of every limit. */
function asking(load: Load, follows: boolean): Brief {
  const window = { min: 0.001, max: 1 };
  return {
    ...brief,
    load,
    limits,
    practice: "handbook",
    envelope: { bore: 1, outsideDiameter: window, insideDiameter: window, freeLength: window, solidLength: window },
    sweep: { ...brief.sweep, turns: follows ? "any" : "quarter" },
    service: { seats: "parallel plates", set: "as wound", surface: "unpeened", strength: "minimum", cycles: 1e6, frequency: 5 },
  };
}

/** The monotonicity of the bounds of each limit under one kind of load; a bound that is not asked is not there. */
function monotonicitiesUnder(load: Load, follows: boolean): ReadonlyMap<string, string> {
  const bounds = limitsFor(resolveRequirements(asking(load, follows))).flatMap(({ name, bounds }) =>
    bounds.map(({ sense, monotonicity }) => ({ name, sense, shape: monotonicity })),
  );
  const monotonicities = new Map<string, string>();
  for (const { name, sense, shape: monotonicity } of bounds) {
    const key = monotonicities.has(`${name} ${sense}`) ? `${name} ${sense}, second` : `${name} ${sense}`;
    monotonicities.set(key, monotonicity);
  }
  return monotonicities;
}

describe("the table of monotonicity in DEVELOPERS.md", () => {
  const [, ...rows] = tableOf(underHeading(textOf("DEVELOPERS.md"), "### Monotonicity"));
  const declared = loads.map(({ load, follows }) => monotonicitiesUnder(load, follows));
  const bounds = [...new Set(declared.flatMap((monotonicities) => [...monotonicities.keys()]))];

  it("has a row for every bound of every limit", () => {
    expect(rows.map(([limit = "", bound]) => `${quoted(limit)[0]} ${bound}`).sort()).toEqual(bounds.sort());
  });

  it.each(rows)("says of %s, %s what the code declares", (limit, bound, ...cells) => {
    const key = `${quoted(limit)[0]} ${bound}`;
    expect(cells).toEqual(declared.map((monotonicities) => monotonicities.get(key) ?? "not asked"));
  });
});
