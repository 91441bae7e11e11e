import type { ChartName } from "../report/page.ts";
import type { PageData, PageSource } from "../report/page-data.ts";
import { jsonBlock } from "./element.ts";
import type { Themed } from "./linked-charts.ts";
import { startSprings } from "./springs-page.ts";
import { serveRequests } from "./worker.ts";

/** The same script is the page's and its worker's, so that the page carries the sweep once. */
if (typeof document === "undefined") serveRequests();
else startPage(document.currentScript?.textContent ?? "");

function startPage(script: string): void {
  const data = jsonBlock<PageData>("page-data") as PageData;
  const source = jsonBlock<PageSource>("page-source") as PageSource;
  startSprings(data, source, jsonBlock<Readonly<Record<ChartName, Themed>>>("page-charts") as Record<ChartName, Themed>, script);
  document.body.dataset.ready = "yes";
}
