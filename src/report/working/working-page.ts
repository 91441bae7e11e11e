import type { Brief, Design } from "../../model.ts";
import { escapeMarkup } from "../markup.ts";
import { sourceHash } from "../source-hash.ts";
import { workingFragment } from "./working-fragment.ts";
import { workingStyle } from "./working-style.ts";

const PAGE_STYLE = `${workingStyle}:root{color-scheme:light}@page{margin:14mm}body{margin:0;background:#fdfdfc}main{padding:32px 24px 48px}@media print{body{background:#fff}main{padding:0}}`;

/**
 * The calculation sheet as one HTML page that needs no network and carries no script.
 *
 * @param brief   the brief that the design answers
 * @param design  one of its designs
 * @returns the whole page; only its own style applies, held by its hash
 */
export async function workingPage(brief: Brief, design: Design): Promise<string> {
  const policy = `default-src 'none'; style-src ${await sourceHash(PAGE_STYLE)}; base-uri 'none'; form-action 'none'`;
  return [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeMarkup(brief.title)}: working</title><style>${PAGE_STYLE}</style></head>`,
    `<body><main>${workingFragment(brief, design)}</main></body></html>\n`,
  ].join("");
}
