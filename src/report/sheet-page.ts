import type { Brief, Design } from "../model.ts";
import { escapeMarkup } from "./markup.ts";
import { dataSheet } from "./sheet.ts";
import { sheetStyle } from "./sheet-style.ts";
import { sourceHash } from "./source-hash.ts";

const PAGE_STYLE = `${sheetStyle}:root{color-scheme:light}body{margin:0;background:#fff}`;

/**
 * The data sheet as one HTML page that needs no network, carries no script and prints on one sheet of A4 or Letter.
 *
 * @param brief   the brief that the spring answers
 * @param design  one of its springs
 * @returns the whole page; only its own style applies, held by its hash
 */
export async function sheetPage(brief: Brief, design: Design): Promise<string> {
  const policy = `default-src 'none'; style-src ${await sourceHash(PAGE_STYLE)}; base-uri 'none'; form-action 'none'`;
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeMarkup(brief.title)}: data sheet</title><style>${PAGE_STYLE}</style></head>`,
    `<body><main>${dataSheet(brief, design)}</main></body></html>\n`,
  ].join("");
}
