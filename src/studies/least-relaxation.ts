import type { Candidate } from "../constrain/candidate/candidate.ts";
import { clashRuleOf } from "../constrain/candidate/free-length.ts";
import { candidateAt } from "../constrain/design.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import { isConstructed, relaxed, violationOf, withRelaxable } from "../constrain/relaxed.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, Choice, Dimension, LimitName, LimitTerms } from "../model.ts";
import { traverse } from "../search/traversal.ts";

/** The least fraction by which some limits must be relaxed, and the spring that is then feasible. */
export interface LeastRelaxation {
  readonly fraction: number;
  readonly choice: Choice;
}

/** Fractions found by bisection are accurate to this. */
const CLOSE = 1e-9;

/**
 * The least common fraction by which limits must be relaxed before any design is feasible.
 *
 * One search, in which the limits cut as well, at the least share found so far: what cannot better it is never looked at. A limit
 * that springs are made to meet judges none, so there the share is found by halving, up to the whole bound, a search for each.
 *
 * @param brief         a resolved brief
 * @param requirements  its requirements
 * @param names         limits that may give
 * @returns the share, 0 where something fits as asked; null where these limits alone do not make anything fit
 */
export function leastRelaxation(brief: Brief, requirements: Requirements, names: readonly LimitName[]): LeastRelaxation | null {
  const constructed = names.filter((name) => isConstructed(requirements, name));
  if (constructed.length > 0) {
    const judging = names.filter((name) => !constructed.includes(name));
    return leastByBisection(constructed, requirements, (changed) => leastRelaxation(brief, changed, judging));
  }
  const { requirements: open, limits, relaxable } = withRelaxable(requirements, names);
  let least: LeastRelaxation | null = null;
  traverse(brief, new Evaluator(brief, open), limits, {
    bestOnly: true,
    objective: (candidate) => violationOf(relaxable, candidate),
    onFeasible: (candidate) => {
      const fraction = violationOf(relaxable, candidate);
      if (least !== null && fraction >= least.fraction) return;
      least = { fraction, choice: choiceWithFreeLength(candidate) };
      for (const limit of relaxable) limit.relaxation = fraction;
    },
  });
  return least;
}

/** What singles a candidate out, with the free length that it was made to. */
export function choiceWithFreeLength(candidate: Candidate): Choice {
  return { ...candidate.choice, freeLength: candidate.freeLength };
}

/** The other limits must give the less, the more those give that springs are made to meet: where all give the same is the least. */
function leastByBisection(
  constructed: readonly LimitName[],
  requirements: Requirements,
  ofOthers: (changed: Requirements) => LeastRelaxation | null,
): LeastRelaxation | null {
  const withFraction = (fraction: number) =>
    ofOthers(constructed.reduce((changed, name) => relaxed(changed, name, fraction)?.requirements ?? changed, requirements));
  let best = withFraction(1);
  if (best === null || best.fraction >= 1) return best;
  // Where springs made otherwise need no less of the others, these alone say it.
  const asMade = withFraction(0);
  if (asMade !== null && asMade.fraction <= best.fraction + CLOSE) return asMade;
  let [low, high] = [0, 1];
  while (high - low > CLOSE) {
    const fraction = (low + high) / 2;
    const found = withFraction(fraction);
    if (found === null || found.fraction > fraction) low = fraction;
    else {
      high = fraction;
      best = found;
    }
  }
  return { ...best, fraction: high };
}

/**
 * What a spring needs of a limit, in the terms of the brief.
 *
 * @param brief         a resolved brief
 * @param requirements  its requirements, unchanged
 * @param name          the limit
 * @param choice        the spring, with its free length
 * @param fraction      by which the limit was relaxed for it
 * @returns null where the spring passes the limit as it stands, or the limit has no number
 */
export function termsOf(
  brief: Brief,
  requirements: Requirements,
  name: LimitName,
  choice: Choice,
  fraction: number,
): LimitTerms | null {
  if (name === "clash" && isConstructed(requirements, name)) return clashTerms(requirements, fraction);
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
function clashTerms({ clash }: Requirements, fraction: number): LimitTerms {
  const { kind, amount } = clashRuleOf(clash);
  const needed = amount * Math.max(0, 1 - fraction);
  return { limit: "clash", limitValue: amount, needed, sense: "least", dimension: MEASURES[kind] };
}
