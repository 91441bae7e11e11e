import { endsAtCrown } from "../coil-view.ts";
import type { Hand } from "../drawing.ts";
import { type Coil, halfTurns } from "../helix.ts";

/** A place on the drawing. */
export type Place = readonly [x: number, y: number];

export type Line = readonly [from: Place, to: Place];

/** The part of a circle that runs against the clock from one angle to another, degrees. */
export type Arc = readonly [centre: Place, from: number, to: number];

/**
 * The visible edges of a coil seen from the side, in the trade's convention: half turns are straight bars, the crowns between them
 * arcs, and what lies behind the front of the coil is left out.
 *
 * @param coil  the coil, in units of the drawing: its left seat stands at x = 0, its axis is y = 0
 * @param hand  which way it is wound
 * @returns lines, and arcs of the wire's radius
 */
export function sideView(coil: Coil, hand: Hand): { readonly lines: readonly Line[]; readonly arcs: readonly Arc[] } {
  const radius = coil.wireDiameter / 2;
  const side = hand === "left" ? -1 : 1;
  const lines: Line[] = [];
  const arcs: Arc[] = [];
  const bars = halfTurns(coil).map(({ front, points }) => {
    const [from, to] = [points[0], points.at(-1)].map((end): Place => [end?.along ?? 0, side * (end?.across ?? 0)]) as [
      Place,
      Place,
    ];
    const angle = Math.atan2(to[1] - from[1], to[0] - from[0]);
    /** An edge of the bar: 1 at its right, -1 at its left. */
    const edge = (right: number): Line => {
      const off = radius * right * side * (front ? 1 : -1);
      const moved = ([x, y]: Place): Place => [x - off * Math.sin(angle), y + off * Math.cos(angle)];
      return [moved(from), moved(to)];
    };
    return { front, from, to, edge, turned: (180 * angle) / Math.PI, isRound: endsAtCrown(points) };
  });

  /** Keeps of a line what lies to the right of the first line and to the left of the last one. */
  const trimmed = (line: Line, after: Line | undefined, before: Line | undefined) => {
    const start = after ? Math.max(0, crossing(line, after)) : 0;
    const end = before ? Math.min(1, crossing(line, before)) : 1;
    if (start < end) lines.push([placeOn(line, start), placeOn(line, end)]);
  };
  const seats = [0, coil.length].map(
    (x): Line => [
      [x, 0],
      [x, 1],
    ],
  );
  const [leftSeat, rightSeat] = coil.ground ? seats : [];
  /** Keeps of an arc about a place in a seat what lies between the seats. */
  const arc = (centre: Place, from: number, to: number, seat = Number.NaN) => {
    if (!coil.ground || Number.isNaN(seat)) return arcs.push([centre, from, to]);
    for (const open of [-360, 0, 360].map((turn) => turn + seat)) {
      const [start, end] = [Math.max(from, open - 90), Math.min(to, open + 90)];
      if (start < end) arcs.push([centre, start, end]);
    }
  };
  for (const [i, { front, from, to, edge, turned, isRound }] of bars.entries()) {
    const [before, next] = [bars[i - 1], bars[i + 1]];
    // Behind, each edge is hidden at the crown where it is the inner one.
    trimmed(edge(-1), front ? leftSeat : before?.edge(1), rightSeat);
    trimmed(edge(1), leftSeat, front ? rightSeat : (next?.edge(-1) ?? rightSeat));
    if (before === undefined) arc(from, turned + 90, turned + 270, 0);
    // The wire turns with the clock at one crown and against it at the next; the arc lies outside.
    else if (from[1] > 0) arc(from, turned + 90, before.turned + 90);
    else arc(from, before.turned - 90, turned - 90);
    if (next !== undefined) continue;
    if (!isRound) trimmed([edge(-1)[1], edge(1)[1]], front ? undefined : before?.edge(1), rightSeat);
    else arc(to, turned - 90, turned + 90, 180);
    // Where the wire ends behind, its face looks forward.
    if (isRound && !front) arc(to, turned + 90, turned + 270, 180);
  }
  if (coil.ground) {
    for (const [i, seat] of seats.entries()) {
      const { from, to, edge, isRound } = bars.at(-i) as (typeof bars)[0];
      const [, y] = i === 0 ? from : to;
      const outer = y + (i === 0 || isRound ? Math.sign(y) * radius : 0);
      const line = edge(i === 0 ? -1 : 1);
      lines.push([
        [seat[0][0], outer],
        [seat[0][0], placeOn(line, Math.max(0, Math.min(1, crossing(line, seat))))[1]],
      ]);
    }
  }
  return { lines, arcs };
}

/** Where along a line, of length 1, it meets another one. */
function crossing([from, to]: Line, [[x, y], [otherX, otherY]]: Line): number {
  const off = ([a, b]: Place) => (a - x) * (otherY - y) - (b - y) * (otherX - x);
  return off(from) / (off(from) - off(to));
}

function placeOn([[x, y], [toX, toY]]: Line, share: number): Place {
  return [x + share * (toX - x), y + share * (toY - y)];
}
