import type { Brief, Design, MeritName, SweepResult, Units } from "../model.ts";
import { inUnits, unitLabel } from "../units/show.ts";
import { endShapes } from "./end-shapes.ts";
import { type FigureName, figureWords } from "./words.ts";

/** Light for paper and bright screens, dark for the rest. */
export type Theme = "light" | "dark";

/** What colours the points: one of two figures, by the signal `colourBy`. */
export const colourFigures = ["wireDiameter", "mass"] as const;

/** Figures that the chart needs of a spring besides the axes. */
const TOLD: readonly (FigureName & keyof ChartSpring)[] = [
  "totalTurns",
  "outsideDiameter",
  "freeLength",
  "rate",
  "solidSafety",
  "mass",
  "wireDiameter",
];

/** What a chart draws of a spring; a design holds it, and more. */
export type ChartSpring = Pick<
  Design,
  | "wire"
  | "material"
  | "ends"
  | "totalTurns"
  | "outsideDiameter"
  | "freeLength"
  | "rate"
  | "solidSafety"
  | "mass"
  | "wireDiameter"
  | "relativeCost"
>;

/** One point of the scatter, in the brief's units. */
export type ChartRow = Readonly<Record<string, number | string>>;

/**
 * A spring as a row of the scatter's data.
 *
 * @param spring  the spring
 * @param id      its place in the page's list
 * @param units   the reader's units
 * @param axes    the two figures across and up
 */
export function chartRow(spring: ChartSpring, id: number, units: Brief["units"], axes: readonly MeritName[]): ChartRow {
  const row: Record<string, number | string> = { id, ends: spring.ends, wire: spring.wire, material: spring.material };
  // Nine digits are more than a chart shows and fewer than binary noise, which a scale would else spread over its whole axis.
  for (const name of [...TOLD, ...axes]) {
    row[name] = Number(inUnits(spring[name], figureWords[name].dimension, units).toPrecision(9));
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
  const signals = axisSignals(frontAxes, brief.units);
  const axis = (name: MeritName, title: keyof AxisSignals) => ({
    field: name,
    type: "quantitative",
    axis: { title: { expr: title } },
    scale: { zero: false },
  });
  const position = { x: axis(frontAxes[0], "acrossTitle"), y: axis(frontAxes[1], "upTitle") };
  const size = count > 2000 ? 16 : count > 400 ? 28 : 48;
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: "container",
    height: 400,
    autosize: { type: "fit-x", contains: "padding" },
    params: [{ name: "colourBy", value: colourFigures[0] }, ...Object.entries(signals).map(([name, value]) => ({ name, value }))],
    layer: [
      {
        data: { name: "designs" },
        transform: [{ calculate: "datum[colourBy]", as: "colour" }],
        params: [{ name: "brush", select: { type: "interval" } }],
        // What is told of a point is worded where it is shown, in the reader's units.
        mark: { type: "point", filled: true, size, tooltip: { content: "data" } },
        encoding: {
          ...position,
          // The page's own legend puts end styles in and out, so each keeps its mark.
          shape: { field: "ends", type: "nominal", legend: null, scale: endScale(brief) },
          color: {
            field: "colour",
            type: "quantitative",
            scale: { scheme: { name: "viridis", extent: paint.extent } },
            // Where nothing fits the scale has no ends to be named.
            legend: { title: null, gradientLength: 160, labelExpr: "isFinite(datum.value) ? datum.label : ''" },
          },
          opacity: { condition: { param: "brush", value: 0.9 }, value: 0.15 },
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

function endScale({ sweep }: Brief): object {
  return { domain: sweep.ends.map(({ name }) => name), range: sweep.ends.map((_, i) => endShapes[i % endShapes.length]) };
}

/** The signals by which a page heads the axes of the scatter in other units. */
export interface AxisSignals {
  readonly acrossTitle: string;
  readonly upTitle: string;
}

/**
 * How the axes are headed.
 *
 * @param axes   the figure across and the one up
 * @param units  the reader's units, which the rows are in
 */
export function axisSignals([across, up]: readonly [MeritName, MeritName], units: Units): AxisSignals {
  return { acrossTitle: figureTitle(across, units), upTitle: figureTitle(up, units) };
}

/**
 * What a tooltip tells of a point, label by label.
 *
 * @param row    a point of the scatter
 * @param axes   the figures of the chart, which come first
 * @param units  the reader's units, which the row is in
 */
export function pointWords(row: ChartRow, axes: readonly MeritName[], units: Units): readonly (readonly [string, string])[] {
  const figures = [...new Set<FigureName>([...axes, ...TOLD])];
  return [
    ...["wire", "material", "ends"].map((name) => [name, String(row[name])] as const),
    ...figures.map((name) => [figureTitle(name, units), String(Number(Number(row[name]).toPrecision(4)))] as const),
  ];
}

function figureTitle(name: FigureName, units: Units): string {
  const { label, dimension } = figureWords[name];
  const unit = unitLabel(dimension, units);
  return unit === "" ? label : `${label}, ${unit}`;
}
