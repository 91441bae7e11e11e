import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Brief, MeritName } from "../../src/model.ts";
import { MERITS } from "../../src/score/merit.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "./briefs.ts";

const gridOf = (brief: Brief): Brief => {
  const thinnest = brief.sweep.wires[0]?.wires[0]?.diameter as number;
  return { ...brief, sweep: { ...brief.sweep, meanDiameter: { step: thinnest / 40 } } };
};

const merits = fc.constantFrom<MeritName>("mass", "outsideDiameter", "relativeCost", "freeLength", "solidSafety");
const walked = CASES.filter(({ load, turnsAny }) => turnsAny || !/Nominal|Tolerance|^deflection$/.test(load));

describe("over the reals the best design is never beaten by a grid", () => {
  it.each(walked)("$load, turns any: $turnsAny", ({ load, turnsAny }) => {
    let compared = 0;
    fc.assert(
      fc.property(briefs(load, turnsAny, true), merits, (drawn, merit) => {
        const brief = { ...drawn, rank: [merit] };
        const exact = sweep(brief, { top: 1 });
        const grid = sweep(gridOf(brief), { top: 1 });
        const [best] = exact.designs;
        const [onGrid] = grid.designs;
        if (onGrid === undefined) return;
        compared++;
        expect(best).toBeDefined();
        const figure = (design: typeof best) => MERITS[merit](design as never);
        expect(figure(best)).toBeLessThanOrEqual(figure(onGrid) + 1e-9 * Math.abs(figure(onGrid)));
      }),
      RANDOM,
    );
    expect(compared).toBeGreaterThan(above(5));
  });

  it.each(walked)("a family is one candidate: $load, turns any: $turnsAny", ({ load, turnsAny }) => {
    fc.assert(
      fc.property(briefs(load, turnsAny, true), (brief) => {
        const { walked, feasible, rejected } = sweep(brief);
        expect(walked).toBe(feasible + Object.values(rejected).reduce((sum, count) => sum + count, 0));
        const counted = sweep(gridOf(brief));
        expect(feasible).toBeLessThanOrEqual(walked);
        if (counted.feasible > 0) expect(feasible).toBeGreaterThan(0);
      }),
      { ...RANDOM, numRuns: Math.ceil(RANDOM.numRuns / 4) },
    );
  });
});
