import { chartConfig, PAINT, type Theme } from "./charts.ts";

/** Height of the map, pixels, which the page sets: its rows are lower where they are many. */
export function wiresHeight(sizes: number): number {
  return sizes * (sizes > 48 ? 9 : 15);
}

/** A field of the map: the candidates of a wire that fell at a limit, or its springs that fit. */
export interface WireField {
  /** The wire size, in the reader's units. */
  readonly size: string;
  /** Place of the size, thinnest first. */
  readonly row: number;
  /** The limit by its label, or what heads the column of those that fit. */
  readonly column: string;
  /** Place of the column: limits in the order in which a candidate falls, those that fit last. */
  readonly place: number;
  readonly fits: boolean;
  readonly count: number;
  /** Share of the candidates of this size. */
  readonly share: number;
}

/** Fields that are nearly empty still show. */
const FAINTEST = { light: { falls: "#e4e7ea", fits: "#cfe3ec" }, dark: { falls: "#2b333a", fits: "#1f3f4d" } } as const;

/**
 * Wire sizes down, limits across: the darker a field (on dark ground the lighter), the more of that wire's candidates fell there; the
 * last column is what fits. Vega-Lite with named data: `fields`, rows of `WireField`, and `chosen`, one field of the chosen size.
 *
 * @param theme  colours for light or dark ground
 * @returns a plain object without data of its own
 */
export function wiresSpec(theme: Theme): object {
  const paint = PAINT[theme];
  const position = {
    x: {
      field: "column",
      type: "nominal",
      sort: { field: "place", op: "min" },
      axis: { title: null, orient: "top", labelAngle: -40, ticks: false, domain: false, labelLimit: 140, labelOverlap: false },
    },
    y: {
      field: "size",
      type: "nominal",
      sort: { field: "row", op: "min" },
      axis: { title: null, ticks: false, domain: false, labelOverlap: true },
    },
  };
  const fields = (test: string, range: readonly string[]) => ({
    data: { name: "fields" },
    transform: [{ filter: test }],
    mark: { type: "rect", stroke: "transparent", strokeWidth: 1, cursor: "pointer" },
    encoding: {
      ...position,
      color: { field: "share", type: "quantitative", scale: { type: "sqrt", domain: [0, 1], range }, legend: null },
    },
  });
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: "container",
    height: 100,
    autosize: { type: "fit-x", contains: "padding" },
    // Room for the slanted name of the last column.
    padding: { left: 0, top: 5, right: 48, bottom: 5 },
    layer: [
      fields("!datum.fits", [FAINTEST[theme].falls, paint.ink]),
      fields("datum.fits", [FAINTEST[theme].fits, paint.accent]),
      {
        name: "chosen",
        data: { name: "chosen" },
        mark: { type: "rect", fill: null, stroke: paint.accent, strokeWidth: 2, tooltip: false },
        encoding: { y: position.y, x: { value: 0 }, x2: { value: "width" } },
      },
    ],
    resolve: { scale: { color: "independent" } },
    config: { ...chartConfig(theme), scale: { bandPaddingInner: 0.08 } },
  };
}
