import type { PairsData } from "../report/page/pairs-page.ts";
import { namePair, showPair } from "./pairs/chosen-pair.ts";
import { showRankedPairs } from "./pairs/ranked-pairs.ts";
import { byId, jsonBlock } from "./parts/element.ts";
import { wirePaper } from "./parts/sheet-dialog.ts";

/** Wire a page of nested pairs together: the chosen pair and the ranked table. */
function startPairs({ brief, pairs }: PairsData): void {
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

/** A page of nested pairs is not swept again and has no charts: its script carries neither. */
const pairs = jsonBlock<PairsData>("page-pairs");
if (pairs) startPairs(pairs);
document.body.dataset.ready = "yes";
