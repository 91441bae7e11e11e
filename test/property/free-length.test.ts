import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Candidate } from "../../src/constrain/candidate/candidate.ts";
import { isFeasible } from "../../src/constrain/evaluator.ts";
import type { Brief, CheckBrief, Choice, Design, EndStyle, Material } from "../../src/model.ts";
import { check } from "../../src/studies/check.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "./briefs.ts";
import { naiveSweep } from "./naive.ts";

/** The brief that checks one spring of a sweep, at a free length. */
function quoted(brief: Brief, { material, wire, ends, totalTurns, meanDiameter }: Choice, freeLength: number): CheckBrief {
  const given = { material: brief.sweep.materials[material] as Material, wire, ends: brief.sweep.ends[ends] as EndStyle };
  return {
    ...brief,
    sweep: { ...brief.sweep, materials: [given.material], ends: [given.ends] },
    design: { ...given, totalTurns, meanDiameter, freeLength },
  };
}

function choiceOf({ sweep: { wires, materials, ends } }: Brief, design: Design): Choice {
  return {
    material: materials.findIndex(({ name }) => name === design.material),
    wire: wires.flatMap((series) => series.wires).find(({ label }) => label === design.wire) as Choice["wire"],
    ends: ends.findIndex(({ name }) => name === design.ends),
    totalTurns: design.totalTurns,
    meanDiameter: design.meanDiameter,
  };
}

const RUNS = { ...RANDOM, numRuns: Math.ceil((3 * RANDOM.numRuns) / 4) };

/** A brief, and where it asks a load tolerance, which leaves little, the same without it. */
function eitherWay(brief: Brief): readonly Brief[] {
  const without: Brief = { ...brief, limits: { ...brief.limits, loadTolerance: "off" } };
  return brief.limits.loadTolerance === "off" ? [brief] : [brief, without];
}

describe("the free length is free", () => {
  it.each(CASES)("what check passes at any free length the sweep counts: $load, turns any: $turnsAny", ({ load, turnsAny }) => {
    let passed = 0;
    fc.assert(
      fc.property(briefs(load, turnsAny), fc.integer({ min: 0, max: 1000 }), (drawn, start) => {
        for (const brief of eitherWay(drawn)) {
          const seen: { choice: Choice; solidLength: number; freeLength: number }[] = [];
          naiveSweep(brief, (candidate: Candidate) => {
            seen.push({ choice: candidate.choice, solidLength: candidate.solidLength, freeLength: candidate.freeLength });
          });
          const every = Math.max(1, Math.floor(seen.length / 12));
          for (const { choice, solidLength, freeLength } of seen.filter((_, i) => i % every === start % every)) {
            // The spring is pinned or counted as the walk has it; only its length is tried anew.
            // An exact load has one length, which no even look would meet.
            const lengths = [freeLength, ...Array.from({ length: 30 }, (_, look) => solidLength * (1.05 + look / 9))];
            if (!lengths.some((length) => check(quoted(brief, choice, length)).passes)) continue;
            passed++;
            expect(isFeasible(brief, choice)).toBe(true);
          }
        }
      }),
      RUNS,
    );
    expect(passed).toBeGreaterThan(above(0));
  });

  it.each(CASES)(
    "what the sweep lists check passes, to the ends of its range: $load, turns any: $turnsAny",
    ({ load, turnsAny }) => {
      let listed = 0;
      fc.assert(
        fc.property(briefs(load, turnsAny), (brief) => {
          const { designs, front } = sweep(brief, { top: 6 });
          for (const design of [...designs, ...front.slice(0, 3)]) {
            listed++;
            const { min, max } = design.freeLengthRange as { min: number; max: number };
            expect(design.freeLength).toBeGreaterThanOrEqual(min * (1 - 1e-12));
            expect(design.freeLength).toBeLessThanOrEqual(max * (1 + 1e-12));
            const failing = (length: number) =>
              check(quoted(brief, choiceOf(brief, design), length)).entries.filter(({ passes }) => !passes);
            for (const length of [design.freeLength, min, max]) expect(failing(length)).toEqual([]);
            // What a grade may miss by moves in steps, so beyond its stretch another one may pass.
            if (brief.limits.loadTolerance !== "off") continue;
            const straight = Math.PI * design.meanDiameter * design.totalTurns;
            expect(failing(min * (1 - 1e-6))).not.toEqual([]);
            if (max < straight * (1 - 1e-6)) expect(failing(max * (1 + 1e-6))).not.toEqual([]);
          }
        }),
        RUNS,
      );
      expect(listed).toBeGreaterThan(above(0));
    },
  );
});
