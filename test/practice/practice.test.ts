import { describe, expect, it } from "vitest";
import { outsideDiameterPressed, pitch } from "../../src/mechanics/geometry.ts";
import type { EndStyle } from "../../src/model.ts";
import type { TolerancedSpring } from "../../src/practice/choices.ts";
import { en15800, wireDeviation } from "../../src/practice/en-tolerances.ts";
import { inchTolerances } from "../../src/practice/inch-tolerances.ts";
import { practices } from "../../src/practice/practices.ts";
import { GROUND as ground } from "../constrain/plain.ts";

const squared: EndStyle = { ...ground, name: "squared", solidExtra: 1, pitchWires: 3, ground: false };
const plain: EndStyle = { ...squared, name: "plain", deadTurns: 0, pitchWires: 1, closed: false };
const INCH = 0.0254;

describe("the European standard", () => {
  const { solidLength, outsideDiameterAt, outsideDiameterAtSolid } = practices.en13906;

  it("takes the largest wire for the solid length, and half a wire more at each unground end and the seat, from memory", () => {
    expect(solidLength(10, ground, 2, 2.1)).toBeCloseTo(21, 12);
    expect(solidLength(10, squared, 2, 2.1)).toBeCloseTo(11.5 * 2.1, 12);
  });

  it("takes the pitch for the growth over the free length without one wire, or two and a half unground", () => {
    // m = 6 with d = 2 and D = 20 grows by 0.1 (36 - 9.6 - 0.8) / 20 = 0.128.
    expect(outsideDiameterAtSolid(20, 2, 5, 32, ground)).toBeCloseTo(22.128, 12);
    expect(outsideDiameterAtSolid(20, 2, 5, 35, squared)).toBeCloseTo(22.128, 12);
  });

  it("has a spring grow from nothing where it is free to all of that where a coil rests on a coil", () => {
    expect(outsideDiameterAt(32, 20, 2, 5, 32, ground)).toBeCloseTo(22, 12);
    expect(outsideDiameterAt(12, 20, 2, 5, 32, ground)).toBeCloseTo(22.128, 12);
    expect(outsideDiameterAt(15, 20, 2, 5, 35, squared)).toBeCloseTo(22.128, 12);
  });
});

describe("the handbook", () => {
  const { solidLength, outsideDiameterAt, outsideDiameterAtSolid } = practices.handbook;

  it("takes the solid length from the end table, of the wire as it is", () => {
    expect([solidLength(10, ground, 2, 2.1), solidLength(10, squared, 2, 2.1)]).toEqual([20, 22]);
  });

  it("lets the coil grow as its pitch falls to the wire, and no further than it is pressed", () => {
    const free = pitch(34, 2, 5, 0, 2);
    expect(outsideDiameterAtSolid(20, 2, 5, 34, ground)).toBe(outsideDiameterPressed(20, 2, free, 2));
    expect(outsideDiameterAt(34, 20, 2, 5, 34, ground)).toBeCloseTo(22, 12);
    expect(outsideDiameterAt(14, 20, 2, 5, 34, ground)).toBeCloseTo(outsideDiameterAtSolid(20, 2, 5, 34, ground), 12);
    expect(outsideDiameterAt(24, 20, 2, 5, 34, ground)).toBe(outsideDiameterPressed(20, 2, free, pitch(24, 2, 5, 0, 2)));
  });
});

describe("the scope of EN 15800 takes its ends in", () => {
  const within: TolerancedSpring = {
    wireDiameter: 2e-3,
    meanDiameter: 20e-3,
    activeTurns: 5,
    freeLength: 0.05,
    rate: 1000,
    ends: ground,
  };
  const at = (change: Partial<TolerancedSpring>) => {
    const spring = { ...within, ...change };
    const given = [en15800.freeLength(2, spring), en15800.force(2, spring, 10, 0.01)];
    expect(given[0] === null).toBe(given[1] === null);
    return given[0] !== null;
  };

  it.each<[string, Partial<TolerancedSpring>, Partial<TolerancedSpring>]>([
    ["the thinnest wire", { wireDiameter: 0.07e-3, meanDiameter: 0.7e-3 }, { wireDiameter: 0.0699e-3, meanDiameter: 0.7e-3 }],
    ["the thickest wire", { wireDiameter: 16e-3, meanDiameter: 100e-3 }, { wireDiameter: 16.001e-3, meanDiameter: 100e-3 }],
    ["the least diameter", { wireDiameter: 0.1e-3, meanDiameter: 0.63e-3 }, { wireDiameter: 0.1e-3, meanDiameter: 0.629e-3 }],
    ["the largest diameter", { wireDiameter: 12e-3, meanDiameter: 0.2 }, { wireDiameter: 12e-3, meanDiameter: 0.2001 }],
    ["the longest spring", { freeLength: 0.63 }, { freeLength: 0.6301 }],
    ["the fewest turns", { activeTurns: 2 }, { activeTurns: 1.99 }],
    ["the least index", { wireDiameter: 5e-3 }, { wireDiameter: 5.001e-3 }],
    ["the largest index", { wireDiameter: 1e-3 }, { wireDiameter: 0.9999e-3 }],
  ])("%s", (_, inside, outside) => expect([at(inside), at(outside)]).toEqual([true, false]));

  it("and has its coil diameter by the band, in grade 2 where the grade is called commercial", () => {
    expect(en15800.coilDiameter(2, within)).toBeCloseTo(0.45e-3, 12);
    expect(en15800.coilDiameter("commercial", within)).toBe(en15800.coilDiameter(2, within));
    expect(en15800.coilDiameter(1, within)).not.toBe(en15800.coilDiameter(3, within));
  });

  it("has tolerances on length and force in the ratio of the grades, for springs of any ends", () => {
    const [fine, middle, coarse] = ([1, 2, 3] as const).map((grade) => en15800.freeLength(grade, within) as number);
    expect([(fine as number) / (middle as number), (coarse as number) / (middle as number)]).toEqual([0.63, 1.6]);
    const force = (grade: 1 | 2) => en15800.force(grade, within, 100, 0.01) as number;
    expect(force(1) / force(2)).toBeCloseTo(0.63, 12);
    // A force of nothing may miss by what the length misses by, at the rate.
    expect(en15800.force(2, within, 0, 0)).toBeCloseTo((middle as number) * within.rate, 12);
    expect([en15800.lengthOf(plain), en15800.lengthOf(ground)]).toEqual([true, true]);
  });
});

describe("the tolerances of the inch trade", () => {
  const spring: TolerancedSpring = {
    wireDiameter: 0.035 * INCH,
    meanDiameter: 0.35 * INCH,
    activeTurns: 8,
    freeLength: 2 * INCH,
    rate: 1000,
    ends: ground,
  };
  const length = (change: Partial<TolerancedSpring> = {}) => inchTolerances.freeLength("commercial", { ...spring, ...change });

  it("have the coil diameter by wire and index", () => {
    // Wire .035 in, index 10: .007 in.
    expect(inchTolerances.coilDiameter("commercial", spring)).toBeCloseTo(0.007 * INCH, 12);
    expect(inchTolerances.coilDiameter("commercial", { ...spring, meanDiameter: 0.6 * INCH })).toBeNull();
  });

  it("have the free length by the coils in an inch of it", () => {
    // 8 active coils in 2 inches are 4 to the inch, index 10: .023 in for each inch.
    expect(length()).toBeCloseTo(2 * 0.023 * INCH, 12);
    expect(length({ activeTurns: 60 })).toBeNull();
  });

  it("have no less on a short spring than on one of half an inch", () => {
    expect(length({ freeLength: 0.25 * INCH, activeTurns: 1 })).toBeCloseTo(0.5 * 0.023 * INCH, 12);
  });

  it("have 1.7 times as much where squared ends are not ground, and nothing for plain ends", () => {
    expect((length({ ends: squared }) as number) / (length() as number)).toBeCloseTo(1.7, 12);
    expect(length({ ends: plain })).toBeNull();
    expect([plain, squared, ground].map(inchTolerances.lengthOf)).toEqual([false, true, true]);
  });

  it("have a share of the force, which is nothing to go by where no force is", () => {
    const force = (deflection: number, ends = ground) => inchTolerances.force("commercial", { ...spring, ends }, 100, deflection);
    // .046 in on the length over .46 in of deflection, and 2 %.
    expect(force(0.46 * INCH)).toBeCloseTo(12, 10);
    expect([force(0), force(-0.01), force(0.46 * INCH, plain)]).toEqual([null, null, null]);
  });
});

describe("what drawn wire may miss by", () => {
  it.each([
    [0.09, 0.003],
    [1, 0.015],
    [1.01, 0.02],
    [20, 0.1],
    [25, 0.1],
  ])("wire of %d mm: %d mm, and beyond the last band as in it", (diameter, deviation) => {
    expect(wireDeviation(diameter * 1e-3) * 1e3).toBeCloseTo(deviation, 12);
  });
});

describe("every practice", () => {
  it.each(Object.entries(practices))("%s says of each choice what it rests on", (_, practice) => {
    const { index, turns, clash, clashCyclic, solidSafety, bucklingSafety, surgeMultiple, stressFactor, fatigue } = practice;
    const { asWound, setRemoved } = stressFactor;
    const chosen = [index, turns, clash, clashCyclic, solidSafety, bucklingSafety, surgeMultiple, asWound, setRemoved];
    const more = [fatigue.factor, fatigue.safety, practice.fixity];
    for (const { source } of [...chosen, ...more, practice.tolerance.turns, practice.tolerance.shearModulus]) {
      expect(source).toMatch(/EN \d|Shigley|Associated Spring|JIS|common practice, no source/);
    }
    expect(practice.name).toBe(_);
    expect(practice.tolerance.grades).toContain(practice.tolerance.usual);
  });
});
