import { keyWords } from "../../report/text/key-labels.ts";
import { inUnits } from "../../units/show.ts";
import { element } from "../parts/element.ts";
import type { Session } from "../session/session.ts";
import { KEY_STEPS } from "./bound-field.ts";
import { fieldText, isSettled, movedBy, nearestStep, quantityText, roundSpan, roundStep } from "./bound-steps.ts";
import type { Bound } from "./bounds.ts";

/** Across or up, by the name of its scale. */
export type Axis = "x" | "y";

/** The plot inside its frame, in pixels. */
export interface Plot {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A scale of the chart, from its unit to pixels and back. */
export type AxisScale = ((value: number) => number) & { readonly invert: (pixel: number) => number };

/** One bound as a line across the chart with a handle on its axis. */
export interface Handle {
  readonly host: HTMLElement;
  readonly axis: Axis;
  readonly isHeld: () => boolean;
  /** Show what the session now holds; `line` counts the bounds of one axis, so that their words do not cover each other. */
  readonly follow: (bound: Bound, line: number) => void;
  readonly setPlot: (plot: Plot, scale: AxisScale, span: AxisSpan | null) => void;
}

/** Whom a handle tells. */
export interface HandleEvents {
  readonly onMove: () => void;
  readonly onRelease: () => void;
}

/** Where a handle stands: it keeps this while it is held. */
interface Stand {
  readonly scale: AxisScale;
  readonly plot: Plot;
  readonly span: AxisSpan;
}

/** A handle that moves its bound in round steps of the unit shown, by pointer or by keyboard. */
export function axisHandle(axis: Axis, first: Bound, session: Session, { onMove, onRelease }: HandleEvents): Handle {
  const { key } = first;
  const name = keyWords(key, session.shown.brief);
  const words = element("span", { class: "handle-words" });
  const line = element("div", { class: "handle-line" }, [words]);
  const grip = element("div", {
    class: "handle-grip",
    attributes: {
      role: "slider",
      tabindex: "0",
      "aria-label": name,
      "aria-orientation": axis === "x" ? "horizontal" : "vertical",
    },
  });
  const host = element("div", { class: `handle handle-${axis}` }, [line, grip]);

  let bound = first;
  let held: Stand | null = null;
  let last: Stand | null = null;
  // The number that was asked for last, until a run with it has come back.
  let wished: number | null = null;

  const number = () => wished ?? inUnits(bound.value ?? 0, bound.dimension, session.units);
  const put = (next: number) => {
    if (last === null) return;
    const step = roundStep(last.span[1] - last.span[0]);
    const most = held === null ? Number.POSITIVE_INFINITY : last.span[1];
    const to = Math.min(most, Math.max(step, held === null ? 0 : last.span[0], next));
    if (to === number()) return;
    wished = to;
    session.put(key, quantityText(to, bound.dimension, session.units));
    tell();
    onMove();
  };
  const tell = () => {
    const written = isSettled(key, session) ? session.textAt(key) : undefined;
    const text = wished === null ? fieldText(bound, written, session.units) : textOf(wished);
    // Springs end where the clearance begins, which would look like a fault beside a bare bore.
    const less = /^envelope\.bore/.test(key) ? session.textAt("envelope.clearance") : undefined;
    words.textContent = `${bound.label} ${text}${less === undefined ? "" : ` less ${less}`}`;
    grip.setAttribute("aria-valuenow", String(number()));
    grip.setAttribute("aria-valuetext", text);
  };
  const textOf = (value: number) => quantityText(value, bound.dimension, session.units);

  grip.addEventListener("pointerdown", (event) => {
    if (event.button !== 0 || last === null) return;
    event.preventDefault();
    grip.focus({ preventScroll: true });
    grip.setPointerCapture(event.pointerId);
    held = last;
    host.classList.add("held");
  });
  grip.addEventListener("pointermove", (event) => {
    if (held === null) return;
    const box = host.parentElement?.getBoundingClientRect() ?? { left: 0, top: 0 };
    const pixel = axis === "x" ? event.clientX - box.left - held.plot.left : event.clientY - box.top - held.plot.top;
    const step = roundStep(held.span[1] - held.span[0]);
    put(nearestStep(held.scale.invert(pixel), step));
  });
  const release = () => {
    if (held === null) return;
    held = null;
    host.classList.remove("held");
    onRelease();
  };
  grip.addEventListener("pointerup", release);
  grip.addEventListener("pointercancel", release);
  grip.addEventListener("keydown", (event) => {
    const steps = KEY_STEPS[event.key];
    if (steps === undefined || last === null) return;
    event.preventDefault();
    put(movedBy(number(), steps, roundStep(last.span[1] - last.span[0])));
  });

  return {
    host,
    axis,
    isHeld: () => held !== null,
    follow: (next, place) => {
      bound = next;
      if (!session.busy && session.problems.length === 0) wished = null;
      host.style.setProperty("--line", String(place));
      host.classList.toggle("changed", session.isChanged(key));
      tell();
    },
    setPlot: (plot, scale, span) => {
      if (span === null) return;
      const now = held ?? { plot, scale: Object.assign((value: number) => scale(value), { invert: scale.invert }), span };
      last = now;
      grip.setAttribute("aria-valuemin", String(now.span[0]));
      grip.setAttribute("aria-valuemax", String(now.span[1]));
      const at = Math.min(axis === "x" ? plot.width : plot.height, Math.max(0, now.scale(number())));
      host.style.left = `${plot.left + (axis === "x" ? at : 0)}px`;
      host.style.top = `${plot.top + (axis === "x" ? 0 : at)}px`;
      host.style.setProperty("--length", `${axis === "x" ? plot.height : plot.width}px`);
      host.classList.toggle("from-right", axis === "x" && at > plot.width / 2);
    },
  };
}

/** Both ends of an axis, in the unit that a reader sees. */
export type AxisSpan = readonly [low: number, high: number];

/** Room beyond the outermost bound, as a share of what the axis must show: space to ease it by. */
const REACH = 0.2;

/**
 * The axis that shows these points and bounds, with room beyond each bound.
 *
 * @param points  figures of the springs drawn, in the unit that a reader sees; none where nothing fits
 * @param bounds  where handles stand on this axis
 * @param before  the axis as it is, if it is
 * @returns the axis as it is while it holds all that and is not much too wide, so that it does not jump; else a new one, round
 */
export function fitSpan(points: readonly number[], bounds: readonly number[], before: AxisSpan | null): AxisSpan | null {
  // Where nothing fits the axis keeps what it showed, so that a handle finds its way back.
  const all = [...(points.length > 0 ? points : (before ?? [])), ...bounds];
  if (all.length === 0) return before;
  const low = least(all);
  const high = -least(all.map((value) => -value));
  const width = high - low || Math.abs(high) * 0.2 || 1;
  // A point at the very edge of the axis would be cut in half.
  const edge = 0.03 * width;
  const need = [
    Math.min(low - edge, ...bounds.map((value) => value - REACH * width)),
    Math.max(high + edge, ...bounds.map((value) => value + REACH * width)),
  ] as const;
  const holds = before !== null && (points.length === 0 || (before[0] <= low - edge && before[1] >= high + edge));
  const isFar = before !== null && points.length > 0 && before[1] - before[0] > 2 * (need[1] - need[0]);
  if (holds && !isFar && bounds.every((value) => inside(value, before))) return before;
  const [from, to] = roundSpan(need, 2 * roundStep(need[1] - need[0]));
  return [low > 0 ? Math.max(0, from) : from, to];
}

/** Whether a handle here has room on both sides. */
function inside(value: number, [low, high]: AxisSpan): boolean {
  const room = 0.05 * (high - low);
  return value - low > (low === 0 ? 0 : room) && high - value > room;
}

/** Without spreading thousands of arguments over a call. */
function least(values: readonly number[]): number {
  return values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
}
