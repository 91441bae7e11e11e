import { parse, type Spec, View } from "vega";
import type { Theme } from "../../report/charts/scatter.ts";
import { chartExpressions } from "./expressions.ts";
import { showTooltip, type TooltipEntries } from "./tooltip.ts";

/** A new Vega view in an element. Its expressions need no eval, which the page's policy refuses. */
export function newView(host: HTMLElement, spec: Spec): View {
  const view = new View(parse(spec, undefined, { ast: true }), {
    expr: chartExpressions,
    renderer: "canvas",
    container: host,
    hover: true,
  });
  // The view, for who scripts the page from outside.
  Object.assign(host, { view });
  return view;
}

/** Take a view and what it drew out of its element. */
export function removeView(host: HTMLElement, view: View): void {
  view.finalize();
  host.replaceChildren();
}

/** Who is told of the marks of a view. */
export interface MarkListener<Datum> {
  readonly tip: (datum: Datum) => TooltipEntries;
  /** A mark comes under the pointer, or none is there any more. */
  readonly onPoint?: (datum: Datum | null) => void;
  readonly onChoose?: (datum: Datum) => void;
}

/**
 * Tell of the marks under the pointer.
 *
 * @param key  a name that every datum of interest has, and no other
 */
export function listenToMarks<Datum extends object>(view: View, key: keyof Datum & string, listener: MarkListener<Datum>): void {
  const datumOf = (item: unknown): Datum | null => {
    const datum = (item as { datum?: Datum } | null | undefined)?.datum;
    return datum && key in datum ? datum : null;
  };
  view.addEventListener("mousemove", (event, item) => {
    const datum = datumOf(item);
    showTooltip(event as unknown as MouseEvent, datum && listener.tip(datum));
  });
  view.addEventListener("mouseover", (_event, item) => {
    const datum = datumOf(item);
    if (datum) listener.onPoint?.(datum);
  });
  view.addEventListener("mouseout", (event, item) => {
    showTooltip(event as unknown as MouseEvent, null);
    if (datumOf(item)) listener.onPoint?.(null);
  });
  view.addEventListener("click", (_event, item) => {
    const datum = datumOf(item);
    if (datum) listener.onChoose?.(datum);
  });
}

/** Draw now and whenever the ground changes: with the system, and for paper, which is light whatever the screen is. */
export function followTheme(draw: (theme: Theme) => void): void {
  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  const onScreen = () => draw(dark.matches ? "dark" : "light");
  onScreen();
  dark.addEventListener("change", onScreen);
  // Only a dark chart needs drawing anew for paper.
  window.addEventListener("beforeprint", () => dark.matches && draw("light"));
  window.addEventListener("afterprint", () => dark.matches && draw("dark"));
}
