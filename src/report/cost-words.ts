import type { Brief } from "../model.ts";
import { oneLine } from "../problem.ts";
import { show, unitLabel } from "../units/show.ts";
import { type FigureName, type FigureWords, figureWords } from "./words.ts";

/** The words of a figure with its unit. */
export interface FigureWordsOfBrief extends FigureWords {
  readonly unit: string;
}

/** What the prices of a brief's wires are in: empty where no stock names it; null where wires have no price, and cost is a proxy. */
export function currencyOf({ sweep: { wires } }: Brief): string | null {
  const priced = wires.every((series) => series.wires.every(({ price }) => price !== undefined));
  return priced ? oneLine(wires[0]?.currency ?? "") : null;
}

/**
 * How outputs of one brief name a figure: where every wire has a price, cost is money and no proxy.
 *
 * @param name   the figure
 * @param brief  the requirement
 */
export function figureWordsIn(name: FigureName, brief: Brief): FigureWordsOfBrief {
  const words = figureWords[name];
  const currency = name === "relativeCost" ? currencyOf(brief) : null;
  if (currency === null) return { ...words, unit: unitLabel(words.dimension, brief.units) };
  const sentence = "Mass times the price of the wire in its stock, with what operations are stated to add: no quotation.";
  return { label: "cost", dimension: words.dimension, sentence, unit: currency };
}

/** A figure with its unit, as a reader of the brief would write it; costs in the money of the stock, where that is named. */
export function showFigure(name: FigureName, value: number, brief: Brief): string {
  const shown = show(value, figureWords[name].dimension, brief.units);
  const currency = name === "relativeCost" ? currencyOf(brief) : null;
  return currency ? `${shown} ${currency}` : shown;
}
