import { asksOf } from "./constrain/asks.ts";
import { tableEnds } from "./constrain/table-ends.ts";
import type { Brief, Design, MeritName, RelaxResult } from "./model.ts";
import { concessionsOf } from "./relax/concessions.ts";
import { limitPrices } from "./relax/prices.ts";
import { sweep } from "./sweep.ts";

/**
 * What each limit of a brief costs; where nothing fits, what must give before anything does.
 *
 *   Brief ─▶ sweep ─▶ something fits: each limit eased by 5 %, by 10 %, gone ─▶ a walk each ─▶ its best design, and the gain
 *                  └▶ nothing fits: each limit, each pair free to give ─▶ a walk each ─▶ the least share, and the design that fits
 *
 * To ease a limit is to move its bounds outwards by a share of themselves, no other limit being touched.
 *
 * @param brief  a resolved brief; left unchanged
 * @returns plain SI data; the same brief gives the same bytes
 */
export function relax(brief: Brief): RelaxResult {
  const asks = asksOf(brief);
  // A price is of a figure, so the best is the best by figures.
  const { yieldFirst, ...byFigures } = brief;
  const { practice, walked, rejected, feasible, designs, warnings } = sweep(byFigures, { top: 1 });
  const best: Design | null = designs[0] ?? null;
  const prices = best === null ? [] : limitPrices(brief, asks, best);
  const eased = prices.flatMap(({ steps }) => steps.flatMap((step) => (step.best === null ? [] : [step.best.design])));
  return {
    brief,
    practice,
    walked,
    rejected,
    feasible,
    merit: brief.rank[0] as MeritName,
    best,
    prices,
    concessions: best === null ? concessionsOf(brief, asks) : [],
    tableEnds: tableEnds(brief, best === null ? [] : [best, ...eased]),
    warnings,
  };
}
