import { betweenSeats, endsAtCrown, faces, halfTurn } from "./coil-view.ts";
import { type Coil, halfTurns } from "./helix.ts";

/** Hatching of a cut wire: lines at 45°, so far apart. */
const HATCH = 3.2;

/**
 * A coil cut along its axis, its front half taken away: half turns behind the axis, and the wire cut through at every crown. What
 * stands inside it is seen.
 *
 * @param name  what the view shows, part of its class
 * @param coil  the coil, in units of the picture
 * @param left  where its left seat stands
 * @param axis  where its axis lies
 * @returns SVG as text
 */
export function coilSection(name: string, coil: Coil, left: number, axis: number): string {
  const halves = halfTurns(coil);
  const behind = halves.filter(({ front }) => !front).map((half) => halfTurn(half, coil.wireDiameter, left, axis));
  const last = halves.at(-1);
  const crowns = [
    ...halves.flatMap(({ points }) => points.slice(0, 1)),
    ...(last && endsAtCrown(last.points) ? last.points.slice(-1) : []),
  ];
  const cuts = crowns.map(({ along, across }) => cutWire(left + along, axis - across, coil.wireDiameter / 2));
  const wire = [...behind, ...cuts].join("");
  const metal = coil.ground ? betweenSeats(wire, coil, left, axis) + faces(coil, left, axis) : wire;
  return `<g class="section section-${name}">${metal}</g>`;
}

function cutWire(x: number, y: number, radius: number): string {
  const chords = Array.from({ length: 2 * Math.floor(radius / HATCH) + 1 }, (_, i) => (i - Math.floor(radius / HATCH)) * HATCH);
  const lines = chords.map((off) => {
    const half = Math.sqrt(radius * radius - off * off);
    const [dx, dy, reach] = [off * Math.SQRT1_2, off * Math.SQRT1_2, half * Math.SQRT1_2];
    return `M${round(x + dx - reach)} ${round(y + dy + reach)}L${round(x + dx + reach)} ${round(y + dy - reach)}`;
  });
  return (
    `<circle class="wire-cut" cx="${round(x)}" cy="${round(y)}" r="${round(radius - 0.5)}" fill="#fdfdfc" stroke="#2a3138"/>` +
    `<path class="wire-hatch" d="${lines.join("")}" stroke="#2a3138" stroke-width="0.6"/>`
  );
}

function round(value: number): string {
  return String(Number(value.toFixed(2)));
}
