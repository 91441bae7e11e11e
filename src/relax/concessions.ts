import type { Asks } from "../constrain/asks.ts";
import { describer } from "../constrain/design.ts";
import { easableLimits } from "../constrain/eased.ts";
import type { Brief, Concession, LimitName } from "../model.ts";
import { leastShare } from "./least-share.ts";
import { termsOf } from "./terms.ts";

/** Shares nearer to each other than this are one. */
const SAME = 1e-7;

/**
 * What must give before anything fits: single limits first, then the pairs of which both give, by a share smaller than either
 * alone would have to.
 *
 * @param brief  a resolved brief of which nothing fits
 * @param asks   what it asks
 * @returns the least share first among the single limits, and so among the pairs; equal ones in the order in which a candidate falls
 */
export function concessionsOf(brief: Brief, asks: Asks): Concession[] {
  const names = easableLimits(asks);
  const singles = names.flatMap((name) => concession(brief, asks, [name]));
  const alone = new Map(singles.map(({ limits: [name], share }) => [name, share]));
  const pairs = names.flatMap((one, i) => names.slice(i + 1).flatMap((other) => concession(brief, asks, [one, other])));
  const bothGive = pairs.filter(({ limits, share }) => limits.every((name) => share < (alone.get(name) ?? GREATEST) - SAME));
  return [...leastFirst(singles), ...leastFirst(bothGive)];
}

const GREATEST = Number.POSITIVE_INFINITY;

function concession(brief: Brief, asks: Asks, limits: readonly LimitName[]): Concession[] {
  const least = leastShare(brief, asks, limits);
  if (least === null) return [];
  const { share, choice } = least;
  const terms = limits.flatMap((name) => termsOf(brief, asks, name, choice, share) ?? []);
  return [{ limits, share, design: { ...describer(brief, asks)(choice), rank: 1 }, terms }];
}

function leastFirst(concessions: readonly Concession[]): Concession[] {
  return [...concessions].sort((a, b) => a.share - b.share);
}
