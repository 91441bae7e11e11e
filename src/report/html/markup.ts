import { jsonText, printable } from "../../problem.ts";

/** Text made safe inside HTML or SVG, in content and in a quoted attribute alike. */
export function escapeMarkup(text: string): string {
  const safe: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };
  return printable(text).replace(/[&<>"']/g, (character) => safe[character] as string);
}

/** JSON made safe inside a script element: nothing in it can close the element or end a line of script. */
export function escapeJson(value: unknown): string {
  return jsonText(value).replace(/</g, "\\u003c");
}

/** What heads a row: its words, and what a reader who points at them is told beside them. */
export type RowHead = string | { readonly words: string; readonly title: string };

/** A row of text: its head, then its cells. */
export type Row = readonly [head: RowHead, ...cells: readonly string[]];

/**
 * A table in a box of its own to scroll in; the first column names its row, and the last cell of a short row takes what is left.
 *
 * @param head     one text for each column; an empty one heads the names of rows
 * @param rows     no text in them is markup
 * @param numbers  places of the columns that hold numbers
 * @returns markup
 */
export function pageTable(head: readonly string[], rows: readonly Row[], numbers: readonly number[] = []): string {
  const kind = (i: number) => (numbers.includes(i) ? "number" : "wrap");
  const heads = head.map((text, i) =>
    text === "" ? "<td></td>" : `<th scope="col" class="${kind(i)}">${escapeMarkup(text)}</th>`,
  );
  const lines = rows.map(([first, ...others]) => {
    const left = head.length - others.length - 1;
    const span = (i: number) => (left > 0 && i === others.length - 1 ? ` colspan="${left + 1}"` : "");
    const data = others.map((text, i) => `<td class="${kind(i + 1)}"${span(i)}>${escapeMarkup(text)}</td>`);
    return `<tr>${rowHead(first)}${data.join("")}</tr>`;
  });
  return `<div class="box" tabindex="0"><table><thead><tr>${heads.join("")}</tr></thead><tbody>${lines.join("")}</tbody></table></div>`;
}

/** Sentences as a list; nothing where there are none. */
export function pageList(sentences: readonly string[]): string {
  return sentences.length === 0 ? "" : `<ul>${sentences.map((text) => `<li>${escapeMarkup(text)}</li>`).join("")}</ul>`;
}

function rowHead(head: RowHead): string {
  const { words, title } = typeof head === "string" ? { words: head, title: "" } : head;
  const told = title === "" ? "" : ` title="${escapeMarkup(title)}"`;
  return `<th scope="row" class="wrap"${told}>${escapeMarkup(words)}</th>`;
}
