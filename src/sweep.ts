import { type Asks, asksOf } from "./constrain/asks.ts";
import { describer } from "./constrain/design.ts";
import { Ground } from "./constrain/ground.ts";
import { limitsFor } from "./constrain/limits.ts";
import type { Brief, Choice, Design, LimitName, MeritName, SweepOptions, SweepResult, WarningName } from "./model.ts";
import { nearestMisses } from "./nearest.ts";
import { Proving } from "./proof.ts";
import { byYield, Scattering } from "./scatter.ts";
import { MERITS } from "./score/merit.ts";
import type { Ranked } from "./score/rank.ts";
import { Score, topOf } from "./score/score.ts";
import { walk } from "./walk.ts";

/** The front that a client reads first: how wide against how long. */
const DEFAULT_FRONT: readonly [MeritName, MeritName] = ["outsideDiameter", "freeLength"];

/** The best by the other figures that are ranked again by yield, where that is asked; more where more are to be kept. */
const RANKED_AGAIN = 200;

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
  // 1. what the brief asks, and the limits that ask it
  const asks = asksOf(brief);
  const limits = limitsFor(asks);

  // 2. the walk: it cuts and counts, and what survives is scored
  const frontAxes = options.frontAxes ?? DEFAULT_FRONT;
  const top = topOf(options);
  const score = new Score(brief.rank, frontAxes, brief.yieldFirst ? { ...options, top: Math.max(top, RANKED_AGAIN) } : options);
  const ground = new Ground(brief, asks);
  const { tally } = ground;
  // Ranked by yield the first design is not the one that a walk proves to be the best.
  const proving = brief.yieldFirst ? null : Proving.of(brief, asks);
  walk(brief, ground, limits, {
    survive: (candidate) => {
      tally.feasible++;
      score.offer(candidate);
      proving?.offer(candidate);
    },
    least: MERITS[brief.rank[0] as MeritName],
  });

  // 3. the figures of what was kept, and springs drawn about each where the brief asks that
  const describe = describer(brief, asks);
  const pool = described(brief, score.best, describe);
  const best = brief.yieldFirst ? byYield(pool).slice(0, top) : pool;
  const designs = best.map(({ design }, i): Design => ({ ...design, rank: i + 1 }));
  const front = rankedFront(score.frontMembers, best, designs, describe);

  // 4. why nothing fits, where nothing does
  const { rejected, feasible } = tally;
  const nearest =
    options.nearest || feasible === 0 ? nearestMisses(brief, asks, limits, Object.keys(rejected) as LimitName[]) : null;
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
    ...(brief.yieldFirst ? { ranksAgain: pool.length } : {}),
    ...(proving ? { proof: proving.proof(tally) } : {}),
    warnings: warningsOf(brief, asks, [...designs, ...front]),
  };
}

/** A survivor with its figures. */
interface Described {
  readonly keys: readonly number[];
  readonly design: Design;
}

function described(brief: Brief, best: readonly Ranked<Choice>[], describe: (choice: Choice) => Design): readonly Described[] {
  const scattering = Scattering.of(brief, best.length);
  return best.map(({ keys, item }) => {
    const design = describe(item);
    return { keys, design: scattering ? scattering.about(item, design) : design };
  });
}

/** Designs of the front; those among the best are the same, the others have rank 0. */
function rankedFront(
  members: readonly Ranked<Choice>[],
  best: readonly Described[],
  designs: readonly Design[],
  describe: (choice: Choice) => Design,
): Design[] {
  const placeOf = new Map(best.map(({ keys }, i) => [keys.join(), i]));
  return members.map(({ keys, item }) => designs[placeOf.get(keys.join()) ?? -1] ?? describe(item));
}

/** Cycles beyond which springs have been seen to lose strength that a test to ten million did not show. */
const TESTED_LIFE = 1e7;

/** What to know of a whole result, whichever act it comes from. */
export function warningsOf({ service: { cycles } }: Brief, asks: Asks, kept: readonly Design[]): WarningName[] {
  const warnings: WarningName[] = [];
  if (cycles !== undefined && asks.fatigue === null) warnings.push("fatigueNotJudged");
  if (cycles !== undefined && asks.fatigue !== null && cycles > TESTED_LIFE) warnings.push("beyondFatigueLife");
  if (asks.solidStress === null && asks.workingStress === null) warnings.push("noStressLimit");
  if (kept.some(({ scatter }) => scatter === null)) warnings.push("scatterUnknown");
  if (kept.some(({ strengthBasis }) => strengthBasis.endsWith("from memory"))) warnings.push("strengthFromMemory");
  return warnings;
}
