import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Brief, Design } from "../../src/model.ts";
import { calculationOf } from "../../src/report/calculation/calculation.ts";
import { evaluate } from "../../src/report/calculation/expression.ts";
import { stepsBySymbol } from "../../src/report/calculation/printed.ts";
import type { Step } from "../../src/report/calculation/steps.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { above, briefs, CASES, RANDOM } from "./briefs.ts";

/** Equations of a design's sheet that do not give the engine's figure. */
function off(brief: Brief, design: Design): readonly string[] {
  const known = stepsBySymbol(calculationOf(brief, design));
  const figureOf = (symbol: string) => (known.get(symbol) as Step).value;
  return [...known.values()].flatMap((step) => {
    if (step.kind === "given") return [];
    const endless = step.endlessBelow !== undefined && figureOf(step.endlessBelow) < 0;
    const value = endless ? Number.POSITIVE_INFINITY : evaluate(step.expression, figureOf);
    const near =
      value === step.value || Math.abs(value - step.value) <= 1e-9 * Math.max(1, Math.abs(value), Math.abs(step.value));
    return near ? [] : [`${step.symbol} = ${step.expression} = ${value}, not ${step.value}`];
  });
}

describe.each(CASES)("the working of designs of $load (turns that follow: $turnsAny)", ({ load, turnsAny }) => {
  it("gives the engine's figure by every equation", () => {
    let worked = 0;
    fc.assert(
      fc.property(briefs(load, turnsAny), (brief) => {
        for (const design of sweep(brief, { top: 2 }).designs) {
          expect(off(brief, design)).toEqual([]);
          worked++;
        }
      }),
      { ...RANDOM, numRuns: Math.min(RANDOM.numRuns, 40) },
    );
    expect(worked).toBeGreaterThan(above(0));
  });
});
