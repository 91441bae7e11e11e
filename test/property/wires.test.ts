import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isSold } from "../../src/constrain/candidate/wire-properties.ts";
import { wiresFor } from "../../src/enumerate/combinations.ts";
import type { Brief, Funnel, LimitName, SweepResult, WireFunnel } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "./briefs.ts";

/** Every wire is swept by itself as well, so fewer briefs do. */
const FEWER = { ...RANDOM, numRuns: Math.ceil((3 * RANDOM.numRuns) / 4) };

/** The brief with one material and one wire alone. */
function alone(brief: Brief, { material, series, wire }: WireFunnel): Brief {
  const { materials, wires } = brief.sweep;
  return {
    ...brief,
    sweep: {
      ...brief.sweep,
      materials: materials.filter(({ name }) => name === material),
      wires: wires
        .filter(({ name }) => name === series)
        .map((one) => ({ ...one, wires: one.wires.filter(({ label }) => label === wire) })),
    },
  };
}

function sumOf(rows: readonly Funnel[]): Funnel {
  const rejected: Partial<Record<LimitName, number>> = {};
  for (const row of rows)
    for (const [limit, count] of Object.entries(row.rejected))
      rejected[limit as LimitName] = (rejected[limit as LimitName] ?? 0) + count;
  const total = (name: "walked" | "feasible") => rows.reduce((sum, row) => sum + row[name], 0);
  return { walked: total("walked"), rejected, feasible: total("feasible") };
}

const funnelOf = ({ walked, rejected, feasible }: Funnel): Funnel => ({ walked, rejected, feasible });

describe("the tally by wire", () => {
  const kinds = CASES.flatMap((one) => [
    { ...one, exact: false },
    { ...one, exact: true },
  ]);
  it.each(kinds)("adds up to the whole, each row that of its wire alone: $load, turns any $turnsAny, exact $exact", (kind) => {
    let seen = 0;
    fc.assert(
      fc.property(briefs(kind.load, kind.turnsAny, kind.exact), (brief) => {
        const result = sweep(brief, { top: 1, byWire: true });
        const wires = result.wires as NonNullable<SweepResult["wires"]>;
        expect(sumOf(wires)).toEqual(funnelOf(result));
        for (const row of wires) expect(funnelOf(row)).toEqual(funnelOf(sweep(alone(brief, row), { top: 1 })));
        seen += wires.filter(({ walked, feasible }) => feasible > 0 && feasible < walked).length;
      }),
      FEWER,
    );
    expect(seen).toBeGreaterThan(above(0));
  });

  it("names each material and wire in the order of the walk, one that falls at once too", () => {
    fc.assert(
      fc.property(briefs("points", false), (brief) => {
        const walked = brief.sweep.materials.flatMap((material) =>
          wiresFor(material, brief.sweep.wires, isSold).map(({ label, diameter }) => [material.name, label, diameter]),
        );
        const { wires: rows = [], walked: candidates } = sweep(brief, { byWire: true });
        // Where no count of turns is left there is no family to walk.
        expect(rows.map(({ material, wire, wireDiameter }) => [material, wire, wireDiameter])).toEqual(
          candidates > 0 ? walked : [],
        );
      }),
      FEWER,
    );
  });

  it("has every material and wire that something fits in a sample with room for them", () => {
    let seen = 0;
    fc.assert(
      fc.property(briefs("points", false), (brief) => {
        const { wires = [], sample = [], feasible: all } = sweep(brief, { byWire: true, sample: 12 });
        const fitting = wires.filter(({ feasible }) => feasible > 0);
        const sampled = new Set(sample.map(({ material, wire }) => `${brief.sweep.materials[material]?.name} ${wire.label}`));
        expect([...sampled].sort()).toEqual(fitting.map(({ material, wire }) => `${material} ${wire}`).sort());
        if (all > 12) seen += fitting.length;
      }),
      RANDOM,
    );
    expect(seen).toBeGreaterThan(above(5));
  });

  it("is not told unless it is asked for", () => {
    const [brief] = fc.sample(briefs("points", false), { seed: 1, numRuns: 1 }) as [Brief];
    expect(sweep(brief)).not.toHaveProperty("wires");
  });
});
