import type { Candidate } from "../constrain/candidate/candidate.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import type { RejectionCounts } from "../constrain/rejection-counts.ts";
import { isSolved, type Requirements } from "../constrain/requirements/requirements.ts";
import type { Brief, MeritName, Proof, ProofCaveat } from "../model.ts";
import { MERITS } from "../score/merit.ts";
import { BestOf } from "../score/rank.ts";

/** Figures that may have several minima over the diameters of a family, so that the least is found by sampling. */
const SEARCHED: readonly MeritName[] = ["freeLength", "solidSafety"];

/** The certificate of part of a search, as plain data. */
export interface CertificatePartial {
  /** The two least figures. */
  readonly least: readonly number[];
  /** Indices of the families with a feasible design. */
  readonly nonEmpty: readonly number[];
}

/** Collects the optimality certificate during a search in which each family is one candidate. */
export class CertificateCollector {
  private readonly brief: Brief;
  private readonly requirements: Requirements;
  private readonly merit: MeritName;
  private readonly figure: (candidate: Candidate) => number;
  private readonly best = new BestOf<null>(2);
  /** Indices of the families with a feasible design. */
  readonly nonEmpty: number[] = [];

  private constructor(brief: Brief, requirements: Requirements) {
    this.brief = brief;
    this.requirements = requirements;
    this.merit = brief.rank[0] as MeritName;
    this.figure = MERITS[this.merit];
  }

  /**
   * For a brief whose diameters are solved or searched over the reals; null on a grid, which proves nothing between its positions.
   */
  static of(brief: Brief, requirements: Requirements): CertificateCollector | null {
    return isSolved(requirements) || requirements.exact ? new CertificateCollector(brief, requirements) : null;
  }

  /** Add the feasible candidate of a family. */
  offer(candidate: Candidate, family: number): void {
    this.nonEmpty.push(family);
    this.offerFigure(this.figure(candidate));
  }

  private offerFigure(figure: number): void {
    if (this.best.mayKeep(figure)) this.best.offer({ keys: [figure], item: null });
  }

  get partial(): CertificatePartial {
    return { least: this.best.best.map(({ keys: [figure = Number.NaN] }) => figure), nonEmpty: this.nonEmpty };
  }

  /** Merge the certificate of another part of the search. */
  merge({ least, nonEmpty }: CertificatePartial): void {
    for (const figure of least) this.offerFigure(figure);
    for (const family of nonEmpty) this.nonEmpty.push(family);
  }

  /**
   * @param rejections      of the finished walk
   * @param leastViolation  the least relaxation that makes an empty family feasible
   */
  certificate({ walked, rejected }: RejectionCounts, leastViolation: number | null): Proof {
    // A merit of which more is better is sought as its negative.
    const [optimum = null, runnerUp = null] = this.partial.least.map(Math.abs);
    return {
      families: walked,
      empty: rejected,
      merit: this.merit,
      optimum,
      runnerUp,
      gap: optimum === null || runnerUp === null ? null : Math.abs(runnerUp - optimum) / optimum,
      nearestEmpty: leastViolation,
      caveats: caveatsOf(this.brief, this.requirements),
    };
  }
}

function caveatsOf({ rank }: Brief, requirements: Requirements): ProofCaveat[] {
  if (isSolved(requirements)) return [];
  const sampled = limitsFor(requirements).some(({ bounds }) =>
    bounds.some(({ byConstruction, monotonicity }) => !byConstruction && monotonicity === "unknown"),
  );
  return [
    ...(rank.length > 1 ? (["severalFigures"] as const) : []),
    ...(sampled ? (["sampledLimit"] as const) : []),
    ...(SEARCHED.includes(rank[0] as MeritName) ? (["searchedFigure"] as const) : []),
  ];
}
