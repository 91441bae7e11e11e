import type { PairsData } from "../report/pairs-page.ts";
import { namePair, showPair } from "./chosen-pair.ts";
import { byId } from "./element.ts";
import { wirePaper } from "./paper.ts";
import { showRankedPairs } from "./ranked-pairs.ts";

/** Wire a page of nested pairs together: the chosen pair and the ranked table. */
export function startPairs({ brief, pairs }: PairsData): void {
  let [chosen] = pairs;
  const show = () => chosen && showPair(byId("chosen-pair"), chosen, brief);
  const choose = (rank: number) => {
    chosen = pairs.find((pair) => pair.rank === rank);
    if (chosen === undefined) return;
    namePair(byId("chosen-name"), chosen);
    show();
    showRankedPairs(byId("ranked"), pairs, rank, brief, choose);
  };
  wirePaper();
  choose(chosen?.rank ?? 1);
  window.addEventListener("resize", show);
}
