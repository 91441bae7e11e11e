import { type Asks, isSolved } from "./constrain/asks.ts";
import type { Candidate } from "./constrain/candidate.ts";
import { givingWay, shareNeeded } from "./constrain/eased.ts";
import { Ground } from "./constrain/ground.ts";
import { limitsFor } from "./constrain/limits.ts";
import { PASSES } from "./constrain/side.ts";
import type { Tally } from "./constrain/tally.ts";
import type { Brief, MeritName, Proof, ProofCaveat } from "./model.ts";
import { MERITS } from "./score/merit.ts";
import { BestOf } from "./score/rank.ts";
import { walk } from "./walk.ts";

/** Figures that need not have one valley over the diameters of a family, so that the least found is a search's. */
const SEARCHED: readonly MeritName[] = ["freeLength", "solidSafety"];

/** Gathers, while a walk goes on in which each family is one candidate, what it shows of the whole space. */
export class Proving {
  private readonly brief: Brief;
  private readonly asks: Asks;
  private readonly merit: MeritName;
  private readonly figure: (candidate: Candidate) => number;
  private readonly best = new BestOf<null>(2);

  private constructor(brief: Brief, asks: Asks) {
    this.brief = brief;
    this.asks = asks;
    this.merit = brief.rank[0] as MeritName;
    this.figure = MERITS[this.merit];
  }

  /** For a brief whose diameters are solved or walked over the reals; null on a grid, which proves nothing between its lines. */
  static of(brief: Brief, asks: Asks): Proving | null {
    return isSolved(asks) || asks.exact ? new Proving(brief, asks) : null;
  }

  /** Take the candidate of a family that fits. */
  offer(candidate: Candidate): void {
    const figure = this.figure(candidate);
    if (this.best.mayKeep(figure)) this.best.offer({ keys: [figure], item: null });
  }

  /** @param tally  of the finished walk */
  proof({ walked, rejected }: Tally): Proof {
    // A merit of which more is better is sought as its negative.
    const [optimum = null, runnerUp = null] = this.best.best.map(({ keys: [figure = Number.NaN] }) => Math.abs(figure));
    return {
      families: walked,
      empty: rejected,
      merit: this.merit,
      optimum,
      runnerUp,
      gap: optimum === null || runnerUp === null ? null : Math.abs(runnerUp - optimum) / optimum,
      nearestEmpty: nearestEmpty(this.brief, this.asks),
      caveats: caveatsOf(this.brief, this.asks),
    };
  }
}

/** Over all families that hold nothing, the least share by which their limits would all have to give; one more walk. */
function nearestEmpty(brief: Brief, asks: Asks): number | null {
  const judging = limitsFor(asks).filter(({ reported, sides }) => reported && sides.some(({ kept }) => !kept));
  const {
    asks: open,
    limits,
    giving,
  } = givingWay(
    asks,
    judging.map(({ name }) => name),
  );
  let nearest = Number.POSITIVE_INFINITY;
  walk(brief, new Ground(brief, open), limits, {
    least: (candidate) => shareNeeded(giving, candidate),
    survive: (candidate) => {
      const share = shareNeeded(giving, candidate);
      if (share <= -PASSES || share >= nearest) return;
      nearest = share;
      for (const limit of giving) limit.eased = share;
    },
  });
  return Number.isFinite(nearest) ? nearest : null;
}

function caveatsOf({ rank }: Brief, asks: Asks): ProofCaveat[] {
  if (isSolved(asks)) return [];
  const sampled = limitsFor(asks).some(({ sides }) => sides.some(({ kept, shape }) => !kept && shape === "none"));
  return [
    ...(rank.length > 1 ? (["severalFigures"] as const) : []),
    ...(sampled ? (["sampledLimit"] as const) : []),
    ...(SEARCHED.includes(rank[0] as MeritName) ? (["searchedFigure"] as const) : []),
  ];
}
