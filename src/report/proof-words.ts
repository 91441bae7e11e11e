import type { Brief, Proof, ProofCaveat } from "../model.ts";
import { figureWordsIn } from "./cost-words.ts";
import { countWords } from "./funnel.ts";

/** Two figures nearer than this share are the same: what differs is how numbers are rounded. */
const SAME = 1e-9;

/** How far a proof falls short of "no spring of this space is better". */
const proofCaveatWords: Readonly<Record<ProofCaveat, string>> = {
  severalFigures: "Only the first figure of the ranking is proven: within a family no other diameter was compared by the others.",
  sampledLimit:
    "A limit without a declared shape was looked at by samples along each family: a stretch between two may be missed.",
  searchedFigure: "The figure was searched along each family, where it may have more than one valley.",
};

/**
 * What a sweep shows of the whole space, no further than it is true.
 *
 * @param proof  of a sweep in which each family is one candidate
 * @param brief  the requirement
 * @returns sentences in one line
 */
export function proofWords(proof: Proof, brief: Brief): string {
  const { families, empty, merit, gap, optimum, nearestEmpty, caveats } = proof;
  const emptied = Object.values(empty).reduce((sum, count) => sum + count, 0);
  const hold = emptied === families ? "all hold nothing" : `${countWords(emptied)} hold nothing`;
  const [better, behind] = merit === "solidSafety" ? ["larger", "less"] : ["smaller", "more"];
  const best = `None has a ${better} ${figureWordsIn(merit, brief).label} than the best design`;
  const other = "; the best of another family";
  const next = gap === null ? "" : gap < SAME ? `${other} has the same` : `${other} has ${percent(gap)} ${behind}`;
  return [
    `Proof, among the sizes that the tables at hand cover: of ${countWords(families)} families, each taken at its best mean diameter and at every free length, ${hold}.`,
    ...(optimum === null ? [] : [`${best}${next}.`]),
    ...(nearestEmpty === null ? [] : [`The nearest that holds nothing misses by ${percent(nearestEmpty)} of its limits.`]),
    ...caveats.map((caveat) => proofCaveatWords[caveat]),
  ].join(" ");
}

/** Three digits, since what lies between two families is often small. */
function percent(share: number): string {
  return `${Number((100 * share).toPrecision(3))} %`;
}
