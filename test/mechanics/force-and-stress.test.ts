import { describe, expect, it } from "vitest";
import { costProxy } from "../../src/mechanics/cost.ts";
import { modulusAtTemperature, ROOM_TEMPERATURE } from "../../src/mechanics/expansion.ts";
import {
  allowedUpperStress,
  fatigueSafetyGerber,
  fatigueSafetyGoodman,
  fatigueSafetyRange,
  fatigueSafetySines,
} from "../../src/mechanics/fatigue.ts";
import { power } from "../../src/mechanics/power.ts";
import { activeTurnsForRate, meanDiameterForRate, springRate } from "../../src/mechanics/rate.ts";
import { shearStress, stressFactorDirect } from "../../src/mechanics/stress.ts";
import { surgeFrequency, surgeFrequencyEndFree } from "../../src/mechanics/surge.ts";
import { expectPrinted } from "../published/print.ts";
import { inch, kpsi, Mpsi, poundForce, poundForcePerInch } from "../published/print-units.ts";

describe("the rate of Shigley Example 10-1, from memory: wire .037 in, D .400 in, 10.5 active turns, G 11.85 Mpsi", () => {
  const rate = springRate(11.85 * Mpsi, 0.037 * inch, 0.4 * inch, 10.5);

  it("is the printed 4.13 lbf/in", () => expectPrinted(rate / poundForcePerInch, "4.13"));

  it("gives back the mean diameter and the turns that made it", () => {
    expect(meanDiameterForRate(11.85 * Mpsi, 0.037 * inch, rate, 10.5)).toBeCloseTo(0.4 * inch, 15);
    expect(activeTurnsForRate(11.85 * Mpsi, 0.037 * inch, 0.4 * inch, rate)).toBeCloseTo(10.5, 12);
  });
});

describe("stress", () => {
  it("at the 6.46 lbf and KB 1.124 of that example is the printed 146 kpsi", () => {
    expectPrinted(shearStress(6.46 * poundForce, 0.4 * inch, 0.037 * inch, 1.124) / kpsi, "146");
  });

  it("of direct shear adds half a wire to each coil", () => expect(stressFactorDirect(10)).toBe(1.05));
});

describe("the natural frequency", () => {
  it("is half of that with one end free", () => expect(surgeFrequencyEndFree(900, 0.01)).toBeCloseTo(75, 12));
  it("is half the root of rate over mass", () => expect(surgeFrequency(900, 0.01)).toBeCloseTo(150, 12));
});

describe("a modulus at temperature", () => {
  it("is itself at 20 °C, and loses its share with every kelvin above", () => {
    expect(modulusAtTemperature(80e9, ROOM_TEMPERATURE, 0.25e-3)).toBe(80e9);
    expect(modulusAtTemperature(80e9, ROOM_TEMPERATURE + 100, 0.25e-3)).toBeCloseTo(78e9, -3);
  });
});

describe("the cost proxy", () => {
  it("is the wire by its mass and each operation once", () => {
    expect(costProxy(2, 3, { grind: 10, set: 200, peen: 4000, relieve: 50_000 })).toBe(54_216);
  });
});

describe("a power", () => {
  it.each([
    [2, 10, 1024],
    [9, 0.5, 3],
    [4, -1, 0.25],
  ])("%d to the %d is %d", (base, exponent, value) => expect(power(base, exponent)).toBeCloseTo(value, 10));
});

describe("safety in cyclic load", () => {
  const [amplitude, mean, ultimate] = [241e6, 379e6, 1300e6];
  const lines = [
    ["goodman", fatigueSafetyGoodman],
    ["gerber", fatigueSafetyGerber],
  ] as const;

  it.each(lines)("by %s is 1 at the stresses that springs endured, and 2 at half of them", (_, safety) => {
    expect(safety(amplitude, mean, amplitude, mean, ultimate)).toBeCloseTo(1, 12);
    expect(safety(amplitude / 2, mean / 2, amplitude, mean, ultimate)).toBeCloseTo(2, 12);
  });

  it.each(lines)("by %s is ultimate over mean where next to nothing alternates", (_, safety) => {
    expect(safety(1, mean, amplitude, mean, ultimate)).toBeCloseTo(ultimate / mean, 4);
  });

  it("has more room by the parabola than by the straight line, between the known point and the ultimate strength", () => {
    const stresses = [150e6, 600e6, amplitude, mean, ultimate] as const;
    expect(fatigueSafetyGerber(...stresses)).toBeGreaterThan(fatigueSafetyGoodman(...stresses));
  });

  it("by the parabola puts the stresses times the safety on it", () => {
    const n = fatigueSafetyGerber(150e6, 600e6, amplitude, mean, ultimate);
    const endurance = amplitude / (1 - (mean / ultimate) ** 2);
    expect((n * 150e6) / endurance + ((n * 600e6) / ultimate) ** 2).toBeCloseTo(1, 12);
  });

  it("by Sines asks for no mean", () => expect(fatigueSafetySines(50, 241)).toBe(4.82));

  it("of a range is the allowed range over the one there is", () => expect(fatigueSafetyRange(200, 500, 650)).toBe(1.5));
});

describe("a Goodman diagram", () => {
  const [lowers, uppers] = [
    [100, 200, 400],
    [600, 650, 800],
  ];
  it.each([
    ["at a point is that point", 200, 650],
    ["at its last point is that point", 400, 800],
    ["between points is on the straight line", 250, 687.5],
    ["before its first is level", 0, 600],
    ["at its first is that point", 100, 600],
    ["beyond its last is level", 900, 800],
  ])("%s", (_, lower, upper) => expect(allowedUpperStress(lower, lowers, uppers)).toBe(upper));
});
