import type { MeritName } from "../model.ts";
import { Front } from "../score/front.ts";
import { MERITS } from "../score/merit.ts";
import { beyondRounding } from "../score/score.ts";
import type { Spring } from "./springs.ts";

/**
 * The front of the springs that the page draws, by any two figures: where it draws all that fit, the whole front.
 *
 * @param springs  best first, so that of equal ones the better stays
 * @param axes     the figure across and the one up
 * @returns the places of the springs on it, in the order of the axis across
 */
export function drawnFront(springs: readonly Spring[], [across, up]: readonly [MeritName, MeritName]): number[] {
  const front = new Front<number>();
  springs.forEach(({ id, design }, place) => {
    const [a, b] = [beyondRounding(MERITS[across](design)), beyondRounding(MERITS[up](design))];
    if (!front.isDominated(a, b)) front.offer(a, b, { keys: [place], item: id });
  });
  return front.members.map(({ item }) => item);
}
