import { describe, expect, it } from "vitest";
import { bucklingDeflection, stableFreeLength } from "../../src/mechanics/buckling.ts";
import { activeTurns, minimumGap, solidLength } from "../../src/mechanics/ends.ts";
import {
  diameterGrowth,
  outsideDiameterAtSolid,
  outsideDiameterPressed,
  pitch,
  pitchAngle,
  springIndex,
} from "../../src/mechanics/geometry.ts";
import { wireLength, wireMass } from "../../src/mechanics/mass.ts";
import { expectPrinted } from "../published/print.ts";

describe("the end table", () => {
  it.each([
    ["plain", 0, 1, 0, 1],
    ["plain and ground", 1, 0, 1, 0],
    ["squared", 2, 1, 0, 3],
    ["squared and ground", 2, 0, 0, 2],
  ])("%s: a spring wound at a pitch of its wire is as long as it is when solid", (_, dead, extra, pitchTurns, pitchWires) => {
    const [total, wire] = [10, 0.002];
    const solid = solidLength(total, extra, wire);
    expect(pitch(solid, wire, activeTurns(total, dead), pitchTurns, pitchWires)).toBeCloseTo(wire, 15);
  });

  it("takes dead turns from the total, and counts extra wires into the solid length", () => {
    expect([activeTurns(12.5, 2), solidLength(12.5, 1, 2)]).toEqual([10.5, 27]);
  });
});

describe("the helix", () => {
  it("has an index of mean diameter over wire diameter", () => expect(springIndex(20, 2)).toBe(10));

  it("rises by half a right angle where the pitch is a whole turn of wire", () => {
    expect(pitchAngle(Math.PI * 3, 3)).toBeCloseTo(Math.PI / 4, 14);
    expect(pitchAngle(0, 3)).toBe(0);
  });

  it("keeps its wire when it is pressed: the length of a turn is the same at both pitches", () => {
    const [mean, wire, free, pressed] = [0.02, 0.002, 0.012, 0.005];
    const grown = outsideDiameterPressed(mean, wire, free, pressed) - wire;
    expect(Math.hypot(Math.PI * grown, pressed)).toBeCloseTo(Math.hypot(Math.PI * mean, free), 14);
  });

  it("does not grow where it is not pressed, and at solid is pressed to a pitch of its wire", () => {
    expect(outsideDiameterPressed(0.02, 0.002, 0.006, 0.006)).toBeCloseTo(0.022, 15);
    expect(outsideDiameterAtSolid(0.02, 0.002, 0.006)).toBe(outsideDiameterPressed(0.02, 0.002, 0.006, 0.002));
  });

  it("has an outside diameter even where a coil can be none", () => {
    expect(outsideDiameterPressed(0.0005, 0.002, 0, 0.002)).toBe(0.002);
  });

  it("grows as the European standard has it: nothing at a pitch of its wire, which is solid", () => {
    expect(diameterGrowth(20, 2, 2)).toBeCloseTo(0, 15);
    // m = 6, d = 2, D = 20: 0.1 (36 - 9.6 - 0.8) / 20.
    expect(diameterGrowth(20, 2, 6)).toBeCloseTo(0.128, 12);
  });

  it("leaves each active coil the gap of EN 13906-1 clause 9.9: 0.0015 D²/d + 0.1 d", () => {
    // D = 20, d = 2: 0.0015 × 400 / 2 + 0.2 = 0.5 for each of 4 coils.
    expect(minimumGap(4, 20, 2)).toBeCloseTo(2, 12);
  });
});

describe("wire", () => {
  it("of one turn is the round of the mean diameter, and weighs as a bar of it does", () => {
    expect(wireLength(1 / Math.PI, 7)).toBeCloseTo(7, 14);
    // A bar of 20 mm and 1 m of steel at 7850 kg/m³ weighs 2.47 kg, as tables of round bar print it.
    expectPrinted(wireMass(7850, 0.02, 1), "2.47");
  });
});

describe("buckling", () => {
  const [youngs, shear] = [206e9, 81.5e9];
  it.each([0.5, 0.7, 1, 2])("begins at the stable free length, with fixity %d", (fixity) => {
    const stable = stableFreeLength(0.02, fixity, youngs, shear);
    expect(bucklingDeflection(stable * (1 - 1e-9), 0.02, fixity, youngs, shear)).toBe(Number.POSITIVE_INFINITY);
    const beyond = stable * (1 + 1e-9);
    expect(bucklingDeflection(beyond, 0.02, fixity, youngs, shear) / beyond).toBeCloseTo(youngs / (2 * (youngs - shear)), 3);
  });

  it("of a long spring comes at a deflection of next to none of its length", () => {
    const long = 100 * stableFreeLength(0.02, 1, youngs, shear);
    expect(bucklingDeflection(long, 0.02, 1, youngs, shear) / long).toBeLessThan(1e-3);
  });
});
