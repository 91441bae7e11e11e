import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { limitsFor } from "../../src/constrain/limits/limits.ts";
import { resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import type { LimitName } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "./briefs.ts";
import { naiveSweep } from "./naive.ts";

describe("the nearest miss of a limit is the one that a visit to every candidate finds", () => {
  it.each(CASES)("$load, turns any: $turnsAny", ({ load, turnsAny }) => {
    let compared = 0;
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        const names = limitsFor(resolveRequirements(brief)).map(({ name }) => name);
        const alone = new Map<LimitName, number>();
        const first = new Map<LimitName, number>();
        const keep = (bests: Map<LimitName, number>, name: LimitName, margin: number) =>
          bests.set(name, Math.max(margin, bests.get(name) ?? Number.NEGATIVE_INFINITY));
        const limits = limitsFor(resolveRequirements(brief));
        naiveSweep(brief, (candidate) => {
          const violated = limits.filter((limit) => limit.margin(candidate) < -1e-9);
          const [earliest] = violated;
          if (earliest === undefined) return;
          keep(first, earliest.name, earliest.shownMargin(candidate));
          if (violated.length === 1) keep(alone, earliest.name, earliest.shownMargin(candidate));
        });
        const { nearest = [] } = sweep(brief, { nearest: true });
        expect(nearest.map(({ limit }) => limit)).toEqual(names.filter((name) => first.has(name)));
        for (const { limit, design, breaks, sense, needed, limitValue } of nearest) {
          compared++;
          expect(breaks).toContain(limit);
          expect(breaks.length === 1).toBe(alone.has(limit));
          const found = limits.find(({ name }) => name === limit)?.reported ? design.margins[limit] : null;
          if (found !== null) expect(found).toBeCloseTo((alone.get(limit) ?? first.get(limit)) as number, 9);
          expect(sense === "most" ? needed > limitValue : needed < limitValue).toBe(true);
        }
      }),
      { ...RANDOM, numRuns: Math.ceil(RANDOM.numRuns / 2) },
    );
    expect(compared).toBeGreaterThan(above(20));
  });
});
