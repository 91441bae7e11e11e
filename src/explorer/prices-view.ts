import type { View } from "vega";
import type { RelaxResult, Units } from "../model.ts";
import { figureWordsIn, showFigure } from "../report/cost-words.ts";
import { PRICE_ROW, type PriceBar } from "../report/prices-chart.ts";
import { concessionSentence, priceBars, priceSentences } from "../report/prices-words.ts";
import { EASED, gainTitle, percentWords } from "../report/relax-words.ts";
import { easedEndsWords } from "../report/table-ends-words.ts";
import { byId, element } from "./element.ts";
import type { Themed } from "./linked-charts.ts";
import { followTheme } from "./theme.ts";
import { listenToMarks, newView, removeView } from "./view.ts";

/** Concessions of one kind that are listed: more are in what `coilsieve relax` writes. */
const MOST_LISTED = 6;

/** The part of the page on what each limit costs. */
export interface PricesView {
  /** Show other prices, or the same in other units; null: they are being worked out. */
  readonly show: (result: RelaxResult | null, units: Units) => void;
}

/** Take over the part on prices, with nothing in it yet. */
export function startPrices(specs: Themed): PricesView {
  const host = byId("prices-chart");
  let view: View | undefined;
  let bars: readonly PriceBar[] = [];
  let title = "";
  const fill = () => {
    const limits = new Set(bars.map(({ limit }) => limit)).size;
    view
      ?.height(PRICE_ROW * limits)
      .signal("gainTitle", title)
      .data("bars", [...bars])
      .run();
  };
  followTheme((theme) => {
    if (view) removeView(host, view);
    view = newView(host, specs[theme]);
    listenToMarks<PriceBar>(view, "gain", {
      tip: ({ limit, step, gain }) => [
        ["limit", limit],
        ["how", step],
        ["gain", percentWords(gain)],
      ],
    });
    fill();
  });
  return {
    show: (result, units) => {
      bars = result === null ? [] : priceBars(result);
      title = result === null ? "" : gainTitle(result.merit, result.brief);
      host.hidden = bars.length === 0;
      byId("prices-words").textContent = headWords(result, units);
      byId("prices-list").replaceChildren(...sentences(result, units).map((text) => element("li", { text })));
      byId("prices-note").textContent = result?.best ? `${EASED} ${easedEndsWords(result)}`.trimEnd() : "";
      fill();
      view?.resize();
    },
  };
}

function headWords(result: RelaxResult | null, units: Units): string {
  if (result === null) return "The prices are being worked out.";
  const { best, merit, concessions, brief } = result;
  if (best !== null) {
    const shown = { ...brief, units };
    return `The best design has a ${figureWordsIn(merit, shown).label} of ${showFigure(merit, best[merit], shown)}. With one limit alone eased, or gone, another would be best:`;
  }
  if (concessions.length > 0) return "Nothing fits. One of these would have to give, by that share of itself; the least first:";
  return "Nothing fits, and no limit gives enough alone, nor two together: ask less of load or room, or try other wires and materials.";
}

function sentences(result: RelaxResult | null, units: Units): string[] {
  if (result === null) return [];
  if (result.best !== null) return priceSentences(result, units);
  const { concessions, brief } = result;
  const kinds = [1, 2].map((size) => concessions.filter(({ limits }) => limits.length === size).slice(0, MOST_LISTED));
  return kinds.flat().map((one) => concessionSentence(one, brief, units));
}
