import type { Spec } from "vega";
import type { Theme } from "../report/charts.ts";
import type { PageData, PageSource } from "../report/page-data.ts";
import type { PairsData } from "../report/pairs-page.ts";
import { jsonBlock } from "./element.ts";
import { startPairs } from "./pairs-page.ts";
import { startSprings } from "./springs-page.ts";
import { serveRequests } from "./worker.ts";

/** The same script is the page's and its worker's, so that the page carries the sweep once. */
if (typeof document === "undefined") serveRequests();
else startPage(document.currentScript?.textContent ?? "");

/** Which page this is shows in what it carries. */
function startPage(script: string): void {
  const pairs = jsonBlock<PairsData>("page-pairs");
  const specs = jsonBlock<Readonly<Record<Theme, Spec>>>("page-charts");
  if (pairs) startPairs(pairs);
  if (specs) {
    const data = jsonBlock<PageData>("page-data") as PageData;
    startSprings(data, jsonBlock<PageSource>("page-source") as PageSource, specs, script);
  }
  document.body.dataset.ready = "yes";
}
