import { Evaluator } from "../constrain/evaluator.ts";
import type { Limit } from "../constrain/limits/limits.ts";
import { type RejectionCounts, RejectionCountsByWire, type WireCounts } from "../constrain/rejection-counts.ts";
import type { Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, MeritName, SweepOptions } from "../model.ts";
import { MERITS } from "../score/merit.ts";
import { Score, type ScorePartial } from "../score/score.ts";
import { CertificateCollector, type CertificatePartial } from "./certificate.ts";
import type { TaskRunner } from "./tasks.ts";
import { createTraversal, type Traversal } from "./traversal.ts";

/** The front that a client reads first: how wide against how long. */
const DEFAULT_FRONT: readonly [MeritName, MeritName] = ["outsideDiameter", "freeLength"];

/** The partial result of a full search, as plain data. */
export interface FullSearchPartial {
  readonly counts: Float64Array;
  readonly feasible: number;
  readonly visited: number;
  readonly score: ScorePartial;
  readonly certificate: CertificatePartial | null;
  readonly wires: readonly WireCounts[] | null;
}

/** The search of the whole space of a brief: every candidate is counted, and feasible candidates are scored. */
export class FullSearch implements TaskRunner<FullSearchPartial> {
  readonly frontAxes: readonly [MeritName, MeritName];
  readonly score: Score;
  readonly rejections: RejectionCounts;
  /** null where the search proves nothing. */
  readonly certificate: CertificateCollector | null;
  /** null where counts by wire are not requested. */
  readonly wires: RejectionCountsByWire | null;
  private readonly traversal: Traversal;

  /** @param options  how much to keep */
  constructor(brief: Brief, requirements: Requirements, limits: readonly Limit[], options: SweepOptions) {
    this.frontAxes = options.frontAxes ?? DEFAULT_FRONT;
    const score = new Score(brief.rank, this.frontAxes, options);
    const wires = options.byWire ? new RejectionCountsByWire(brief) : null;
    const evaluator = new Evaluator(brief, requirements, (material, wire) => wires?.enter(material, wire, evaluator.rejections));
    const { rejections } = evaluator;
    // Ranked by yield the first design is not the one that a search proves to be the best.
    const certificate = brief.yieldFirst ? null : CertificateCollector.of(brief, requirements);
    this.score = score;
    this.rejections = rejections;
    this.certificate = certificate;
    this.wires = wires;
    this.traversal = createTraversal(brief, evaluator, limits, {
      asReported: true,
      onFeasible: (candidate, family) => {
        rejections.feasible++;
        score.offer(candidate, family);
        certificate?.offer(candidate, family);
      },
      objective: MERITS[brief.rank[0] as MeritName],
    });
  }

  get slices(): number {
    return this.traversal.slices;
  }

  get counted(): number {
    return this.rejections.walked;
  }

  run(from: number, to: number): void {
    this.traversal.run(from, to);
  }

  get partial(): FullSearchPartial {
    const { rejections, score, certificate, traversal, wires } = this;
    const { counts, feasible } = rejections;
    return {
      counts,
      feasible,
      visited: traversal.visited,
      score: score.partial,
      certificate: certificate?.partial ?? null,
      wires: wires?.partial(rejections) ?? null,
    };
  }

  merge({ counts, feasible, visited, score, certificate, wires }: FullSearchPartial): void {
    this.traversal.addVisited(visited);
    if (wires !== null) this.wires?.merge(wires, this.rejections);
    this.rejections.add(counts, feasible);
    this.score.merge(score);
    if (certificate !== null) this.certificate?.merge(certificate);
  }
}
