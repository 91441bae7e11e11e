import { describer } from "../constrain/design.ts";
import type { Design, MeritName, Units } from "../model.ts";
import { choicesOf, type PageData } from "../report/page-data.ts";
import type { Shown } from "./session.ts";

/** A spring of the page: its figures, and its place in the page's lists. */
export interface Spring {
  readonly id: number;
  readonly design: Design;
}

/**
 * A run as the views show it.
 *
 * @param data   what the page carries, or what came of a run
 * @param units  the reader's
 */
export function shownOf(data: PageData, units: Units): Shown {
  const { ranked, front, frontAxes, sampled, walked, rejected, feasible, nearest, proof, warnings } = data;
  const brief = { ...data.brief, units };
  const springs = springsOf(data);
  const byId = new Map(springs.map(({ id, design }) => [id, design]));
  const ofRank = (design: Design) => (design.rank > ranked ? { ...design, rank: 0 } : design);
  return {
    brief,
    result: {
      brief,
      practice: brief.practice,
      walked,
      rejected,
      feasible,
      designs: springs.slice(0, ranked).map(({ design }) => design),
      front: front.map((id) => ofRank(byId.get(id) as Design)),
      frontAxes,
      ...(nearest && { nearest }),
      ...(proof && { proof }),
      warnings,
    },
    springs,
    front,
    sampled,
  };
}

/**
 * Every spring that the page draws, best first: those with a rank, then the others by the brief's figures.
 *
 * Where the page draws all that fit every one has a rank; in a sample those beyond the ranked ones keep rank 0.
 */
export function springsOf(data: PageData): Spring[] {
  const { brief, ranked, feasible } = data;
  const describe = describer(brief);
  const springs = choicesOf(data).map((choice, id) => ({ id, design: describe(choice) }));
  const best = springs.slice(0, ranked);
  const others = springs.slice(ranked).sort((a, b) => inOrder(a.design, b.design, brief.rank) || a.id - b.id);
  const known = springs.length >= feasible ? springs.length : ranked;
  return [...best, ...others].map(({ id, design }, i) => ({ id, design: { ...design, rank: i < known ? i + 1 : 0 } }));
}

/** True where two designs, perhaps of two runs, are the same spring: the load may let it work otherwise, but it is wound alike. */
export function isSameSpring(a: Design, b: Design): boolean {
  const near = Math.abs(a.meanDiameter - b.meanDiameter) <= 1e-9 * b.meanDiameter;
  return (
    near &&
    a.wire === b.wire &&
    a.series === b.series &&
    a.material === b.material &&
    a.ends === b.ends &&
    a.totalTurns === b.totalTurns
  );
}

/** Negative where the first comes first: the smallest figure, or the greatest safety at solid. */
function inOrder(a: Design, b: Design, rank: readonly MeritName[]): number {
  for (const name of [...rank, "mass" as const]) {
    const difference = name === "solidSafety" ? b[name] - a[name] : a[name] - b[name];
    if (difference !== 0) return difference;
  }
  return a.wireDiameter - b.wireDiameter;
}
