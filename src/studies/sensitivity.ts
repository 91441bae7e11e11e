import { describer } from "../constrain/design.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { FreeLengthRange } from "../constrain/free-length-range.ts";
import { type Eased, easableLimits, eased, GONE } from "../constrain/relaxed.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, Choice, Design, EasedBest, LimitName, LimitPrice, MeritName } from "../model.ts";
import { MERITS, orderKeys } from "../score/merit.ts";
import { BestOf } from "../score/rank.ts";
import { traverse } from "../search/traversal.ts";
import { keptChoice, termsOf } from "./least-relaxation.ts";

/** By how much each limit is eased: shares of its bounds, and altogether. */
const SHARES = [0.05, 0.1, GONE] as const;

/**
 * What the best design would gain if each limit alone were eased: a walk for each limit and share, which cuts at the eased bound.
 *
 * @param brief         a resolved brief of which something fits
 * @param requirements  its requirements
 * @param best          its best design
 * @returns a price for each limit, in the order in which a candidate falls
 */
export function limitPrices(brief: Brief, requirements: Requirements, best: Design): LimitPrice[] {
  const names: LimitName[] = [
    ...(requirements.temperature === null ? [] : (["temperature"] as const)),
    ...easableLimits(requirements),
  ];
  return names.map((limit) => ({
    limit,
    margin: best.margins[limit] ?? null,
    steps: SHARES.map((share) => ({
      share: share === GONE ? null : share,
      best: easedBest(brief, requirements, limit, share, best),
    })),
  }));
}

function easedBest(brief: Brief, requirements: Requirements, limit: LimitName, share: number, now: Design): EasedBest | null {
  const space = eased(requirements, limit, share);
  const choice = space && bestUnder(brief, space);
  if (choice === null) return null;
  const design: Design = { ...describer(brief, requirements)(choice), rank: 1 };
  const name = brief.rank[0] as MeritName;
  const terms = termsOf(brief, requirements, limit, choice, share);
  return { design, merit: design[name], change: design[name] / now[name] - 1, terms };
}

/** The best of a walk, with the free length that it was made to; null where nothing fits. */
function bestUnder(brief: Brief, { requirements, limits }: Eased): Choice | null {
  const first = MERITS[brief.rank[0] as MeritName];
  const best = new BestOf<Choice>(1);
  const evaluator = new Evaluator(brief, requirements);
  const lengths = new FreeLengthRange(evaluator.candidate, limits);
  traverse(brief, evaluator, limits, {
    asReported: true,
    objective: first,
    onFeasible: (candidate) => {
      if (!best.mayKeep(first(candidate))) return;
      const keys = orderKeys(candidate, brief.rank);
      lengths.settle();
      best.offer({ keys, item: keptChoice(candidate) });
    },
  });
  return best.best[0]?.item ?? null;
}
