import { describe, expect, it } from "vitest";
import { candidateAt } from "../../../src/constrain/design.ts";
import { resolveRequirements } from "../../../src/constrain/requirements/requirements.ts";
import type { Brief, LimitName, MeritName } from "../../../src/model.ts";
import { nestedSweep } from "../../../src/studies/nested.ts";
import { naiveSweep } from "../../property/naive.ts";
import { small, smallAlone } from "./briefs.ts";

type Role = "outer" | "inner";

/** Figures of every survivor of a visit to all candidates. */
function visited(brief: Brief) {
  const requirements = resolveRequirements(brief);
  const { survivors, ...counts } = naiveSweep(brief);
  const springs = survivors.map(({ choice }) => {
    const { mass, relativeCost, solidSafety, outsideDiameter, insideDiameter, outsideDiameterAtSolid, freeLength } = candidateAt(
      brief,
      requirements,
      choice,
    );
    return { mass, relativeCost, solidSafety, outsideDiameter, insideDiameter, outsideDiameterAtSolid, freeLength };
  });
  return { springs, counts };
}

const shares = Array.from({ length: 41 }, (_, i) => (10 + 2 * i) / 100);
const visits = shares.map((share) => ({ outer: visited(smallAlone.outer(share)), inner: visited(smallAlone.inner(share)) }));

/** Every pair that fits, nothing left out. */
const all = visits.flatMap(({ outer, inner }) =>
  outer.springs.flatMap((a) =>
    inner.springs
      .filter((b) => b.outsideDiameterAtSolid <= 0.96 * a.insideDiameter)
      .map((b) => ({
        mass: a.mass + b.mass,
        relativeCost: a.relativeCost + b.relativeCost,
        outsideDiameter: a.outsideDiameter,
        freeLength: a.freeLength,
        solidSafety: Math.min(a.solidSafety, b.solidSafety),
      })),
  ),
);

const result = nestedSweep(small);

describe("a visit to every pair agrees", () => {
  it("on how many springs of each role fall at each limit, and how many fit", () => {
    for (const role of ["outer", "inner"] as const satisfies readonly Role[]) {
      const counts = visits.map((visit) => visit[role].counts);
      const total = (read: (count: (typeof counts)[number]) => number) => counts.reduce((sum, count) => sum + read(count), 0);
      expect(result.roles[role].walked).toBe(total(({ walked }) => walked));
      expect(result.roles[role].feasible).toBe(total(({ feasible }) => feasible));
      for (const [limit, count] of Object.entries(result.roles[role].rejected)) {
        expect(count).toBe(total(({ rejected }) => rejected[limit as LimitName] ?? 0));
      }
    }
  });

  it("on how many pairs fit, of which there are many, and not all", () => {
    const possible = visits.reduce((sum, { outer, inner }) => sum + outer.springs.length * inner.springs.length, 0);
    expect(all.length).toBeGreaterThan(100);
    expect(all.length).toBeLessThan(possible);
    expect(result.pairsFit).toBe(all.length);
  });

  it.each<readonly [MeritName, sign: 1 | -1]>([
    ["mass", 1],
    ["relativeCost", 1],
    ["outsideDiameter", 1],
    ["solidSafety", -1],
    ["freeLength", 1],
  ])("on the best pairs by %s, then mass", (merit, sign) => {
    // The free length is the same in every pair but for rounding, so it puts none before another.
    const figure = (pair: (typeof all)[number]) => (merit === "freeLength" ? 0 : sign * Number(pair[merit].toPrecision(12)));
    const best = [...all].sort((a, b) => figure(a) - figure(b) || a.mass - b.mass).slice(0, 20);
    const { pairs } = nestedSweep({ ...small, rank: [merit] });
    expect(pairs).toHaveLength(20);
    for (const [i, pair] of pairs.entries()) {
      expect(pair.mass / (best[i]?.mass as number)).toBeCloseTo(1, 9);
      expect(pair.relativeCost / (best[i]?.relativeCost as number)).toBeCloseTo(1, 9);
      expect(pair.outer.outsideDiameter / (best[i]?.outsideDiameter as number)).toBeCloseTo(1, 9);
    }
  });
});

describe("the counts and the kept pairs", () => {
  it("add up: walked is what fits and what each limit rejects, over both roles", () => {
    const { walked, feasible, rejected, roles } = result;
    expect(walked).toBe(feasible + Object.values(rejected).reduce((sum, count) => sum + count, 0));
    expect(walked).toBe(roles.outer.walked + roles.inner.walked);
    expect(feasible).toBe(roles.outer.feasible + roles.inner.feasible);
  });

  it("do not depend on how many are kept: a shorter list is the head of a longer one", () => {
    const few = nestedSweep(small, { top: 3 });
    expect(few.pairs).toEqual(result.pairs.slice(0, 3));
    expect(few.pairsFit).toBe(result.pairsFit);
    expect(nestedSweep(small, { top: 1_000_000 }).pairs).toHaveLength(result.pairsFit);
  });

  it("come out the same each time, and leave the brief as it was", () => {
    const before = structuredClone(small);
    expect(nestedSweep(small)).toEqual(result);
    expect(small).toEqual(before);
  });
});

describe("where no pair fits", () => {
  it("the result says by how much the nearest one misses the clearance, and nothing where one fits", () => {
    expect(result.lacking).toBeNull();
    const tight: Brief = { ...small, envelope: { bore: 0.03, clearance: { length: 0.06 } } };
    const { pairsFit, lacking, pairs } = nestedSweep({ ...tight, limits: { ...tight.limits, lifted: ["outsideDiameter"] } });
    expect(pairsFit).toBe(0);
    expect(pairs).toEqual([]);
    // The clearance lowered by what lacks lets exactly the nearest pair in.
    const length = 0.06 - (lacking as number);
    const eased: Brief = { ...tight, envelope: { bore: 0.03, clearance: { length: length - 1e-9 } } };
    const closed: Brief = { ...tight, envelope: { bore: 0.03, clearance: { length: length + 1e-6 } } };
    const lifted = (brief: Brief) => nestedSweep({ ...brief, limits: { ...brief.limits, lifted: ["outsideDiameter"] } });
    expect(lifted(eased).pairsFit).toBeGreaterThan(0);
    expect(lifted(closed).pairsFit).toBe(0);
  });

  it("and no share has both springs, there is no miss to tell", () => {
    const { feasible, lacking } = nestedSweep({ ...small, envelope: { ...small.envelope, freeLength: { max: 0.05 } } });
    expect([feasible, lacking]).toEqual([0, null]);
  });
});
