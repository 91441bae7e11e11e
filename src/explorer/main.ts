import type { Spec } from "vega";
import type { Theme } from "../report/charts.ts";
import type { PageData } from "../report/page-data.ts";
import type { PairsData } from "../report/pairs-page.ts";
import { jsonBlock } from "./element.ts";
import { startPairs } from "./pairs-page.ts";
import { startSprings } from "./springs-page.ts";

/** Which page this is shows in what it carries; a page of which nothing fits has no part that moves. */
const pairs = jsonBlock<PairsData>("page-pairs");
const specs = jsonBlock<Readonly<Record<Theme, Spec>>>("page-charts");
if (pairs) startPairs(pairs);
if (specs) startSprings(jsonBlock<PageData>("page-data") as PageData, specs);
document.body.dataset.ready = "yes";
