import type { Candidate } from "../constrain/candidate/candidate.ts";
import { isSold } from "../constrain/candidate/wire-properties.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import { type Giving, givingWay, shareNeeded } from "../constrain/relaxed.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import { Families } from "../enumerate/combinations.ts";
import type { Brief } from "../model.ts";
import type { Walker } from "./tasks.ts";
import { type Walking, walking } from "./traversal.ts";

/** Strips that are looked at before the walk, spread by the golden section. */
const FIRST_LOOKS = 64;
/** Share of itself to which closer looks must take what a family needs for looks closer still. */
const WORTH_A_CLOSER_LOOK = 1 - 1e-3;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Over all families that hold nothing, looks for the least share by which their limits would all have to give.
 *
 * Families that hold something are left out. The others are cut at the least share found so far, and only one of which something
 * is left then is searched, by itself and with its own limits wide open: so what a family needs is the same number whichever
 * families were searched before it.
 */
export class NearestEmptyWalk implements Walker<number | null> {
  private readonly evaluator: Evaluator;
  private readonly walking: Walking;
  private begun = false;
  private nearest = Number.POSITIVE_INFINITY;

  /** @param full  places of the families that hold something */
  constructor(brief: Brief, requirements: Requirements, full: readonly number[]) {
    const judging = limitsFor(requirements).filter(
      ({ reported, bounds }) => reported && bounds.some(({ byConstruction }) => !byConstruction),
    );
    const names = judging.map(({ name }) => name);
    const open = givingWay(requirements, names);
    const needOf = needOfFamily(brief, givingWay(requirements, names));
    const asked = new Families(brief, requirements.turns, isSold);
    const placeOf = asked.placing();
    const isFull = new Uint8Array(asked.count);
    for (const place of full) isFull[place] = 1;
    const searched = new Set<number>();
    this.evaluator = new Evaluator(brief, open.requirements);
    this.walking = walking(brief, this.evaluator, open.limits, {
      anyOnly: true,
      least: (candidate) => shareNeeded(open.giving, candidate),
      skips: (pair, ends, totalTurns) => {
        const place = placeOf(pair, ends, totalTurns);
        return place !== undefined && isFull[place] === 1;
      },
      onFeasible: (candidate, family) => {
        if (searched.has(family)) return;
        searched.add(family);
        const share = needOf(this.walking.strip, candidate.endsOrder);
        if (share <= -PASSES || share >= this.nearest) return;
        this.nearest = share;
        for (const limit of open.giving) limit.eased = Math.min(limit.eased, share);
      },
    });
  }

  get strips(): number {
    return this.walking.strips;
  }

  get walked(): number {
    return this.evaluator.rejections.walked;
  }

  walk(from: number, to: number): void {
    if (!this.begun) this.begin();
    this.walking.walk(from, to);
  }

  /** A few strips from all over the space first: what is near among them cuts most others at once. */
  private begin(): void {
    this.begun = true;
    const spread = Array.from({ length: FIRST_LOOKS }, (_, i) => Math.floor(((i * GOLDEN) % 1) * this.strips));
    for (const strip of new Set(spread)) this.walking.walk(strip, Math.min(this.strips, strip + 1));
  }

  get found(): number | null {
    return Number.isFinite(this.nearest) ? this.nearest : null;
  }

  absorb(found: number | null): void {
    this.nearest = Math.min(this.nearest, found ?? Number.POSITIVE_INFINITY);
  }
}

/** The least share that one family needs, by its strip and ends. */
function needOfFamily(brief: Brief, { requirements, limits, giving }: Giving): (strip: number, ends: number) => number {
  const widest = giving.map(({ eased }) => eased);
  const sampled = limits.some(({ bounds }) =>
    bounds.some(({ byConstruction, monotonicity }) => !byConstruction && monotonicity === "unknown"),
  );
  let wanted = 0;
  let need = Number.POSITIVE_INFINITY;
  const needed = (candidate: Candidate) => shareNeeded(giving, candidate);
  const family = walking(brief, new Evaluator(brief, requirements), limits, {
    least: needed,
    skips: (_pair, ends) => ends !== wanted,
    onFeasible: (candidate) => {
      need = Math.min(need, needed(candidate));
    },
  });
  return (strip, ends) => {
    wanted = ends;
    need = Number.POSITIVE_INFINITY;
    giving.forEach((limit, i) => {
      limit.eased = widest[i] as number;
    });
    // Where a limit is looked at by samples, closer looks at what stands nearer to it may find less; the last digits creep for
    // ever.
    let before: number;
    do {
      before = need;
      family.walk(strip, strip + 1);
      for (const limit of giving) limit.eased = Math.min(limit.eased, need);
    } while (sampled && need < before * WORTH_A_CLOSER_LOOK);
    return need;
  };
}
