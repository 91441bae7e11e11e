import { describe, expect, it } from "vitest";
import { AnyHarvest, BestHarvest, GridHarvest, LeastHarvest, MissHarvest } from "../../src/enumerate/collector.ts";
import { Range, type Shape } from "../../src/enumerate/domain.ts";
import { type Ground, SolvedWalk, Walk, type WalkedSide } from "../../src/enumerate/prune.ts";

import type { Wire } from "../../src/model.ts";

const wire = (label: string): Wire => ({ label, diameter: 1, series: "one" });
const side = (
  shape: Shape,
  marginAt: (position: number) => number,
  scope: WalkedSide["scope"] = "family",
  slot = 0,
): WalkedSide => ({ shape, marginAt, scope, slot, stands: 0, passes: 0 });
const whole = (low: number, high: number): Range => {
  const range = new Range(true);
  range.set(low, high);
  return range;
};
const reals = (low: number, high: number): Range => {
  const range = new Range(false);
  range.set(low, high);
  return range;
};

/** A place that notes what it is told, and counts what falls by slot. */
class Noted implements Ground {
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
function walked(sides: readonly WalkedSide[], ground = new Noted(), visiting: (positions: number) => void = () => {}) {
  const left: number[] = [];
  const harvest = new GridHarvest(
    (position) => left.push(position),
    (slot, count) => ground.reject(slot, count),
    visiting,
  );
  const walk = new Walk(ground, { whole: true, range: () => ({ low: 1, high: 10 }) }, sides, harvest);
  const entered = walk.enter(0, wire("w"), 4);
  if (entered) {
    for (const turns of [3, 4]) {
      walk.turns(turns);
      walk.family(0, turns);
      walk.family(1, turns);
    }
  }
  walk.finish();
  return { left, counts: ground.counts, words: ground.words, entered };
}

describe("the walk that cuts", () => {
  it("hands on every position of every family where nothing is asked", () => {
    expect(walked([]).left).toHaveLength(40);
  });

  it("counts a candidate where it falls first, once for each family that shares the cut", () => {
    const { left, counts } = walked([
      side("falls", (x) => 8 - x, "wire", 0),
      side("rises", (x) => x - 3, "turns", 1),
      side("band", (x) => 1 - Math.abs(x - 5), "family", 2),
    ]);
    // Of 10 positions 9 and 10 fall first, then 1 and 2, then 3, 7 and 8, in each of four families.
    expect(counts).toEqual({ 0: 8, 1: 8, 2: 12 });
    expect(left).toEqual([4, 5, 6, 4, 5, 6, 4, 5, 6, 4, 5, 6]);
  });

  it("cuts what depends on the wire once for a wire, and what depends on turns once for a count of them", () => {
    const looks = { wire: 0, turns: 0, family: 0 };
    const counting = (scope: WalkedSide["scope"]) =>
      side(
        "falls",
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
    const { counts } = walked([side("rises", (x) => x - 6, "family", 0), side("falls", (x) => 3 - x, "wire", 1)]);
    expect(counts).toEqual({ 0: 20, 1: 20 });
  });

  it("rejects a whole family by a constant that stands first, before any cut, and does not look at its diameters", () => {
    const { counts, left } = walked([
      side("constant", () => -1, "turns", 0),
      side(
        "falls",
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
    const ground = new (class extends Noted {
      override setEnds(which: number, totalTurns: number): void {
        super.setEnds(which, totalTurns);
        ends = which;
      }
    })();
    const { counts, left } = walked([side("constant", () => (ends === 0 ? -1 : 0), "family", 3)], ground);
    expect(counts).toEqual({ 3: 20 });
    expect(left).toHaveLength(20);
  });

  it("counts no family twice: one that falls at a constant is not told of the cuts that others share", () => {
    let ends = 0;
    const ground = new (class extends Noted {
      override setEnds(which: number, totalTurns: number): void {
        super.setEnds(which, totalTurns);
        ends = which;
      }
    })();
    const { counts, left } = walked(
      [side("constant", () => (ends === 0 ? -1 : 0), "family", 0), side("falls", (x) => 4 - x, "wire", 1)],
      ground,
    );
    expect(counts).toEqual({ 0: 20, 1: 12 });
    expect(left).toHaveLength(8);
  });

  it("does not set the ends of families of which nothing is left", () => {
    const { words, counts } = walked([side("falls", () => -1, "turns", 0)]);
    expect(words).toEqual(["enter 0 w", "turns 3", "turns 4"]);
    expect(counts).toEqual({ 0: 40 });
  });

  it("visits from the first side without a shape on, and the sides after it too", () => {
    const visits: number[] = [];
    const { counts, left } = walked(
      [
        side("falls", (x) => 8 - x, "family", 0),
        side("none", (x) => (x % 2 === 0 ? 1 : -1), "family", 1),
        side("rises", (x) => x - 5, "wire", 2),
      ],
      new Noted(),
      (positions) => visits.push(positions),
    );
    expect(counts).toEqual({ 0: 8, 1: 16, 2: 8 });
    expect(left).toEqual([6, 8, 6, 8, 6, 8, 6, 8]);
    expect(visits).toEqual([8, 8, 8, 8]);
  });

  it("does not look at sides beyond the one that takes the last", () => {
    const { counts } = walked([
      side("falls", () => -1, "family", 0),
      side(
        "none",
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
    const shared = side(
      "falls",
      (x) => {
        looks++;
        return 10 - x;
      },
      "wire",
    );
    walked([side("constant", () => 0, "turns"), shared]);
    walked([side("constant", () => 0, "family"), shared]);
    expect(looks).toBe(2);
  });

  it("counts a family at its own constant even where turns have left it nothing", () => {
    let ends = 0;
    const ground = new (class extends Noted {
      override setEnds(which: number, totalTurns: number): void {
        super.setEnds(which, totalTurns);
        ends = which;
      }
    })();
    const sides = [side("constant", () => (ends === 0 ? -1 : 0), "family", 0), side("falls", () => -1, "turns", 1)];
    expect(walked(sides, ground).counts).toEqual({ 0: 20, 1: 20 });
  });

  it("judges constants that follow each other by what each depends on", () => {
    let [turns, ends] = [0, 0];
    const ground = new (class extends Noted {
      override setActiveTurns(activeTurns: number): void {
        turns = activeTurns;
      }
      override setEnds(which: number): void {
        ends = which;
      }
    })();
    const walk = new Walk(
      ground,
      { whole: true, range: () => ({ low: 1, high: 10 }) },
      [side("constant", () => (turns === 4 ? -1 : 0), "turns", 0), side("constant", () => (ends === 1 ? -1 : 0), "family", 1)],
      new AnyHarvest(() => {}),
    );
    walk.enter(0, wire("w"), 6);
    for (const count of [3, 4, 5]) {
      walk.turns(count);
      for (const which of [0, 1]) walk.family(which, count);
    }
    walk.finish();
    expect(ground.counts).toEqual({ 0: 20, 1: 20 });
  });

  it("visits by a side without a shape whatever it depends on, for its verdicts need not be one stretch", () => {
    const odd = (scope: WalkedSide["scope"]) => side("none", (x) => (x % 2 === 1 ? 1 : -1), scope, 0);
    for (const scope of ["wire", "turns", "family"] as const) expect(walked([odd(scope)]).counts).toEqual({ 0: 20 });
  });

  it("hands nothing on where nothing is left", () => {
    let gathered = 0;
    const harvest = { gather: () => gathered++, visit: () => gathered++ };
    const sides = [side("falls", () => -1, "family", 0)];
    const walk = new Walk(new Noted(), { whole: true, range: () => ({ low: 1, high: 10 }) }, sides, harvest);
    walk.enter(0, wire("w"), 1);
    walk.turns(3);
    walk.family(0, 3);
    expect(gathered).toBe(0);
  });

  it("tells the cuts of one wire before it takes the next", () => {
    const ground = new Noted();
    const harvest = new AnyHarvest(() => {});
    const walk = new Walk(
      ground,
      { whole: true, range: () => ({ low: 1, high: 10 }) },
      [side("falls", (x) => 6 - x, "wire", 0)],
      harvest,
    );
    walk.enter(0, wire("a"), 1);
    walk.turns(3);
    walk.family(0, 3);
    expect(ground.counts).toEqual({});
    walk.enter(0, wire("b"), 1);
    expect(ground.counts).toEqual({ 0: 4 });
    walk.finish();
    expect(ground.counts).toEqual({ 0: 4 });
  });
});

describe("the walk of solved diameters", () => {
  const walkOf = (ground: Ground, sides: readonly WalkedSide[], survive: (meanDiameter: number) => void) =>
    new SolvedWalk(ground, sides, () => 7, survive);

  it("judges the one diameter of each family, and counts it where it falls first", () => {
    const ground = new Noted();
    const kept: number[] = [];
    const sides = (bound: number) => [side("falls", (x) => 8 - x, "wire", 0), side("rises", (x) => x - bound, "family", 1)];
    for (const bound of [7, 7.5]) {
      const walk = walkOf(ground, sides(bound), (meanDiameter) => kept.push(meanDiameter));
      expect(walk.enter(0, wire("w"), 1)).toBe(true);
      walk.turns(3);
      walk.family(1, 5);
      walk.finish();
    }
    expect(kept).toEqual([7]);
    expect(ground.counts).toEqual({ 1: 1 });
    expect(ground.words.slice(0, 3)).toEqual(["enter 0 w", "turns 3", "ends 1 5"]);
  });

  it("counts families that are refused with their material and wire", () => {
    const ground = new Noted("w");
    expect(walkOf(ground, [], () => {}).enter(0, wire("w"), 6)).toBe(false);
    expect(ground.counts).toEqual({ 9: 6 });
  });
});

/** What a harvest hands on. */
function handed(make: (survive: (position: number) => void) => { act: () => void }): number[] {
  const handed: number[] = [];
  make((position) => handed.push(position)).act();
  return handed;
}

describe("the nearest misses of a family", () => {
  const missing = (sides: readonly WalkedSide[], range: Range, visiting: (positions: number) => void = () => {}) =>
    handed((survive) => ({ act: () => new MissHarvest(survive, sides, visiting).gather(range) }));

  it("are the neighbours of the stretch that passes", () => {
    expect(missing([side("band", (x) => 2 - Math.abs(x - 10))], whole(1, 20))).toEqual([7, 13]);
  });

  it("are on the one side where the stretch reaches the other end", () => {
    expect(missing([side("falls", (x) => 5 - x)], whole(1, 20))).toEqual([6]);
    expect(missing([side("rises", (x) => x - 5)], whole(1, 20))).toEqual([4]);
    expect(missing([side("rises", (x) => x)], whole(1, 20))).toEqual([]);
  });

  it("are the highest margin where nothing passes, by the lesser of the sides", () => {
    expect(missing([side("rises", (x) => x - 30), side("falls", (x) => -10 - x)], whole(1, 20))).toEqual([10]);
  });

  it("are at the end that a side leads to, though its margin stays level on the way", () => {
    expect(missing([side("rises", (x) => (x < 18 ? -5 : x - 23))], whole(1, 20))).toEqual([20]);
    expect(missing([side("falls", (x) => (x > 3 ? -5 : -1 - x))], whole(1, 20))).toEqual([1]);
  });

  it("are looked for among all where a side has no shape", () => {
    const visits: number[] = [];
    const sides = [side("none", (x) => x - 4), side("rises", (x) => x)];
    expect(missing(sides, whole(3, 5), (positions) => visits.push(positions))).toEqual([3, 4, 5]);
    expect(visits).toEqual([3]);
  });

  it("of a range that must be visited are those that pass the other sides", () => {
    const visits: number[] = [];
    const odd = side("none", (x) => (x % 2 === 1 ? 0 : -1));
    const found = handed((survive) => ({
      act: () => new MissHarvest(survive, [], (positions) => visits.push(positions)).visit(whole(1, 6), [odd]),
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
    expect(handed((survive) => ({ act: () => new LeastHarvest(survive, figureAt, () => {}).gather(whole(1, 20)) }))).toEqual([8]);
    looked.length = 0;
    handed((survive) => ({
      act: () =>
        new LeastHarvest(
          survive,
          (x) => figureAt(x) * 0,
          () => {},
        ).gather(whole(1, 20)),
    }));
    expect(looked).toEqual([10]);
  });

  it("is looked for among all that pass where a range must be visited", () => {
    const visits: number[] = [];
    const odd = side("none", (x) => (x % 2 === 1 ? 0 : -1));
    const found = handed((survive) => ({
      act: () =>
        new LeastHarvest(
          survive,
          (x) => x,
          (positions) => visits.push(positions),
        ).visit(whole(2, 7), [odd]),
    }));
    expect([found, visits]).toEqual([[3, 5, 7], [6]]);
  });
});

it("any position of a family is its first, without a look", () => {
  const any = (act: (harvest: AnyHarvest) => void) => handed((survive) => ({ act: () => act(new AnyHarvest(survive)) }));
  expect(any((harvest) => harvest.gather(whole(4, 9)))).toEqual([4]);
  expect(any((harvest) => harvest.visit(whole(4, 9)))).toEqual([4]);
});

describe("the best of a family over the reals", () => {
  const rejected: [number, number][] = [];
  const bestOf = (figureAt: (x: number) => number, act: (harvest: BestHarvest) => void) => {
    rejected.length = 0;
    return handed((survive) => ({
      act: () => act(new BestHarvest(survive, (slot, count) => rejected.push([slot, count]), figureAt)),
    }));
  };

  it.each([
    ["an end, exactly, of a figure that rises", (x: number) => x, 2],
    ["an end, exactly, of a figure that falls", (x: number) => -x, 6],
  ])("is %s", (_, figureAt, best) => {
    expect(bestOf(figureAt, (harvest) => harvest.gather(reals(2, 6)))).toEqual([best]);
  });

  it("is the deepest of several valleys, between looks", () => {
    // Valleys at 2.6 and 5.1, the second deeper by a tenth.
    const figureAt = (x: number) => Math.min((x - 2.6) ** 2, (x - 5.1) ** 2 - 0.1);
    expect(bestOf(figureAt, (harvest) => harvest.gather(reals(2, 6)))[0]).toBeCloseTo(5.1, 6);
  });

  it("of a range that must be visited is the best of every stretch that passes, to its very borders", () => {
    const stretches = side("none", (x) => Math.max(0.3 - Math.abs(x - 2.7), 0.2 - Math.abs(x - 4.5)));
    const best = (figureAt: (x: number) => number) => bestOf(figureAt, (harvest) => harvest.visit(reals(2, 6), [stretches]))[0];
    expect(best((x) => x)).toBeCloseTo(2.4, 12);
    expect(best((x) => -x)).toBeCloseTo(4.7, 12);
    expect(best((x) => Math.abs(x - 3.1))).toBeCloseTo(3, 12);
    expect(best((x) => Math.abs(x - 4.2))).toBeCloseTo(4.3, 12);
    expect(rejected).toEqual([]);
  });

  it("of a range that must be visited passes every side, by the margin from which each passes", () => {
    const lower = { ...side("none", (x) => x - 3.3), passes: -0.5 };
    const upper = side("none", (x) => 4.4 - x);
    const best = (figureAt: (x: number) => number) =>
      bestOf(figureAt, (harvest) => harvest.visit(reals(2, 6), [lower, upper]))[0];
    expect([best((x) => x), best((x) => -x)]).toEqual([expect.closeTo(2.8, 12), expect.closeTo(4.4, 12)]);
  });

  it("of a range that must be visited is looked for nowhere else, and at its very last position too", () => {
    const beyond = side("none", (x) => ((x > 4 && x < 5) || x > 7 ? 1 : -1));
    expect(
      bestOf(
        (x) => -x,
        (harvest) => harvest.visit(reals(2, 6), [beyond]),
      )[0],
    ).toBeCloseTo(5, 12);
    const last = side("none", (x) => (x >= 6 ? 1 : -1));
    expect(
      bestOf(
        (x) => x,
        (harvest) => harvest.visit(reals(2, 6), [last]),
      ),
    ).toEqual([6]);
  });

  it("of a range that must be visited may be either end of it", () => {
    const all = side("none", () => 1);
    expect(
      bestOf(
        (x) => x,
        (harvest) => harvest.visit(reals(2, 6), [all]),
      ),
    ).toEqual([2]);
    expect(
      bestOf(
        (x) => -x,
        (harvest) => harvest.visit(reals(2, 6), [all]),
      ),
    ).toEqual([6]);
  });

  it("is one candidate that falls at the last side that any of its diameters reaches", () => {
    const first = side("none", (x) => x - 5, "family", 4);
    const second = side("none", () => -1, "family", 5);
    const third = side("none", () => -1, "family", 6);
    expect(
      bestOf(
        (x) => x,
        (harvest) => harvest.visit(reals(2, 6), [first, second, third]),
      ),
    ).toEqual([]);
    expect(rejected).toEqual([[5, 1]]);
  });
});
