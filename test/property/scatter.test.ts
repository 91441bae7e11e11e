import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Brief, Design, Scatter } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { briefs, LOAD_CASES, RANDOM } from "./briefs.ts";

/** Every tolerance is stated, so that no table ends the search. */
const drawn: fc.Arbitrary<Scatter> = fc.record({
  draws: fc.integer({ min: 2, max: 60 }),
  shape: fc.constantFrom("normal" as const, "uniform" as const),
  seed: fc.integer({ min: 0, max: 2 ** 32 - 1 }),
  grade: fc.constant(2 as const),
  wireDiameter: fc.constantFrom(0, 5e-6),
  coilDiameter: fc.constantFrom(0, 1e-4),
  freeLength: fc.constantFrom(0, 2e-4),
  turns: fc.constantFrom(0, 0.1),
  modulus: fc.constantFrom(0, 0.02),
});
const withScatter = (brief: Brief, scatter: Scatter): Brief => ({ ...brief, service: { ...brief.service, scatter } });
const { numRuns } = RANDOM;
const runs = { ...RANDOM, numRuns: Math.ceil(numRuns / 4) };

/** Which spring a design is. */
const nameOf = ({ material, wire, ends, totalTurns, meanDiameter }: Design) =>
  [material, wire, ends, totalTurns, meanDiameter].join(" ");
const scatterByName = (designs: readonly Design[]) => new Map(designs.map((design) => [nameOf(design), design.scatter]));

describe.each(LOAD_CASES)("springs drawn for a load of %s", (load) => {
  it("are the same every time, and do not depend on how many designs are kept or of what the best of each", () => {
    fc.assert(
      fc.property(briefs(load, false), drawn, (plain, scatter) => {
        const brief = withScatter(plain, scatter);
        const many = sweep(brief, { top: 40 });
        expect(sweep(brief, { top: 40 })).toEqual(many);
        const known = scatterByName(many.designs);
        for (const { designs } of [sweep(brief, { top: 2 }), sweep(brief, { each: "ends", top: 2 })]) {
          for (const design of designs) {
            if (known.has(nameOf(design))) expect(design.scatter).toEqual(known.get(nameOf(design)));
          }
        }
      }),
      runs,
    );
  });

  it("leave every other figure, the order and the tally as they are", () => {
    fc.assert(
      fc.property(briefs(load, false), drawn, (plain, scatter) => {
        const { designs, brief, front, ...rest } = sweep(withScatter(plain, scatter), { top: 5 });
        const without = sweep(plain, { top: 5 });
        expect(designs.map(({ scatter, ...design }) => design)).toEqual(without.designs);
        expect({ ...rest, warnings: [] }).toEqual(
          Object.fromEntries(
            Object.entries({ ...without, warnings: [] }).filter(([key]) => !["designs", "brief", "front"].includes(key)),
          ),
        );
      }),
      runs,
    );
  });

  it("are each counted once: the share and what falls make the whole", () => {
    fc.assert(
      fc.property(briefs(load, false), drawn, (plain, scatter) => {
        for (const design of sweep(withScatter(plain, scatter), { top: 5 }).designs) {
          const { share, falls, draws, forces, rate } = design.scatter as NonNullable<Design["scatter"]>;
          const fell = Object.values(falls).reduce((sum, count) => sum + count, 0);
          expect(Math.round(share * draws) + fell).toBe(draws);
          for (const { least, mean, greatest } of [rate, ...forces]) {
            expect(least).toBeLessThanOrEqual(mean * (1 + 1e-12));
            expect(mean).toBeLessThanOrEqual(greatest * (1 + 1e-12));
          }
        }
      }),
      runs,
    );
  });

  it("ranked by yield are those that rank best by the other figures, the largest yield first", () => {
    fc.assert(
      fc.property(briefs(load, false), drawn, (plain, scatter) => {
        const brief = withScatter(plain, scatter);
        const { designs, ranksAgain, proof } = sweep({ ...brief, yieldFirst: true }, { top: 7 });
        expect(proof).toBeUndefined();
        const pool = sweep(brief, { top: 200 }).designs;
        expect(ranksAgain).toBe(pool.length);
        const shareOf = (design: Design) => design.scatter?.share ?? -1;
        const expected = [...pool].sort((a, b) => shareOf(b) - shareOf(a) || a.rank - b.rank).slice(0, 7);
        expect(designs.map(nameOf)).toEqual(expected.map(nameOf));
        expect(designs.map(({ rank }) => rank)).toEqual(expected.map((_, i) => i + 1));

        const each = sweep({ ...brief, yieldFirst: true }, { each: "ends" }).designs;
        const bestOfEach = [...sweep(brief, { each: "ends" }).designs].sort((a, b) => shareOf(b) - shareOf(a) || a.rank - b.rank);
        expect(each.map(nameOf)).toEqual(bestOfEach.map(nameOf));
      }),
      { ...runs, numRuns: Math.ceil(numRuns / 16) },
    );
  });
});
