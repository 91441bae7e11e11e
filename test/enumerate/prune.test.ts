import { describe, expect, it } from "vitest";
import {
  BestCollector,
  FirstCollector,
  GridBestCollector,
  GridCollector,
  NearMissCollector,
} from "../../src/enumerate/collector.ts";
import { Domain, type Monotonicity } from "../../src/enumerate/domain.ts";
import { type CandidateEvaluator, type PruningBound, PruningSearch, SolvedSearch } from "../../src/enumerate/prune.ts";

import type { Wire } from "../../src/model.ts";

const wire = (label: string): Wire => ({ label, diameter: 1, series: "one" });
const bound = (
  monotonicity: Monotonicity,
  marginAt: (position: number) => number,
  scope: PruningBound["scope"] = "family",
  slot = 0,
): PruningBound => ({ monotonicity, marginAt, scope, slot, exactMargin: 0, passMargin: 0 });
const whole = (low: number, high: number): Domain => {
  const domain = new Domain(true);
  domain.set(low, high);
  return domain;
};
const reals = (low: number, high: number): Domain => {
  const domain = new Domain(false);
  domain.set(low, high);
  return domain;
};

/** A place that notes what it is told, and counts what falls by slot. */
class Noted implements CandidateEvaluator {
  readonly words: string[] = [];
  readonly counts: Record<number, number> = {};
  private readonly refuses: string;

  constructor(refuses = "") {
    this.refuses = refuses;
  }

  enter(material: number, { label }: Wire): number | null {
    this.words.push(`enter ${material} ${label}`);
    return label === this.refuses ? 9 : null;
  }

  setActiveTurns(activeTurns: number): void {
    this.words.push(`turns ${activeTurns}`);
  }

  setEnds(ends: number, totalTurns: number): void {
    this.words.push(`ends ${ends} ${totalTurns}`);
  }

  reject(slot: number, candidates: number): void {
    if (candidates !== 0) this.counts[slot] = (this.counts[slot] ?? 0) + candidates;
  }
}

/** Walks one wire of positions 1 to 10 in two turns of two ends, and hands back what falls, by slot, and what is left. */
function walked(bounds: readonly PruningBound[], evaluator = new Noted(), visiting: (positions: number) => void = () => {}) {
  const left: number[] = [];
  const collector = new GridCollector(
    (position) => left.push(position),
    (slot, count) => evaluator.reject(slot, count),
    visiting,
  );
  const walk = new PruningSearch(evaluator, { whole: true, domain: () => ({ low: 1, high: 10 }) }, bounds, collector);
  const entered = walk.enter(0, wire("w"), 4);
  if (entered) {
    for (const turns of [3, 4]) {
      walk.turns(turns);
      walk.family(0, turns);
      walk.family(1, turns);
    }
  }
  walk.finish();
  return { left, counts: evaluator.counts, words: evaluator.words, entered };
}

describe("the walk that cuts", () => {
  it("hands on every position of every family where nothing is asked", () => {
    expect(walked([]).left).toHaveLength(40);
  });

  it("counts a candidate where it falls first, once for each family that shares the cut", () => {
    const { left, counts } = walked([
      bound("decreasing", (x) => 8 - x, "wire", 0),
      bound("increasing", (x) => x - 3, "turns", 1),
      bound("unimodal", (x) => 1 - Math.abs(x - 5), "family", 2),
    ]);
    // Of 10 positions 9 and 10 fall first, then 1 and 2, then 3, 7 and 8, in each of four families.
    expect(counts).toEqual({ 0: 8, 1: 8, 2: 12 });
    expect(left).toEqual([4, 5, 6, 4, 5, 6, 4, 5, 6, 4, 5, 6]);
  });

  it("cuts what depends on the wire once for a wire, and what depends on turns once for a count of them", () => {
    const looks = { wire: 0, turns: 0, family: 0 };
    const counting = (scope: PruningBound["scope"]) =>
      bound(
        "decreasing",
        (x) => {
          looks[scope]++;
          return 10 - x;
        },
        scope,
      );
    walked([counting("wire"), counting("turns"), counting("family")]);
    expect(looks).toEqual({ wire: 1, turns: 2, family: 4 });
  });

  it("keeps the order of limits: what stands after one of a narrower scope is cut with it", () => {
    const { counts } = walked([bound("increasing", (x) => x - 6, "family", 0), bound("decreasing", (x) => 3 - x, "wire", 1)]);
    expect(counts).toEqual({ 0: 20, 1: 20 });
  });

  it("rejects a whole family by a constant that stands first, before any cut, and does not look at its diameters", () => {
    const { counts, left } = walked([
      bound("constant", () => -1, "turns", 0),
      bound(
        "decreasing",
        () => {
          throw new Error("looked");
        },
        "family",
        1,
      ),
    ]);
    expect([counts, left]).toEqual([{ 0: 40 }, []]);
  });

  it("judges a constant of the family for each of them", () => {
    let ends = 0;
    const evaluator = new (class extends Noted {
      override setEnds(which: number, totalTurns: number): void {
        super.setEnds(which, totalTurns);
        ends = which;
      }
    })();
    const { counts, left } = walked([bound("constant", () => (ends === 0 ? -1 : 0), "family", 3)], evaluator);
    expect(counts).toEqual({ 3: 20 });
    expect(left).toHaveLength(20);
  });

  it("counts no family twice: one that falls at a constant is not told of the cuts that others share", () => {
    let ends = 0;
    const evaluator = new (class extends Noted {
      override setEnds(which: number, totalTurns: number): void {
        super.setEnds(which, totalTurns);
        ends = which;
      }
    })();
    const { counts, left } = walked(
      [bound("constant", () => (ends === 0 ? -1 : 0), "family", 0), bound("decreasing", (x) => 4 - x, "wire", 1)],
      evaluator,
    );
    expect(counts).toEqual({ 0: 20, 1: 12 });
    expect(left).toHaveLength(8);
  });

  it("does not set the ends of families of which nothing is left", () => {
    const { words, counts } = walked([bound("decreasing", () => -1, "turns", 0)]);
    expect(words).toEqual(["enter 0 w", "turns 3", "turns 4"]);
    expect(counts).toEqual({ 0: 40 });
  });

  it("visits from the first bound of unknown monotonicity on, and the bounds after it too", () => {
    const visits: number[] = [];
    const { counts, left } = walked(
      [
        bound("decreasing", (x) => 8 - x, "family", 0),
        bound("unknown", (x) => (x % 2 === 0 ? 1 : -1), "family", 1),
        bound("increasing", (x) => x - 5, "wire", 2),
      ],
      new Noted(),
      (positions) => visits.push(positions),
    );
    expect(counts).toEqual({ 0: 8, 1: 16, 2: 8 });
    expect(left).toEqual([6, 8, 6, 8, 6, 8, 6, 8]);
    expect(visits).toEqual([8, 8, 8, 8]);
  });

  it("does not look at bounds beyond the one that takes the last", () => {
    const { counts } = walked([
      bound("decreasing", () => -1, "family", 0),
      bound(
        "unknown",
        () => {
          throw new Error("looked");
        },
        "family",
        1,
      ),
    ]);
    expect(counts).toEqual({ 0: 40 });
  });

  it("counts all families of a material and wire that are refused together at that refusal", () => {
    const { counts, left, entered } = walked([], new Noted("w"));
    expect([counts, left, entered]).toEqual([{ 9: 4 }, [], false]);
  });

  it("takes what is constant out before a cut that wires share, so that it is still made once for a wire", () => {
    let looks = 0;
    const shared = bound(
      "decreasing",
      (x) => {
        looks++;
        return 10 - x;
      },
      "wire",
    );
    walked([bound("constant", () => 0, "turns"), shared]);
    walked([bound("constant", () => 0, "family"), shared]);
    expect(looks).toBe(2);
  });

  it("counts a family at its own constant even where turns have left it nothing", () => {
    let ends = 0;
    const evaluator = new (class extends Noted {
      override setEnds(which: number, totalTurns: number): void {
        super.setEnds(which, totalTurns);
        ends = which;
      }
    })();
    const bounds = [bound("constant", () => (ends === 0 ? -1 : 0), "family", 0), bound("decreasing", () => -1, "turns", 1)];
    expect(walked(bounds, evaluator).counts).toEqual({ 0: 20, 1: 20 });
  });

  it("judges constants that follow each other by what each depends on", () => {
    let [turns, ends] = [0, 0];
    const evaluator = new (class extends Noted {
      override setActiveTurns(activeTurns: number): void {
        turns = activeTurns;
      }
      override setEnds(which: number): void {
        ends = which;
      }
    })();
    const walk = new PruningSearch(
      evaluator,
      { whole: true, domain: () => ({ low: 1, high: 10 }) },
      [bound("constant", () => (turns === 4 ? -1 : 0), "turns", 0), bound("constant", () => (ends === 1 ? -1 : 0), "family", 1)],
      new FirstCollector(() => {}),
    );
    walk.enter(0, wire("w"), 6);
    for (const count of [3, 4, 5]) {
      walk.turns(count);
      for (const which of [0, 1]) walk.family(which, count);
    }
    walk.finish();
    expect(evaluator.counts).toEqual({ 0: 20, 1: 20 });
  });

  it("visits by a bound of unknown monotonicity whatever it depends on, for its verdicts need not be one stretch", () => {
    const odd = (scope: PruningBound["scope"]) => bound("unknown", (x) => (x % 2 === 1 ? 1 : -1), scope, 0);
    for (const scope of ["wire", "turns", "family"] as const) expect(walked([odd(scope)]).counts).toEqual({ 0: 20 });
  });

  it("hands nothing on where nothing is left", () => {
    let gathered = 0;
    const collector = { collect: () => gathered++, collectVisited: () => gathered++ };
    const bounds = [bound("decreasing", () => -1, "family", 0)];
    const walk = new PruningSearch(new Noted(), { whole: true, domain: () => ({ low: 1, high: 10 }) }, bounds, collector);
    walk.enter(0, wire("w"), 1);
    walk.turns(3);
    walk.family(0, 3);
    expect(gathered).toBe(0);
  });

  it("tells the cuts of one wire before it takes the next", () => {
    const evaluator = new Noted();
    const collector = new FirstCollector(() => {});
    const walk = new PruningSearch(
      evaluator,
      { whole: true, domain: () => ({ low: 1, high: 10 }) },
      [bound("decreasing", (x) => 6 - x, "wire", 0)],
      collector,
    );
    walk.enter(0, wire("a"), 1);
    walk.turns(3);
    walk.family(0, 3);
    expect(evaluator.counts).toEqual({});
    walk.enter(0, wire("b"), 1);
    expect(evaluator.counts).toEqual({ 0: 4 });
    walk.finish();
    expect(evaluator.counts).toEqual({ 0: 4 });
  });
});

describe("the walk of solved diameters", () => {
  const walkOf = (evaluator: CandidateEvaluator, bounds: readonly PruningBound[], onFeasible: (meanDiameter: number) => void) =>
    new SolvedSearch(evaluator, bounds, () => 7, onFeasible);

  it("judges the one diameter of each family, and counts it where it falls first", () => {
    const evaluator = new Noted();
    const kept: number[] = [];
    const bounds = (limit: number) => [
      bound("decreasing", (x) => 8 - x, "wire", 0),
      bound("increasing", (x) => x - limit, "family", 1),
    ];
    for (const limit of [7, 7.5]) {
      const walk = walkOf(evaluator, bounds(limit), (meanDiameter) => kept.push(meanDiameter));
      expect(walk.enter(0, wire("w"), 1)).toBe(true);
      walk.turns(3);
      walk.family(1, 5);
      walk.finish();
    }
    expect(kept).toEqual([7]);
    expect(evaluator.counts).toEqual({ 1: 1 });
    expect(evaluator.words.slice(0, 3)).toEqual(["enter 0 w", "turns 3", "ends 1 5"]);
  });

  it("counts families that are refused with their material and wire", () => {
    const evaluator = new Noted("w");
    expect(walkOf(evaluator, [], () => {}).enter(0, wire("w"), 6)).toBe(false);
    expect(evaluator.counts).toEqual({ 9: 6 });
  });
});

/** What a harvest hands on. */
function handed(make: (onFeasible: (position: number) => void) => { act: () => void }): number[] {
  const handed: number[] = [];
  make((position) => handed.push(position)).act();
  return handed;
}

describe("the nearest misses of a family", () => {
  const missing = (bounds: readonly PruningBound[], domain: Domain, visiting: (positions: number) => void = () => {}) =>
    handed((onFeasible) => ({ act: () => new NearMissCollector(onFeasible, bounds, visiting).collect(domain) }));

  it("are the neighbours of the stretch that passes", () => {
    expect(missing([bound("unimodal", (x) => 2 - Math.abs(x - 10))], whole(1, 20))).toEqual([7, 13]);
  });

  it("are on the one side where the stretch reaches the other end", () => {
    expect(missing([bound("decreasing", (x) => 5 - x)], whole(1, 20))).toEqual([6]);
    expect(missing([bound("increasing", (x) => x - 5)], whole(1, 20))).toEqual([4]);
    expect(missing([bound("increasing", (x) => x)], whole(1, 20))).toEqual([]);
  });

  it("are the highest margin where nothing passes, by the lesser of the bounds", () => {
    expect(missing([bound("increasing", (x) => x - 30), bound("decreasing", (x) => -10 - x)], whole(1, 20))).toEqual([10]);
  });

  it("are at the end that a bound leads to, though its margin stays level on the way", () => {
    expect(missing([bound("increasing", (x) => (x < 18 ? -5 : x - 23))], whole(1, 20))).toEqual([20]);
    expect(missing([bound("decreasing", (x) => (x > 3 ? -5 : -1 - x))], whole(1, 20))).toEqual([1]);
  });

  it("are looked for among all where a bound has unknown monotonicity", () => {
    const visits: number[] = [];
    const bounds = [bound("unknown", (x) => x - 4), bound("increasing", (x) => x)];
    expect(missing(bounds, whole(3, 5), (positions) => visits.push(positions))).toEqual([3, 4, 5]);
    expect(visits).toEqual([3]);
  });

  it("of a range that must be visited are those that pass the other bounds", () => {
    const visits: number[] = [];
    const odd = bound("unknown", (x) => (x % 2 === 1 ? 0 : -1));
    const found = handed((onFeasible) => ({
      act: () => new NearMissCollector(onFeasible, [], (positions) => visits.push(positions)).collectVisited(whole(1, 6), [odd]),
    }));
    expect([found, visits]).toEqual([[1, 3, 5], [6]]);
  });
});

describe("the least of a figure in a family", () => {
  it("is found in its valley, and no further than to nothing", () => {
    const looked: number[] = [];
    const figureAt = (x: number) => {
      looked.push(x);
      return Math.abs(x - 8);
    };
    expect(
      handed((onFeasible) => ({ act: () => new GridBestCollector(onFeasible, figureAt, () => {}).collect(whole(1, 20)) })),
    ).toEqual([8]);
    looked.length = 0;
    handed((onFeasible) => ({
      act: () =>
        new GridBestCollector(
          onFeasible,
          (x) => figureAt(x) * 0,
          () => {},
        ).collect(whole(1, 20)),
    }));
    expect(looked).toEqual([10]);
  });

  it("is looked for among all that pass where a range must be visited", () => {
    const visits: number[] = [];
    const odd = bound("unknown", (x) => (x % 2 === 1 ? 0 : -1));
    const found = handed((onFeasible) => ({
      act: () =>
        new GridBestCollector(
          onFeasible,
          (x) => x,
          (positions) => visits.push(positions),
        ).collectVisited(whole(2, 7), [odd]),
    }));
    expect([found, visits]).toEqual([[3, 5, 7], [6]]);
  });
});

it("any position of a family is its first, without a look", () => {
  const any = (act: (collector: FirstCollector) => void) =>
    handed((onFeasible) => ({ act: () => act(new FirstCollector(onFeasible)) }));
  expect(any((collector) => collector.collect(whole(4, 9)))).toEqual([4]);
  expect(any((collector) => collector.collectVisited(whole(4, 9)))).toEqual([4]);
});

describe("the best of a family over the reals", () => {
  const rejected: [number, number][] = [];
  const bestOf = (figureAt: (x: number) => number, act: (collector: BestCollector) => void) => {
    rejected.length = 0;
    return handed((onFeasible) => ({
      act: () => act(new BestCollector(onFeasible, (slot, count) => rejected.push([slot, count]), figureAt)),
    }));
  };

  it.each([
    ["an end, exactly, of a figure that rises", (x: number) => x, 2],
    ["an end, exactly, of a figure that falls", (x: number) => -x, 6],
  ])("is %s", (_, figureAt, best) => {
    expect(bestOf(figureAt, (collector) => collector.collect(reals(2, 6)))).toEqual([best]);
  });

  it("is the deepest of several valleys, between looks", () => {
    // Valleys at 2.6 and 5.1, the second deeper by a tenth.
    const figureAt = (x: number) => Math.min((x - 2.6) ** 2, (x - 5.1) ** 2 - 0.1);
    expect(bestOf(figureAt, (collector) => collector.collect(reals(2, 6)))[0]).toBeCloseTo(5.1, 6);
  });

  it("of a range that must be visited is the best of every stretch that passes, to its very borders", () => {
    const stretches = bound("unknown", (x) => Math.max(0.3 - Math.abs(x - 2.7), 0.2 - Math.abs(x - 4.5)));
    const best = (figureAt: (x: number) => number) =>
      bestOf(figureAt, (collector) => collector.collectVisited(reals(2, 6), [stretches]))[0];
    expect(best((x) => x)).toBeCloseTo(2.4, 12);
    expect(best((x) => -x)).toBeCloseTo(4.7, 12);
    expect(best((x) => Math.abs(x - 3.1))).toBeCloseTo(3, 12);
    expect(best((x) => Math.abs(x - 4.2))).toBeCloseTo(4.3, 12);
    expect(rejected).toEqual([]);
  });

  it("of a range that must be visited passes every bound, by the margin from which each passes", () => {
    const lower = { ...bound("unknown", (x) => x - 3.3), passMargin: -0.5 };
    const upper = bound("unknown", (x) => 4.4 - x);
    const best = (figureAt: (x: number) => number) =>
      bestOf(figureAt, (collector) => collector.collectVisited(reals(2, 6), [lower, upper]))[0];
    expect([best((x) => x), best((x) => -x)]).toEqual([expect.closeTo(2.8, 12), expect.closeTo(4.4, 12)]);
  });

  it("of a range that must be visited is looked for nowhere else, and at its very last position too", () => {
    const beyond = bound("unknown", (x) => ((x > 4 && x < 5) || x > 7 ? 1 : -1));
    expect(
      bestOf(
        (x) => -x,
        (collector) => collector.collectVisited(reals(2, 6), [beyond]),
      )[0],
    ).toBeCloseTo(5, 12);
    const last = bound("unknown", (x) => (x >= 6 ? 1 : -1));
    expect(
      bestOf(
        (x) => x,
        (collector) => collector.collectVisited(reals(2, 6), [last]),
      ),
    ).toEqual([6]);
  });

  it("of a range that must be visited may be either end of it", () => {
    const all = bound("unknown", () => 1);
    expect(
      bestOf(
        (x) => x,
        (collector) => collector.collectVisited(reals(2, 6), [all]),
      ),
    ).toEqual([2]);
    expect(
      bestOf(
        (x) => -x,
        (collector) => collector.collectVisited(reals(2, 6), [all]),
      ),
    ).toEqual([6]);
  });

  it("is one candidate that falls at the last bound that any of its diameters reaches", () => {
    const first = bound("unknown", (x) => x - 5, "family", 4);
    const second = bound("unknown", () => -1, "family", 5);
    const third = bound("unknown", () => -1, "family", 6);
    expect(
      bestOf(
        (x) => x,
        (collector) => collector.collectVisited(reals(2, 6), [first, second, third]),
      ),
    ).toEqual([]);
    expect(rejected).toEqual([[5, 1]]);
  });
});
