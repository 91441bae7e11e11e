import { describe, expect, it } from "vitest";
import { activeTurns, solidLength } from "../../../src/mechanics/ends.ts";
import { outsideDiameterAtSolid, pitch } from "../../../src/mechanics/geometry.ts";
import { wireLength, wireMass } from "../../../src/mechanics/mass.ts";
import { springRate } from "../../../src/mechanics/rate.ts";
import type { Brief, EndStyle, LoadPoint, NestedDesign } from "../../../src/model.ts";
import { nestedSweep } from "../../../src/studies/nested.ts";
import { read } from "../../brief/reading.ts";
import { demo, small } from "./briefs.ts";

/** One spring again from its wire, diameter, turns, ends and free length alone. */
function again({ ends: name, ...spring }: NestedDesign, { sweep }: Brief) {
  const { wireDiameter: d, meanDiameter, freeLength, totalTurns, shearModulus, density } = spring;
  const ends = sweep.ends.find((style) => style.name === name) as EndStyle;
  const turns = activeTurns(totalTurns, ends.deadTurns);
  const rate = springRate(shearModulus, d, meanDiameter, turns);
  const coilPitch = pitch(freeLength, d, turns, ends.pitchTurns, ends.pitchWires);
  return {
    rate,
    forceAt: (length: number) => rate * (freeLength - length),
    solidLength: solidLength(totalTurns, ends.solidExtra, d),
    diameterAtSolid: outsideDiameterAtSolid(meanDiameter, d, coilPitch),
    insideDiameter: meanDiameter - d,
    mass: wireMass(density, d, wireLength(meanDiameter, totalTurns)),
  };
}

const inches = read(`practice: handbook
nested: 2
load: { rate: 120 lbf/in ± 5 %, points: [{ length: 2 in, force: 60 lbf }] }
envelope: { bore: 1.5 in, clearance: 0.03 in }
sweep: { wires: [us-music], materials: [astm-a228], ends: [squared-ground], turns: quarter }
service: { seats: guided }
`);

const CASES: readonly (readonly [string, Brief, rate: number, points: readonly LoadPoint[]])[] = [
  ["the demo brief", demo, 40_000, demo.load.kind === "points" ? demo.load.points : []],
  ["a small brief", small, 30_000, small.load.kind === "points" ? small.load.points : []],
  [
    "a rate with a point, in inches",
    inches,
    (120 * 4.4482216152605) / 0.0254,
    inches.load.kind === "rateAndPoint" ? [inches.load.point] : [],
  ],
];

describe.each(CASES)("each pair of %s, recomputed from its two springs", (_title, brief, rate, points) => {
  const { pairs } = nestedSweep(brief);
  const springs = pairs.map((pair) => ({ pair, outer: again(pair.outer, brief), inner: again(pair.inner, brief) }));
  const relative = (value: number, expected: number) => expect(value / expected - 1).toBeCloseTo(0, 9);

  it("is there to be recomputed", () => {
    expect(pairs.length).toBeGreaterThan(0);
    expect(points.length).toBeGreaterThan(0);
  });

  it("gives the rate and every nominal force that the load asks, each spring its share of it", () => {
    for (const { pair, outer, inner } of springs) {
      relative(outer.rate + inner.rate, rate);
      relative(pair.rate, rate);
      relative(outer.rate, pair.share * rate);
      for (const { name, length, force } of points) {
        relative(outer.forceAt(length) + inner.forceAt(length), force.nominal as number);
        relative(outer.forceAt(length), pair.share * (force.nominal as number));
        expect(pair.outer.points.find((point) => point.name === name)?.force).toBeCloseTo(outer.forceAt(length), 6);
        expect(pair.inner.points.find((point) => point.name === name)?.force).toBeCloseTo(inner.forceAt(length), 6);
      }
    }
  });

  it("has one free length", () => {
    for (const { pair } of springs) relative(pair.outer.freeLength, pair.inner.freeLength);
  });

  it("is solid nowhere at the shortest length asked, with the clash allowance of 15 % left", () => {
    const shortest = Math.min(...points.map(({ length }) => length));
    for (const { pair, outer, inner } of springs) {
      const allowance = 0.15 * (pair.outer.freeLength - shortest);
      expect(outer.solidLength).toBeLessThanOrEqual(shortest - allowance + 1e-9);
      expect(inner.solidLength).toBeLessThanOrEqual(shortest - allowance + 1e-9);
    }
  });

  it("keeps the clearance between the outer's inside and the inner grown solid, and says what is left beyond it", () => {
    const { clearance } = brief.envelope;
    for (const { pair, outer, inner } of springs) {
      const asked = clearance && ("share" in clearance ? clearance.share * outer.insideDiameter : clearance.length);
      const left = outer.insideDiameter - inner.diameterAtSolid - (asked as number);
      expect(left).toBeGreaterThanOrEqual(-1e-9 * outer.insideDiameter);
      expect(pair.clearance).toBeCloseTo(left, 9);
      const deviations = (pair.outer.tolerance.coilDiameter ?? 0) + (pair.inner.tolerance.coilDiameter ?? 0);
      if (pair.toleranceRoom !== null) expect(pair.toleranceRoom).toBeCloseTo(left - deviations, 9);
    }
  });

  it("keeps the outer out of the bore's wall and the inner off the rod", () => {
    const { bore, rod, clearance } = brief.envelope;
    const room = (diameter: number) =>
      clearance && "share" in clearance ? clearance.share * diameter : (clearance?.length ?? 0);
    for (const { outer, inner } of springs) {
      if (bore !== undefined) expect(outer.diameterAtSolid).toBeLessThanOrEqual((bore - room(bore)) * (1 + 1e-9));
      if (rod !== undefined) expect(inner.insideDiameter).toBeGreaterThanOrEqual((rod + room(rod)) * (1 - 1e-9));
    }
  });

  it("has both springs inside every limit", () => {
    for (const { pair } of springs) {
      for (const spring of [pair.outer, pair.inner]) {
        expect(Object.keys(spring.margins)).toEqual(expect.arrayContaining(["wire", "turns", "index", "clash", "solidStress"]));
        for (const margin of Object.values(spring.margins)) expect(margin).toBeGreaterThanOrEqual(-1e-9);
        expect(spring.solidSafety).toBeGreaterThanOrEqual(1.2 * (1 - 1e-9));
      }
    }
  });

  it("weighs what its springs weigh, is wound in opposite hands, and stands in the order of its rank", () => {
    for (const { pair, outer, inner } of springs) {
      relative(pair.mass, outer.mass + inner.mass);
      expect([pair.outer.hand, pair.inner.hand]).toEqual(["right", "left"]);
      expect([pair.outer.rank, pair.inner.rank]).toEqual([pair.rank, pair.rank]);
    }
    const masses = pairs.map(({ mass }) => mass);
    expect(masses).toEqual([...masses].sort((a, b) => a - b));
  });
});
