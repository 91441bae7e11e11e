import { describe, expect, it } from "vitest";
import type { EndStyle } from "../../../src/model.ts";
import { type Coil, groundFace, halfTurns } from "../../../src/report/drawing/helix.ts";
import { ends } from "../fixture.ts";

const byName = (name: string) => ends.find((style) => style.name === name) as EndStyle;
const coil = (name: string, totalTurns = 9): Coil => ({
  length: 58,
  meanDiameter: 16,
  wireDiameter: 2,
  totalTurns,
  closed: byName(name).closed,
  ground: byName(name).ground,
});
const points = (drawn: Coil) => halfTurns(drawn).flatMap((half) => half.points);

describe("the coil in side view", () => {
  it.each(["plain", "squared"])("an unground %s spring reaches from seat to seat, half a wire beyond its middle line", (name) => {
    const along = points(coil(name)).map((point) => point.along);
    expect(Math.min(...along)).toBeCloseTo(1, 9);
    expect(Math.max(...along)).toBeCloseTo(57, 9);
  });

  it.each(["plain-ground", "squared-ground"])("a %s spring begins and ends its middle line in the plane of its seats", (name) => {
    const along = points(coil(name)).map((point) => point.along);
    expect(Math.min(...along)).toBeCloseTo(0, 9);
    expect(Math.max(...along)).toBeCloseTo(58, 9);
  });

  it("is as wide as the mean diameter", () => {
    const across = points(coil("squared")).map((point) => point.across);
    expect(Math.max(...across)).toBeCloseTo(8, 9);
    expect(Math.min(...across)).toBeCloseTo(-8, 9);
  });

  it.each([7, 7.25, 7.5, 9.75])("%d turns show twice as many half turns, front and back in turn, none backwards", (turns) => {
    const halves = halfTurns(coil("squared", turns));
    expect(halves.length).toBe(Math.ceil(2 * turns));
    expect(halves.map(({ front }) => front)).toEqual(halves.map((_, i) => i % 2 === 0));
    const along = halves.flatMap((half) => half.points.map((point) => point.along));
    expect(along).toEqual([...along].sort((a, b) => a - b));
  });

  it("closed ends lie one wire from crown to crown, active turns one pitch", () => {
    const crowns = halfTurns(coil("squared"))
      .filter(({ front }) => front)
      .map((half) => half.points[0]?.along ?? Number.NaN);
    const middle = (crowns[5] ?? 0) - (crowns[4] ?? 0);
    // L0 = p Na + 3 d for squared ends (Shigley Table 10-1): p = (58 - 6) / 7
    expect(middle).toBeCloseTo(52 / 7, 9);
    // The pitch begins to change a quarter turn before the closed turn ends.
    const quarter = halfTurns(coil("squared"))[0]?.points.at(-1)?.along ?? 0;
    expect(quarter - (crowns[0] ?? 0)).toBeCloseTo(1, 9);
  });

  it("a ground end is flat over most of the diameter", () => {
    const { from, to } = groundFace(coil("squared-ground"), "left");
    expect(to).toBeCloseTo(9, 6);
    expect(from).toBeLessThan(-7);
  });
});
