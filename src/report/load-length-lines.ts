import type { Brief, Design } from "../model.ts";
import { loadLengthAxes, loadLengthPlot, mostForce, type Plot, plotLabel, windowBar } from "./load-length.ts";
import { forceWindows } from "./load-windows.ts";
import { escapeMarkup } from "./markup.ts";

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

function n(value: number): string {
  return String(Number(value.toFixed(2)));
}
