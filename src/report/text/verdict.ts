import type { Brief, Proof, ProofCaveat, SweepResult } from "../../model.ts";
import { figureWordsIn, screeningWords } from "./labels.ts";
import { memoryWords } from "./material-data.ts";
import { countWords, walkedSentence } from "./rejections.ts";
import { rankedAgainWords } from "./yield.ts";

/** How many candidates were walked and how many fit, and what such a result is worth and rests on. */
export function verdictSentence(result: Pick<SweepResult, "brief" | "walked" | "feasible">): string {
  return `${walkedSentence(result)} ${screeningWords} ${memoryWords(result.brief)}`;
}

/** What the line of the scatter is. */
export const frontWords =
  "The line joins the front: springs that no other betters in both, each as short as its limits let it be where the load leaves a choice.";

/** What the chart shows of the springs that fit, and what its line is. */
export function springsSentence(result: Drawn, drawn: number): string {
  if (result.feasible === 0) return "Nothing fits. Relax a bound by its handle here, or in its field among the limits.";
  return [drawnSentence(result, drawn), frontWords, rankedAgainWords(result)].join(" ").trimEnd();
}

/** A finished sweep, of whose sample only the size is asked. */
type Drawn = Pick<SweepResult, "brief" | "feasible" | "designs" | "ranksAgain"> & {
  readonly sample?: { readonly length: number };
};

/**
 * How many of the springs that fit a page draws, in words.
 *
 * @param result  a finished sweep
 * @param drawn   how many springs the page holds
 */
export function drawnSentence({ feasible, sample, designs }: Drawn, drawn: number): string {
  if (drawn >= feasible) return `All ${countWords(feasible)} springs that fit are drawn.`;
  if (!sample) return `Of ${countWords(feasible)} that fit the best ${countWords(designs.length)} and the whole front are drawn.`;
  return `${countWords(sample.length)} of ${countWords(feasible)} survivors are drawn, evenly through the walk, and the whole front.`;
}

/** Two figures nearer than this share are the same: what differs is how numbers are rounded. */
const SAME = 1e-9;

/** How far a proof falls short of "no spring of this space is better". */
const proofCaveatWords: Readonly<Record<ProofCaveat, string>> = {
  severalFigures:
    "Only the first figure of the ranking is proven: within a combination no other diameter was compared by the others.",
  sampledLimit:
    "A limit of unknown monotonicity was sampled along the diameters of each combination: a stretch between two samples may be missed.",
  searchedFigure: "The figure was searched along the diameters of each combination, where it may have more than one minimum.",
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
  const hold =
    emptied === families
      ? "none has a feasible design"
      : emptied === 0
        ? "each has a feasible design"
        : `${countWords(emptied)} have no feasible design`;
  const [better, behind] = merit === "solidSafety" ? ["larger", "less"] : ["smaller", "more"];
  const best = `None has a ${better} ${figureWordsIn(merit, brief).label} than the best design`;
  const other = "; the best of another combination";
  const next = gap === null ? "" : gap < SAME ? `${other} has the same` : `${other} has ${percent(gap)} ${behind}`;
  return [
    `Proof, among the sizes that the tables at hand cover: all ${countWords(families)} combinations of material, wire, ends and turns were optimised over mean diameter and free length; ${hold}.`,
    ...(optimum === null ? [] : [`${best}${next}.`]),
    ...(nearestEmpty === null
      ? []
      : [`The nearest combination without a feasible design misses its limits by ${percent(nearestEmpty)}.`]),
    ...caveats.map((caveat) => proofCaveatWords[caveat]),
  ].join(" ");
}

/** Three digits, since what lies between two families is often small. */
function percent(fraction: number): string {
  return `${Number((100 * fraction).toPrecision(3))} %`;
}
