import { describe, expect, it } from "vitest";
import { Domain, type MarginBound, type Monotonicity } from "../../src/enumerate/domain.ts";

/** What of 0 to 100 is left once a margin has cut it. */
function cut(monotonicity: Monotonicity, marginAt: (position: number) => number, whole = true, stands = 0, passes = -1e-9) {
  const domain = new Domain(whole);
  domain.set(0, 100);
  const bound: MarginBound = { monotonicity, exactMargin: stands, passMargin: passes, marginAt };
  const gone = domain.prune(bound);
  return { range: domain, gone };
}

/** Those of 0 to 100 that pass, visited one by one. */
const visited = (marginAt: (position: number) => number) =>
  Array.from({ length: 101 }, (_, i) => i).filter((position) => marginAt(position) >= -1e-9);

describe("a cut on whole positions keeps what a visit keeps", () => {
  it.each<[string, Monotonicity, (position: number) => number]>([
    ["rises, from inside", "increasing", (x) => x - 40],
    ["rises, all pass", "increasing", (x) => x],
    ["rises, none passes", "increasing", (x) => x - 101],
    ["rises, the last alone", "increasing", (x) => x - 100],
    ["falls, from inside", "decreasing", (x) => 40.5 - x],
    ["falls, all pass", "decreasing", (x) => 100 - x],
    ["falls, none passes", "decreasing", (x) => -1 - x],
    ["falls, the first alone", "decreasing", (x) => -x],
    ["band inside", "unimodal", (x) => 5 - Math.abs(x - 50)],
    ["band of one", "unimodal", (x) => 0.5 - Math.abs(x - 37)],
    ["band at the lower end", "unimodal", (x) => 5 - x],
    ["band at the upper end", "unimodal", (x) => x - 95],
    ["band of all", "unimodal", (x) => 100 - Math.abs(x - 50)],
    ["band that reaches both ends exactly", "unimodal", (x) => 50 - Math.abs(x - 50)],
    ["band of none", "unimodal", (x) => -1 - Math.abs(x - 50)],
    ["constant that passes", "constant", () => 0],
    ["constant that passes by the room for rounding", "constant", () => -1e-9],
    ["constant that fails", "constant", () => -2e-9],
  ])("%s", (_, monotonicity, marginAt) => {
    const { range: domain, gone } = cut(monotonicity, marginAt);
    const left = visited(marginAt);
    expect(domain.candidates).toBe(left.length);
    expect(gone).toBe(101 - left.length);
    expect(domain.empty).toBe(left.length === 0);
    if (left.length > 0) expect([domain.low, domain.high]).toEqual([left[0], left.at(-1)]);
  });

  it.each<[string, Monotonicity, (position: number) => number, readonly [number, number]]>([
    ["the last alone", "increasing", (x) => x - 100, [100, 100]],
    ["the first alone", "decreasing", (x) => -x, [0, 0]],
    ["the top of a band alone", "unimodal", (x) => -Math.abs(x - 50), [50, 50]],
    ["a band from the first", "unimodal", (x) => Math.min(x, 10 - x), [0, 10]],
    ["a band to the last", "unimodal", (x) => Math.min(100 - x, x - 90), [90, 100]],
  ])("keeps what stands on the bound itself: %s", (_, monotonicity, marginAt, ends) => {
    const { range: domain } = cut(monotonicity, marginAt, true, 0, 0);
    expect([domain.low, domain.high]).toEqual(ends);
  });

  it("keeps a band whose top is over the margin from which it passes, and not one whose top is under it", () => {
    const around = (top: number) => cut("unimodal", (x) => top - Math.abs(x - 50), true, 0, -2).range;
    expect([around(-1).low, around(-1).high]).toEqual([49, 51]);
    expect([around(-3).empty, around(-2).candidates]).toEqual([true, 1]);
  });

  it("looks once at a constant, twice at a bound that all pass or none", () => {
    const looks = (monotonicity: Monotonicity, margin: number) => {
      let count = 0;
      cut(monotonicity, () => {
        count++;
        return margin;
      });
      return count;
    };
    expect([
      looks("constant", 1),
      looks("increasing", 1),
      looks("decreasing", 1),
      looks("increasing", -1),
      looks("decreasing", -1),
    ]).toEqual([1, 1, 1, 2, 2]);
    expect(looks("unimodal", 1)).toBe(2);
  });

  it("takes nothing from a range that is empty, without a look", () => {
    const domain = new Domain(true);
    domain.set(5, 4);
    const marginAt = () => {
      throw new Error("looked");
    };
    expect(domain.prune({ monotonicity: "increasing", exactMargin: 0, passMargin: 0, marginAt })).toBe(0);
    expect([domain.empty, domain.candidates]).toEqual([true, 0]);
  });
});

describe("a cut over the reals", () => {
  it("stands where the bound does, not in the room for rounding", () => {
    const { range: domain, gone } = cut("decreasing", (x) => (40 - x) * 1e-3, false, 0, -1e-1);
    expect([domain.low, domain.high, gone]).toEqual([0, 40, 0]);
  });

  it("uses that room where nothing passes without it", () => {
    const { range: domain, gone } = cut("decreasing", (x) => -1e-10 - x, false, 0, -1e-9);
    expect(gone).toBe(0);
    expect(domain.low).toBe(0);
    expect(domain.high).toBeGreaterThan(0.9e-9 * (1 - 1e-9));
    expect(domain.high).toBeLessThan(0.9e-9 * (1 + 1e-9));
  });

  it("takes the family's one candidate where nothing passes at all", () => {
    const { range: domain, gone } = cut("increasing", (x) => x - 101, false);
    expect([domain.empty, gone]).toEqual([true, 1]);
  });

  it("keeps both borders of a band", () => {
    const { range: domain } = cut("unimodal", (x) => 5 - Math.abs(x - 50), false);
    expect([domain.low, domain.high]).toEqual([45, 55]);
  });
});

describe("a range", () => {
  it("counts its positions on the grid, and one candidate over the reals", () => {
    const [grid, reals] = [new Domain(true), new Domain(false)];
    grid.set(3, 7);
    reals.set(3, 7);
    expect([grid.candidates, reals.candidates]).toEqual([5, 1]);
  });

  it("is empty before it is set, and holds one position where its ends meet", () => {
    const domain = new Domain(true);
    expect([domain.empty, domain.candidates]).toEqual([true, 0]);
    domain.set(4, 4);
    expect([domain.empty, domain.candidates]).toEqual([false, 1]);
  });

  it("copies another's ends and leaves that one alone", () => {
    const [one, other] = [new Domain(true), new Domain(true)];
    one.set(1, 9);
    other.copy(one);
    other.set(other.low, 5);
    expect([one.low, one.high, other.low, other.high]).toEqual([1, 9, 1, 5]);
  });

  it("finds its peak at a whole position on the grid, between them over the reals", () => {
    const [grid, reals] = [new Domain(true), new Domain(false)];
    grid.set(0, 10);
    reals.set(0, 10);
    const figureAt = (at: number) => -Math.abs(at - 3.4);
    expect(grid.maximum(figureAt, Number.POSITIVE_INFINITY).position).toBe(3);
    expect(reals.maximum(figureAt, Number.POSITIVE_INFINITY).position).toBeCloseTo(3.4, 10);
  });

  it.each([
    ["straight pieces", (at: number) => Math.min(at, 4 + at / 8, 9 - at / 4, 18 - 2 * at), 112 / 17, 82 / 17],
    ["a peak at the lower end", (at: number) => -3 * at, 1, -3],
    ["a peak at the upper end", (at: number) => at / 7, 10, 10 / 7],
  ])("finds the peak of what is concave in few looks: %s", (_, figureAt, top, atTop) => {
    const reals = new Domain(false);
    reals.set(1, 10);
    let looks = 0;
    const { position, figure } = reals.maximum(
      (at) => {
        looks++;
        return figureAt(at);
      },
      Number.POSITIVE_INFINITY,
      true,
    );
    expect(figure).toBeCloseTo(atTop, 11);
    expect(position).toBeCloseTo(top, 5);
    expect(looks).toBeLessThan(45);
  });
});
