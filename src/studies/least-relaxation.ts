import type { Candidate } from "../constrain/candidate/candidate.ts";
import { clashRuleOf } from "../constrain/candidate/free-length.ts";
import { candidateAt } from "../constrain/design.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import { eased, givingWay, isConstructed, violationOf } from "../constrain/relaxed.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, Choice, Dimension, LimitName, LimitTerms } from "../model.ts";
import { traverse } from "../search/traversal.ts";

/** The least share by which some limits must give, and the spring that then fits. */
export interface LeastShare {
  readonly share: number;
  readonly choice: Choice;
}

/** Shares that are found by halving are told apart to this. */
const CLOSE = 1e-9;

/**
 * The least common share by which limits must give before anything fits.
 *
 * One walk, in which the limits cut as well, at the least share found so far: what cannot better it is never looked at. A limit
 * that springs are made to meet judges none, so there the share is found by halving, up to the whole bound, a walk for each.
 *
 * @param brief         a resolved brief
 * @param requirements  its requirements
 * @param names         limits that may give
 * @returns the share, 0 where something fits as asked; null where these limits alone do not make anything fit
 */
export function leastShare(brief: Brief, requirements: Requirements, names: readonly LimitName[]): LeastShare | null {
  const made = names.filter((name) => isConstructed(requirements, name));
  if (made.length > 0) {
    const judging = names.filter((name) => !made.includes(name));
    return leastByHalving(made, requirements, (changed) => leastShare(brief, changed, judging));
  }
  const { requirements: open, limits, giving } = givingWay(requirements, names);
  let least: LeastShare | null = null;
  traverse(brief, new Evaluator(brief, open), limits, {
    bestOnly: true,
    objective: (candidate) => violationOf(giving, candidate),
    onFeasible: (candidate) => {
      const share = violationOf(giving, candidate);
      if (least !== null && share >= least.share) return;
      least = { share, choice: keptChoice(candidate) };
      for (const limit of giving) limit.eased = share;
    },
  });
  return least;
}

/** What singles a candidate out, with the free length that it was made to. */
export function keptChoice(candidate: Candidate): Choice {
  return { ...candidate.choice, freeLength: candidate.freeLength };
}

/** The other limits must give the less, the more those give that springs are made to meet: where all give the same is the least. */
function leastByHalving(
  made: readonly LimitName[],
  requirements: Requirements,
  ofOthers: (changed: Requirements) => LeastShare | null,
): LeastShare | null {
  const withShare = (share: number) =>
    ofOthers(made.reduce((changed, name) => eased(changed, name, share)?.requirements ?? changed, requirements));
  let best = withShare(1);
  if (best === null || best.share >= 1) return best;
  // Where springs made otherwise need no less of the others, these alone say it.
  const asMade = withShare(0);
  if (asMade !== null && asMade.share <= best.share + CLOSE) return asMade;
  let [low, high] = [0, 1];
  while (high - low > CLOSE) {
    const share = (low + high) / 2;
    const found = withShare(share);
    if (found === null || found.share > share) low = share;
    else {
      high = share;
      best = found;
    }
  }
  return { ...best, share: high };
}

/**
 * What a spring needs of a limit, in the terms of the brief.
 *
 * @param brief         a resolved brief
 * @param requirements  its requirements, unchanged
 * @param name          the limit
 * @param choice        the spring, with its free length
 * @param share         by which the limit was eased for it
 * @returns null where the spring passes the limit as it stands, or the limit has no number
 */
export function termsOf(
  brief: Brief,
  requirements: Requirements,
  name: LimitName,
  choice: Choice,
  share: number,
): LimitTerms | null {
  if (name === "clash" && isConstructed(requirements, name)) return clashTerms(requirements, share);
  const limit = limitsFor(requirements).find((one) => one.name === name);
  if (limit === undefined) return null;
  const candidate = candidateAt(brief, requirements, choice);
  if (limit.margin(candidate) >= PASSES) return null;
  const bound = limit.tightest(candidate);
  return { limit: name, ...bound.terms(candidate), sense: bound.senseInBrief, dimension: bound.dimension };
}

const MEASURES: Readonly<Record<ReturnType<typeof clashRuleOf>["kind"], Dimension>> = {
  deflection: "share",
  solid: "share",
  length: "length",
  gap: "number",
};

/** An allowance that the spring was made to: what is left of it. */
function clashTerms({ clash }: Requirements, share: number): LimitTerms {
  const { kind, amount } = clashRuleOf(clash);
  const needed = amount * Math.max(0, 1 - share);
  return { limit: "clash", limitValue: amount, needed, sense: "least", dimension: MEASURES[kind] };
}
