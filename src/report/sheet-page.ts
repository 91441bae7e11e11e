import type { Brief, Design } from "../model.ts";
import { paperPage } from "./paper-page.ts";
import { dataSheet } from "./sheet.ts";
import { sheetStyle } from "./sheet-style.ts";

const PAGE_STYLE = `${sheetStyle}:root{color-scheme:light}body{margin:0;background:#fff}`;

/**
 * The data sheet as one HTML page that needs no network, carries no script and prints on one sheet of A4 or Letter.
 *
 * @param brief   the brief that the spring answers
 * @param design  one of its springs
 * @returns the whole page; only its own style applies, held by its hash
 */
export function sheetPage(brief: Brief, design: Design): Promise<string> {
  return paperPage({ title: `${brief.title}: data sheet`, style: PAGE_STYLE, body: dataSheet(brief, design) });
}
