import type { Brief, Design, DesignPoint, Quantity, Units, Window } from "../../model.ts";
import { inUnits, show, unitLabel } from "../../units/show.ts";
import { escapeMarkup } from "../html/markup.ts";

/** Room about the plot for numbers and names, in units of the picture. */
const MARGIN = { left: 46, right: 62, top: 24, bottom: 34 };

const INK = "#1d2329";
const SOFT = "#4a525b";
const HAIR = "#c9d0d6";
const ACCENT = "#0b5a75";

/**
 * Force over length, from the free length at the left to solid at the right: the spring's line, its load points with the windows
 * that the brief asks, and solid.
 *
 * @param brief   the brief that the spring answers, for its windows
 * @param design  the spring
 * @param width   width of the picture
 * @param height  its height
 * @returns an SVG element as text; a point carries its number in the brief's order, and its force where they are few; does not throw
 */
export function loadLengthDiagram(brief: Brief, design: Design, width = 340, height = 230): string {
  const { units } = brief;
  const { freeLength, solidLength, forceAtSolid, points } = design;
  const windows = forceWindows(brief);
  const most = mostForce([design], windows);
  const plot = loadLengthPlot(freeLength, solidLength, most, width, height);
  const title = `Force over length: free ${show(freeLength, "length", units)}, solid ${show(solidLength, "length", units)} at ${show(forceAtSolid, "force", units)}`;
  // Among many points only their numbers find room; the table beside the diagram has the forces.
  const words = ({ force }: DesignPoint, i: number) =>
    points.length > 3 ? `${i + 1}` : `${i + 1}: ${show(force, "force", units)}`;
  const parts = [
    loadLengthAxes(plot, most, freeLength, solidLength, units),
    `<path stroke="${INK}" stroke-width="1.4" d="M${n(plot.x(freeLength))} ${n(plot.y(0))}L${n(plot.x(solidLength))} ${n(plot.y(forceAtSolid))}"/>`,
    ...points.map(({ length }, i) => windowBar(plot, length, windows[i] ?? {}, most)),
    ...points.map((point, i) => mark(plot, point, words(point, i))),
    solidMark(plot, design, units),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="load-length" role="img" width="${width}" height="${height}" ` +
    `viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif" font-size="11" fill="none">` +
    `<title>${escapeMarkup(title)}</title>${parts.join("")}</svg>`
  );
}

/** The most that a picture of these springs and windows must reach up to, N. */
function mostForce(designs: readonly Design[], windows: readonly Window[]): number {
  const ends = windows.flatMap(({ min = 0, max = 0 }) => [min, max]);
  return Math.max(...designs.map(({ forceAtSolid }) => forceAtSolid), ...ends);
}

/** Where lengths and forces stand in the picture. */
interface Plot {
  readonly x: (length: number) => number;
  readonly y: (force: number) => number;
  readonly right: number;
  readonly bottom: number;
}

/** A plot from the longest length at the left to the shortest, from no force to the most. */
function loadLengthPlot(longest: number, shortest: number, most: number, width: number, height: number): Plot {
  return {
    x: (length) => MARGIN.left + ((width - MARGIN.left - MARGIN.right) * (longest - length)) / (longest - shortest),
    y: (force) => height - MARGIN.bottom - ((height - MARGIN.top - MARGIN.bottom) * force) / most,
    right: width - MARGIN.right,
    bottom: height - MARGIN.bottom,
  };
}

/** Frame and scales of force over length. */
function loadLengthAxes(plot: Plot, most: number, freeLength: number, solidLength: number, units: Units): string {
  const { x, y, right, bottom } = plot;
  const lengths = ticks(solidLength, freeLength, "length", units, 6).map(
    ({ value, text }) =>
      `<path class="rule" stroke="${SOFT}" stroke-width="0.8" d="M${n(x(value))} ${n(bottom)}v4"/>${plotLabel(x(value), bottom + 15, text, "middle")}`,
  );
  const forces = ticks(0, most, "force", units, 5).map(
    ({ value, text }) =>
      `<path class="hair" stroke="${HAIR}" stroke-width="0.6" d="M${n(MARGIN.left)} ${n(y(value))}H${n(right)}"/>${plotLabel(MARGIN.left - 5, y(value) + 4, text, "end")}`,
  );
  const frame = `<path class="rule" stroke="${SOFT}" stroke-width="0.8" d="M${n(MARGIN.left)} ${MARGIN.top}V${n(bottom)}H${n(right)}"/>`;
  const names =
    plotLabel(MARGIN.left - 5, MARGIN.top - 10, `force, ${unitLabel("force", units)}`, "start") +
    plotLabel(right, bottom + 29, `length, ${unitLabel("length", units)}`, "end");
  return forces.join("") + lengths.join("") + frame + names;
}

/** What a brief allows at a length; an open end runs to the edge of the plot. */
function windowBar({ x, y }: Plot, length: number, { min, max }: Window, most: number): string {
  if (min === undefined && max === undefined) return "";
  const [low, high] = [y(min ?? 0), y(max ?? most)];
  const cap = (at: number) => `M${n(x(length) - 4)} ${n(at)}h8`;
  const caps = (min === undefined ? "" : cap(low)) + (max === undefined ? "" : cap(high));
  return `<path class="window" stroke="${ACCENT}" stroke-width="1.4" d="M${n(x(length))} ${n(low)}V${n(high)}${caps}"/>`;
}

/** Width of a character, roughly, to tell where words would run into the axis. */
const CHARACTER = 6.2;

/** A dot over its length, with words above the line to its left, or below it to its right where there is no room. */
function mark({ x, y, bottom }: Plot, { length, force }: Pick<DesignPoint, "length" | "force">, words: string): string {
  const [across, up] = [x(length), y(force)];
  const isRoom = across - 7 - CHARACTER * words.length > MARGIN.left;
  const text = isRoom ? plotLabel(across - 7, up - 5, words, "end") : plotLabel(across + 8, up + 12, words, "start");
  return drop(across, up, bottom, INK) + text;
}

/** Solid, with its words to the right, where nothing else stands. */
function solidMark({ x, y, bottom }: Plot, { solidLength, forceAtSolid }: Design, units: Units): string {
  const [right, top] = [x(solidLength), y(forceAtSolid)];
  const words = ["solid", show(forceAtSolid, "force", units)].map((text, i) =>
    plotLabel(right + 8, top + 3 + 13 * i, text, "start"),
  );
  return drop(right, top, bottom, "#fff") + words.join("");
}

function drop(x: number, y: number, bottom: number, fill: string): string {
  const line = `<path stroke="${SOFT}" stroke-width="0.6" stroke-dasharray="3 3" d="M${n(x)} ${n(y)}V${n(bottom)}"/>`;
  return `${line}<circle cx="${n(x)}" cy="${n(y)}" r="3" fill="${fill}" stroke="${INK}"/>`;
}

/** Round numbers within a range, at most as many as asked, in the reader's units. */
export function ticks(
  from: number,
  to: number,
  dimension: "length" | "force" | "stress",
  units: Units,
  most: number,
): { readonly value: number; readonly text: string }[] {
  const size = to / inUnits(to, dimension, units);
  const [first, last] = [from / size, to / size];
  const least = (last - first) / most;
  const power = 10 ** Math.floor(Math.log10(least));
  const step = ([1, 2, 5, 10].find((multiple) => multiple * power >= least * (1 - 1e-9)) ?? 10) * power;
  const start = Math.ceil(first / step - 1e-9);
  const count = Math.floor(last / step + 1e-9) - start + 1;
  const decimals = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return Array.from({ length: count }, (_, i) => ({
    value: (start + i) * step * size,
    text: ((start + i) * step).toFixed(decimals),
  }));
}

/** Text on a diagram of force over length. */
function plotLabel(x: number, y: number, text: string, anchor: "start" | "middle" | "end"): string {
  // A white edge keeps the text legible where it crosses a line.
  return `<text fill="${INK}" stroke="#fff" stroke-width="3" paint-order="stroke" stroke-linejoin="round" x="${n(x)}" y="${n(y)}" text-anchor="${anchor}">${escapeMarkup(text)}</text>`;
}

function n(value: number): string {
  return String(Number(value.toFixed(2)));
}

/**
 * What the brief asks of the force at each load point, in the order of a design's points.
 *
 * @param brief  a resolved brief
 * @returns N; exact where min = max; a largest working force is asked exactly, for the point stands where the spring has it
 */
export function forceWindows({ load }: Brief): readonly Quantity[] {
  switch (load.kind) {
    case "points":
      return load.points.map(({ force }) => force);
    case "rateAndPoint":
      return [load.point.force];
    case "forceAtDeflection":
      return [load.force];
    case "rateAndLargestForce":
      return [{ nominal: load.largestForce, min: load.largestForce, max: load.largestForce }];
  }
}

/** How lines are told apart without colour. */
const DASHES = ["", "7 3", "2 3"] as const;

/** A spring of the diagram. */
export interface LoadLine {
  /** What it goes by, a letter. */
  readonly name: string;
  readonly design: Design;
  /** Room that it must leave before solid, m. */
  readonly clashAllowance: number;
}

/**
 * Force over length of several springs: each its own line from free to solid with its load points, the clash allowance as a broad
 * band before solid, and the windows that the brief asks.
 *
 * @param brief   the brief that they are held against, for its windows
 * @param lines   at most three
 * @param width   width of the picture
 * @param height  its height
 * @returns an SVG element as text; does not throw
 */
export function loadLengthLines(brief: Brief, lines: readonly LoadLine[], width = 520, height = 300): string {
  const designs = lines.map(({ design }) => design);
  const windows = forceWindows(brief);
  const longest = Math.max(...designs.map(({ freeLength }) => freeLength));
  const shortest = Math.min(...designs.map(({ solidLength }) => solidLength));
  const most = mostForce(designs, windows);
  const plot = loadLengthPlot(longest, shortest, most, width, height);
  // Where the brief gives lengths every spring has the same ones, and its window is drawn once.
  const bars = designs.flatMap(({ points }) => points.map(({ length }, i) => windowBar(plot, length, windows[i] ?? {}, most)));
  const title = `Force over length: ${lines.map(({ name }) => name).join(", ")}`;
  const parts = [
    loadLengthAxes(plot, most, longest, shortest, brief.units),
    ...lines.map((line) => allowanceBand(plot, line)),
    ...new Set(bars),
    ...lines.map((line, i) => springLine(plot, line, dashed(i))),
    ...legend(lines),
  ];
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="load-length load-lines" role="img" width="${width}" height="${height}" ` +
    `viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif" font-size="11" fill="none">` +
    `<title>${escapeMarkup(title)}</title>${parts.join("")}</svg>`
  );
}

/** Where a spring stands in the picture at a length. */
function placeAt({ x, y }: Plot, { rate, freeLength }: Design, length: number): string {
  return `${n(x(length))} ${n(y(Math.max(0, rate * (freeLength - length))))}`;
}

function allowanceBand(plot: Plot, { design, clashAllowance }: LoadLine): string {
  if (clashAllowance <= 0) return "";
  const { freeLength, solidLength } = design;
  const from = placeAt(plot, design, Math.min(freeLength, solidLength + clashAllowance));
  return `<path class="allowance" stroke="#b9cfd8" stroke-width="9" d="M${from}L${placeAt(plot, design, solidLength)}"/>`;
}

function springLine(plot: Plot, { design }: LoadLine, dash: string): string {
  const { freeLength, solidLength, points } = design;
  const path = `M${placeAt(plot, design, freeLength)}L${placeAt(plot, design, solidLength)}`;
  const line = `<path class="line" stroke="#1d2329" stroke-width="1.6"${dash} d="${path}"/>`;
  const dots = points.map(({ length }) => dot(placeAt(plot, design, length), "dot"));
  return `<g>${line}${dots.join("")}${dot(placeAt(plot, design, solidLength), "dot-solid")}</g>`;
}

/** Which line is whose, at the top left, where a spring that is long and weakly pressed leaves room. */
function legend(lines: readonly LoadLine[]): string[] {
  return lines.map(({ name }, i) => {
    const y = LEGEND.y + LEGEND.height * i;
    return (
      `<path class="line" stroke="#1d2329" stroke-width="1.6"${dashed(i)} d="M${LEGEND.x} ${y}h34"/>` +
      plotLabel(LEGEND.x + 42, y + 4, name, "start")
    );
  });
}

const LEGEND = { x: 62, y: 40, height: 16 };

function dashed(place: number): string {
  const dash = DASHES[place] ?? "";
  return dash === "" ? "" : ` stroke-dasharray="${dash}"`;
}

function dot(place: string, kind: "dot" | "dot-solid"): string {
  const [x, y] = place.split(" ");
  return `<circle class="${kind}" cx="${x}" cy="${y}" r="3" fill="${kind === "dot" ? "#1d2329" : "#fff"}" stroke="#1d2329"/>`;
}
