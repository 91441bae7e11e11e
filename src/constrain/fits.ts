import type { Brief, Choice } from "../model.ts";
import { asksOf } from "./asks.ts";
import { FreeLengthRange } from "./free-length-range.ts";
import { Ground } from "./ground.ts";
import { limitsFor } from "./limits.ts";

/**
 * Whether one spring passes every limit of a brief at some free length, by the limits that its walk cuts by.
 *
 * @param brief   a resolved brief
 * @param choice  a spring of its lists, with counted turns; on the grid of the walk or not
 */
export function fits(brief: Brief, choice: Choice): boolean {
  const asks = asksOf(brief);
  const ground = new Ground(brief, asks);
  if (ground.enter(choice.material, choice.wire) !== null) return false;
  ground.setEnds(choice.ends, choice.totalTurns);
  ground.candidate.place(choice.meanDiameter);
  return new FreeLengthRange(ground.candidate, limitsFor(asks)).settle();
}
