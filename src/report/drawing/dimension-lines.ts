import { escapeMarkup } from "../html/markup.ts";

const LINE = `class="dimension" stroke="#4a525b" stroke-width="0.8"`;
const ARROW = `class="dimension-arrow" fill="#4a525b"`;
const TEXT = `class="dimension-text" fill="#1d2329"`;

/** A length across the picture, below a view or above it: extension lines from its ends, a line with arrows, the text beyond it. */
export function alongDimension(from: number, to: number, edge: number, text: string, side: "below" | "above" = "below"): string {
  const out = side === "below" ? 1 : -1;
  const y = edge + out * 20;
  const extension = (x: number) => `M${n(x)} ${n(edge + out * 3)}V${n(y + out * 4)}`;
  const extensions = `<path ${LINE} d="${extension(from)}${extension(to)}"/>`;
  const line = `<path ${LINE} d="M${n(from)} ${n(y)}H${n(to)}"/>`;
  const arrows = arrow(from, y, "left") + arrow(to, y, "right");
  return `<g>${extensions}${line}${arrows}${label((from + to) / 2, y + (side === "below" ? 15 : -7), text, "middle")}</g>`;
}

/** A diameter across the axis, beside a view: extension lines, a line with arrows, the text in two lines at its middle. */
export function acrossDimension(
  edge: number,
  axis: number,
  diameter: number,
  side: "left" | "right",
  text: string,
  what: string,
): string {
  const out = side === "right" ? 1 : -1;
  const x = edge + out * 24;
  const [top, bottom] = [axis - diameter / 2, axis + diameter / 2];
  const extensions = `<path ${LINE} d="M${n(edge + out * 3)} ${n(top)}H${n(x + out * 4)}M${n(edge + out * 3)} ${n(bottom)}H${n(x + out * 4)}"/>`;
  const line = `<path ${LINE} d="M${n(x)} ${n(top)}V${n(bottom)}"/>`;
  const arrows = arrow(x, top, "up") + arrow(x, bottom, "down");
  const anchor = side === "right" ? "start" : "end";
  const words = label(x + out * 7, axis - 5, text, anchor) + label(x + out * 7, axis + 12, what, anchor);
  return `<g>${extensions}${line}${arrows}${words}</g>`;
}

/** A note on the wire: an arrow that touches the coil from above, the text on a short shelf. */
export function wireLeader(x: number, y: number, text: string, shelf = y - 18): string {
  const line = `<path ${LINE} d="M${n(x)} ${n(y - 1)}L${n(x + 12)} ${n(shelf)}H${n(x + 24)}"/>`;
  const tip = `<path ${ARROW} d="M${n(x)} ${n(y)}l1.6 -7.6l4.4 3.1z"/>`;
  return `<g>${line}${tip}${label(x + 28, shelf + 4, text, "start")}</g>`;
}

/** Lines of text beside a view. */
export function caption(x: number, axis: number, lines: readonly string[]): string {
  return lines.map((text, i) => label(x, axis - 4 + 16 * i, text, "start")).join("");
}

function arrow(x: number, y: number, towards: "left" | "right" | "up" | "down"): string {
  const shape = { left: "l8 -2.4v4.8z", right: "l-8 -2.4v4.8z", up: "l-2.4 8h4.8z", down: "l-2.4 -8h4.8z" }[towards];
  return `<path ${ARROW} d="M${n(x)} ${n(y)}${shape}"/>`;
}

function label(x: number, y: number, text: string, anchor: "start" | "middle" | "end"): string {
  return `<text ${TEXT} x="${n(x)}" y="${n(y)}" text-anchor="${anchor}">${escapeMarkup(text)}</text>`;
}

function n(value: number): string {
  return String(Number(value.toFixed(2)));
}
