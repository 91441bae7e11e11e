import { describer } from "../../constrain/design.ts";
import { namedFiguresReader, type SpringFigures } from "../../constrain/figures.ts";
import type { Brief, Choice, Design, MeritName, SweepResult, Units } from "../../model.ts";
import type { ChartSpring } from "../../report/charts/scatter.ts";
import { choicesOf, frontChoicesOf, type PageData } from "../../report/page/page-data.ts";

/** A spring of the page: its figures, and its place in the page's lists. */
export interface Spring {
  readonly id: number;
  readonly choice: Choice;
  /** What charts draw of it. */
  readonly drawn: ChartSpring;
  /** Every figure; described when first asked for, since of thousands of springs few are looked at. */
  readonly design: Design;
}

/**
 * A run as the views show it.
 *
 * @param data   what the page carries, or what came of a run
 * @param units  the reader's
 */
export function shownOf(data: PageData, units: Units): Shown {
  const {
    ranked,
    front,
    frontAxes,
    sampled,
    walked,
    rejected,
    feasible,
    wires,
    nearest,
    ranksAgain,
    proof,
    tableEnds,
    warnings,
  } = data;
  const brief = { ...data.brief, units };
  const springs = springsOf(data);
  const byId = new Map(springs.map((spring) => [spring.id, spring]));
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
      front: frontDesigns(data, byId).map(ofRank),
      frontAxes,
      ...(wires && { wires }),
      ...(nearest && { nearest }),
      ...(ranksAgain && { ranksAgain }),
      ...(proof && { proof }),
      tableEnds,
      warnings,
    },
    springs,
    front,
    frontDrawn: frontChoicesOf(data).map(namedFiguresReader(data.brief)),
    sampled,
  };
}

/** The front as designs, with the rank of each spring. */
function frontDesigns(data: PageData, byId: ReadonlyMap<number, Spring>): Design[] {
  const describe = describer(data.brief);
  return frontChoicesOf(data).map((choice, i) => {
    const { design } = byId.get(data.front[i] as number) as Spring;
    return design.freeLength === choice.freeLength ? design : { ...describe(choice), rank: design.rank };
  });
}

/**
 * Every spring that the page draws, best first: those with a rank, then the others by the brief's figures.
 *
 * Where the page draws all that fit every one has a rank; in a sample those beyond the ranked ones keep rank 0.
 */
function springsOf(data: PageData): Spring[] {
  const { brief, ranked, feasible } = data;
  const describe = describer(brief);
  const figuresOf = namedFiguresReader(brief);
  const springs = choicesOf(data).map((choice, id) => ({ id, choice, drawn: figuresOf(choice) }));
  const best = springs.slice(0, ranked);
  const others = springs.slice(ranked).sort((a, b) => inOrder(a.drawn, b.drawn, brief.rank) || a.id - b.id);
  // Beyond the ranked ones no springs were drawn, so that by yield nothing is known of their order.
  const known = springs.length >= feasible && !brief.yieldFirst ? springs.length : ranked;
  return [...best, ...others].map(({ id, choice, drawn }, i) => {
    return new PlacedSpring(id, choice, drawn, () => ({
      ...describe(choice),
      ...drawnAbout(data, id),
      rank: i < known ? i + 1 : 0,
    }));
  });
}

class PlacedSpring implements Spring {
  readonly id: number;
  readonly choice: Choice;
  readonly drawn: ChartSpring;
  private readonly describe: () => Design;
  private described: Design | undefined;

  constructor(id: number, choice: Choice, drawn: ChartSpring, describe: () => Design) {
    this.id = id;
    this.choice = choice;
    this.drawn = drawn;
    this.describe = describe;
  }

  get design(): Design {
    this.described ??= this.describe();
    return this.described;
  }
}

/** True where two springs, perhaps of two runs, are wound alike: the load may let them work otherwise. */
export function isSameSpring({ choice: a, drawn: { material, ends } }: Spring, { choice: b, drawn }: Spring): boolean {
  return (
    Math.abs(a.meanDiameter - b.meanDiameter) <= 1e-9 * b.meanDiameter &&
    a.wire.label === b.wire.label &&
    a.wire.series === b.wire.series &&
    material === drawn.material &&
    ends === drawn.ends &&
    a.totalTurns === b.totalTurns
  );
}

/** What springs drawn about a ranked one do, where they were drawn. */
function drawnAbout({ scatter }: PageData, id: number): Pick<Design, "scatter"> {
  const drawn = scatter?.[id];
  return drawn === undefined ? {} : { scatter: drawn };
}

/** Negative where the first comes first: the smallest figure, or the greatest safety at solid. */
function inOrder(a: SpringFigures, b: SpringFigures, rank: readonly MeritName[]): number {
  for (const name of [...rank, "mass" as const]) {
    const difference = name === "solidSafety" ? b[name] - a[name] : a[name] - b[name];
    if (difference !== 0) return difference;
  }
  return a.wireDiameter - b.wireDiameter;
}

/** A finished run, as every view shows it. */
export interface Shown {
  /** In the reader's units. */
  readonly brief: Brief;
  /** Its brief is the one above; the sample stands in the springs. */
  readonly result: Omit<SweepResult, "sample">;
  /** Every spring that is drawn, best first. */
  readonly springs: readonly Spring[];
  /** The springs that make the front, by their id, rising along the first axis. */
  readonly front: readonly number[];
  /** What charts draw of each, at its free length on the front. */
  readonly frontDrawn: readonly ChartSpring[];
  /** How many feasible springs were sampled; undefined where none were. */
  readonly sampled: number | undefined;
}
