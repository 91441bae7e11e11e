import type { Brief, Design } from "../../model.ts";
import { paperPage } from "../paper-page.ts";
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
export function workingPage(brief: Brief, design: Design): Promise<string> {
  return paperPage({ title: `${brief.title}: working`, style: PAGE_STYLE, body: workingFragment(brief, design) });
}
