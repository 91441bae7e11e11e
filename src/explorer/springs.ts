import { describer } from "../constrain/design.ts";
import type { Design, MeritName } from "../model.ts";
import { choicesOf, type PageData } from "../report/page-data.ts";

/** A spring of the page: its figures, and its place in the page's lists. */
export interface Spring {
  readonly id: number;
  readonly design: Design;
}

/**
 * Every spring that the page draws, best first: those with a rank, then the others by the brief's figures.
 *
 * Where the page draws all that fit every one has a rank; in a sample those beyond the ranked ones keep rank 0.
 */
export function springsOf(data: PageData): Spring[] {
  const { brief, ranked, feasible } = data;
  const describe = describer(brief);
  const springs = choicesOf(data).map((choice, id) => ({ id, design: { ...describe(choice), ...drawnAbout(data, id) } }));
  const best = springs.slice(0, ranked);
  const others = springs.slice(ranked).sort((a, b) => inOrder(a.design, b.design, brief.rank) || a.id - b.id);
  // Beyond the ranked ones no springs were drawn, so that by yield nothing is known of their order.
  const known = springs.length >= feasible && !brief.yieldFirst ? springs.length : ranked;
  return [...best, ...others].map(({ id, design }, i) => ({ id, design: { ...design, rank: i < known ? i + 1 : 0 } }));
}

/** What springs drawn about a ranked one do, where they were drawn. */
function drawnAbout({ scatter }: PageData, id: number): Pick<Design, "scatter"> {
  const drawn = scatter?.[id];
  return drawn === undefined ? {} : { scatter: drawn };
}

/** Negative where the first comes first: the smallest figure, or the greatest safety at solid. */
function inOrder(a: Design, b: Design, rank: readonly MeritName[]): number {
  for (const name of [...rank, "mass" as const]) {
    const difference = name === "solidSafety" ? b[name] - a[name] : a[name] - b[name];
    if (difference !== 0) return difference;
  }
  return a.wireDiameter - b.wireDiameter;
}
