import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LimitName } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { above, briefs, CASES, met, RANDOM } from "./briefs.ts";
import { naiveSweep } from "./naive.ts";

const BITES: readonly LimitName[] = [
  "wire",
  "temperature",
  "solidLength",
  "index",
  "outsideDiameter",
  "insideDiameter",
  "freeLength",
  "workingStress",
  "solidStress",
  "fatigue",
  "buckling",
  "surge",
];

describe("the walk that cuts agrees with a visit to every candidate", () => {
  it.each(CASES)("$load, turns any: $turnsAny", ({ load, turnsAny }) => {
    const bitten = new Set<string>();
    let feasible = 0;
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        const cut = sweep(brief, { top: 1 });
        const visited = naiveSweep(brief);
        expect(cut.rejected).toEqual(visited.rejected);
        expect(cut.feasible).toBe(visited.feasible);
        expect(cut.walked).toBe(visited.walked);
        expect(cut.walked).toBe(cut.feasible + Object.values(cut.rejected).reduce((sum, count) => sum + count, 0));
        const lightest = Math.min(...visited.survivors.map(({ mass }) => mass));
        expect(cut.designs[0]?.mass ?? Number.POSITIVE_INFINITY).toBe(lightest);
        feasible += cut.feasible;
        for (const limit of Object.keys(cut.rejected)) bitten.add(limit);
      }),
      RANDOM,
    );
    expect(feasible).toBeGreaterThan(above(0));
    expect([...bitten]).toEqual(expect.arrayContaining([...met(BITES)]));
  });
});
