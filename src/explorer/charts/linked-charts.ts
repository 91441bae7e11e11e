import type { Spec } from "vega";
import type { Brief, MeritName } from "../../model.ts";
import {
  type AxisSignals,
  axisSignals,
  type ChartRow,
  type ChartSpring,
  chartRow,
  figureTitle,
  type Theme,
} from "../../report/charts/scatter.ts";
import { drawWhenVisible } from "../parts/draw-when-visible.ts";
import type { Spring } from "../session/springs.ts";
import { type Brushed, type Chart, type ChartParts, drawChart, NO_BRUSH, type Scattered } from "./scatter-chart.ts";
import { springTooltip } from "./tooltip.ts";
import { followTheme, listenToMarks, newView, removeView } from "./vega-view.ts";

/** A chart compiled for both grounds. */
export type Themed = Readonly<Record<Theme, Spec>>;

/**
 * The springs that both charts draw, the front among them by place, the figures on the axes of the scatter, and the brief in the
 * reader's units.
 */
export interface Drawn {
  readonly springs: readonly Spring[];
  readonly front: readonly number[];
  readonly frontDrawn: readonly ChartSpring[];
  readonly axes: readonly [MeritName, MeritName];
  readonly brief: Brief;
}

/** Who is told of what happens in either chart. */
export interface ChartsListener {
  /** The scatter is about to be drawn: what its axes must be told comes now. */
  readonly beforeDrawn: () => void;
  /** The scatter is drawn. */
  readonly onDrawn: () => void;
  /** Another brush, with the springs inside it; null where nothing is brushed. */
  readonly onBrush: (inside: readonly Spring[] | null) => void;
  readonly onChoose: (id: number) => void;
  readonly onPoint: (id: number | null) => void;
}

/** The scatter and mass against wire diameter, which share selection, hover and brush. */
export interface LinkedCharts {
  /** Show other springs, one of them chosen, or these in other units. */
  readonly show: (drawn: Drawn, chosen: number | null) => void;
  readonly choose: (id: number | null) => void;
  /** Mark a spring in both charts; null: none. */
  readonly point: (id: number | null) => void;
  readonly colourBy: (name: string) => void;
  /** The springs inside the brush; null where nothing is brushed. */
  readonly inside: () => readonly Spring[] | null;
  /** What the scatter now shows. */
  readonly scattered: () => Scattered;
}

/** Draw the scatter and mass against wire diameter, and keep them in step with each other and with the ground. */
export function linkCharts(
  hosts: Readonly<Record<"scatter" | "mass", HTMLElement>>,
  specs: Readonly<Record<"scatter" | "mass", Themed>>,
  first: Drawn,
  colour: string,
  listener: ChartsListener,
): LinkedCharts {
  let drawn = first;
  let { rows, scattered } = rowsOf(drawn);
  let colouredBy = colour;
  let chosen: number | null = null;
  let brushed: Brushed = null;
  let scatter: Chart | undefined;
  let mass: MassView | undefined;

  const rowAt = (id: number | null) => (id === null ? null : (rows.get(id) ?? null));
  const told = {
    tip: (id: number) => springTooltip((drawn.springs.find((one) => one.id === id) as Spring).design, drawn.axes, drawn.brief),
    onChoose: listener.onChoose,
    onPoint: listener.onPoint,
  };
  const inside = () => (brushed === null ? null : drawn.springs.filter(({ id }) => isWithin(rows.get(id), brushed)));
  const onBrush = (next: Brushed) => {
    brushed = next;
    mass?.dim(brushed, scattered.axes);
    listener.onBrush(inside());
  };
  const fillMass = () => {
    mass?.show(scattered.rows, rowAt(chosen), drawn.brief);
    mass?.dim(brushed, scattered.axes);
  };
  const followMass = drawWhenVisible(hosts.mass, fillMass);
  followTheme((theme) => {
    const brush = scatter?.brush();
    scatter?.remove();
    mass?.remove();
    scatter = drawChart({ host: hosts.scatter, spec: specs.scatter[theme], ...told, onBrush });
    mass = drawMass(hosts.mass, specs.mass[theme], told);
    listener.beforeDrawn();
    scatter.colourBy(colouredBy);
    scatter.show(scattered, rowAt(chosen));
    fillMass();
    if (brush) scatter.setBrush(brush);
    listener.onDrawn();
  });
  return {
    show: (next, id) => {
      // A brush holds numbers of its axes, which mean something else in other units and on other figures.
      if (axesIn(next) !== axesIn(drawn)) scatter?.setBrush(NO_BRUSH);
      drawn = next;
      chosen = id;
      ({ rows, scattered } = rowsOf(drawn));
      listener.beforeDrawn();
      scatter?.show(scattered, rowAt(chosen));
      followMass();
    },
    choose: (id) => {
      chosen = id;
      scatter?.choose(rowAt(chosen));
      mass?.choose(rowAt(chosen));
    },
    point: (id) => {
      scatter?.point(rowAt(id));
      mass?.point(rowAt(id));
    },
    colourBy: (name) => {
      colouredBy = name;
      scatter?.colourBy(name);
    },
    inside,
    scattered: () => scattered,
  };
}

/** The two figures with their units. */
function axesIn({ axes, brief: { units } }: Drawn): string {
  return [...axes, units.length, units.force].join(" ");
}

function rowsOf({ springs, front, frontDrawn, axes, brief }: Drawn): {
  readonly rows: ReadonlyMap<number, ChartRow>;
  readonly scattered: Scattered;
} {
  const rows = new Map(springs.map(({ drawn, id }) => [id, chartRow(drawn, id, brief.units, axes)]));
  const onFront = frontDrawn.map((spring, i) => chartRow(spring, front[i] as number, brief.units, axes));
  return { rows, scattered: { rows: [...rows.values()], front: onFront, axes: axisSignals(axes, brief) } };
}

function isWithin(row: ChartRow | undefined, brushed: Brushed): boolean {
  return Object.entries(brushed ?? {}).every(([name, [a, b]]) => {
    const value = row?.[name];
    return typeof value === "number" && value >= Math.min(a, b) && value <= Math.max(a, b);
  });
}

/** Mass against wire diameter, drawn. */
interface MassView {
  readonly show: (rows: readonly ChartRow[], chosen: ChartRow | null, brief: Brief) => void;
  readonly choose: (row: ChartRow | null) => void;
  readonly point: (row: ChartRow | null) => void;
  /** Dim what lies outside the brush of the scatter. */
  readonly dim: (brushed: Brushed, axes: AxisSignals) => void;
  readonly remove: () => void;
}

/** Draw mass against wire diameter, with nothing in it yet. */
function drawMass(
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
