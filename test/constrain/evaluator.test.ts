import { describe, expect, it } from "vitest";
import { isFeasible } from "../../src/constrain/evaluator.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { read } from "../brief/reading.ts";

/** Of the mean diameter, m. */
const STEP = 0.002;

describe("whether a spring fits", () => {
  it.each([
    [
      "force windows at two lengths",
      "{ points: [{ length: 46 mm, force: { min: 18 N, max: 24 N } }, { length: 32 mm, force: { min: 40 N, max: 55 N } }] }",
      "",
    ],
    [
      "a force window at a deflection",
      "{ force: { min: 18 N, max: 24 N }, deflection: 14 mm }",
      "limits: { index: off, buckling: off }",
    ],
    ["cyclic duty", "{ rate: { min: 1 N/mm, max: 2 N/mm }, largestForce: 30 N }", "service: { cycles: 1e6, frequency: 2 Hz }"],
  ])("is what a walk over every spring counts: %s", (_, load, more) => {
    const brief = read(`practice: handbook
load: ${load}
envelope: { bore: 18 mm, rod: 7 mm }
sweep: { wires: [iso-r20], materials: [en-sm, astm-a313-302], ends: [squared-ground], turns: whole, meanDiameter: { step: 2 mm } }
${more}
`);
    let fitting = 0;
    for (const [material] of brief.sweep.materials.entries()) {
      for (const wire of brief.sweep.wires.flatMap(({ wires }) => wires)) {
        const [first, last] = [Math.ceil((2 * wire.diameter) / STEP - 1e-9), Math.floor((25 * wire.diameter) / STEP + 1e-9)];
        for (const ends of brief.sweep.ends.keys()) {
          for (let totalTurns = 3; totalTurns <= 17; totalTurns++) {
            for (let step = first; step <= last; step++) {
              if (isFeasible(brief, { material, wire, ends, totalTurns, meanDiameter: step * STEP })) fitting++;
            }
          }
        }
      }
    }
    expect(fitting).toBeGreaterThan(0);
    expect(fitting).toBe(sweep(brief).feasible);
  });
});
