import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Candidate } from "../../../src/constrain/candidate/candidate.ts";
import { longestFreeLength } from "../../../src/constrain/candidate/free-length.ts";
import { FreeLengthRange } from "../../../src/constrain/free-length-range.ts";
import { limitsFor } from "../../../src/constrain/limits/limits.ts";
import { isConstructed } from "../../../src/constrain/relaxed.ts";
import { resolveRequirements } from "../../../src/constrain/requirements/requirements.ts";
import type { Brief, LimitName } from "../../../src/model.ts";
import { relax } from "../../../src/studies/relax.ts";
import { sweep } from "../../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "../../property/briefs.ts";
import { naiveSweep } from "../../property/naive.ts";
import { rewritten } from "./rewritten.ts";

/** The brief with several limits eased alike; null where one of them cannot be written. */
function eased(brief: Brief, limits: readonly LimitName[], share: number): Brief | null {
  return limits.reduce<Brief | null>((anew, limit) => anew && rewritten(anew, limit, share), brief);
}

const MOST = 0.99;

/**
 * The least common share at which a sweep of the brief, written anew, finds something, by bisection; null where it is above `MOST`.
 */
function bisected(brief: Brief, limits: readonly LimitName[]): number | null {
  const fits = (share: number) => sweep(eased(brief, limits, share) as Brief, { top: 1 }).feasible > 0;
  if (!fits(MOST)) return null;
  let [low, high] = [0, MOST];
  while (high - low > 1e-7) {
    const share = (low + high) / 2;
    if (fits(share)) high = share;
    else low = share;
  }
  return high;
}

describe("what must give is what a bisection over whole sweeps finds, to a millionth", () => {
  let [singles, pairs] = [0, 0];

  it.each([false, true].flatMap((exact) => CASES.map((one) => ({ ...one, exact }))))(
    "$load, turns any: $turnsAny, over the reals: $exact",
    ({ load, turnsAny, exact }) => {
      fc.assert(
        fc.property(briefs(load, turnsAny, exact), (brief) => {
          // Where a sweep looks at a limit by samples, it may miss what the bisection is to find.
          if (exact && sweep(brief).proof?.caveats.includes("sampledLimit")) return;
          for (const { limits, share } of relax(brief).concessions.slice(0, 6)) {
            if (share > MOST - 0.01 || eased(brief, limits, 0) === null) continue;
            if (limits.length === 1) singles++;
            else pairs++;
            expect(Math.abs(share - (bisected(brief, limits) ?? Number.NaN)), limits.join()).toBeLessThan(1e-6);
          }
        }),
        { ...RANDOM, numRuns: Math.ceil(RANDOM.numRuns / 4) },
      );
    },
  );

  it("was asked of many", () => {
    expect(singles).toBeGreaterThan(above(40));
    expect(pairs).toBeGreaterThan(above(40));
  });
});

/** The free lengths at which a candidate is looked at: its own, and where a limit is a band over them, all it may have. */
function looks(candidate: Candidate, isBanded: boolean): number[] {
  const shortest = candidate.freeLength;
  const longest = Math.max(shortest, longestFreeLength(candidate));
  return isBanded ? Array.from({ length: 21 }, (_, i) => shortest + ((longest - shortest) * i) / 20) : [shortest];
}

describe("what a single limit must give is the least that a visit to every candidate finds", () => {
  it.each(CASES)("$load, turns any: $turnsAny", ({ load, turnsAny }) => {
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        // No brief that is read asks for a window that ends before it begins.
        const { min = 0, max = Number.POSITIVE_INFINITY } = brief.envelope.freeLength ?? {};
        const { feasible, concessions } = relax(brief);
        if (feasible > 0 || min > max) return;
        const requirements = resolveRequirements(brief);
        const limits = limitsFor(requirements);
        const { hasConcaveBound } = new FreeLengthRange(new Candidate(requirements), limits);
        const least = new Map<LimitName, number>();
        naiveSweep(brief, (candidate) => {
          const { freeLength } = candidate;
          for (const length of looks(candidate, hasConcaveBound)) {
            candidate.freeLength = length;
            const [only, second] = limits.filter((limit) => !limit.passes(candidate));
            if (only === undefined || second !== undefined || !only.reported) continue;
            least.set(only.name, Math.min(-only.margin(candidate), least.get(only.name) ?? Number.POSITIVE_INFINITY));
          }
          candidate.freeLength = freeLength;
        });
        // Springs made or counted by the limit are others once it gives, and none may be solid in work.
        const isSeen = (name: LimitName, share: number) =>
          !isConstructed(requirements, name) && (name !== "turns" || requirements.turnsAny) && (name !== "clash" || share <= 1);
        const found = new Map(
          concessions.flatMap(({ limits: [name = "wire", ...more], share, design }) =>
            more.length > 0 ? [] : [[name, { share, design }] as const],
          ),
        );
        for (const [name, share] of least) {
          if (!isSeen(name, share)) continue;
          if (hasConcaveBound) expect(found.get(name)?.share, name).toBeLessThanOrEqual(share + 1e-9);
          else expect(found.get(name)?.share, name).toBeCloseTo(share, 9);
        }
        for (const [name, { share, design }] of found) {
          if (!isSeen(name, share)) continue;
          if (!hasConcaveBound) expect(least.get(name), name).toBeCloseTo(share, 9);
          const violated = Object.entries(design.margins).filter(([, margin]) => margin < -1e-9);
          expect(violated.map(([limit]) => limit)).toEqual([name]);
        }
      }),
      { ...RANDOM, numRuns: Math.ceil(RANDOM.numRuns / 2) },
    );
  });
});
