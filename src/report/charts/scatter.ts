import type { Brief, Design, MeritName, SweepResult } from "../../model.ts";
import { inUnits } from "../../units/show.ts";
import { type FigureName, figureWords, figureWordsIn, meritWords } from "../text/labels.ts";

/** Light for paper and bright screens, dark for the rest. */
export type Theme = "light" | "dark";

/** What colours the points: one of two figures, by the signal `colourBy`. */
export const colourFigures = ["wireDiameter", "mass"] as const;
export type ColourFigure = (typeof colourFigures)[number];

/** Figures that charts can put on an axis, in the order in which a reader is offered them. */
export const axisFigures = Object.keys(meritWords) as readonly MeritName[];

/** Figures that the chart needs of a spring besides the axes. */
const TOLD: readonly (FigureName & keyof ChartSpring)[] = [...axisFigures, "totalTurns", "rate", "wireDiameter"];

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
export const PAINT = {
  light: { ink: "#1c2227", soft: "#5b656e", line: "#d9dee2", accent: "#0b5a75", extent: [0, 0.88] },
  dark: { ink: "#e6e9eb", soft: "#a3adb5", line: "#333c43", accent: "#7cc8e4", extent: [0.22, 1] },
} as const;

/** The signals by which a page puts other figures on the axes of the scatter: which, and what their titles say. */
export interface AxisSignals {
  readonly acrossFigure: MeritName;
  readonly upFigure: MeritName;
  readonly acrossTitle: string;
  readonly upTitle: string;
}

/**
 * What to set for two figures on the axes.
 *
 * @param axes   the figure across and the one up
 * @param brief  with the reader's units, which the rows are in
 */
export function axisSignals([across, up]: readonly [MeritName, MeritName], brief: Brief): AxisSignals {
  return { acrossFigure: across, upFigure: up, acrossTitle: figureTitle(across, brief), upTitle: figureTitle(up, brief) };
}

/**
 * The scatter of what fits: two merit figures against each other, the front as a line, wire diameter or mass as colour, end
 * style as shape, a brush, the chosen spring ringed, the one pointed at marked. Vega-Lite with named data: `designs`, `front`,
 * `chosen`, `pointed`. The figures on its axes are signals, so that a page changes them without Vega-Lite: see `axisSignals`.
 *
 * @param result  the sweep whose axes and units it begins with
 * @param count   how many points will be drawn; more points are drawn smaller
 * @param theme   colours for light or dark ground
 * @returns a plain object without data of its own
 */
export function scatterSpec({ brief, frontAxes }: SweepResult, count: number, theme: Theme): object {
  const paint = PAINT[theme];
  const axis = (name: "across" | "up") => ({
    field: name,
    type: "quantitative",
    axis: { title: { expr: `${name}Title` }, tickCount: { expr: name === "across" ? "ceil(width / 70)" : "ceil(height / 40)" } },
    scale: { zero: false },
  });
  const position = { x: axis("across"), y: axis("up") };
  const placed = [
    { calculate: "datum[acrossFigure]", as: "across" },
    { calculate: "datum[upFigure]", as: "up" },
  ];
  const size = count > 2000 ? 16 : count > 400 ? 28 : 48;
  const signals = Object.entries(axisSignals(frontAxes, brief)).map(([name, value]) => ({ name, value }));
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: "container",
    height: 400,
    autosize: { type: "fit-x", contains: "padding" },
    params: [{ name: "colourBy", value: colourFigures[0] }, ...signals],
    layer: [
      {
        data: { name: "designs" },
        transform: [{ calculate: "datum[colourBy]", as: "colour" }, ...placed],
        params: [{ name: "brush", select: { type: "interval" } }],
        mark: { type: "point", filled: true, size },
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
        name: "front",
        data: { name: "front" },
        transform: placed,
        mark: {
          type: "line",
          color: paint.ink,
          strokeWidth: 1.2,
          point: { filled: true, size: 26, color: paint.ink },
          tooltip: false,
        },
        encoding: position,
      },
      ...markedSpring(paint.accent, paint.ink).map((layer) => ({ ...layer, transform: placed, encoding: position })),
    ],
    config: chartConfig(theme),
  };
}

function endScale({ sweep }: Brief): object {
  return { domain: sweep.ends.map(({ name }) => name), range: sweep.ends.map((_, i) => endShapes[i % endShapes.length]) };
}

/** The ring about the chosen spring, and the one about the spring that a reader points at in any view. */
export function markedSpring(
  accent: string,
  ink: string,
): { readonly name: string; readonly data: object; readonly mark: object }[] {
  const ring = { type: "point", filled: false, opacity: 1, tooltip: false };
  return [
    { name: "chosen", data: { name: "chosen" }, mark: { ...ring, size: 190, strokeWidth: 2.4, stroke: accent } },
    { name: "pointed", data: { name: "pointed" }, mark: { ...ring, size: 110, strokeWidth: 1.6, stroke: ink } },
  ];
}

/** Letters and lines that all charts share. */
export function chartConfig(theme: Theme): object {
  const paint = PAINT[theme];
  return {
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
  };
}

/**
 * How an axis is headed.
 *
 * @param name   the figure along it
 * @param brief  with the reader's units
 * @returns such as "outside diameter, mm"
 */
export function figureTitle(name: FigureName, brief: Brief): string {
  const { label, unit } = figureWordsIn(name, brief);
  return unit === "" ? label : `${label}, ${unit}`;
}
/** What stands for an end style in charts, by its place in the brief; more than there are begin again. */
export const endShapes = ["circle", "square", "cross", "diamond", "triangle-up", "triangle-down"] as const;

const PATHS: Readonly<Record<string, string>> = {
  circle: "M5,0A5,5,0,1,1,-5,0A5,5,0,1,1,5,0Z",
  square: "M-4.5,-4.5h9v9h-9Z",
  cross: "M-5,-1.7h3.3v-3.3h3.4v3.3h3.3v3.4h-3.3v3.3h-3.4v-3.3h-3.3Z",
  diamond: "M0,-5.5L4,0L0,5.5L-4,0Z",
  "triangle-up": "M0,-4.6L5.2,4.4H-5.2Z",
  "triangle-down": "M0,4.6L-5.2,-4.4H5.2Z",
};

/** A shape as the path of a mark about the origin, 10 units wide. */
export function shapePath(shape: string): string {
  return PATHS[shape] ?? "";
}
/** What of a compiled chart says over which data its scales reach. */
export interface Scaled {
  readonly data?: readonly { readonly name: string; readonly source?: string }[];
  readonly scales?: readonly { readonly domain?: unknown }[];
}

/**
 * Let scales reach over the springs that are drawn, not over those marked among them as well. What is marked lies within, and a
 * scale that depended on it would have every point worked out anew whenever the pointer comes to another one.
 *
 * @param chart  a chart as Vega-Lite compiled it; its scales are changed in place
 * @param drawn  the names of the data that the scales are of
 */
export function scaleOver({ data = [], scales = [] }: Scaled, drawn: readonly string[]): void {
  const sources = new Map(data.map(({ name, source }) => [name, source]));
  const rootOf = (name: string): string => {
    const source = sources.get(name);
    return source === undefined ? name : rootOf(source);
  };
  for (const { domain } of scales) {
    const { fields } = (domain ?? {}) as { fields?: readonly { readonly data: string }[] };
    if (fields === undefined) continue;
    const own = fields.filter((field) => drawn.includes(rootOf(field.data)));
    if (own.length > 0) Object.assign(domain as object, { fields: own });
  }
}
/** Signals that set the two axes of the scatter: null leaves an axis to its points. */
export const spanSignals = { x: "acrossSpan", y: "upSpan" } as const;

/** What of a compiled Vega chart is touched here. */
interface Spanned {
  signals?: unknown[];
  readonly marks?: { readonly name?: string; clip?: unknown }[];
  readonly scales?: { readonly name: string; domainRaw?: unknown }[];
}

/**
 * Let the page's script set where the two axes of a chart begin and end, so that a handle has room to move and an axis stands
 * still while it does.
 *
 * @param spec  a chart as Vega-Lite compiled it; its scales and marks are changed
 */
export function giveSpans(spec: Spanned): void {
  spec.signals = [...(spec.signals ?? []), ...Object.values(spanSignals).map((name) => ({ name, value: null }))];
  // While an axis stands still, a point may lie beyond it.
  for (const mark of spec.marks ?? []) {
    if (mark.name?.endsWith("_marks")) mark.clip = true;
  }
  for (const scale of spec.scales ?? []) {
    if (scale.name === "x" || scale.name === "y") scale.domainRaw = { signal: spanSignals[scale.name] };
  }
}
