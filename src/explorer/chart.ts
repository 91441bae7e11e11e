import { parse, type Spec, View } from "vega";
import { expressionInterpreter } from "vega-interpreter";
import type { AxisSignals, ChartRow } from "../report/charts.ts";
import { element } from "./element.ts";

/** Two figures and the ends of what is brushed of each; null where nothing is brushed. */
export type Brushed = Readonly<Record<string, readonly [number, number]>> | null;

/** The brush itself, in pixels of the chart: what to give a chart that is drawn anew. */
export type Brush = readonly [across: unknown, up: unknown];

/** Nothing brushed. */
export const NO_BRUSH: Brush = [[], []];

/** What a chart draws and whom it tells. */
export interface ChartParts {
  readonly host: HTMLElement;
  readonly tip: HTMLElement;
  readonly spec: Spec;
  readonly rows: readonly ChartRow[];
  readonly front: readonly ChartRow[];
  readonly brush: Brush;
  /** Sets the axes of the view, before anything is drawn. */
  readonly prepare: () => void;
  readonly onBrush: (brushed: Brushed) => void;
  readonly onChoose: (id: number) => void;
  /** What is told of a point, label by label. */
  readonly tell: (row: ChartRow) => readonly (readonly [label: string, text: string])[];
}

/** A chart that is drawn. */
export interface Chart {
  readonly choose: (row: ChartRow) => void;
  /** Head the axes; shown when the chart is next drawn. */
  readonly head: (titles: AxisSignals) => void;
  /** Draw other springs in the place of those drawn, one of them chosen; the brush stays on its figures. */
  readonly update: (rows: readonly ChartRow[], front: readonly ChartRow[], chosen: ChartRow | undefined) => void;
  readonly colourBy: (name: string) => void;
  readonly brush: () => Brush;
  /** Take the brush away, as where its figures are no longer those of the axes. */
  readonly lift: () => void;
  readonly remove: () => void;
}

/** Draw the scatter. Expressions are interpreted, not compiled, so the page's policy needs no eval. */
export function drawChart({ host, tip, spec, rows, front, brush, prepare, onBrush, onChoose, tell }: ChartParts): Chart {
  const view = new View(parse(spec, undefined, { ast: true }), {
    expr: expressionInterpreter,
    renderer: "canvas",
    container: host,
    hover: true,
    tooltip: (_handler, event, _item, value) => showTip(tip, event, isRow(value) ? tell(value) : null),
  });
  // The view, for what stands on its axes, and for who scripts the page from outside.
  Object.assign(host, { view });
  prepare();
  view
    .data("designs", [...rows])
    .data("front", [...front])
    .run();

  // A press on a point begins a brush too, and a press without a drag clears the last one: a click must not.
  const current = (): Brush => [view.signal("brush_x"), view.signal("brush_y")];
  const put = ([across, up]: Brush) => view.signal("brush_x", across).signal("brush_y", up).run();
  let before = brush;
  const remember = () => {
    before = current();
  };
  host.addEventListener("pointerdown", remember, { capture: true });
  view.addEventListener("click", (_event, item) => {
    const id = (item?.datum as { id?: number } | undefined)?.id;
    if (id === undefined) return;
    put(before);
    onChoose(id);
  });
  view.addSignalListener("brush", (_name, value) => onBrush(Object.keys(value ?? {}).length === 2 ? (value as Brushed) : null));

  put(brush);
  return {
    // In one run: each works every point out anew.
    update: (next, line, ringed) =>
      view
        .data("designs", [...next])
        .data("front", [...line])
        .data("chosen", ringed === undefined ? [] : [ringed])
        .run(),
    head: (titles) => {
      for (const [name, title] of Object.entries(titles)) view.signal(name, title);
    },
    choose: (row) => view.data("chosen", [row]).run(),
    brush: current,
    lift: () => put(NO_BRUSH),
    colourBy: (name) => view.signal("colourBy", name).run(),
    remove: () => {
      host.removeEventListener("pointerdown", remember, { capture: true });
      view.finalize();
      host.replaceChildren();
    },
  };
}

function isRow(value: unknown): value is ChartRow {
  return typeof value === "object" && value !== null;
}

function showTip(tip: HTMLElement, event: MouseEvent, words: ReturnType<ChartParts["tell"]> | null): void {
  tip.hidden = words === null;
  if (words === null) return;
  tip.replaceChildren(...words.flatMap(([label, text]) => [element("span", { text: label }), element("span", { text })]));
  const { width, height } = tip.getBoundingClientRect();
  tip.style.left = `${Math.max(4, Math.min(event.clientX + 14, window.innerWidth - width - 4))}px`;
  tip.style.top = `${Math.max(4, Math.min(event.clientY + 14, window.innerHeight - height - 4))}px`;
}
