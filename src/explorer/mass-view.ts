import type { Spec } from "vega";
import type { Brief } from "../model.ts";
import { type AxisSignals, type ChartRow, figureTitle } from "../report/charts.ts";
import type { Brushed, ChartParts } from "./chart.ts";
import { listenToMarks, newView, removeView } from "./view.ts";

/** Mass against wire diameter, drawn. */
export interface MassView {
  readonly show: (rows: readonly ChartRow[], chosen: ChartRow | null, brief: Brief) => void;
  readonly choose: (row: ChartRow | null) => void;
  readonly point: (row: ChartRow | null) => void;
  /** Dim what lies outside the brush of the scatter. */
  readonly dim: (brushed: Brushed, axes: AxisSignals) => void;
  readonly remove: () => void;
}

/** Draw mass against wire diameter, with nothing in it yet. */
export function drawMass(
  host: HTMLElement,
  spec: Spec,
  { tip, onChoose, onPoint }: Pick<ChartParts, "tip" | "onChoose" | "onPoint">,
): MassView {
  const view = newView(host, spec);
  listenToMarks<{ readonly id: number }>(view, "id", {
    tip: ({ id }) => tip(id),
    onPoint: (datum) => onPoint(datum === null ? null : datum.id),
    onChoose: ({ id }) => onChoose(id),
  });
  const mark = (name: string, row: ChartRow | null) => view.data(name, row === null ? [] : [row]).run();
  return {
    show: (rows, chosen, brief) => {
      view.signal("wireDiameterTitle", figureTitle("wireDiameter", brief)).signal("massTitle", figureTitle("mass", brief));
      view
        .data("designs", [...rows])
        .data("chosen", chosen === null ? [] : [chosen])
        .resize()
        .run();
    },
    choose: (row) => mark("chosen", row),
    point: (row) => mark("pointed", row),
    dim: (brushed, { acrossFigure, upFigure }) => {
      const spans = brushed === null ? null : [brushed[acrossFigure], brushed[upFigure]];
      view.signal("acrossFigure", acrossFigure).signal("upFigure", upFigure).signal("brushed", spans).run();
    },
    remove: () => removeView(host, view),
  };
}
