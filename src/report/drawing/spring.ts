import type { Brief, Design, EndStyle, Units } from "../../model.ts";
import { show } from "../../units/show.ts";
import { escapeMarkup } from "../html/markup.ts";
import { coilView } from "./coil-view.ts";
import { acrossDimension, alongDimension, caption, wireLeader } from "./dimension-lines.ts";
import { type Coil, type HalfTurn, halfTurns } from "./helix.ts";

/** Room about the views for dimensions and captions, in units of the picture (a CSS pixel where it is shown at its own width). */
const MARGIN = { side: 104, top: 34, between: 62, bottom: 44 };

/** The tallest a view may be, unless the page has less room. */
const TALLEST = 190;

/** Which way the coils wind. */
export type Hand = "right" | "left";

/**
 * One spring to scale: side view free, and pressed solid beneath it from the same seat, with dimensions.
 *
 * Every colour is a presentation attribute for paper; a page may set others by the classes.
 *
 * @param design   the spring
 * @param ends     its end style
 * @param units    the reader's units
 * @param width    width of the picture; both views share the largest scale that fits
 * @param hand     which way its coils wind
 * @param tallest  the tallest a view may be, in units of the picture
 * @returns an SVG document element as text; does not throw
 */
export function springDrawing(
  design: Design,
  ends: EndStyle,
  units: Units,
  width = 640,
  hand: Hand = "right",
  tallest = TALLEST,
): string {
  const room = width - 2 * MARGIN.side;
  const scale = Math.min(room / design.freeLength, tallest / design.outsideDiameter);
  const across = scale * design.outsideDiameter;
  const free = coilOf(design, ends, scale, design.freeLength);
  const solid = coilOf(design, ends, scale, design.solidLength);
  const left = MARGIN.side + (room - free.length) / 2;
  const freeAxis = MARGIN.top + across / 2;
  const solidAxis = MARGIN.top + across + MARGIN.between + across / 2;
  const height = solidAxis + across / 2 + MARGIN.bottom;
  const length = (value: number) => show(value, "length", units);
  const mean = scale * design.meanDiameter;

  const parts = [
    wound(hand, freeAxis, coilView("free", free, left, freeAxis)),
    alongDimension(left, left + free.length, freeAxis + across / 2, `free ${length(design.freeLength)}`),
    acrossDimension(left + free.length, freeAxis, across, "right", `Ø ${length(design.outsideDiameter)}`, "outside"),
    acrossDimension(left, freeAxis, mean, "left", `Ø ${length(design.meanDiameter)}`, "mean"),
    wireLeader(left + middleCrown(free, hand), freeAxis - across / 2, `wire Ø ${length(design.wireDiameter)}`),
    wound(hand, solidAxis, coilView("solid", solid, left, solidAxis)),
    alongDimension(left, left + solid.length, solidAxis + across / 2, `solid ${length(design.solidLength)}`),
    caption(left + solid.length + 14, solidAxis, [
      `${Number(design.totalTurns.toFixed(2))} turns, ${Number(design.activeTurns.toFixed(2))} active`,
      `ends ${design.ends}`,
    ]),
  ];
  const title = `Spring drawn to scale: free length ${length(design.freeLength)}, outside diameter ${length(design.outsideDiameter)}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="spring" role="img" width="${width}" height="${round(height)}" `,
    `viewBox="0 0 ${width} ${round(height)}" font-family="system-ui, sans-serif" font-size="12" fill="none">`,
    `<title>${escapeMarkup(title)}</title>`,
    ...parts,
    "</svg>",
  ].join("");
}

/** A spring at one length in units of the picture. */
export function coilOf(design: Design, { closed, ground }: EndStyle, scale: number, length: number): Coil {
  return {
    length: scale * length,
    meanDiameter: scale * design.meanDiameter,
    wireDiameter: scale * design.wireDiameter,
    totalTurns: design.totalTurns,
    closed,
    ground,
  };
}

/** The hand in which a brief's springs are drawn: right, unless its order asks left. */
export function drawnHand({ order }: Brief): Hand {
  return order?.hand === "left" ? "left" : "right";
}

/** A view is drawn right-hand; turned over about its axis on paper it shows a left-hand coil. */
export function wound(hand: Hand, axis: number, view: string): string {
  return hand === "right" ? view : `<g transform="matrix(1 0 0 -1 0 ${round(2 * axis)})">${view}</g>`;
}

/** Where the crown at the top nearest the middle stands along the axis, for the note on the wire to touch. */
function middleCrown(coil: Coil, hand: Hand): number {
  const crowns = halfTurns(coil).filter(({ front }) => front === (hand === "right"));
  return (crowns[Math.floor(crowns.length / 2)] as HalfTurn).points[0]?.along ?? 0;
}

function round(value: number): string {
  return String(Number(value.toFixed(2)));
}
