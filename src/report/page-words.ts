import type { SweepResult } from "../model.ts";
import { walkedSentence } from "./funnel.ts";
import { memoryWords } from "./memory-words.ts";
import { type Drawn, drawnSentence } from "./page-data.ts";
import { rankedAgainWords } from "./scatter-words.ts";
import { screeningWords } from "./words.ts";

/** How many candidates were walked and how many fit, and what such a result is worth and rests on. */
export function verdictSentence(result: Pick<SweepResult, "brief" | "walked" | "feasible">): string {
  return `${walkedSentence(result)} ${screeningWords} ${memoryWords(result.brief)}`;
}

/** What the line of the scatter is. */
export const frontWords =
  "The line joins the front: springs that no other betters in both, each as short as its limits let it be where the load leaves a choice.";

/** What the chart shows of the springs that fit, and what its line is. */
export function springsSentence(result: Drawn, drawn: number): string {
  if (result.feasible === 0) return "Nothing fits. Ease a bound by its handle here, or in its field among the limits.";
  return [drawnSentence(result, drawn), frontWords, rankedAgainWords(result)].join(" ").trimEnd();
}
