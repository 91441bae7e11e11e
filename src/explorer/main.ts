import type { ChartName } from "../report/page.ts";
import type { PageData, PageSource } from "../report/page-data.ts";
import type { PairsData } from "../report/pairs-page.ts";
import { jsonBlock } from "./element.ts";
import type { Themed } from "./linked-charts.ts";
import { startPairs } from "./pairs-page.ts";
import { startSprings } from "./springs-page.ts";
import { serveRequests } from "./worker.ts";

/** The same script is the page's and its worker's, so that the page carries the sweep once. */
if (typeof document === "undefined") serveRequests();
else startPage(document.currentScript?.textContent ?? "");

/** Which page this is shows in what it carries. */
function startPage(script: string): void {
  const pairs = jsonBlock<PairsData>("page-pairs");
  const charts = jsonBlock<Readonly<Record<ChartName, Themed>>>("page-charts");
  if (pairs) startPairs(pairs);
  if (charts) {
    const data = jsonBlock<PageData>("page-data") as PageData;
    startSprings(data, jsonBlock<PageSource>("page-source") as PageSource, charts, script);
  }
  document.body.dataset.ready = "yes";
}
