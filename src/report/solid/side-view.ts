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
    /** Where the wire ends between crowns, cut square. */
    const cut: Line | undefined = endsAtCrown(points) ? undefined : [edge(-1)[1], edge(1)[1]];
    return { front, from, to, edge, cut, turned: (180 * angle) / Math.PI };
  });

  /** Keeps of a line what lies beyond a first line and before it has met all others. */
  const trimmed = (line: Line, after: Line | undefined, ...before: (Line | undefined)[]) => {
    const start = after ? Math.max(0, crossing(line, after)) : 0;
    const met = before.flatMap((other) => (other ? [crossing(line, other)] : []));
    const end = met.length > 0 ? Math.min(1, Math.max(...met)) : 1;
    if (start < end) lines.push([placeOn(line, start), placeOn(line, end)]);
  };
  const seats = [0, coil.length];
  const [leftSeat, rightSeat] = coil.ground
    ? seats.map(
        (x): Line => [
          [x, 0],
          [x, 1],
        ],
      )
    : [];
  /** Keeps of an arc what lies between the seats of a ground coil; at most one of them is near. */
  const arc = (centre: Place, from: number, to: number) => {
    const isLeft = centre[0] < coil.length / 2;
    const room = isLeft ? centre[0] : coil.length - centre[0];
    if (!coil.ground || room > radius) return arcs.push([centre, from, to]);
    const open = (180 / Math.PI) * Math.acos(-room / radius);
    for (const middle of isLeft ? [0, 360] : [-180, 180]) {
      const [start, end] = [Math.max(from, middle - open), Math.min(to, middle + open)];
      if (start < end) arcs.push([centre, start, end]);
    }
  };
  for (const [i, { front, from, to, edge, cut, turned }] of bars.entries()) {
    const [before, next] = [bars[i - 1], bars[i + 1]];
    // Behind, each edge is hidden at the crown where it is the inner one.
    trimmed(edge(-1), front ? leftSeat : before?.edge(1), rightSeat);
    if (front || next === undefined) trimmed(edge(1), leftSeat, rightSeat);
    else trimmed(edge(1), leftSeat, next.edge(-1), next.cut);
    if (before === undefined) arc(from, turned + 90, turned + 270);
    // The wire turns with the clock at one crown and against it at the next; the arc lies outside.
    else if (from[1] > 0) arc(from, turned + 90, before.turned + 90);
    else arc(from, before.turned - 90, turned - 90);
    if (next !== undefined) continue;
    if (cut) trimmed(cut, front ? undefined : before?.edge(1), rightSeat);
    else arc(to, turned - 90, turned + 90);
    // Where the wire ends behind, its face looks forward.
    if (!cut && !front) arc(to, turned + 90, turned + 270);
  }
  if (coil.ground) {
    const arcEnd = ([x, y]: Place, degrees: number): Place => {
      const angle = (Math.PI * degrees) / 180;
      return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    };
    const ends = [...lines.flat(), ...arcs.flatMap(([centre, from, to]) => [arcEnd(centre, from), arcEnd(centre, to)])];
    // A flat reaches from edge to edge of what meets its seat, or but for a hair meets it.
    for (const seat of seats) {
      const met = ends.filter(([x]) => Math.abs(x - seat) < 0.01 * radius).map(([, y]) => y);
      lines.push([
        [seat, Math.min(...met)],
        [seat, Math.max(...met)],
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
