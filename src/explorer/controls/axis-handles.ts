import type { View } from "vega";
import type { MeritName } from "../../model.ts";
import { spanSignals } from "../../report/charts/scatter.ts";
import { figureWords } from "../../report/text/labels.ts";
import { inUnits } from "../../units/show.ts";
import { element } from "../parts/element.ts";
import type { Session } from "../session/session.ts";
import { type Bound, boundsOf } from "./bounds.ts";
import { type Axis, type AxisSpan, axisHandle, fitSpan, type Handle } from "./handle.ts";

const AXES = ["x", "y"] as const;

/** The chart's element, with the view that is drawn in it. */
export type ChartHost = HTMLElement & { view?: View };

/** What follows the session, and the chart. */
export interface AxisHandles {
  /** Set the axes for a new run, or of a new chart, before it is drawn. */
  readonly aim: () => void;
  /** Show what the session holds, once the chart shows it. */
  readonly follow: () => void;
}

/**
 * Handles on the axes of the scatter, one for each bound of the figure that the axis shows; a line across the chart stands for the
 * bound. Each axis reaches beyond its bounds, and stands still while a handle is held.
 *
 * @param host     the chart; it is put into a frame that the handles stand in
 * @param session  the brief that the handles change
 */
export function axisHandles(host: ChartHost, session: Session): AxisHandles {
  const layer = element("div", { class: "handles screen-only" });
  const frame = element("div", { class: "chart-frame" });
  host.before(frame);
  frame.append(host, layer);

  const handles = new Map<string, Handle>();
  const spans: Record<Axis, AxisSpan | null> = { x: null, y: null };
  const figures: Record<Axis, string> = { x: "", y: "" };

  const stretch = (axis: Axis, name: MeritName, bounds: readonly Bound[]) => {
    const { units, shown } = session;
    const { dimension } = figureWords[name];
    const points = shown.springs.map(({ drawn }) => inUnits(drawn[name], dimension, units));
    const figure = `${name} ${units.length} ${units.force}`;
    const before = figures[axis] === figure ? spans[axis] : null;
    figures[axis] = figure;
    spans[axis] = fitSpan(
      points,
      bounds.map(({ value = 0 }) => inUnits(value, dimension, units)),
      before,
    );
  };
  const place = () => {
    const { view } = host;
    const canvas = host.querySelector("canvas, svg");
    if (!view || !canvas) return;
    const [inner, outer] = [canvas.getBoundingClientRect(), frame.getBoundingClientRect()];
    const [left, top] = view.origin();
    const { left: padLeft, top: padTop } = view.padding() as { left: number; top: number };
    const plot = {
      left: inner.left - outer.left + left + padLeft,
      top: inner.top - outer.top + top + padTop,
      width: view.width(),
      height: view.height(),
    };
    for (const handle of handles.values()) handle.setPlot(plot, view.scale(handle.axis), spans[handle.axis]);
  };
  // The axes of the run that is drawn, which a reader may have changed since.
  const figureOn = (axis: Axis) => session.shown.result.frontAxes[axis === "x" ? 0 : 1];
  const boundsOn = (axis: Axis) => {
    const name = figureOn(axis);
    return boundsOf(session.shown.brief).filter(({ merit, value }) => merit === name && value !== undefined);
  };
  const aim = () => {
    const isHeld = [...handles.values()].some((handle) => handle.isHeld());
    for (const axis of AXES) {
      const before = spans[axis];
      if (!isHeld) stretch(axis, figureOn(axis), boundsOn(axis));
      host.view?.signal(spanSignals[axis], spans[axis]);
      // Other numbers along an axis may take more room beside the plot.
      if (spans[axis] !== before) host.view?.resize();
    }
  };
  const follow = () => {
    if (!host.view) return;
    const kept = new Set<string>();
    for (const axis of AXES) {
      boundsOn(axis).forEach((bound, line) => {
        const id = `${axis} ${bound.key}`;
        const handle = handles.get(id) ?? axisHandle(axis, bound, session, { onMove: place, onRelease: refit });
        if (!handles.has(id)) layer.append(handle.host);
        handles.set(id, handle);
        handle.follow(bound, line);
        kept.add(id);
      });
    }
    for (const [id, handle] of handles) {
      if (kept.has(id)) continue;
      handle.host.remove();
      handles.delete(id);
    }
    // Once all views have followed: where things stand is asked of the browser, which lays the page out to answer.
    requestAnimationFrame(place);
  };
  const refit = () => {
    aim();
    host.view?.run();
    follow();
  };
  new ResizeObserver(() => requestAnimationFrame(place)).observe(host);
  refit();
  return { aim, follow };
}
