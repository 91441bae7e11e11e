import type { Choice, MeritName, SweepOptions } from "../model.ts";
import { Front, type FrontPoint } from "./front.ts";
import { type Figures, MERITS, orderKeys } from "./merit.ts";
import { BestForEach, BestOf, type Ranked } from "./rank.ts";
import { EvenSample, type SamplePartial } from "./sample.ts";

/** A feasible spring as the score reads it. */
export interface FeasibleSpring extends Figures {
  readonly wire: { readonly label: string; readonly series: string } | null;
  readonly choice: Choice;
}

/** What a score has kept of its feasible springs, as plain data. */
export interface ScorePartial {
  readonly best: readonly Ranked<Choice>[];
  /** With `each`, the best of each value in place of the best of all. */
  readonly bestForEach: readonly (readonly [string, Ranked<Choice>])[];
  readonly front: readonly FrontPoint<Choice>[];
  /** null where no sample is asked. */
  readonly sample: SamplePartial<Choice> | null;
}

/** Designs kept where nothing else is asked. */
const DEFAULT_TOP = 20;

/** How many designs are kept. */
export function topOf({ top, each }: SweepOptions): number {
  return top ?? (each ? Number.POSITIVE_INFINITY : DEFAULT_TOP);
}

/** Figures of a front in steps of 1e-12 of their SI unit, so that two springs of one free length do not differ by rounding. */
function beyondRounding(figure: number): number {
  return Math.round(figure * 1e12) / 1e12;
}

/**
 * Keeps the best, the front and an even sample of a stream of feasible springs, in bounded memory, each material and wire in the
 * sample.
 */
export class Score {
  private readonly rank: readonly MeritName[];
  private readonly firstMerit: (figures: Figures) => number;
  private readonly across: (figures: Figures) => number;
  private readonly up: (figures: Figures) => number;
  private readonly bestOf: BestOf<Choice> | null;
  private readonly bestForEach: BestForEach<Choice> | null;
  private readonly each: SweepOptions["each"];
  private readonly top: number;
  private readonly front = new Front<Choice>();
  private readonly sampled: EvenSample<Choice> | null;
  private lastMaterial = -1;
  private lastWire: FeasibleSpring["wire"] = null;

  /**
   * @param rank       the merits asked, in order
   * @param frontAxes  the two figures of the front
   * @param options    how much to keep
   */
  constructor(rank: readonly MeritName[], frontAxes: readonly [MeritName, MeritName], options: SweepOptions) {
    this.rank = rank;
    this.firstMerit = MERITS[rank[0] as MeritName];
    [this.across, this.up] = [MERITS[frontAxes[0]], MERITS[frontAxes[1]]];
    this.each = options.each;
    this.top = topOf(options);
    this.bestOf = options.each ? null : new BestOf(this.top);
    this.bestForEach = options.each ? new BestForEach() : null;
    this.sampled = options.sample === undefined ? null : new EvenSample(options.sample);
  }

  /** @param family  place of its family among all; the feasible springs of a family come one after another */
  offer(spring: FeasibleSpring, family: number): void {
    const ranks = this.bestOf?.mayKeep(this.firstMerit(spring)) ?? true;
    const across = beyondRounding(this.across(spring));
    const up = beyondRounding(this.up(spring));
    const leads = !this.front.isDominated(across, up);
    if (ranks || leads) {
      const ranked = { keys: orderKeys(spring, this.rank), item: spring.choice };
      this.bestOf?.offer(ranked);
      this.bestForEach?.offer(this.valueOf(spring), ranked);
      if (leads) this.front.offer(across, up, ranked);
    }
    this.sampled?.offer(family, () => spring.choice, this.stretchOf(spring));
  }

  /** Survivors of one material and wire come one after another, and the first of them names the stretch. */
  private stretchOf({ materialOrder, wire }: FeasibleSpring): string | undefined {
    if (materialOrder === this.lastMaterial && wire === this.lastWire) return undefined;
    this.lastMaterial = materialOrder;
    this.lastWire = wire;
    return `${materialOrder} ${wire?.series} ${wire?.label}`;
  }

  /** What is kept, for a score of more feasible springs to merge. */
  get partial(): ScorePartial {
    return {
      best: this.bestOf?.best ?? [],
      bestForEach: this.bestForEach?.entries ?? [],
      front: this.front.points,
      sample: this.sampled?.partial ?? null,
    };
  }

  /** Take what the score of other feasible springs has kept. */
  merge({ best, bestForEach, front, sample }: ScorePartial): void {
    for (const ranked of best) this.bestOf?.offer(ranked);
    for (const [value, ranked] of bestForEach) this.bestForEach?.offer(value, ranked);
    this.front.merge(front);
    if (sample !== null) this.sampled?.merge(sample);
  }

  /** The best, best first. */
  get best(): readonly Ranked<Choice>[] {
    return this.bestOf?.best ?? (this.bestForEach as BestForEach<Choice>).best.slice(0, this.top);
  }

  /** The front, rising along the first axis. */
  get frontMembers(): readonly Ranked<Choice>[] {
    return this.front.members;
  }

  get sample(): readonly Choice[] | undefined {
    return this.sampled?.items;
  }

  private valueOf({ wire, materialOrder, endsOrder }: FeasibleSpring): string {
    if (this.each === "material") return `${materialOrder}`;
    if (this.each === "ends") return `${endsOrder}`;
    return `${wire?.series} ${wire?.label}`;
  }
}
