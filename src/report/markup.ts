/** Text made safe inside HTML or SVG, in content and in a quoted attribute alike. */
export function escapeMarkup(text: string): string {
  const safe: Record<string, string> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };
  return text.replace(/[&<>"']/g, (character) => safe[character] as string);
}

/** JSON made safe inside a script element: nothing in it can close the element or end a line of script. */
export function escapeJson(value: unknown): string {
  return JSON.stringify(value)
    .replace(/</g, "\\u003c")
    .replace(/\u2028/g, "\\u2028")
    .replace(/\u2029/g, "\\u2029");
}
