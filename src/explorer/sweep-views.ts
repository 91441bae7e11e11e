import { relax } from "../relax.ts";
import type { PageData } from "../report/page-data.ts";
import type { Themed } from "./linked-charts.ts";
import { startPrices } from "./prices-view.ts";
import { startWires } from "./wires-view.ts";

/** The charts beside the scatter, compiled. */
export interface ViewSpecs {
  readonly mass: Themed;
  readonly wires: Themed;
  readonly prices: Themed;
}

/**
 * Start the views of the whole sweep, which stand whether or not something fits: which limits stop which wire, and what each limit
 * costs. Prices take a walk for each limit and step, so they are worked out once the page is drawn and idle.
 *
 * @returns what tells the map of wires to read another one, by its diameter in m
 */
export function startSweepViews(
  { brief, wires }: PageData,
  specs: ViewSpecs,
): { readonly chooseWire: (diameter: number) => void } {
  const prices = startPrices(specs.prices);
  prices.show(null, brief.units);
  whenIdle(() => prices.show(relax(brief), brief.units));
  if (wires === null) return { chooseWire: () => {} };
  const map = startWires(specs.wires);
  map.show(wires, brief.units);
  return { chooseWire: map.choose };
}

/** Not every browser tells when it is idle. */
function whenIdle(act: () => void): void {
  if ("requestIdleCallback" in window) window.requestIdleCallback(act);
  else setTimeout(act, 200);
}
