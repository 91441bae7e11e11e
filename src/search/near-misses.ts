import { candidateAt, describer } from "../constrain/design.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import type { Limit } from "../constrain/limits/limits.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, Choice, LimitName, Miss } from "../model.ts";
import type { Steps, Walker } from "./tasks.ts";
import { type Walking, walking } from "./traversal.ts";

/**
 * The candidate that comes nearest to each limit that rejects something: among those that break no other limit, where there is
 * one; else among those that break no earlier one. Nearest is the greatest margin.
 *
 * `wire` and `temperature` have none: a material that is not made in a size has no figures.
 *
 * @param brief         a resolved brief
 * @param requirements  its requirements
 * @param limits        all its limits, in order
 * @param names         the limits to look at
 * @returns one miss for each of these limits that some candidate reaches, in order
 */
export function* nearestMisses(
  brief: Brief,
  requirements: Requirements,
  limits: readonly Limit[],
  names: readonly LimitName[],
): Steps<Miss[]> {
  const describe = describer(brief, requirements);
  const misses: Miss[] = [];
  for (const limit of limits.filter(({ name }) => names.includes(name))) {
    const choice = (yield* nearestTo(limit.name, "others")) ?? (yield* nearestTo(limit.name, "earlier"));
    if (choice === null) continue;
    const candidate = candidateAt(brief, requirements, choice);
    const bound = limit.tightest(candidate);
    const breaks = limits.filter((other) => !other.passes(candidate)).map(({ name }) => name);
    const { senseInBrief: sense, dimension } = bound;
    misses.push({ limit: limit.name, design: describe(choice), ...bound.terms(candidate), sense, dimension, breaks });
  }
  return misses;
}

function* nearestTo(limit: LimitName, passing: "others" | "earlier"): Steps<Choice | null> {
  const walker = (yield { kind: "miss", limit, passing }) as MissWalk;
  return walker.found.best?.choice ?? null;
}

/** The candidate that was found nearest, as plain data. */
interface MissFound {
  readonly best: { readonly choice: Choice; readonly margin: number; readonly family: number } | null;
  readonly visited: number;
}

/**
 * Among the candidates that pass some limits and break another, looks for the one with its greatest margin, of equals the first.
 */
export class MissWalk implements Walker<MissFound> {
  private readonly evaluator: Evaluator;
  private readonly walking: Walking;
  private best: MissFound["best"] = null;

  /** @param passing  all other limits, or the earlier ones */
  constructor(
    brief: Brief,
    requirements: Requirements,
    limits: readonly Limit[],
    name: LimitName,
    passing: "others" | "earlier",
  ) {
    const limit = limits.find((one) => one.name === name) as Limit;
    const others = limits.filter((other) => other !== limit);
    this.evaluator = new Evaluator(brief, requirements);
    this.walking = walking(brief, this.evaluator, passing === "others" ? others : limits.slice(0, limits.indexOf(limit)), {
      least: (candidate) => -limit.margin(candidate),
      missing: limit,
      onFeasible: (candidate, family) => {
        const margin = limit.margin(candidate);
        if (margin >= PASSES || margin <= (this.best?.margin ?? Number.NEGATIVE_INFINITY)) return;
        this.best = { choice: candidate.choice, margin, family };
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
    this.walking.walk(from, to);
  }

  get found(): MissFound {
    return { best: this.best, visited: this.walking.visited };
  }

  absorb({ best, visited }: MissFound): void {
    this.walking.addVisited(visited);
    if (best === null) return;
    const { margin, family } = this.best ?? { margin: Number.NEGATIVE_INFINITY, family: 0 };
    if (best.margin > margin || (best.margin === margin && best.family < family)) this.best = best;
  }
}
