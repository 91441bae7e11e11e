import type { Brief, Design, EndStyle } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { inUnits, show } from "../../units/show.ts";
import { dimensionRows } from "../datasheet/dimensions.ts";
import { endsAtCrown } from "../drawing/coil-view.ts";
import { type Coil, halfTurns } from "../drawing/helix.ts";
import { springStates } from "../drawing/lengths-shown.ts";
import { coilOf, drawnHand, type Hand } from "../drawing/spring.ts";
import { screeningWords } from "../text/labels.ts";
import { GENERATED, handWords } from "./body.ts";

/** Layers: name, colour by its number, line type. */
const LAYERS = [
  ["SPRING", 7, "CONTINUOUS"],
  ["AXIS", 1, "CENTER"],
  ["DIMENSIONS", 3, "CONTINUOUS"],
  ["TEXT", 7, "CONTINUOUS"],
] as const;

/** Signs that the format has a code of its own for. */
const SIGNS: Readonly<Record<string, string>> = { Ø: "%%c", "±": "%%p", "°": "%%d" };

/**
 * The drawing of one spring as a DXF of release 12, lines, arcs and text alone, ASCII, at full size in the reader's unit of length:
 * free, and at each load point beneath it from the same seat, with the dimensions of the data sheet.
 *
 * @param brief   the brief that the spring answers
 * @param design  the spring
 * @returns text that CAD programs read; the same spring gives the same bytes
 */
export function springDxf(brief: Brief, design: Design): string {
  const { units } = brief;
  const { wireDiameter, meanDiameter } = design;
  const ends = brief.sweep.ends.find(({ name }) => name === design.ends) as EndStyle;
  const size = (value: number) => inUnits(value, "length", units);
  const length = (value: number) => show(value, "length", units);
  /** Height of the text, by which all that is not the spring goes. */
  const height = size(design.freeLength + 2 * design.outsideDiameter) / 45;

  const entities: string[] = [];
  const groups = (...values: (string | number)[]) => entities.push(values.map(written).join("\n"));
  const line = (layer: string, [x, y]: Place, [toX, toY]: Place) => groups(0, "LINE", 8, layer, 10, x, 20, y, 11, toX, 21, toY);
  /** Text that begins at a place (0), is centred there (1) or ends there (2). */
  const text = (words: string, [x, y]: Place, aligned = 0, tall = height) =>
    groups(0, "TEXT", 8, "TEXT", 10, x, 20, y, 40, tall, 1, plain(words), 72, aligned, 11, x, 21, y);
  /** A length along x or y: its line with arrows, and lines from an edge to it. */
  const dimension = (from: Place, to: Place, edge: Place) => {
    const [alongX, alongY] = [Math.sign(to[0] - from[0]) * height, Math.sign(to[1] - from[1]) * height];
    line("DIMENSIONS", from, to);
    for (const [[x, y], way] of [
      [from, 1],
      [to, -1],
    ] as const) {
      for (const wide of [-0.16, 0.16])
        line("DIMENSIONS", [x, y], [x + way * alongX + wide * alongY, y + way * alongY + wide * alongX]);
      line("DIMENSIONS", [x + edge[0] * height, y + edge[1] * height], [x - (edge[0] * height) / 5, y - (edge[1] * height) / 5]);
    }
  };
  const diameter = (x: number, side: number, axis: number, value: number, what: string) => {
    const at = x + 3 * side * height;
    dimension([at, axis - size(value) / 2], [at, axis + size(value) / 2], [-2.5 * side, 0]);
    const aligned = side > 0 ? 0 : 2;
    text(`Ø ${length(value)}`, [at + side * height, axis + 0.3 * height], aligned);
    text(what, [at + side * height, axis - 1.4 * height], aligned);
  };

  let top = 0;
  for (const { name, kind, length: at, force, outsideDiameter } of springStates(brief, design)) {
    if (kind === "solid") continue;
    const [right, across] = [size(at), size(outsideDiameter)];
    const axis = top - across / 2;
    const coil = coilOf({ ...design, meanDiameter: outsideDiameter - wireDiameter }, ends, size(1), at);
    const { lines, arcs } = sideView(coil, drawnHand(brief));
    for (const [[x, y], [toX, toY]] of lines) line("SPRING", [x, axis + y], [toX, axis + toY]);
    for (const [[x, y], from, to] of arcs) {
      groups(0, "ARC", 8, "SPRING", 10, x, 20, axis + y, 40, coil.wireDiameter / 2, 50, (from + 720) % 360, 51, (to + 720) % 360);
    }
    line("AXIS", [-2 * height, axis], [right + 2 * height, axis]);
    const foot = top - across - 3 * height;
    dimension([0, foot], [right, foot], [0, 2.5]);
    text(
      `${oneLine(name)} ${length(at)}${force > 0 ? `, ${show(force, "force", units)}` : ""}`,
      [right / 2, foot - 1.7 * height],
      1,
    );
    diameter(right, 1, axis, outsideDiameter, "outside");
    if (kind === "free") diameter(0, -1, axis, meanDiameter, "mean");
    top -= across + 8 * height;
  }

  text(oneLine(brief.title), [0, top], 0, 1.4 * height);
  const rows = [
    [`Dimensions in ${units.length}; in parentheses: for reference.`],
    [],
    ...dimensionRows(brief, design).map(({ label, value, tolerance }) => [label, value, tolerance ?? ""]),
    ["Wire", `${oneLine(design.wire)} of ${oneLine(design.series)}, ${oneLine(design.material)}`],
    ["Ends", oneLine(design.ends)],
    ["Hand", handWords(brief)],
    [],
    [screeningWords],
    ["A compressed spring stores energy: hold it captive."],
    [`This drawing is ${GENERATED}.`],
  ];
  for (const [row, cells] of rows.entries()) {
    for (const [column, words] of cells.entries())
      if (words !== "") text(words, [13 * column * height, top - (2.2 + 1.7 * row) * height]);
  }
  const dashes = [6, -1, 1, -1].map((dash) => `49\n${written(dash * height)}\n`).join("");
  const layers = LAYERS.map(([name, colour, type]) => `0\nLAYER\n2\n${name}\n70\n0\n62\n${colour}\n6\n${type}\n`).join("");
  return (
    `0\nSECTION\n2\nHEADER\n9\n$ACADVER\n1\nAC1009\n9\n$INSUNITS\n70\n${units.length === "mm" ? 4 : 1}\n0\nENDSEC\n` +
    `0\nSECTION\n2\nTABLES\n0\nTABLE\n2\nLTYPE\n70\n2\n0\nLTYPE\n2\nCONTINUOUS\n70\n0\n3\n\n72\n65\n73\n0\n40\n0\n` +
    `0\nLTYPE\n2\nCENTER\n70\n0\n3\n\n72\n65\n73\n4\n40\n${written(9 * height)}\n${dashes}0\nENDTAB\n` +
    `0\nTABLE\n2\nLAYER\n70\n${LAYERS.length}\n${layers}0\nENDTAB\n0\nENDSEC\n` +
    `0\nSECTION\n2\nENTITIES\n${entities.join("\n")}\n0\nENDSEC\n0\nEOF\n`
  );
}

/** A value as its line: whole numbers are group codes or counts. */
function written(value: string | number): string {
  return typeof value === "string" || Number.isInteger(value) ? String(value) : value.toFixed(6);
}

/** A text in ASCII: signs that the format has a code for, all else by its number. */
function plain(text: string): string {
  return text
    .replace(/%%+/g, (run) => "%%%".repeat(run.length))
    .replace(/[\\\u0080-\uffff]/g, (sign) => SIGNS[sign] ?? `\\U+${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
}

/** A place on the drawing. */
type Place = readonly [x: number, y: number];

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
function sideView(coil: Coil, hand: Hand): { readonly lines: readonly Line[]; readonly arcs: readonly Arc[] } {
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

function placeOn([[x, y], [toX, toY]]: Line, fraction: number): Place {
  return [x + fraction * (toX - x), y + fraction * (toY - y)];
}
