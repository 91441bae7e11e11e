import { describer } from "../constrain/design.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { FreeLengthRange } from "../constrain/free-length-range.ts";
import { REMOVED, type Relaxed, relaxableLimits, relaxed } from "../constrain/relaxed.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, Choice, Design, EasedBest, LimitName, LimitPrice, MeritName } from "../model.ts";
import { MERITS, orderKeys } from "../score/merit.ts";
import { BestOf } from "../score/rank.ts";
import { traverse } from "../search/traversal.ts";
import { choiceWithFreeLength, termsOf } from "./least-relaxation.ts";

/** By how much each limit is relaxed: shares of its bounds, and altogether. */
const FRACTIONS = [0.05, 0.1, REMOVED] as const;

/**
 * What the best design would gain if each limit alone were relaxed: a search for each limit and share, which cuts at the relaxed
 * bound.
 *
 * @param brief         a resolved brief of which something fits
 * @param requirements  its requirements
 * @param best          its best design
 * @returns a price for each limit, in the order of the limits
 */
export function limitSensitivities(brief: Brief, requirements: Requirements, best: Design): LimitPrice[] {
  const names: LimitName[] = [
    ...(requirements.temperature === null ? [] : (["temperature"] as const)),
    ...relaxableLimits(requirements),
  ];
  return names.map((limit) => ({
    limit,
    margin: best.margins[limit] ?? null,
    steps: FRACTIONS.map((fraction) => ({
      share: fraction === REMOVED ? null : fraction,
      best: bestRelaxed(brief, requirements, limit, fraction, best),
    })),
  }));
}

function bestRelaxed(
  brief: Brief,
  requirements: Requirements,
  limit: LimitName,
  fraction: number,
  now: Design,
): EasedBest | null {
  const space = relaxed(requirements, limit, fraction);
  const choice = space && bestUnder(brief, space);
  if (choice === null) return null;
  const design: Design = { ...describer(brief, requirements)(choice), rank: 1 };
  const name = brief.rank[0] as MeritName;
  const terms = termsOf(brief, requirements, limit, choice, fraction);
  return { design, merit: design[name], change: design[name] / now[name] - 1, terms };
}

/** The best of a search, with the free length that it was made to; null where nothing fits. */
function bestUnder(brief: Brief, { requirements, limits }: Relaxed): Choice | null {
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
      best.offer({ keys, item: choiceWithFreeLength(candidate) });
    },
  });
  return best.best[0]?.item ?? null;
}
