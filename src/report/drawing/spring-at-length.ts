import type { Design, EndStyle, Units } from "../../model.ts";
import { show } from "../../units/show.ts";
import { escapeMarkup } from "../html/markup.ts";
import { coilView } from "./coil-view.ts";
import { acrossDimension, alongDimension, caption, wireLeader } from "./dimension-lines.ts";
import { type HalfTurn, halfTurns } from "./helix.ts";
import type { SpringState } from "./lengths-shown.ts";
import { coilOf, type Hand, wound } from "./spring.ts";

/** Room about the spring for dimensions and captions, in units of the picture. */
const MARGIN = { left: 100, right: 138, top: 44, bottom: 46 };

/** The tallest a free spring is drawn. */
const TALLEST = 320;

/** From line to line of a caption. */
const LINE = 16;

/** Where springs of one picture stand and how large they are drawn. */
export interface Stand {
  /** Units of the picture in a metre. */
  readonly scale: number;
  /** The line that every spring stands on. */
  readonly seat: number;
}

/**
 * One spring to scale at one length, standing on its seat. Scale and seat are those of the free spring at every length, so that
 * pictures of one spring laid over each other show it shorten.
 *
 * @param design  the spring
 * @param ends    its end style
 * @param state   the length, with its force and diameter
 * @param units   the reader's units
 * @param width   width of the picture
 * @param hand    which way its coils wind
 * @returns an SVG document element as text; does not throw
 */
export function stateDrawing(
  design: Design,
  ends: EndStyle,
  state: SpringState,
  units: Units,
  width = 640,
  hand: Hand = "right",
): string {
  const widest = Math.max(design.outsideDiameter, design.outsideDiameterAtSolid);
  const scale = Math.min((width - MARGIN.left - MARGIN.right) / widest, TALLEST / design.freeLength);
  const seat = MARGIN.top + scale * design.freeLength;
  const height = Math.ceil(seat + MARGIN.bottom);
  const centre = MARGIN.left + (width - MARGIN.left - MARGIN.right) / 2;
  const length = (value: number) => show(value, "length", units);

  const half = (scale * state.outsideDiameter) / 2;
  const inside = state.outsideDiameter - 2 * design.wireDiameter;
  const tall = scale * state.length;
  const top = seat - tall;
  const grown = state.outsideDiameter - design.outsideDiameter;
  const turns = (value: number) => Number(value.toFixed(2));
  const words = [
    state.kind === "free" ? "no force" : show(state.force, "force", units),
    ...(state.kind === "free" ? [] : [`${length(design.freeLength - state.length)} pressed`]),
    ...(grown > 0 ? [`grown by ${show(grown, "length", units, 2)}`] : []),
    `${turns(design.totalTurns)} turns,`,
    `${turns(design.activeTurns)} active`,
    `ends ${design.ends}`,
  ];
  const crown = seat - sideCrown(design, ends, state, scale, hand);
  // Below the note on the wire its lines need room above the foot of the picture.
  const shelf = Math.min(crown - 18, height - 14 - LINE * words.length);
  const title =
    `Spring drawn to scale, ${state.name}: length ${length(state.length)}, ` +
    `force ${show(state.force, "force", units)}, outside diameter ${length(state.outsideDiameter)}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="spring" role="img" width="${width}" height="${height}" `,
    `viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif" font-size="12" fill="none">`,
    `<title>${escapeMarkup(title)}</title>`,
    seatLine(centre, (scale * widest) / 2 + 12, seat),
    ...(state.kind === "free" ? [] : [freeLine(centre, (scale * widest) / 2 + 12, seat - scale * design.freeLength)]),
    standingCoil(design, ends, state, { scale, seat }, centre, hand),
    acrossDimension(centre - half, seat - tall / 2, tall, "left", length(state.length), oneWord(state.name)),
    alongDimension(centre - half, centre + half, top, `Ø ${length(state.outsideDiameter)} outside`, "above"),
    alongDimension(
      centre - half + scale * design.wireDiameter,
      centre + half - scale * design.wireDiameter,
      seat,
      `Ø ${length(inside)} inside`,
    ),
    wireLeader(centre + half, crown, `wire Ø ${length(design.wireDiameter)}`, shelf),
    caption(centre + half + 28, shelf + LINE + 8, words),
    "</svg>",
  ].join("");
}

/** The coil of a spring at one length, upright on its seat about a line down its middle. */
export function standingCoil(
  design: Design,
  ends: EndStyle,
  state: SpringState,
  { scale, seat }: Stand,
  centre: number,
  hand: Hand,
): string {
  const view = wound(hand, 0, coilView(state.kind, coilAt(design, ends, state, scale), 0, 0));
  return `<g transform="translate(${round(centre)} ${round(seat)}) rotate(-90)">${view}</g>`;
}

/** The plate that springs stand on. */
export function seatLine(centre: number, reach: number, seat: number): string {
  return `<path class="seat" stroke="#2a3138" stroke-width="1.6" d="M${round(centre - reach)} ${round(seat)}H${round(centre + reach)}"/>`;
}

function freeLine(centre: number, reach: number, top: number): string {
  return (
    `<path class="axis free-line" stroke="#8a8f98" stroke-width="0.8" stroke-dasharray="4 3" ` +
    `d="M${round(centre - reach)} ${round(top)}H${round(centre + reach)}"/>`
  );
}

function coilAt(design: Design, ends: EndStyle, { length, outsideDiameter }: SpringState, scale: number) {
  const pressed: Design = { ...design, meanDiameter: outsideDiameter - design.wireDiameter };
  return coilOf(pressed, ends, scale, length);
}

/** How high above the seat the crown at the right nearest the middle stands, for the note on the wire to touch. */
function sideCrown(design: Design, ends: EndStyle, state: SpringState, scale: number, hand: Hand): number {
  // Upright, the right side is what lies below the axis of a view; of a left-hand coil, which is turned over, above it.
  const crowns = halfTurns(coilAt(design, ends, state, scale)).filter(({ front }) => front === (hand === "left"));
  return (crowns[Math.floor(crowns.length / 2)] as HalfTurn).points[0]?.along ?? 0;
}

/** Names of load points may be sentences; the drawing has room for a word or two. */
function oneWord(name: string): string {
  return name.length > 16 ? `${name.slice(0, 15)}…` : name;
}

function round(value: number): string {
  return String(Number(value.toFixed(2)));
}
