import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Brief } from "../../../src/model.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "../../property/briefs.ts";
import { naiveSweep } from "../../property/naive.ts";
import { sweepFile } from "../../published/run.ts";

const solved = CASES.filter(({ load, turnsAny }) => !turnsAny && /Nominal|Tolerance|^deflection$/.test(load));

/** The brief over the reals, where a finer and finer grid should lead. */
const onGrid = (brief: Brief): Brief => {
  const thinnest = brief.sweep.wires[0]?.wires[0]?.diameter as number;
  return { ...brief, sweep: { ...brief.sweep, meanDiameter: { step: thinnest / 200 } } };
};

const INCH = 0.0254;

describe("the proof of the mixed-discrete spring", () => {
  const brief = fileURLToPath(new URL("../../published/briefs/mixed-discrete-spring.yaml", import.meta.url));
  const { proof, designs } = sweepFile(brief);
  const volume = (mass: number | null | undefined) => (mass ?? Number.NaN) / (designs[0]?.density as number) / INCH ** 3;

  it("has the published optimum, 2.658559166 in³ (Lampinen & Zelinka 1999), as its own", () => {
    expect(volume(proof?.optimum)).toBeCloseTo(2.658559166, 8);
  });

  it("has another program's runner-up, 2.699494 in³, as the best of another family, and claims the whole", () => {
    expect(volume(proof?.runnerUp)).toBeCloseTo(2.699494, 6);
    expect(proof?.gap).toBeCloseTo(2.699494 / 2.658559166 - 1, 6);
    expect(proof?.caveats).toEqual([]);
  });
});

describe("what a sweep with its diameters solved proves", () => {
  it.each(solved)("is what a visit to every candidate sees: $load", ({ load }) => {
    let optima = 0;
    fc.assert(
      fc.property(briefs(load, false), (brief) => {
        const { proof, walked, rejected } = sweep(brief, { top: 1 });
        const [first = null, second = null] = naiveSweep(brief)
          .survivors.map(({ mass }) => mass)
          .sort((a, b) => a - b);
        expect(proof).toMatchObject({ families: walked, empty: rejected, optimum: first, runnerUp: second, caveats: [] });
        expect(proof?.gap ?? null).toBe(first === null || second === null ? null : (second - first) / first);
        if (first !== null) optima++;
      }),
      RANDOM,
    );
    expect(optima).toBeGreaterThan(above(5));
  });
});

describe("what a sweep over the reals proves", () => {
  it.each(CASES.filter(({ turnsAny, load }) => turnsAny || load === "rateForce"))(
    "no grid contradicts: $load, turns any: $turnsAny",
    ({ load, turnsAny }) => {
      let compared = 0;
      fc.assert(
        fc.property(briefs(load, turnsAny, true), (brief) => {
          const { proof, feasible } = sweep(brief);
          if (proof === undefined || proof.caveats.length > 0) return;
          expect(proof.families).toBe(feasible + Object.values(proof.empty).reduce((sum, count) => sum + count, 0));
          const [best] = sweep(onGrid(brief), { top: 1 }).designs;
          if (best === undefined) return;
          compared++;
          expect(proof.optimum).toBeLessThanOrEqual(best.mass * (1 + 1e-9));
        }),
        RANDOM,
      );
      expect(compared).toBeGreaterThan(above(2));
    },
  );

  it("is claimed only as far as it is true", () => {
    const [brief] = fc.sample(briefs("points", false, true), { seed: 1, numRuns: 1 }) as [Brief];
    const asking: Brief = { ...brief, rank: ["solidSafety", "mass"], limits: { ...brief.limits, solidStress: { safety: 1 } } };
    const sampled: Brief = { ...asking, practice: "en13906", limits: { ...asking.limits, loadTolerance: { grade: 2 } } };
    expect(sweep(sampled).proof?.caveats).toEqual(["severalFigures", "sampledLimit", "searchedFigure"]);
    expect(sweep({ ...asking, rank: ["mass"] }).proof?.caveats).toEqual([]);
  });

  it("is not claimed on a grid", () => {
    const [brief] = fc.sample(briefs("points", false), { seed: 1, numRuns: 1 }) as [Brief];
    expect(sweep(brief).proof).toBeUndefined();
  });
});
