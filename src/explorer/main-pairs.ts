import type { PairsData } from "../report/pairs-page.ts";
import { jsonBlock } from "./element.ts";
import { startPairs } from "./pairs-page.ts";

/** A page of nested pairs is not swept again and has no charts: its script carries neither. */
const pairs = jsonBlock<PairsData>("page-pairs");
if (pairs) startPairs(pairs);
document.body.dataset.ready = "yes";
