import type { Asks } from "./constrain/asks.ts";
import { candidateAt, describer } from "./constrain/design.ts";
import { Ground } from "./constrain/ground.ts";
import type { Limit } from "./constrain/limits.ts";
import { PASSES } from "./constrain/side.ts";
import type { Brief, Choice, LimitName, Miss } from "./model.ts";
import { walk } from "./walk.ts";

/**
 * The candidate that comes nearest to each limit that rejects something: among those that break no other limit, where there is
 * one; else among those that break no earlier one. Nearest is the greatest margin.
 *
 * `wire` and `temperature` have none: a material that is not made in a size has no figures.
 *
 * @param brief   a resolved brief
 * @param asks    what it asks
 * @param limits  all its limits, in order
 * @param names   the limits to look at
 * @returns one miss for each of these limits that some candidate reaches, in order
 */
export function nearestMisses(brief: Brief, asks: Asks, limits: readonly Limit[], names: readonly LimitName[]): Miss[] {
  const describe = describer(brief, asks);
  return limits
    .filter(({ name }) => names.includes(name))
    .flatMap((limit) => {
      const others = limits.filter((other) => other !== limit);
      const earlier = limits.slice(0, limits.indexOf(limit));
      const choice = nearestTo(brief, asks, limit, others) ?? nearestTo(brief, asks, limit, earlier);
      if (choice === null) return [];
      const candidate = candidateAt(brief, asks, choice);
      const side = limit.tightest(candidate);
      const breaks = limits.filter((other) => !other.passes(candidate)).map(({ name }) => name);
      const { askedSense: sense, dimension } = side;
      return [{ limit: limit.name, design: describe(choice), ...side.terms(candidate), sense, dimension, breaks }];
    });
}

/** Among the candidates that pass some limits and break another, the one with its greatest margin; null where there is none. */
function nearestTo(brief: Brief, asks: Asks, limit: Limit, passing: readonly Limit[]): Choice | null {
  let best: Choice | null = null;
  let greatest = Number.NEGATIVE_INFINITY;
  walk(brief, new Ground(brief, asks), passing, {
    least: (candidate) => -limit.margin(candidate),
    missing: limit,
    survive: (candidate) => {
      const margin = limit.margin(candidate);
      if (margin >= PASSES || margin <= greatest) return;
      greatest = margin;
      best = candidate.choice;
    },
  });
  return best;
}
