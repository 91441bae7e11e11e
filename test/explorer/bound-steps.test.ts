import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { movedBy, nearestStep, roundSpan, roundStep } from "../../src/explorer/controls/bound-steps.ts";
import { fitSpan } from "../../src/explorer/controls/handle.ts";

describe("round steps", () => {
  it("are 1, 2 or 5 times a power of ten, and take 40 to 100 of them across any span", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-4, max: 1e5, noNaN: true }), (span) => {
        const step = roundStep(span);
        const first = Number(step.toExponential().split("e")[0]);
        expect([1, 2, 5]).toContain(first);
        expect(span / step).toBeLessThanOrEqual(100 * (1 + 1e-6));
        expect(span / step).toBeGreaterThanOrEqual(40 * (1 - 1e-6));
      }),
    );
  });

  it.each([
    [20, 0.2],
    [1, 0.01],
    [0.7, 0.01],
    [50, 0.5],
    [3000, 50],
  ])("across %d are %d", (span, step) => {
    expect(roundStep(span)).toBe(step);
  });

  it("are reached without binary noise", () => {
    expect(nearestStep(0.30000000000000004, 0.1)).toBe(0.3);
    expect(movedBy(0.65, 1, 0.01)).toBe(0.66);
    expect(movedBy(16, -3, 0.2)).toBe(15.4);
  });

  it("go from a number between two of them to the next round one", () => {
    expect(movedBy(16.03, 1, 0.2)).toBe(16.2);
    expect(movedBy(16.03, -1, 0.2)).toBe(16);
    expect(movedBy(16.03, 10, 0.2)).toBe(18);
  });

  it("widen a span outwards", () => {
    expect(roundSpan([7.3, 16.1], 0.5)).toEqual([7, 16.5]);
    expect(roundSpan([7, 16.5], 0.5)).toEqual([7, 16.5]);
  });
});

describe("an axis with handles", () => {
  it("shows every point and reaches beyond every bound", () => {
    const [low, high] = fitSpan([8, 12, 15], [16], null) ?? [0, 0];
    expect(low).toBeLessThan(8);
    expect(high).toBeGreaterThanOrEqual(17);
  });

  it("stays as it is while it holds what it must", () => {
    const before = fitSpan([8, 12, 15], [16], null);
    expect(fitSpan([8, 12, 14], [15.2], before)).toBe(before);
  });

  it("widens when a bound comes to its end, and closes up when it is far too wide", () => {
    const before = fitSpan([8, 12, 15], [16], null);
    expect(fitSpan([8, 12, 15], [before?.[1] ?? 0], before)?.[1]).toBeGreaterThan(before?.[1] ?? 0);
    expect(fitSpan([11, 11.5, 12], [12], before)?.[1]).toBeLessThan(before?.[1] ?? 0);
  });

  it("stays as it is when nothing fits, so that a handle finds its way back", () => {
    const before = fitSpan([8, 12, 15], [16], null);
    expect(fitSpan([], [9], before)).toBe(before);
    const [low = 9, high = 0] = fitSpan([], [4], before) ?? [];
    expect(low).toBeLessThan(4);
    expect(high).toBeGreaterThanOrEqual(before?.[1] ?? 99);
  });

  it("stands on its bounds alone where nothing fits, and as it was without either", () => {
    const [low, high] = fitSpan([], [16], null) ?? [0, 0];
    expect(low).toBeLessThan(16);
    expect(high).toBeGreaterThan(16);
    expect(fitSpan([], [], [1, 2])).toEqual([1, 2]);
    expect(fitSpan([], [], null)).toBeNull();
  });
});
