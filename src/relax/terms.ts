import type { Asks } from "../constrain/asks.ts";
import { clashRuleOf } from "../constrain/clash.ts";
import { candidateAt } from "../constrain/design.ts";
import { isConstructed } from "../constrain/eased.ts";
import { limitsFor } from "../constrain/limits.ts";
import { PASSES } from "../constrain/side.ts";
import type { Brief, Choice, Dimension, LimitName, LimitTerms } from "../model.ts";

/**
 * What a spring needs of a limit, in the terms of the brief.
 *
 * @param brief   a resolved brief
 * @param asks    what it asks, unchanged
 * @param name    the limit
 * @param choice  the spring, with its free length
 * @param share   by which the limit was eased for it
 * @returns null where the spring passes the limit as it stands, or the limit has no number
 */
export function termsOf(brief: Brief, asks: Asks, name: LimitName, choice: Choice, share: number): LimitTerms | null {
  if (name === "clash" && isConstructed(asks, name)) return clashTerms(asks, share);
  const limit = limitsFor(asks).find((one) => one.name === name);
  if (limit === undefined) return null;
  const candidate = candidateAt(brief, asks, choice);
  if (limit.margin(candidate) >= PASSES) return null;
  const side = limit.tightest(candidate);
  return { limit: name, ...side.terms(candidate), sense: side.askedSense, dimension: side.dimension };
}

const MEASURES: Readonly<Record<ReturnType<typeof clashRuleOf>["kind"], Dimension>> = {
  deflection: "share",
  solid: "share",
  length: "length",
  gap: "number",
};

/** An allowance that the spring was made to: what is left of it. */
function clashTerms({ clash }: Asks, share: number): LimitTerms {
  const { kind, amount } = clashRuleOf(clash);
  const needed = amount * Math.max(0, 1 - share);
  return { limit: "clash", limitValue: amount, needed, sense: "least", dimension: MEASURES[kind] };
}
