import { keyWords } from "../../report/key-words.ts";
import { inUnits } from "../../units/show.ts";
import { element } from "../element.ts";
import type { Session } from "../session.ts";
import type { AxisSpan } from "./axis-span.ts";
import { KEY_STEPS } from "./bound-field.ts";
import type { Bound } from "./bounds.ts";
import { movedBy, nearestStep, roundStep } from "./round-steps.ts";
import { fieldText, isSettled, quantityText } from "./stepped.ts";

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
  readonly place: (plot: Plot, scale: AxisScale, span: AxisSpan | null) => void;
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
    place: (plot, scale, span) => {
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
