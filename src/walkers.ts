import { asksOf } from "./constrain/asks.ts";
import { limitsFor } from "./constrain/limits.ts";
import type { Errand, Steps, Walker } from "./errand.ts";
import type { Brief } from "./model.ts";
import { MissWalk } from "./nearest.ts";
import { NearestEmptyWalk } from "./nearest-empty.ts";
import { Survey } from "./survey.ts";

/** One who walks an errand of a brief. */
export function walkerOf(brief: Brief, errand: Errand): Walker {
  const asks = asksOf(brief);
  switch (errand.kind) {
    case "survey":
      return new Survey(brief, asks, limitsFor(asks), errand.options);
    case "miss":
      return new MissWalk(brief, asks, limitsFor(asks), errand.limit, errand.passing);
    case "nearestEmpty":
      return new NearestEmptyWalk(brief, asks, errand.full);
  }
}

function walked(brief: Brief, errand: Errand): Walker {
  const walker = walkerOf(brief, errand);
  walker.walk(0, walker.strips);
  return walker;
}

/** Go through the steps of an act, each errand walked here and now. */
export function walkedHere<Result>(brief: Brief, steps: Steps<Result>): Result {
  let step = steps.next();
  while (!step.done) {
    step = steps.next(step.value.kind === "drawing" ? undefined : walked(brief, step.value));
  }
  return step.value;
}
