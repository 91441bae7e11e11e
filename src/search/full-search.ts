import { Evaluator } from "../constrain/evaluator.ts";
import type { Limit } from "../constrain/limits/limits.ts";
import { type RejectionCounts, RejectionCountsByWire, type WireCounts } from "../constrain/rejection-counts.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, MeritName, SweepOptions } from "../model.ts";
import { MERITS } from "../score/merit.ts";
import { type Kept, Score } from "../score/score.ts";
import { type Proven, Proving } from "./certificate.ts";
import type { Walker } from "./tasks.ts";
import { type Walking, walking } from "./traversal.ts";

/** The front that a client reads first: how wide against how long. */
const DEFAULT_FRONT: readonly [MeritName, MeritName] = ["outsideDiameter", "freeLength"];

/** What a survey found, as plain data. */
export interface Surveyed {
  readonly counts: Float64Array;
  readonly feasible: number;
  readonly visited: number;
  readonly kept: Kept;
  readonly proven: Proven | null;
  readonly wires: readonly WireCounts[] | null;
}

/** The walk over the whole space of a brief: every candidate is counted, and what survives is scored. */
export class Survey implements Walker<Surveyed> {
  readonly frontAxes: readonly [MeritName, MeritName];
  readonly score: Score;
  readonly rejections: RejectionCounts;
  /** null where the walk proves nothing. */
  readonly proving: Proving | null;
  /** null where the tally by wire is not asked. */
  readonly wires: RejectionCountsByWire | null;
  private readonly walking: Walking;

  /** @param options  how much to keep */
  constructor(brief: Brief, requirements: Requirements, limits: readonly Limit[], options: SweepOptions) {
    this.frontAxes = options.frontAxes ?? DEFAULT_FRONT;
    const score = new Score(brief.rank, this.frontAxes, options);
    const wires = options.byWire ? new RejectionCountsByWire(brief) : null;
    const evaluator = new Evaluator(brief, requirements, (material, wire) => wires?.enter(material, wire, evaluator.rejections));
    const { rejections } = evaluator;
    // Ranked by yield the first design is not the one that a walk proves to be the best.
    const proving = brief.yieldFirst ? null : Proving.of(brief, requirements);
    this.score = score;
    this.rejections = rejections;
    this.proving = proving;
    this.wires = wires;
    this.walking = walking(brief, evaluator, limits, {
      asReported: true,
      onFeasible: (candidate, family) => {
        rejections.feasible++;
        score.offer(candidate, family);
        proving?.offer(candidate, family);
      },
      least: MERITS[brief.rank[0] as MeritName],
    });
  }

  get strips(): number {
    return this.walking.strips;
  }

  get walked(): number {
    return this.rejections.walked;
  }

  walk(from: number, to: number): void {
    this.walking.walk(from, to);
  }

  get found(): Surveyed {
    const { rejections, score, proving, walking, wires } = this;
    const { counts, feasible } = rejections;
    return {
      counts,
      feasible,
      visited: walking.visited,
      kept: score.kept,
      proven: proving?.proven ?? null,
      wires: wires?.kept(rejections) ?? null,
    };
  }

  absorb({ counts, feasible, visited, kept, proven, wires }: Surveyed): void {
    this.walking.addVisited(visited);
    if (wires !== null) this.wires?.absorb(wires, this.rejections);
    this.rejections.add(counts, feasible);
    this.score.absorb(kept);
    if (proven !== null) this.proving?.absorb(proven);
  }
}
