import type { EndStyle, NestedDesign, Pair, Units } from "../../model.ts";
import { show } from "../../units/show.ts";
import { escapeMarkup } from "../html/markup.ts";
import { coilSection, coilView } from "./coil-view.ts";
import { acrossDimension, alongDimension, caption } from "./dimension-lines.ts";
import { coilOf, wound } from "./spring.ts";

/** Room about the views for dimensions and captions, in units of the picture. */
const MARGIN = { side: 104, top: 12, between: 50, bottom: 44 };

/** The tallest a view may be. */
const TALLEST = 200;

/**
 * Two nested springs to one scale, the outer cut open along its axis and the inner whole inside it: free, and beneath it from the
 * same seat at the shortest length of work.
 *
 * @param pair   the springs
 * @param ends   the brief's end styles, among them both springs'
 * @param units  the reader's units
 * @param width  width of the picture; both views share the largest scale that fits
 * @returns an SVG document element as text; does not throw
 */
export function pairDrawing({ outer, inner }: Pair, ends: readonly EndStyle[], units: Units, width = 640): string {
  const length = (value: number) => show(value, "length", units);
  const room = width - 2 * MARGIN.side;
  const scale = Math.min(room / outer.freeLength, TALLEST / outer.outsideDiameter);
  const across = scale * outer.outsideDiameter;
  const innerAcross = scale * inner.outsideDiameter;
  const left = MARGIN.side + (room - scale * outer.freeLength) / 2;
  const shortest = Math.min(...outer.points.map((point) => point.length));
  const freeAxis = MARGIN.top + across / 2;
  const workAxis = MARGIN.top + across + MARGIN.between + across / 2;
  const height = workAxis + across / 2 + MARGIN.bottom;

  const view = (name: string, at: number, axis: number) => {
    const coil = (spring: NestedDesign) => coilOf(spring, endOf(spring, ends), scale, at);
    return (
      wound(outer.hand, axis, coilSection(name, coil(outer), left, axis)) +
      wound(inner.hand, axis, coilView(name, coil(inner), left, axis))
    );
  };
  const along = (at: number, axis: number, what: string) =>
    alongDimension(left, left + scale * at, axis + across / 2, `${what} ${length(at)}`);
  const title =
    `Two nested springs drawn to one scale, the outer cut open: free length ${length(outer.freeLength)}, ` +
    `outside diameters ${length(outer.outsideDiameter)} and ${length(inner.outsideDiameter)}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="spring" role="img" width="${width}" height="${Math.ceil(height)}" `,
    `viewBox="0 0 ${width} ${Math.ceil(height)}" font-family="system-ui, sans-serif" font-size="12" fill="none">`,
    `<title>${escapeMarkup(title)}</title>`,
    view("free", outer.freeLength, freeAxis),
    along(outer.freeLength, freeAxis, "free"),
    acrossDimension(left + scale * outer.freeLength, freeAxis, across, "right", `Ø ${length(outer.outsideDiameter)}`, "outer"),
    acrossDimension(left, freeAxis, innerAcross, "left", `Ø ${length(inner.outsideDiameter)}`, "inner"),
    view("pressed", shortest, workAxis),
    along(shortest, workAxis, "pressed to"),
    caption(left + scale * shortest + 18, workAxis, [`outer ${outer.hand}-hand,`, "cut open;", `inner ${inner.hand}-hand`]),
    "</svg>",
  ].join("");
}

function endOf({ ends: name }: NestedDesign, ends: readonly EndStyle[]): EndStyle {
  return ends.find((style) => style.name === name) as EndStyle;
}
