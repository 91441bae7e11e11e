import { isBeyondTests } from "../constrain/candidate/fatigue.ts";
import { describer } from "../constrain/design.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import { dependOnFreeLength } from "../constrain/requirements/load.ts";
import { type Requirements, resolveRequirements } from "../constrain/requirements/requirements.ts";
import { tableEnds } from "../constrain/table-ends.ts";
import type {
  Brief,
  Choice,
  Design,
  LimitName,
  MeritName,
  SweepOptions,
  SweepResult,
  SweepWatch,
  WarningName,
} from "../model.ts";
import type { Ranked } from "../score/rank.ts";
import { topOf } from "../score/score.ts";
import type { FullSearch } from "../search/full-search.ts";
import type { LeastViolationSearch } from "../search/least-violation.ts";
import { nearMisses } from "../search/near-misses.ts";
import { runPlan } from "../search/task-runner.ts";
import type { TaskPlan } from "../search/tasks.ts";
import { byYield, ToleranceSampling } from "./yield.ts";

/** The best by the other figures that are ranked again by yield, where that is asked; more where more are to be kept. */
const RANKED_AGAIN = 200;

/**
 * Walk every family of a brief, cut each by the limits, rank what is feasible.
 *
 *   Brief ─▶ walk: material x wire x turns x ends ─▶ survivors ─▶ score ─▶ best N, front, sample ─▶ designs
 *                   │ each limit in turn cuts the family's range of mean diameter
 *                   └─▶ rejection counts
 *
 * @param brief    a resolved brief; left unchanged
 * @param options  how much to keep, and who follows the sweep
 * @returns plain SI data; `walked = feasible + the sum of rejected`; the same brief and options give the same bytes
 * @throws the reason of the signal where that is aborted
 */
export function sweep(brief: Brief, { onProgress, signal, ...options }: SweepOptions & SweepWatch = {}): SweepResult {
  return runPlan(brief, sweepSteps(brief, options), { ...(onProgress && { onProgress }), ...(signal && { signal }) });
}

/** The same with its walks left to the caller, who may share each among threads. */
export function* sweepSteps(brief: Brief, options: SweepOptions): TaskPlan<SweepResult> {
  // 1. what the brief asks, and the limits that ask it
  const requirements = resolveRequirements(brief);
  const limits = limitsFor(requirements);

  // 2. the search: it cuts and counts, and what is feasible is scored
  const top = topOf(options);
  const kept = brief.yieldFirst ? { ...options, top: Math.max(top, RANKED_AGAIN) } : options;
  const { score, rejections, certificate, wires, frontAxes } = (yield { kind: "fullSearch", options: kept }) as FullSearch;

  // 3. the figures of what was kept, and springs drawn about each where the brief asks that
  const describe = describer(brief, requirements);
  const pool = yield* described(brief, score.best, describe);
  const best = brief.yieldFirst ? byYield(pool).slice(0, top) : pool;
  const designs = best.map(({ design }, i): Design => ({ ...design, rank: i + 1 }));
  const front = rankedFront(score.frontMembers, best, designs, frontDescriber(brief, requirements, frontAxes, describe));

  // 4. why nothing fits, where nothing does; what a search over the reals proves
  const { rejected, feasible } = rejections;
  const { sample } = score;
  const nearest =
    options.nearest || feasible === 0
      ? yield* nearMisses(brief, requirements, limits, Object.keys(rejected) as LimitName[])
      : null;
  const leastViolation = certificate
    ? ((yield { kind: "leastViolation", nonEmpty: certificate.nonEmpty }) as LeastViolationSearch).partial
    : null;
  return {
    brief,
    practice: brief.practice,
    walked: rejections.walked,
    rejected,
    feasible,
    designs,
    front,
    frontAxes,
    ...(nearest ? { nearest } : {}),
    ...(sample ? { sample } : {}),
    ...(wires ? { wires: wires.finish(rejections) } : {}),
    ...(brief.yieldFirst ? { ranksAgain: pool.length } : {}),
    ...(certificate ? { proof: certificate.certificate(rejections, leastViolation) } : {}),
    tableEnds: tableEnds(brief, options.each ? designs : designs.slice(0, 1)),
    warnings: warningsOf(brief, requirements, [...designs, ...front]),
  };
}

/** A feasible spring with its figures. */
interface Described {
  readonly keys: readonly number[];
  readonly design: Design;
}

function* described(
  brief: Brief,
  best: readonly Ranked<Choice>[],
  describe: (choice: Choice) => Design,
): TaskPlan<readonly Described[]> {
  const sampling = ToleranceSampling.forBrief(brief, best.length);
  const all: Described[] = [];
  for (const { keys, item } of best) {
    const design = describe(item);
    all.push({ keys, design: sampling ? yield* sampling.sample(item, design) : design });
  }
  return all;
}

/**
 * The figures of a spring of the front: as it is reported, but where the load leaves the free length free and an axis depends on it
 * at the shortest, which betters every other.
 */
function frontDescriber(
  brief: Brief,
  requirements: Requirements,
  axes: readonly MeritName[],
  describe: (choice: Choice) => Design,
): (choice: Choice) => Design {
  if (requirements.freeLengthAim.kind !== "middle" || !dependOnFreeLength(axes)) return describe;
  return describer(brief, { ...requirements, freeLengthAim: { kind: "shortest" } });
}

/** Designs of the front; those among the best keep their rank, the others have rank 0. */
function rankedFront(
  members: readonly Ranked<Choice>[],
  best: readonly Described[],
  designs: readonly Design[],
  describe: (choice: Choice) => Design,
): Design[] {
  const indexOf = new Map(best.map(({ keys }, i) => [keys.join(), i]));
  return members.map(({ keys, item }) => {
    const ranked = designs[indexOf.get(keys.join()) ?? -1];
    const design = describe(item);
    if (ranked === undefined) return design;
    return ranked.freeLength === design.freeLength ? ranked : { ...design, rank: ranked.rank };
  });
}

/** What to know of a whole result, whichever act it comes from. */
export function warningsOf({ service }: Brief, requirements: Requirements, kept: readonly Design[]): WarningName[] {
  const { cycles, temperature } = service;
  const warnings: WarningName[] = [];
  if (cycles !== undefined && requirements.fatigue === null) warnings.push("fatigueNotJudged");
  if (cycles !== undefined && requirements.fatigue !== null && isBeyondTests(cycles)) warnings.push("beyondFatigueLife");
  if (requirements.solidStress === null && requirements.workingStress === null) warnings.push("noStressLimit");
  const unknownAtTemperature = requirements.lifted.has("hotForce") || kept.some(({ hot }) => hot?.rate === null);
  if (temperature !== undefined && requirements.loadWindows.length > 0 && unknownAtTemperature)
    warnings.push("hotForceNotJudged");
  if (kept.some(({ scatter }) => scatter === null)) warnings.push("scatterUnknown");
  return warnings;
}
