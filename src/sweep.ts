import { type Asks, asksOf } from "./constrain/asks.ts";
import { describer } from "./constrain/design.ts";
import { isBeyondTests } from "./constrain/fatigue.ts";
import { limitsFor } from "./constrain/limits.ts";
import type { Steps } from "./errand.ts";
import type { Brief, Choice, Design, LimitName, SweepOptions, SweepResult, WarningName } from "./model.ts";
import { nearestMisses } from "./nearest.ts";
import type { NearestEmptyWalk } from "./nearest-empty.ts";
import type { Ranked } from "./score/rank.ts";
import type { Survey } from "./survey.ts";
import { walkedHere } from "./walkers.ts";

/**
 * Walk every family of a brief, cut each by the limits, rank what survives.
 *
 *   Brief ─▶ walk: material x wire x turns x ends ─▶ survivors ─▶ score ─▶ best N, front, sample ─▶ designs
 *                   │ each limit in turn cuts the family's range of mean diameter
 *                   └─▶ tally of rejections
 *
 * @param brief    a resolved brief; left unchanged
 * @param options  how much to keep
 * @returns plain SI data; `walked = feasible + the sum of rejected`; the same brief and options give the same bytes
 */
export function sweep(brief: Brief, options: SweepOptions = {}): SweepResult {
  return walkedHere(brief, sweepSteps(brief, options));
}

/** The same with its walks left to the caller, who may share each among threads. */
export function* sweepSteps(brief: Brief, options: SweepOptions): Steps<SweepResult> {
  // 1. what the brief asks, and the limits that ask it
  const asks = asksOf(brief);
  const limits = limitsFor(asks);

  // 2. the walk: it cuts and counts, and what survives is scored
  const { score, tally, proving, wires, frontAxes } = (yield { kind: "survey", options }) as Survey;

  // 3. the figures of what was kept
  const describe = describer(brief, asks);
  const designs = score.best.map(({ item }, i): Design => ({ ...describe(item), rank: i + 1 }));
  const front = rankedFront(score.frontMembers, score.best, describe);

  // 4. why nothing fits, where nothing does; what a walk over the reals proves
  const { rejected, feasible } = tally;
  const nearest =
    options.nearest || feasible === 0 ? yield* nearestMisses(brief, asks, limits, Object.keys(rejected) as LimitName[]) : null;
  const nearestEmpty = proving ? ((yield { kind: "nearestEmpty", full: proving.full }) as NearestEmptyWalk).found : null;
  return {
    brief,
    practice: brief.practice,
    walked: tally.walked,
    rejected,
    feasible,
    designs,
    front,
    frontAxes,
    ...(nearest ? { nearest } : {}),
    ...(score.sample ? { sample: score.sample } : {}),
    ...(wires ? { wires: wires.finish(tally) } : {}),
    ...(proving ? { proof: proving.proof(tally, nearestEmpty) } : {}),
    warnings: warningsOf(brief, asks, [...designs, ...front]),
  };
}

/** Designs of the front; those among the best carry their rank, the others 0. */
function rankedFront(
  members: readonly Ranked<Choice>[],
  best: readonly Ranked<Choice>[],
  describe: (choice: Choice) => Design,
): Design[] {
  const rankOf = new Map(best.map(({ keys }, i) => [keys.join(), i + 1]));
  return members.map(({ keys, item }) => ({ ...describe(item), rank: rankOf.get(keys.join()) ?? 0 }));
}

/** What to know of a whole result, whichever act it comes from. */
export function warningsOf({ service: { cycles } }: Brief, asks: Asks, kept: readonly Design[]): WarningName[] {
  const warnings: WarningName[] = [];
  if (cycles !== undefined && asks.fatigue === null) warnings.push("fatigueNotJudged");
  if (cycles !== undefined && asks.fatigue !== null && isBeyondTests(cycles)) warnings.push("beyondFatigueLife");
  if (asks.solidStress === null && asks.workingStress === null) warnings.push("noStressLimit");
  if (kept.some(({ strengthBasis }) => strengthBasis.endsWith("from memory"))) warnings.push("strengthFromMemory");
  return warnings;
}
