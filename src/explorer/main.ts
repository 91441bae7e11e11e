import type { PageData } from "../report/page-data.ts";
import type { PairsData } from "../report/pairs-page.ts";
import { jsonBlock } from "./element.ts";
import type { Themed } from "./linked-charts.ts";
import { startPairs } from "./pairs-page.ts";
import { startSprings } from "./springs-page.ts";
import { startSweepViews, type ViewSpecs } from "./sweep-views.ts";

/** Which page this is shows in what it carries; a page of which nothing fits has no springs to draw. */
const pairs = jsonBlock<PairsData>("page-pairs");
const scatter = jsonBlock<Themed>("page-charts");
const views = jsonBlock<ViewSpecs>("page-views");
if (pairs) startPairs(pairs);
if (views) {
  const data = jsonBlock<PageData>("page-data") as PageData;
  const { chooseWire } = startSweepViews(data, views);
  if (scatter) startSprings(data, scatter, views.mass, chooseWire);
}
document.body.dataset.ready = "yes";
