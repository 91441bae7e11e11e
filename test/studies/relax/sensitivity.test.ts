import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { LimitName } from "../../../src/model.ts";
import { relax } from "../../../src/studies/relax.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { briefs, CASES, met, RANDOM } from "../../property/briefs.ts";
import { rewritten } from "./rewritten.ts";

/** Each kind draws briefs of its own, so that few of each meet every limit together. */
const KINDS = CASES.map((kind, i) => ({
  ...kind,
  few: { ...RANDOM, seed: RANDOM.seed + 3 + i, numRuns: Math.ceil(RANDOM.numRuns / 2) },
}));

describe("a price is what a sweep of the brief, written anew with that limit eased, finds", () => {
  const priced = new Set<LimitName>();

  it.each(KINDS)("$load, turns any: $turnsAny", ({ load, turnsAny, few }) => {
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        for (const { limit, steps } of relax(brief).prices) {
          for (const { share, best } of steps) {
            const anew = rewritten(brief, limit, share);
            if (anew === null) continue;
            const [found] = sweep(anew, { top: 1 }).designs;
            expect(best?.design.mass, `${limit} ${share}`).toBeCloseTo(found?.mass ?? Number.NaN, 12);
            if (best !== null && best.change !== 0) priced.add(limit);
          }
        }
      }),
      few,
    );
  });

  it("has gained by every kind of limit", () => {
    const some: LimitName[] = ["turns", "solidLength", "index", "outsideDiameter", "insideDiameter", "rate", "freeLength"];
    expect([...priced]).toEqual(expect.arrayContaining([...met([...some, "workingStress", "solidStress", "fatigue"])]));
  });
});

describe("a price over the reals is what such a sweep finds, to a millionth", () => {
  it.each(KINDS)("$load, turns any: $turnsAny", ({ load, turnsAny, few }) => {
    fc.assert(
      fc.property(briefs(load, turnsAny, true), (brief) => {
        for (const { limit, steps } of relax(brief).prices) {
          for (const { share, best } of steps) {
            const anew = rewritten(brief, limit, share);
            const [found] = anew === null ? [] : sweep(anew, { top: 1 }).designs;
            if (best !== null && found !== undefined) expect(best.design.mass / found.mass).toBeCloseTo(1, 6);
          }
        }
      }),
      { ...few, numRuns: Math.ceil(few.numRuns / 2) },
    );
  });
});

describe("prices", () => {
  it.each(KINDS)(
    "never lose by a limit that only judges, and need no more than was eased: $load, turns any: $turnsAny",
    (kind) => {
      const made: readonly LimitName[] = ["clash", "freeLength"];
      fc.assert(
        fc.property(briefs(kind.load, kind.turnsAny), (brief) => {
          const { best: now, prices } = relax(brief);
          for (const { limit, steps } of prices.filter(({ limit }) => !made.includes(limit))) {
            const masses = [now, ...steps.flatMap(({ best }) => best?.design ?? [])].map((design) => design?.mass ?? Number.NaN);
            expect([...masses].sort((a, b) => b - a)).toEqual(masses);
            for (const { share, best } of steps) {
              const margin = best?.design.margins[limit] ?? 0;
              if (share !== null) expect(margin).toBeGreaterThanOrEqual(-share - 1e-8);
            }
          }
        }),
        { ...kind.few, numRuns: Math.ceil(kind.few.numRuns / 2) },
      );
    },
  );
});
