import { type Coil, groundFace, type HalfTurn, halfTurns } from "./helix.ts";

/** Thickness of the line about the wire; thin wire takes a thinner one. */
const OUTLINE = 1.1;

/**
 * One side view of a coil: back half turns first, front ones over them, ground ends cut flat, the axis through all.
 *
 * @param name  what the view shows, part of its class
 * @param coil  the coil, in units of the picture
 * @param left  where its left seat stands
 * @param axis  where its axis lies
 * @returns SVG as text
 */
export function coilView(name: string, coil: Coil, left: number, axis: number): string {
  const halves = halfTurns(coil);
  const wire = [...halves.filter(({ front }) => !front), ...halves.filter(({ front }) => front)]
    .map((half) => halfTurn(half, coil.wireDiameter, left, axis))
    .join("");
  const line =
    `<path class="axis" d="M${round(left - 12)} ${round(axis)}H${round(left + coil.length + 12)}" ` +
    `stroke="#8a8f98" stroke-width="0.8" stroke-dasharray="14 3 3 3"/>`;
  const metal = coil.ground ? betweenSeats(wire, coil, left, axis) + faces(coil, left, axis) : wire;
  return `<g class="view view-${name}">${metal}${line}</g>`;
}

/** A picture inside the picture cuts what grinding takes away; unlike a clip path it needs no name that another drawing could share. */
function betweenSeats(wire: string, coil: Coil, left: number, axis: number): string {
  const reach = (coil.meanDiameter + coil.wireDiameter) / 2 + 2;
  const box = [left, axis - reach, coil.length, 2 * reach].map(round);
  return (
    `<svg x="${box[0]}" y="${box[1]}" width="${box[2]}" height="${box[3]}" viewBox="${box.join(" ")}" overflow="hidden">` +
    `${wire}</svg>`
  );
}

/**
 * The silhouette of a bent wire is its middle line stroked as wide as the wire: once for the outline, once inside it for the
 * metal. At a crown, where the wire turns from the back to the front, it shows as a disc; elsewhere an end is cut square.
 */
function halfTurn({ front, points }: HalfTurn, wireDiameter: number, left: number, axis: number): string {
  const drawn = points.map(({ along, across }) => ({ x: left + along, y: axis - across }));
  const path = drawn.map(({ x, y }, i) => `${i === 0 ? "M" : "L"}${round(x)} ${round(y)}`).join("");
  const line = Math.min(OUTLINE, 0.2 * wireDiameter);
  const metal = front
    ? `class="wire-front" stroke="#e4e9ee" fill="#e4e9ee"`
    : `class="wire-back" stroke="#b9c3cd" fill="#b9c3cd"`;
  const layer = (colour: string, width: number) =>
    `<g ${colour}><path d="${path}" fill="none" stroke-width="${round(width)}" stroke-linejoin="round"/>${crowns(points, drawn, width / 2)}</g>`;
  const edge = `class="wire-edge" stroke="#2a3138" fill="#2a3138"`;
  return layer(edge, wireDiameter) + layer(metal, wireDiameter - 2 * line) + cutEnd(points, drawn, wireDiameter / 2, line);
}

interface Drawn {
  readonly x: number;
  readonly y: number;
}

function crowns(points: HalfTurn["points"], drawn: readonly Drawn[], radius: number): string {
  const ends = [0, ...(endsAtCrown(points) ? [points.length - 1] : [])];
  return ends
    .map((i) => drawn[i] as Drawn)
    .map(({ x, y }) => `<circle cx="${round(x)}" cy="${round(y)}" r="${round(radius)}" stroke="none"/>`)
    .join("");
}

function cutEnd(points: HalfTurn["points"], drawn: readonly Drawn[], radius: number, line: number): string {
  const [before, end] = drawn.slice(-2);
  if (!before || !end || endsAtCrown(points)) return "";
  const length = Math.hypot(end.x - before.x, end.y - before.y);
  const [x, y] = [(radius * (end.y - before.y)) / length, (radius * (end.x - before.x)) / length];
  return (
    `<path class="wire-face" d="M${round(end.x - x)} ${round(end.y + y)}L${round(end.x + x)} ${round(end.y - y)}" ` +
    `stroke="#2a3138" stroke-width="${round(line)}"/>`
  );
}

/** A half turn runs from crown to crown unless the wire ends within it. */
export function endsAtCrown(points: HalfTurn["points"]): boolean {
  const [first, last] = [points[0]?.across ?? 0, points.at(-1)?.across ?? 0];
  return Math.abs(first + last) < 1e-6 * Math.abs(first);
}

/** The flat faces of ground ends, edge on. */
function faces(coil: Coil, left: number, axis: number): string {
  return (["left", "right"] as const)
    .map((end) => {
      const { from, to } = groundFace(coil, end);
      const x = end === "left" ? left : left + coil.length;
      return `<path class="wire-face" d="M${round(x)} ${round(axis - to)}V${round(axis - from)}" stroke="#2a3138" stroke-width="${OUTLINE}"/>`;
    })
    .join("");
}

function round(value: number): string {
  return String(Number(value.toFixed(2)));
}

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
