import { limitsFor } from "../constrain/limits/limits.ts";
import { resolveRequirements } from "../constrain/requirements/requirements.ts";
import type { Brief, SweepProgress, SweepWatch } from "../model.ts";
import { Survey } from "./full-search.ts";
import { NearestEmptyWalk } from "./least-violation.ts";
import { MissWalk } from "./near-misses.ts";
import { type Errand, piecesIn, type Steps, type Walker } from "./tasks.ts";

/** One who walks an errand of a brief. */
export function walkerOf(brief: Brief, errand: Errand): Walker {
  const requirements = resolveRequirements(brief);
  switch (errand.kind) {
    case "survey":
      return new Survey(brief, requirements, limitsFor(requirements), errand.options);
    case "miss":
      return new MissWalk(brief, requirements, limitsFor(requirements), errand.limit, errand.passing);
    case "nearestEmpty":
      return new NearestEmptyWalk(brief, requirements, errand.full);
  }
}

function walked(brief: Brief, errand: Errand, tell: ((progress: SweepProgress) => void) | null): Walker {
  const walker = walkerOf(brief, errand);
  const { strips } = walker;
  const work = errand.kind === "survey" ? "walk" : "nearest";
  const pieces = tell === null ? 1 : piecesIn(strips);
  const start = (piece: number) => Math.floor((piece * strips) / pieces);
  for (let piece = 0; piece < pieces; piece++) {
    walker.walk(start(piece), start(piece + 1));
    tell?.({ work, share: (piece + 1) / pieces, counted: walker.walked });
  }
  return walker;
}

/**
 * Go through the steps of an act, each errand walked here and now.
 *
 * @throws the reason of the signal where it is aborted
 */
export function walkedHere<Result>(brief: Brief, steps: Steps<Result>, { onProgress, signal }: SweepWatch = {}): Result {
  const followed = (progress: SweepProgress) => {
    onProgress?.(progress);
    signal?.throwIfAborted();
  };
  const tell = onProgress || signal ? followed : null;
  signal?.throwIfAborted();
  let step = steps.next();
  while (!step.done) {
    const { value } = step;
    if (value.kind === "drawing") {
      tell?.({ work: "draw", share: value.drawn / value.of, counted: value.drawn });
      step = steps.next();
    } else step = steps.next(walked(brief, value, tell));
  }
  return step.value;
}
