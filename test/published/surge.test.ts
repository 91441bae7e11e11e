import { it } from "vitest";
import { wireLength, wireMass } from "../../src/mechanics/mass.ts";
import { springRate } from "../../src/mechanics/rate.ts";
import { surgeFrequency } from "../../src/mechanics/surge.ts";
import { expectPrinted } from "./print.ts";

// EN 13906-1 clause 9.12: f = 3560 d (G/ρ)^½ / (n D²) with mm, N/mm² and kg/dm³. The constant is the same for every spring, so one
// will do. Shigley's printed frequencies stand in worked-examples-shigley and fatigue-design-table.
it("the constant of EN 13906-1, from memory, is 3560", () => {
  const [wire, mean, turns, shear, density] = [2, 20, 5, 80_000, 8];
  const rate = springRate(shear * 1e6, wire / 1000, mean / 1000, turns);
  const frequency = surgeFrequency(rate, wireMass(density * 1000, wire / 1000, wireLength(mean / 1000, turns)));
  // Printed to three digits: half a unit is 5.
  expectPrinted((frequency * turns * mean ** 2) / (wire * Math.sqrt(shear / density)), "3560", 5);
});
