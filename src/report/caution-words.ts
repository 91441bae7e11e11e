import type { CautionName, Design, Units } from "../model.ts";
import { show } from "../units/show.ts";
import { cautionWords } from "./words.ts";

/**
 * What to watch in springs that share a caution; of one that they buckle, at what deflection, and how far work presses them.
 *
 * @param name     the caution
 * @param designs  those that have it, at least one
 * @param units    the reader's
 * @returns one sentence; of several springs with the figures of the one that buckles first in its work
 */
export function cautionSentence(name: CautionName, designs: readonly Design[], units: Units): string {
  const sentence = cautionWords[name];
  if (name !== "bucklesBeforeSolid" && name !== "bucklesInWork") return sentence;
  const [first] = designs
    .map((design) => ({ buckles: design.bucklingDeflection ?? Number.POSITIVE_INFINITY, works: workingDeflection(design) }))
    .sort((a, b) => a.buckles / a.works - b.buckles / b.works);
  const { buckles, works } = first as NonNullable<typeof first>;
  const of = designs.length > 1 ? "the first of them " : "";
  const pressed = `where work presses it ${show(works, "length", units)}`;
  return `${sentence.slice(0, -1)}: ${of}at ${show(buckles, "length", units)}, ${pressed}.`;
}

/** Largest deflection in work, m; none of a spring that is too short to be pressed. */
function workingDeflection({ points }: Design): number {
  return Math.max(0, ...points.map(({ deflection }) => deflection));
}
