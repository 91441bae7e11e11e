import type { SweepResult } from "../model.ts";
import { walkedSentence } from "./funnel.ts";
import { type Drawn, drawnSentence } from "./page-data.ts";
import { rankedAgainWords } from "./scatter-words.ts";
import { screeningWords } from "./words.ts";

/** How many candidates were walked and how many fit, and what such a result is worth. */
export function verdictSentence(result: Pick<SweepResult, "walked" | "feasible">): string {
  return `${walkedSentence(result)} ${screeningWords}`;
}

/** What the chart shows of the springs that fit, and what its line is. */
export function springsSentence(result: Drawn, drawn: number): string {
  if (result.feasible === 0) return "Nothing fits. Ease a bound by its handle here, or in its field among the limits.";
  const line = "The line joins the front: springs that no other betters in both.";
  return [drawnSentence(result, drawn), line, rankedAgainWords(result)].join(" ").trimEnd();
}
