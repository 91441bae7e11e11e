import type { Brief, Design } from "../../model.ts";
import { paperPage } from "../html/sheet-page.ts";
import { calculationFragment } from "./html.ts";

/** Style of the calculation sheet, all of it within `.working`; on paper it fits A4 and Letter alike. */
export const calculationStyle = `
.working{box-sizing:border-box;max-width:960px;margin:0 auto;background:#fdfdfc;color:#1c2227;font:14px/1.4 system-ui,sans-serif;font-variant-numeric:tabular-nums}
.working *{box-sizing:border-box}
.working h1{font-size:24px;line-height:1.25;font-weight:600;margin:0 0 4px;overflow-wrap:anywhere}
.working header p{margin:0;color:#5b656e;overflow-wrap:anywhere}
.working h2{font-size:15px;font-weight:600;margin:28px 0 6px}
.working .chapter-number{color:#5b656e;font-weight:400;margin-right:8px}
.working p{max-width:76ch;margin:6px 0 0;overflow-wrap:anywhere}
.working .steps{overflow-x:auto}
.working .steps:focus-visible{outline:2px solid #0b5a75;outline-offset:2px}
.working table{border-collapse:collapse;width:100%;table-layout:fixed;min-width:640px}
.working th,.working td{text-align:left;vertical-align:baseline;padding:5px 12px 5px 0;border-bottom:1px solid #d9dee2;font-weight:400;overflow-wrap:anywhere}
.working thead th{color:#5b656e;font-size:12px}
.working th:first-child{width:9%}
.working th:nth-child(2){width:33%}
.working thead th.result{width:16%}
.working tbody th{color:#0b5a75;font-weight:600}
.working .source{display:block;color:#5b656e;font-size:12px;line-height:1.3}
.working .equation{color:#5b656e}
.working .equation span{display:block;color:#1c2227}
.working .equation span+span{color:#5b656e}
.working .result{text-align:right;padding-right:0}
.working tbody .result{font-weight:600}
.working ul{margin:0;padding-left:18px;max-width:76ch}
@media print{
.working{background:#fff;max-width:none;font-size:8.5pt}
.working h1{font-size:15pt}
.working h2{font-size:10pt;margin:10pt 0 3pt;break-after:avoid}
.working .steps{overflow:visible}
.working table{min-width:0}
.working th,.working td{padding:2pt 6pt 2pt 0}
.working .source,.working thead th{font-size:7pt}
.working thead{display:table-header-group}
.working tr,.working li{break-inside:avoid}
}
`;

const PAGE_STYLE = `${calculationStyle}:root{color-scheme:light}@page{margin:14mm}body{margin:0;background:#fdfdfc}main{padding:32px 24px 48px}@media print{body{background:#fff}main{padding:0}}`;

/**
 * The calculation sheet as one HTML page that needs no network and carries no script.
 *
 * @param brief   the brief that the design answers
 * @param design  one of its designs
 * @returns the whole page; only its own style applies, held by its hash
 */
export function calculationPage(brief: Brief, design: Design): Promise<string> {
  return paperPage({ title: `${brief.title}: working`, style: PAGE_STYLE, body: calculationFragment(brief, design) });
}
