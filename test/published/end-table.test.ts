import { describe, expect, it } from "vitest";
import { activeTurns, solidLength } from "../../src/mechanics/ends.ts";
import { pitch } from "../../src/mechanics/geometry.ts";
import { shipped } from "../catalog/shipped.ts";

// Shigley Table 10-1 and Machinery's Handbook, 31st edition, springs, Table 3. For TC = 12.5 total turns of wire d = 2 and a free
// length FL = 60, the printed formulas in figures: active turns N; solid height; pitch.
describe("the end table in figures, 12.5 turns of 2 mm wire, 60 mm long", () => {
  const [turns, wire, free] = [12.5, 2, 60];
  it.each([
    ["plain", "N = TC", 12.5, "(TC + 1) d", 27, "(FL - d) / N", 58 / 12.5],
    ["plain-ground", "N = TC - 1", 11.5, "TC d", 25, "FL / TC", 60 / 12.5],
    ["squared", "N = TC - 2", 10.5, "(TC + 1) d", 27, "(FL - 3d) / N", 54 / 10.5],
    ["squared-ground", "N = TC - 2", 10.5, "TC d", 25, "(FL - 2d) / N", 56 / 10.5],
  ])("%s: %s = %d, solid %s = %d, pitch %s = %d", (name, _n, active, _s, solid, _p, pitched) => {
    const ends = shipped.ends(name, "");
    expect(activeTurns(turns, ends.deadTurns)).toBe(active);
    expect(solidLength(turns, ends.solidExtra, wire)).toBe(solid);
    expect(pitch(free, wire, active, ends.pitchTurns, ends.pitchWires)).toBeCloseTo(pitched, 12);
  });
});

// Figures that books print for whole springs.
describe("printed figures of whole springs", () => {
  it("squared ends, 12.5 turns, are solid at 13.5 d (Shigley Example 10-1)", () => {
    expect(solidLength(12.5, shipped.ends("squared", "").solidExtra, 1)).toBe(13.5);
  });

  it("squared ends, 12.5 turns, have 10.5 active (Shigley Example 10-1)", () => {
    expect(activeTurns(12.5, shipped.ends("squared", "").deadTurns)).toBe(10.5);
  });

  it("squared ends, 12 turns, have 10 active (Shigley, problems of chapter 10)", () => {
    expect(activeTurns(12, shipped.ends("squared", "").deadTurns)).toBe(10);
  });

  // Shigley Example 10-2, the column of .080 in wire: Na 10.05, printed Ls .964 in.
  it("squared and ground ends, 10.05 active turns of .080 in wire, are solid at .964 in (Shigley Example 10-2)", () => {
    const ends = shipped.ends("squared-ground", "");
    expect(solidLength(10.05 + ends.deadTurns, ends.solidExtra, 0.08).toFixed(3)).toBe("0.964");
  });
});

it("ends that are closed or ground say so by their name", () => {
  for (const name of ["plain", "plain-ground", "squared", "squared-ground"]) {
    const { closed, ground } = shipped.ends(name, "");
    expect([closed, ground]).toEqual([name.startsWith("squared"), name.endsWith("ground")]);
  }
});
