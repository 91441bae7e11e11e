import type { Spec } from "vega";
import type { AxisSignals, ChartRow } from "../../report/charts/scatter.ts";
import type { TooltipEntries } from "./tooltip.ts";
import { listenToMarks, newView, removeView } from "./vega-view.ts";

/** Two figures and the ends of what is brushed of each; null where nothing is brushed. */
export type Brushed = Readonly<Record<string, readonly [number, number]>> | null;

/** The brush itself, in pixels of the chart: what to give a chart that is drawn anew. */
export type Brush = readonly [across: unknown, up: unknown];

/** Nothing brushed. */
export const NO_BRUSH: Brush = [[], []];

/** What a chart draws and whom it tells. */
export interface ChartParts {
  readonly host: HTMLElement;
  readonly spec: Spec;
  readonly tip: (id: number) => TooltipEntries;
  readonly onBrush: (brushed: Brushed) => void;
  readonly onChoose: (id: number) => void;
  /** A spring comes under the pointer, or none is there any more. */
  readonly onPoint: (id: number | null) => void;
}

/** What the scatter shows. */
export interface Scattered {
  readonly rows: readonly ChartRow[];
  readonly front: readonly ChartRow[];
  readonly axes: AxisSignals;
}

/** A chart that is drawn. */
export interface Chart {
  /** Draw other springs, one of them chosen, or these on other axes; the brush stays where it is. */
  readonly show: (scattered: Scattered, chosen: ChartRow | null) => void;
  readonly choose: (row: ChartRow | null) => void;
  readonly point: (row: ChartRow | null) => void;
  readonly colourBy: (name: string) => void;
  readonly brush: () => Brush;
  readonly setBrush: (brush: Brush) => void;
  readonly remove: () => void;
}

/** Draw the scatter, with nothing in it yet. */
export function drawChart({ host, spec, tip, onBrush, onChoose, onPoint }: ChartParts): Chart {
  const view = newView(host, spec);
  let axes: AxisSignals | null = null;
  let brushed: Brushed = null;

  // A press on a point begins a brush too, and a press without a drag clears the last one: a click must not.
  const current = (): Brush => [view.signal("brush_x"), view.signal("brush_y")];
  const put = ([across, up]: Brush) => view.signal("brush_x", across).signal("brush_y", up).run();
  let before = NO_BRUSH;
  const remember = () => {
    before = current();
  };
  host.addEventListener("pointerdown", remember, { capture: true });
  listenToMarks<{ readonly id: number }>(view, "id", {
    tip: ({ id }) => tip(id),
    onPoint: (datum) => onPoint(datum === null ? null : datum.id),
    onChoose: ({ id }) => {
      put(before);
      onChoose(id);
    },
  });
  view.addSignalListener("brush", (_name, value: { across?: [number, number]; up?: [number, number] } | null) => {
    const { across, up } = value ?? {};
    const next = axes && across && up ? { [axes.acrossFigure]: across, [axes.upFigure]: up } : null;
    // The signal speaks when the view is first run too, of nothing brushed.
    if (next === null && brushed === null) return;
    brushed = next;
    onBrush(next);
  });

  const ringed = (row: ChartRow | null) => (row === null ? [] : [row]);
  const mark = (name: string, row: ChartRow | null) => view.data(name, ringed(row)).run();
  return {
    // In one run: each works every point out anew.
    show: (scattered, chosen) => {
      axes = scattered.axes;
      for (const [name, value] of Object.entries(axes)) view.signal(name, value);
      view
        .data("designs", [...scattered.rows])
        .data("front", [...scattered.front])
        .data("chosen", ringed(chosen))
        .run();
    },
    choose: (row) => mark("chosen", row),
    point: (row) => mark("pointed", row),
    brush: current,
    setBrush: put,
    colourBy: (name) => view.signal("colourBy", name).run(),
    remove: () => {
      host.removeEventListener("pointerdown", remember, { capture: true });
      removeView(host, view);
    },
  };
}
