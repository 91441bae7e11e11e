import type { Brief, Design } from "../../model.ts";
import { paperPage } from "../html/sheet-page.ts";
import { dataSheet } from "./datasheet.ts";

/**
 * Style of the data sheet, all of it within `.sheet`. Its widest line and its height keep inside what A4 and Letter have in
 * common: 210 mm by 279 mm, less the margins.
 */
export const sheetStyle = `
@page{margin:8mm 12mm}
.sheet{box-sizing:border-box;max-width:186mm;margin:0 auto;background:#fff;color:#1c2227;font:8pt/1.3 system-ui,sans-serif;font-variant-numeric:tabular-nums}
.sheet.dense{font-size:7.4pt}
.sheet.tight{font-size:7pt}
.sheet *{box-sizing:border-box}
.sheet header{display:grid;grid-template-columns:minmax(0,1fr) 62mm;gap:0 8mm;align-items:end;border-bottom:1.2pt solid #1c2227;padding-bottom:1.5mm}
.sheet h1{font-size:14pt;line-height:1.2;font-weight:600;margin:0}
.sheet .title{font-size:9.5pt;margin:0;display:-webkit-box;-webkit-box-orient:vertical;-webkit-line-clamp:2;overflow:hidden;overflow-wrap:anywhere}
.sheet .memory{color:#4a535b;font-size:.87em;line-height:1.25;margin:.4mm 0 0}
.sheet h2{font-size:1.06em;line-height:1.3;font-weight:600;margin:0;padding:1.3mm 0 .3mm;border-bottom:.6pt solid #1c2227}
.sheet .pictures{display:grid;grid-template-columns:4fr 3fr;gap:0 3mm;align-items:end;padding-top:1mm}
.sheet figure{margin:0;text-align:center}
.sheet figure svg{display:block;width:100%;height:auto;max-height:52mm;margin:0 auto}
.sheet.tight figure svg{max-height:38mm}
.sheet figcaption,.sheet small,.sheet .sheet-dimensions p,.sheet footer{color:#4a535b;font-size:.87em;line-height:1.25}
.sheet .columns{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,1fr);gap:0 6mm}
.sheet table{border-collapse:collapse;width:100%}
.sheet th,.sheet td{text-align:left;font-weight:400;padding:.3mm 2mm .3mm 0;border-bottom:.4pt solid #c3cad0;vertical-align:baseline;overflow-wrap:break-word}
.sheet thead th,.sheet tbody th,.sheet dt{color:#4a535b}
.sheet th:last-child,.sheet td:last-child{padding-right:0}
.sheet .figure{text-align:right}
.sheet .figure+td:not(.figure),.sheet .figure+th:not(.figure){padding-left:4mm}
.sheet .sheet-dimensions td:not([colspan]){white-space:nowrap}
.sheet .sheet-loads th,.sheet .sheet-loads td{white-space:nowrap}
.sheet .sheet-loads tbody th{max-width:44mm;overflow:hidden;text-overflow:ellipsis}
.sheet dl{display:grid;grid-template-columns:max-content minmax(0,1fr);margin:0}
.sheet dt,.sheet dd{margin:0;padding:.3mm 0;border-bottom:.4pt solid #c3cad0}
.sheet dt{padding-right:3mm}
.sheet dd{overflow-wrap:anywhere;display:flex;flex-wrap:wrap;gap:0 2mm;align-items:baseline}
.sheet .blank{display:inline-block;min-width:14mm;flex:1;height:1em}
.sheet .choice{white-space:nowrap}
.sheet .tick{display:inline-block;width:2.5mm;height:2.5mm;line-height:2.3mm;border:.6pt solid #1c2227;margin-right:1mm;text-align:center;vertical-align:-.2mm;font-weight:600}
.sheet .sheet-dimensions p{margin:.6mm 0 0}
.sheet ul{margin:.8mm 0 0;padding-left:3.5mm}
.sheet li{margin:0;overflow-wrap:anywhere}
.sheet footer{border-top:.6pt solid #1c2227;margin-top:1.6mm;padding-top:.8mm}
@media screen{.sheet{padding:9mm 12mm;max-width:210mm}}
@media screen and (max-width:600px){.sheet{padding:4mm}.sheet header,.sheet .pictures,.sheet .columns{grid-template-columns:minmax(0,1fr)}.sheet .sheet-loads{overflow-x:auto}}
`;

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
