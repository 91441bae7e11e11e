import type { Brief, Design, MeritName, SweepResult } from "../model.ts";
import { inUnits } from "../units/show.ts";
import { figureWordsIn } from "./cost-words.ts";
import { type FigureName, figureWords } from "./words.ts";

/** Light for paper and bright screens, dark for the rest. */
export type Theme = "light" | "dark";

/** What colours the points: one of two figures, by the signal `colourBy`. */
export const colourFigures = ["wireDiameter", "mass"] as const;

/** Figures that the chart needs of a spring besides the axes. */
const TOLD: readonly FigureName[] = [
  "totalTurns",
  "outsideDiameter",
  "freeLength",
  "rate",
  "solidSafety",
  "mass",
  "wireDiameter",
];

/** One point of the scatter, in the brief's units. */
export type ChartRow = Readonly<Record<string, number | string>>;

/**
 * A spring as a row of the scatter's data.
 *
 * @param design  the spring
 * @param id      its place in the page's list
 * @param units   the reader's units
 * @param axes    the two figures across and up
 */
export function chartRow(design: Design, id: number, units: Brief["units"], axes: readonly MeritName[]): ChartRow {
  const row: Record<string, number | string> = { id, ends: design.ends, wire: design.wire, material: design.material };
  // Nine digits are more than a chart shows and fewer than binary noise, which a scale would else spread over its whole axis.
  for (const name of [...TOLD, ...axes]) {
    row[name] = Number(inUnits(design[name] as number, figureWords[name].dimension, units).toPrecision(9));
  }
  return row;
}

/** Colours that readers with any colour vision tell apart, and that stand out from their ground. */
const PAINT = {
  light: { ink: "#1c2227", soft: "#5b656e", line: "#d9dee2", accent: "#0b5a75", extent: [0, 0.88] },
  dark: { ink: "#e6e9eb", soft: "#a3adb5", line: "#333c43", accent: "#7cc8e4", extent: [0.22, 1] },
} as const;

/**
 * The scatter of what fits: two merit figures against each other, the front as a line, wire diameter or mass as colour, end
 * style as shape, a brush, the chosen spring ringed. Vega-Lite with named data: `designs`, `front`, `chosen`.
 *
 * @param result  the sweep whose axes and units it takes
 * @param count   how many points will be drawn; more points are drawn smaller
 * @param theme   colours for light or dark ground
 * @returns a plain object without data of its own
 */
export function scatterSpec({ brief, frontAxes }: SweepResult, count: number, theme: Theme): object {
  const paint = PAINT[theme];
  const axis = (name: MeritName) => ({
    field: name,
    type: "quantitative",
    title: axisTitle(name, brief),
    scale: { zero: false },
  });
  const position = { x: axis(frontAxes[0]), y: axis(frontAxes[1]) };
  const size = count > 2000 ? 16 : count > 400 ? 28 : 48;
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: "container",
    height: 400,
    autosize: { type: "fit-x", contains: "padding" },
    params: [{ name: "colourBy", value: colourFigures[0] }],
    layer: [
      {
        data: { name: "designs" },
        transform: [{ calculate: "datum[colourBy]", as: "colour" }],
        params: [{ name: "brush", select: { type: "interval" } }],
        mark: { type: "point", filled: true, size },
        encoding: {
          ...position,
          shape: { field: "ends", type: "nominal", legend: { title: "ends", columns: 2, symbolFillColor: paint.soft } },
          color: {
            field: "colour",
            type: "quantitative",
            scale: { scheme: { name: "viridis", extent: paint.extent } },
            legend: { title: null, gradientLength: 160 },
          },
          opacity: { condition: { param: "brush", value: 0.9 }, value: 0.15 },
          tooltip: tooltip(brief, frontAxes),
        },
      },
      {
        data: { name: "front" },
        mark: {
          type: "line",
          color: paint.ink,
          strokeWidth: 1.2,
          point: { filled: true, size: 26, color: paint.ink },
          tooltip: false,
        },
        encoding: position,
      },
      {
        data: { name: "chosen" },
        mark: { type: "point", filled: false, size: 190, strokeWidth: 2.4, stroke: paint.accent, opacity: 1, tooltip: false },
        encoding: position,
      },
    ],
    config: {
      background: "transparent",
      font: "system-ui, sans-serif",
      view: { stroke: paint.line },
      axis: {
        labelColor: paint.soft,
        titleColor: paint.ink,
        gridColor: paint.line,
        domainColor: paint.soft,
        tickColor: paint.soft,
        labelFontSize: 12,
        titleFontSize: 13,
        titleFontWeight: "normal",
      },
      legend: {
        orient: "top",
        direction: "horizontal",
        labelColor: paint.soft,
        titleColor: paint.ink,
        titleFontWeight: "normal",
        labelFontSize: 12,
        titleFontSize: 12,
        layout: { top: { direction: "vertical", margin: 8 } },
      },
    },
  };
}

function axisTitle(name: MeritName, brief: Brief): string {
  return withUnit(name, brief);
}

function tooltip(brief: Brief, axes: readonly MeritName[]): object[] {
  const figures = [...new Set<FigureName>([...axes, ...TOLD])];
  return [
    ...["wire", "material", "ends"].map((field) => ({ field, type: "nominal" })),
    ...figures.map((field) => ({
      field,
      type: "quantitative",
      title: withUnit(field, brief),
      format: ".4~r",
    })),
  ];
}

function withUnit(name: FigureName, brief: Brief): string {
  const { label, unit } = figureWordsIn(name, brief);
  return unit === "" ? label : `${label}, ${unit}`;
}
