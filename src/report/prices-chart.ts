import { chartConfig, PAINT, type Theme } from "./charts.ts";

/** One bar: what the best design gains with one limit eased by one step. */
export interface PriceBar {
  /** The limit by its label. */
  readonly limit: string;
  /** Place of the limit, the most valuable first. */
  readonly row: number;
  /** How it is eased, in words. */
  readonly step: string;
  readonly place: number;
  /** Share of the first figure of the ranking that is gained. */
  readonly gain: number;
}

/** Height of the bars of one limit, pixels: the page sets the height of the chart to that of its limits. */
export const PRICE_ROW = 46;

/** The more a limit is eased, the fainter. */
const FILLS = {
  light: ["#0b5a75", "#6aa3b7", "#dcebf0"],
  dark: ["#7cc8e4", "#3f7d95", "#1f3f4d"],
} as const;

/**
 * What the best design gains by easing each limit, as bars. Vega-Lite with named data: `bars`, rows of `PriceBar`; the signal
 * `gainTitle` heads the axis.
 *
 * @param theme  colours for light or dark ground
 * @param steps  how limits are eased, in words
 * @returns a plain object without data of its own
 */
export function pricesSpec(theme: Theme, steps: readonly string[]): object {
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: "container",
    height: PRICE_ROW,
    autosize: { type: "fit-x", contains: "padding" },
    params: [{ name: "gainTitle", value: "" }],
    data: { name: "bars" },
    mark: { type: "bar", stroke: PAINT[theme].accent, strokeWidth: 1 },
    encoding: {
      x: { field: "gain", type: "quantitative", axis: { title: { expr: "gainTitle" }, format: ".0%", tickCount: 6 } },
      y: { field: "limit", type: "nominal", sort: { field: "row", op: "min" }, axis: { title: null, ticks: false } },
      yOffset: { field: "step", type: "nominal", sort: steps },
      color: {
        field: "step",
        type: "nominal",
        sort: steps,
        scale: { domain: steps, range: FILLS[theme] },
        legend: { title: null, symbolType: "square" },
      },
    },
    config: chartConfig(theme),
  };
}
