import { escapeJson, escapeMarkup } from "../html/markup.ts";
import { sourceHash } from "../html/sheet-page.ts";
import { stylesheet } from "./stylesheet.ts";

/** What a page of the report is made of. */
export interface PageParts {
  readonly title: string;
  /** The page's own script, bundled. */
  readonly script: string;
  /** What stands in the body, as markup. */
  readonly body: string;
  /** What the script reads, each under the id of its block. */
  readonly blocks: Readonly<Record<string, unknown>>;
}

/**
 * One HTML page that needs no network: nothing in it runs but the script given, held by its hash.
 *
 * @throws Error where the script would break out of its element
 */
export async function pageFrame({ title, script, body, blocks }: PageParts): Promise<string> {
  if (/<\/script|<!--/i.test(script)) throw new Error("the page's script would end its own element");
  const policy = [
    "default-src 'none'",
    `script-src ${await sourceHash(script)}`,
    // The page makes its worker from its own script; a worker's blob is held by this policy too.
    "worker-src blob:",
    `style-src ${await sourceHash(stylesheet)}`,
    "img-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeMarkup(title)}</title><style>${stylesheet}</style></head>`,
    `<body>${body}`,
    ...Object.entries(blocks).map(([id, value]) => `<script type="application/json" id="${id}">${escapeJson(value)}</script>`),
    `<script>${script}</script></body></html>\n`,
  ].join("");
}

/** A number and its unit stay on one line. */
export function unbroken(text: string): string {
  return text.replace(/(\d) (?=[a-zA-Z%])(?!to |at |and )/g, "$1\u00a0");
}
/** Where the page's script shows a sheet of the chosen spring, to be printed by itself. */
export const paperDialog =
  '<dialog class="paper" id="paper" aria-labelledby="paper-name"><div class="paper-bar screen-only">' +
  '<p id="paper-name"></p><button type="button" id="paper-print">Print</button>' +
  '<button type="button" id="paper-close">Close</button></div><div id="paper-sheet"></div></dialog>';
