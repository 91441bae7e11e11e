import { jsonText, printable } from "../problem.ts";

/** Text made safe inside HTML or SVG, in content and in a quoted attribute alike. */
export function escapeMarkup(text: string): string {
  const safe: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };
  return printable(text).replace(/[&<>"']/g, (character) => safe[character] as string);
}

/** JSON made safe inside a script element: nothing in it can close the element or end a line of script. */
export function escapeJson(value: unknown): string {
  return jsonText(value).replace(/</g, "\\u003c");
}
