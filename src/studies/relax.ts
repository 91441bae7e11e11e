import { describer } from "../constrain/design.ts";
import { relaxableLimits } from "../constrain/relaxed.ts";
import { type Requirements, resolveRequirements } from "../constrain/requirements/requirements.ts";
import { tableEnds } from "../constrain/table-ends.ts";
import type { Brief, Concession, Design, LimitName, MeritName, RelaxResult } from "../model.ts";
import { leastRelaxation, termsOf } from "./least-relaxation.ts";
import { limitSensitivities } from "./sensitivity.ts";
import { sweep } from "./sweep.ts";

/**
 * What each limit of a brief costs; where nothing fits, what must give before anything does.
 *
 *   Brief ─▶ sweep ─▶ something fits: each limit relaxed by 5 %, by 10 %, removed ─▶ a search each ─▶ its best, and the gain
 *                  └▶ nothing fits: each limit, each pair relaxed ─▶ a search each ─▶ the least fraction, and its design
 *
 * To relax a limit is to move its bounds outwards by a share of themselves, no other limit being touched.
 *
 * @param brief  a resolved brief; left unchanged
 * @returns plain SI data; the same brief gives the same bytes
 */
export function relax(brief: Brief): RelaxResult {
  const requirements = resolveRequirements(brief);
  // A price is of a figure, so the best is the best by figures.
  const { yieldFirst, ...byFigures } = brief;
  const { practice, walked, rejected, feasible, designs, warnings } = sweep(byFigures, { top: 1 });
  const best: Design | null = designs[0] ?? null;
  const sensitivities = best === null ? [] : limitSensitivities(brief, requirements, best);
  const relaxed = sensitivities.flatMap(({ steps }) => steps.flatMap((step) => (step.best === null ? [] : [step.best.design])));
  return {
    brief,
    practice,
    walked,
    rejected,
    feasible,
    merit: brief.rank[0] as MeritName,
    best,
    prices: sensitivities,
    concessions: best === null ? requiredRelaxations(brief, requirements) : [],
    tableEnds: tableEnds(brief, best === null ? [] : [best, ...relaxed]),
    warnings,
  };
}

/** Shares nearer to each other than this are one. */
const SAME = 1e-7;

/**
 * What must give before anything fits: single limits first, then the pairs of which both give, by a share smaller than either alone
 * would have to.
 *
 * @param brief         a resolved brief of which nothing fits
 * @param requirements  its requirements
 * @returns the least share first among the single limits, and so among the pairs; equal ones in the order in which a candidate
 *   falls
 */
function requiredRelaxations(brief: Brief, requirements: Requirements): Concession[] {
  const names = relaxableLimits(requirements);
  const singles = names.flatMap((name) => requiredRelaxation(brief, requirements, [name]));
  const alone = new Map(singles.map(({ limits: [name], share: fraction }) => [name, fraction]));
  const pairs = names.flatMap((one, i) =>
    names.slice(i + 1).flatMap((other) => requiredRelaxation(brief, requirements, [one, other])),
  );
  const bothRelaxed = pairs.filter(({ limits, share: fraction }) =>
    limits.every((name) => fraction < (alone.get(name) ?? GREATEST) - SAME),
  );
  return [...leastFirst(singles), ...leastFirst(bothRelaxed)];
}

const GREATEST = Number.POSITIVE_INFINITY;

function requiredRelaxation(brief: Brief, requirements: Requirements, limits: readonly LimitName[]): Concession[] {
  const least = leastRelaxation(brief, requirements, limits);
  if (least === null) return [];
  const { fraction, choice } = least;
  const terms = limits.flatMap((name) => termsOf(brief, requirements, name, choice, fraction) ?? []);
  return [{ limits, share: fraction, design: { ...describer(brief, requirements)(choice), rank: 1 }, terms }];
}

function leastFirst(relaxations: readonly Concession[]): Concession[] {
  return [...relaxations].sort((a, b) => a.share - b.share);
}
