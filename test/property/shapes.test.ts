import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import { asksOf } from "../../src/constrain/asks.ts";
import { Candidate } from "../../src/constrain/candidate.ts";
import { type Limit, limitsFor } from "../../src/constrain/limits.ts";
import { PASSES, type Shape, type Side } from "../../src/constrain/side.ts";
import { stockAt } from "../../src/constrain/stock.ts";
import type { Brief, EndStyle, Material, Wire } from "../../src/model.ts";
import { shipped } from "../catalog/shipped.ts";
import { briefs, CASES, RANDOM } from "./briefs.ts";

/** Verdicts along a rising mean diameter that a shape allows. */
function allows(shape: Shape, passes: readonly boolean[]): boolean {
  const changes = passes.filter((pass, i) => i > 0 && pass !== passes[i - 1]).length;
  const [first, last] = [passes[0], passes.at(-1)];
  switch (shape) {
    case "constant":
      return changes === 0;
    case "rises":
      return changes === 0 || (changes === 1 && last === true);
    case "falls":
      return changes === 0 || (changes === 1 && first === true);
    case "band":
      return changes <= 1 || (changes === 2 && first === false && last === false);
    case "none":
      return true;
  }
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
function* families(brief: Brief): Generator<{ candidate: Candidate; meanDiameters: number[] }> {
  const asks = asksOf(brief);
  for (const material of brief.sweep.materials) {
    for (const wire of brief.sweep.wires.flatMap(({ wires }) => wires)) {
      const stock = stockAt(material as Material, wire.diameter, brief.service.strength);
      if (stock === null) continue;
      for (const ends of brief.sweep.ends) {
        const candidate = new Candidate(asks);
        candidate.setStock(material, 0, wire as Wire, stock);
        candidate.setEnds(ends as EndStyle, 0, asks.turnsAny ? Number.NaN : Math.ceil(asks.turns.min) + ends.deadTurns + 1);
        const meanDiameters = Array.from({ length: 231 }, (_, i) => (2 + i / 10) * wire.diameter);
        yield { candidate, meanDiameters };
      }
    }
  }
}

function along(candidate: Candidate, meanDiameters: readonly number[], side: Side): number[] {
  return meanDiameters.map((meanDiameter) => {
    candidate.place(meanDiameter);
    return side.margin(candidate);
  });
}

/** The first side of a brief that breaks its declared shape, in words; null where every claim holds. */
function brokenClaim(brief: Brief): string | null {
  const limits: readonly Limit[] = limitsFor(asksOf(brief));
  for (const { candidate, meanDiameters } of families(brief)) {
    let left = meanDiameters;
    for (const { name, sides } of limits) {
      for (const side of sides) {
        const margins = along(candidate, left, side);
        if (!margins.every(Number.isFinite)) return `${name}: a margin is not finite`;
        const passes = margins.map((margin) => margin >= PASSES);
        if (!allows(side.shape, passes)) return `${name} (${side.sense}): declared ${side.shape}`;
        if (side.shape === "band" && !climbs(margins)) return `${name} (${side.sense}): a band with two tops`;
        left = left.filter((_, i) => passes[i]);
      }
    }
  }
  return null;
}

describe("the margin of every limit behaves as declared while the mean diameter grows", () => {
  it.each(CASES.filter(({ load, turnsAny }) => turnsAny || !/Nominal|^deflection$/.test(load)))(
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

  it("declares no shape for the solid stress of points with force windows, which fails, passes, fails and passes here", () => {
    const brief = readBrief(
      `
title: Counterexample
practice: handbook
load:
  points:
    - { length: 7.4 mm, force: { min: 2 N, max: 4 N } }
    - { length: 4.4 mm, force: { min: 8 N, max: 9 N } }
sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared-ground], turns: quarter }
limits: { solidStress: { max: 792.4 MPa } }
`,
      "counterexample.yaml",
      shipped,
    );
    const candidate = new Candidate(asksOf(brief));
    const material = brief.sweep.materials[0] as Material;
    const wire: Wire = { label: "0.6 mm", diameter: 0.6e-3, series: "none" };
    const stock = {
      tensileStrength: 2e9,
      strengthBasis: "stated",
      youngsModulus: 206e9,
      shearModulus: 80e9,
      wireDeviation: null,
    };
    candidate.setStock(material, 0, wire, stock);
    candidate.setEnds(brief.sweep.ends[0] as EndStyle, 0, 5.75);
    const side = limitsFor(asksOf(brief)).find(({ name }) => name === "solidStress")?.sides[0] as Side;
    expect(side.shape).toBe("none");
    const passes = along(
      candidate,
      Array.from({ length: 4601 }, (_, i) => (2 + i / 200) * wire.diameter),
      side,
    ).map((m) => m >= PASSES);
    const turns = passes.filter((pass, i) => i === 0 || pass !== passes[i - 1]);
    expect(turns.slice(0, 4)).toEqual([false, true, false, true]);
  });
});
