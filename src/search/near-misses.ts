import { candidateAt, describer } from "../constrain/design.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import type { Limit } from "../constrain/limits/limits.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, Choice, LimitName, Miss } from "../model.ts";
import type { TaskPlan, TaskRunner } from "./tasks.ts";
import { createTraversal, type Traversal } from "./traversal.ts";

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
export function* nearMisses(
  brief: Brief,
  requirements: Requirements,
  limits: readonly Limit[],
  names: readonly LimitName[],
): TaskPlan<Miss[]> {
  const describe = describer(brief, requirements);
  const misses: Miss[] = [];
  for (const limit of limits.filter(({ name }) => names.includes(name))) {
    const choice = (yield* nearMissOf(limit.name, "others")) ?? (yield* nearMissOf(limit.name, "earlier"));
    if (choice === null) continue;
    const candidate = candidateAt(brief, requirements, choice);
    const bound = limit.tightest(candidate);
    const breaks = limits.filter((other) => !other.passes(candidate)).map(({ name }) => name);
    const { senseInBrief: sense, dimension } = bound;
    misses.push({ limit: limit.name, design: describe(choice), ...bound.terms(candidate), sense, dimension, breaks });
  }
  return misses;
}

function* nearMissOf(limit: LimitName, passing: "others" | "earlier"): TaskPlan<Choice | null> {
  const runner = (yield { kind: "nearMiss", limit, passing }) as NearMissSearch;
  return runner.partial.best?.choice ?? null;
}

/** The nearest candidate so far, as plain data. */
interface NearMissPartial {
  readonly best: { readonly choice: Choice; readonly margin: number; readonly family: number } | null;
  readonly visited: number;
}

/**
 * Among the candidates that pass some limits and break another, looks for the one with its greatest margin, of equals the first.
 */
export class NearMissSearch implements TaskRunner<NearMissPartial> {
  private readonly evaluator: Evaluator;
  private readonly traversal: Traversal;
  private best: NearMissPartial["best"] = null;

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
    this.traversal = createTraversal(
      brief,
      this.evaluator,
      passing === "others" ? others : limits.slice(0, limits.indexOf(limit)),
      {
        objective: (candidate) => -limit.margin(candidate),
        violatedLimit: limit,
        onFeasible: (candidate, family) => {
          const margin = limit.margin(candidate);
          if (margin >= PASSES || margin <= (this.best?.margin ?? Number.NEGATIVE_INFINITY)) return;
          this.best = { choice: candidate.choice, margin, family };
        },
      },
    );
  }

  get slices(): number {
    return this.traversal.slices;
  }

  get counted(): number {
    return this.evaluator.rejections.walked;
  }

  run(from: number, to: number): void {
    this.traversal.run(from, to);
  }

  get partial(): NearMissPartial {
    return { best: this.best, visited: this.traversal.visited };
  }

  merge({ best, visited }: NearMissPartial): void {
    this.traversal.addVisited(visited);
    if (best === null) return;
    const { margin, family } = this.best ?? { margin: Number.NEGATIVE_INFINITY, family: 0 };
    if (best.margin > margin || (best.margin === margin && best.family < family)) this.best = best;
  }
}
