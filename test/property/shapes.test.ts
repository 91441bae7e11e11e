import { pairs } from "d3-array";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { Candidate } from "../../src/constrain/candidate/candidate.ts";
import { longestFreeLength } from "../../src/constrain/candidate/free-length.ts";
import { wirePropertiesAt } from "../../src/constrain/candidate/wire-properties.ts";
import { type Bound, PASSES } from "../../src/constrain/limits/bound.ts";
import { type Limit, limitsFor } from "../../src/constrain/limits/limits.ts";
import { resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import type { Monotonicity } from "../../src/enumerate/domain.ts";
import type { Brief, EndStyle, Limits, Material, Wire } from "../../src/model.ts";
import type { TolerancedSpring } from "../../src/practice/choices.ts";
import { briefs, CASES, met, RANDOM } from "./briefs.ts";

/** Verdicts along a rising mean diameter that a monotonicity allows. */
function allows(monotonicity: Monotonicity, passes: readonly boolean[]): boolean {
  const changes = passes.filter((pass, i) => i > 0 && pass !== passes[i - 1]).length;
  const [first, last] = [passes[0], passes.at(-1)];
  switch (monotonicity) {
    case "constant":
      return changes === 0;
    case "increasing":
      return changes === 0 || (changes === 1 && last === true);
    case "decreasing":
      return changes === 0 || (changes === 1 && first === true);
    case "unimodal":
    case "concave":
      return changes <= 1 || (changes === 2 && first === false && last === false);
    case "unknown":
      return true;
  }
}

/** A concave margin over even steps: its slope never rises, a billionth of slack for rounding. */
function isConcave(margins: readonly number[]): boolean {
  return margins.every((at, i) => i < 2 || at - 2 * (margins[i - 1] as number) + (margins[i - 2] as number) < 1e-9);
}

/** A band must also lead a climber to its top: no step down before a step up, a billionth of slack for rounding. */
function climbs(margins: readonly number[]): boolean {
  let falling = false;
  for (let i = 1; i < margins.length; i++) {
    const step = (margins[i] as number) - (margins[i - 1] as number);
    if (step < -1e-9) falling = true;
    if (step > 1e-9 && falling) return false;
  }
  return true;
}

/** Each family of a brief as a candidate, with the mean diameters of its grid. */
function* families(
  brief: Brief,
  requirements = resolveRequirements(brief),
): Generator<{ candidate: Candidate; meanDiameters: number[] }> {
  for (const material of brief.sweep.materials) {
    for (const wire of brief.sweep.wires.flatMap(({ wires }) => wires)) {
      const wireProperties = wirePropertiesAt(material as Material, wire.diameter, brief.service.strength);
      if (wireProperties === null) continue;
      for (const ends of brief.sweep.ends) {
        const candidate = new Candidate(requirements);
        candidate.setWire(material, 0, wire as Wire, wireProperties);
        candidate.setEnds(
          ends as EndStyle,
          0,
          requirements.turnsAny ? Number.NaN : Math.ceil(requirements.turns.min) + ends.deadTurns + 1,
        );
        const meanDiameters = Array.from({ length: 231 }, (_, i) => (2 + i / 10) * wire.diameter);
        yield { candidate, meanDiameters };
      }
    }
  }
}

function along(candidate: Candidate, meanDiameters: readonly number[], bound: Bound): number[] {
  return meanDiameters.map((meanDiameter) => {
    candidate.setMeanDiameter(meanDiameter);
    return bound.margin(candidate);
  });
}

/** The first bound of a brief that breaks its declared monotonicity, in words; null where every claim holds. */
function brokenClaim(brief: Brief): string | null {
  const limits: readonly Limit[] = limitsFor(resolveRequirements(brief));
  for (const { candidate, meanDiameters } of families(brief)) {
    let left = meanDiameters;
    for (const { name, bounds } of limits) {
      for (const bound of bounds) {
        const margins = along(candidate, left, bound);
        if (!margins.every(Number.isFinite)) return `${name}: a margin is not finite`;
        const passes = margins.map((margin) => margin >= PASSES);
        if (!allows(bound.monotonicity, passes)) return `${name} (${bound.sense}): declared ${bound.monotonicity}`;
        if (bound.monotonicity === "unimodal" && !climbs(margins)) return `${name} (${bound.sense}): a band with two tops`;
        left = left.filter((_, i) => passes[i]);
      }
    }
  }
  return null;
}

describe("the margin of every limit behaves as declared while the mean diameter grows", () => {
  it.each(CASES.filter(({ load, turnsAny }) => turnsAny || !/Nominal|Tolerance|^deflection$/.test(load)))(
    "$load, turns any: $turnsAny",
    ({ load, turnsAny }) => {
      fc.assert(
        fc.property(briefs(load, turnsAny), (brief) => {
          expect(brokenClaim(brief)).toBeNull();
        }),
        RANDOM,
      );
    },
  );
});

/** A clash allowance of each rule. */
const CLASHES = {
  ofDeflection: { ofDeflection: 0.15 },
  ofSolidLength: { ofSolidLength: 0.12 },
  length: { length: 1e-3 },
  minimumGap: { minimumGap: 1 },
  off: "off",
} as const satisfies Readonly<Record<string, Limits["clash"]>>;

/** Every class of briefs that a monotonicity may depend on. */
const CLASSES = CASES.flatMap(({ load, turnsAny }) =>
  (["handbook", "en13906"] as const).flatMap((practice) =>
    (Object.keys(CLASHES) as (keyof typeof CLASHES)[]).map((clash) => ({ load, turnsAny, practice, clash })),
  ),
).filter(({ load, turnsAny }) => turnsAny || !/Nominal|Tolerance|^deflection$/.test(load));

/** A brief of one class in which the solid stress is what bites: its bound is the stress somewhere along a family. */
function stressed(drawn: Brief, { practice, clash }: (typeof CLASSES)[number], place: number): Brief {
  const limits: Limits = {
    ...drawn.limits,
    clash: CLASHES[clash],
    fatigue: "off",
    loadTolerance: "off",
    solidStress: { safety: 1 },
  };
  const brief: Brief = { ...drawn, practice, limits };
  const [{ candidate, meanDiameters } = { candidate: null, meanDiameters: [] }] = families(brief);
  if (candidate === null) return brief;
  candidate.setMeanDiameter(meanDiameters[Math.floor(place * (meanDiameters.length - 1))] as number);
  const max = candidate.stressAtSolid;
  return Number.isFinite(max) && max > 0 ? { ...brief, limits: { ...limits, solidStress: { max } } } : brief;
}

describe("every class of load, turns, clash rule and practice holds its declared monotonicity", () => {
  const counts = new Map<string, number>();
  const bands = new Set<string>();

  it.each(CLASSES)("$load, turns any: $turnsAny, $practice, clash $clash", (one) => {
    const name = Object.values(one).join(" ");
    const runs = Math.ceil(RANDOM.numRuns / 2);
    fc.assert(
      fc.property(briefs(one.load, one.turnsAny), fc.double({ min: 0, max: 1, noNaN: true }), (drawn, place) => {
        const brief = stressed(drawn, one, place);
        counts.set(name, (counts.get(name) ?? 0) + 1);
        expect(brokenClaim(brief)).toBeNull();
        if (isPeaked(brief)) bands.add(name);
      }),
      { ...RANDOM, numRuns: runs },
    );
    expect(counts.get(name)).toBe(runs);
  });

  it("needs a band where an allowance by turns outweighs the stress: no claim of one slope would hold", () => {
    const needing = CLASSES.filter(({ load, turnsAny, clash }) => load === "deflection" && turnsAny && /Solid|Gap/.test(clash));
    expect(needing).toHaveLength(4);
    expect([...bands]).toEqual(expect.arrayContaining([...met(needing.map((one) => Object.values(one).join(" ")))]));
  });
});

/** Whether the margin of the solid stress fails, passes and fails again along some family. */
function isPeaked(brief: Brief): boolean {
  const limits = limitsFor(resolveRequirements(brief));
  const bound = limits.find(({ name }) => name === "solidStress")?.bounds[0] as Bound;
  return [...families(brief)].some(({ candidate, meanDiameters }) => {
    const passes = along(candidate, meanDiameters, bound).map((margin) => margin >= PASSES);
    const first = passes.indexOf(true);
    return first > 0 && passes.lastIndexOf(true) < passes.length - 1;
  });
}

/**
 * The first bound of a brief that breaks its declared monotonicity over the free lengths of a candidate, in words; null where every
 * claim holds.
 */
function brokenClaimOverFreeLength(brief: Brief): string | null {
  for (const given of [false, true]) {
    const requirements = resolveRequirements(brief, given);
    const limits = limitsFor(requirements);
    for (const { candidate, meanDiameters } of families(brief, requirements)) {
      for (const meanDiameter of meanDiameters.filter((_, i) => i % 23 === 5)) {
        candidate.setMeanDiameter(meanDiameter);
        const low = candidate.freeLength;
        const high = longestFreeLength(candidate);
        if (!(high > low)) continue;
        const steps = requirements.practice.tolerance.freeLengthSteps(candidate as Candidate & TolerancedSpring);
        const inside = steps.filter((step) => low < step && step < high);
        for (const [from, to] of pairs([low, ...inside, high])) {
          // A step belongs to what is before it, or to what is after it: sections end short of both.
          const room = (to - from) * 1e-6;
          let lengths = Array.from({ length: 61 }, (_, i) => from + room + ((to - from - 2 * room) * i) / 60);
          for (const { name, bounds } of limits) {
            for (const bound of bounds) {
              const margins = lengths.map((length) => {
                candidate.freeLength = length;
                return bound.margin(candidate);
              });
              const passes = margins.map((margin) => margin >= PASSES);
              if (!allows(bound.overFreeLength, passes)) return `${name} (${bound.sense}): declared ${bound.overFreeLength}`;
              if (bound.overFreeLength === "concave" && !isConcave(margins)) return `${name} (${bound.sense}): not concave`;
              lengths = lengths.filter((_, i) => passes[i]);
            }
          }
        }
      }
    }
  }
  return null;
}

describe("the margin of every limit behaves as declared while the free length grows", () => {
  it.each(CASES)("$load, turns any: $turnsAny", ({ load, turnsAny }) => {
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        expect(brokenClaimOverFreeLength(brief)).toBeNull();
      }),
      RANDOM,
    );
  });
});
