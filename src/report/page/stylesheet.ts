import { calculationStyle } from "../calculation/page.ts";
import { sheetStyle } from "../datasheet/page.ts";

/**
 * The style of what a reader changes on the page: fields that look like entries of a sheet, handles on the chart's axes, a legend
 * that is pressed. On paper fields are plain values and handles are gone.
 */
const controlStyle = `
.units{float:right;clear:right;border:0;margin:2px 0 8px 32px;padding:0;display:flex;gap:0 16px;align-items:baseline;font-size:14px;color:var(--soft)}
.units legend{float:left;padding:0}
.units label{position:relative;display:inline-flex;align-items:center;min-height:24px;cursor:pointer}
.units input{position:absolute;inset:0;width:100%;height:100%;margin:0;opacity:0;cursor:pointer}
.units span{border-bottom:2px solid transparent}
.units input:checked+span{color:var(--ink);border-color:var(--accent)}
.units input:focus-visible+span{outline:2px solid var(--accent);outline-offset:3px}
.legend{display:flex;flex-wrap:wrap;gap:2px 28px;margin:0 0 6px;font-size:14px}
.legend-group{display:flex;flex-wrap:wrap;gap:0 12px;align-items:baseline}
.legend-entry{position:relative;min-height:24px;padding:1px 2px;color:var(--ink);text-decoration:none;text-align:left;display:inline-flex;gap:5px;align-items:center;overflow-wrap:anywhere}
.legend-entry::before{content:"";flex:none;width:11px;height:11px;border:1px solid var(--soft)}
.legend-entry::after{content:"";position:absolute;left:2px;width:11px;height:11px;background:var(--accent);clip-path:polygon(14% 50%,28% 38%,42% 56%,76% 14%,90% 26%,44% 82%)}
.legend-entry[aria-pressed=false]{color:var(--soft);text-decoration:line-through}
.legend-entry[aria-pressed=false]::after{display:none}
.end-mark{flex:none;fill:var(--soft)}
.legend-why{flex-basis:100%;margin:0;color:var(--ink)}
.legend-why:empty{display:none}
.chart-frame{position:relative}
.handles{position:absolute;inset:0;pointer-events:none}
.handle{position:absolute;width:0;height:0;color:var(--accent)}
.handle-line{position:absolute;font-size:12px;line-height:16px}
.handle-x .handle-line{left:-.75px;top:0;height:var(--length);border-left:1.5px dashed}
.handle-y .handle-line{left:0;top:-.75px;width:var(--length);border-top:1.5px dashed}
.handle-words{position:absolute;z-index:1;white-space:nowrap;background:var(--ground);padding:0 4px}
.handle-x .handle-words{left:4px;top:calc(4px + 18px*var(--line))}
.handle-x.from-right .handle-words{left:auto;right:5px}
.handle-y .handle-words{right:4px;top:-18px}
.handle.changed .handle-words::after{content:", changed"}
.handle-grip{position:absolute;width:28px;height:28px;pointer-events:auto;touch-action:none;cursor:ew-resize}
.handle-x .handle-grip{left:-14px;top:calc(var(--length) - 14px)}
.handle-y .handle-grip{left:-14px;top:-14px;cursor:ns-resize}
.handle-grip::before{content:"";position:absolute;box-sizing:border-box;left:5.5px;top:5.5px;width:17px;height:17px;border-radius:50%;background:var(--ground);border:2.5px solid}
.handle-grip:hover::before,.held .handle-grip::before{background:currentColor}
.handle-grip:focus-visible{outline:2px solid var(--accent);outline-offset:-3px;border-radius:50%}
.limit-head,.limit{display:grid;grid-template-columns:minmax(170px,270px) minmax(0,1fr) 146px;gap:0 24px}
.limit-head{font-size:14px;font-weight:600;border-bottom:1px solid var(--line);padding-bottom:5px}
main .limits{list-style:none;padding:0;max-width:none;font-size:14px}
main .limit{margin:0;padding:7px 0;border-bottom:1px solid var(--line)}
.limit[hidden]{display:none}
main .limit h3{font-size:14px;font-weight:400;margin:0;min-height:26px;line-height:26px}
main .limit p{margin:0;font-size:13px;line-height:1.4}
.bound{display:grid;grid-template-columns:92px 112px minmax(60px,130px) minmax(0,1fr);gap:0 12px;align-items:center}
.bound label{color:var(--soft);text-align:right}
.bound input[type=text]{font:inherit;color:inherit;text-align:right;min-height:26px;width:112px;padding:1px 4px;background:none;border:0;border-bottom:1px solid var(--soft);border-radius:0}
.bound input[type=text]::placeholder{color:var(--soft);opacity:1}
.bound input[type=text]:focus-visible{outline:2px solid var(--accent);outline-offset:1px}
.bound.changed input[type=text]{font-weight:600;border-bottom:2px solid var(--accent)}
.bound input[aria-invalid]{border-bottom:2px dashed var(--ink)}
.bound input[type=range]{appearance:none;-webkit-appearance:none;width:100%;height:24px;margin:0;background:none;cursor:ew-resize;color:var(--accent)}
.bound input[type=range]::-webkit-slider-runnable-track{height:1px;background:var(--soft)}
.bound input[type=range]::-moz-range-track{height:1px;background:var(--soft)}
.bound input[type=range]::-webkit-slider-thumb{-webkit-appearance:none;width:12px;height:12px;margin-top:-5.5px;border-radius:50%;background:var(--ground);border:2px solid currentColor}
.bound input[type=range]::-moz-range-thumb{width:8px;height:8px;border-radius:50%;background:var(--ground);border:2px solid currentColor}
.bound input[type=range]:hover::-webkit-slider-thumb{background:currentColor}
.bound input[hidden]{display:none}
main .bound-note,main .bound-error{grid-column:2/-1;padding-left:4px;overflow-wrap:anywhere}
.bound-note{color:var(--soft)}
.bound.changed .bound-note{color:var(--ink)}
.bound-note button{padding:0;min-width:0;min-height:24px;font-size:13px}
.bound-note button[hidden],.bound-error[hidden]{display:none}
.bound-error{border-left:3px solid var(--accent)}
main .limit .fell{display:grid;grid-template-columns:1fr 58px;align-content:start;text-align:right;line-height:26px;font-size:14px;white-space:nowrap}
.fell-rail{grid-column:1/-1;height:3px;background:var(--line);margin-top:1px}
.fell-rail span{display:block;height:100%;background:var(--accent)}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
@media(pointer:coarse){.bound input[type=range]::-webkit-slider-thumb{width:24px;height:24px;margin-top:-12px}.handle-grip::before{left:3.5px;top:3.5px;width:21px;height:21px}}
@media(max-width:1000px){.limit-head{display:none}.limit{grid-template-columns:minmax(0,1fr) 146px}.limit-bounds{grid-column:1/-1;grid-row:2}}
@media(max-width:760px){.units{float:none;margin:0 0 8px}.legend{gap:2px 16px}.bound{grid-template-columns:76px 104px minmax(40px,1fr)}.bound input[type=text]{width:104px}}
@media print{
.legend-entry{padding:0;min-height:0;color:inherit}
.legend-entry::before,.legend-entry::after,.legend-entry[aria-pressed=false]{display:none}
.legend{font-size:9pt}
.limit{grid-template-columns:150pt minmax(0,1fr) 100pt;break-inside:avoid}
main .limit{padding:2pt 0}
main .limit h3,main .limit .fell,.bound input[type=text]{font-size:8.5pt;line-height:1.3;min-height:0}
main .limit p{font-size:8pt}
.limit-bounds{grid-column:auto;grid-row:auto}
.bound{grid-template-columns:56pt 52pt minmax(0,1fr);gap:0 8pt;font-size:8.5pt;align-items:baseline}
.limit.idle,.bound:has(input:placeholder-shown){display:none}
.bound input[type=text]{border:0!important;padding:0;width:52pt}
main .bound-note{grid-column:3}
}
`;

/** Colours of the page by ground. One accent; everything else is ink, softer ink and hairlines. */
const LIGHT =
  "--ground:#fdfdfc;--ink:#1c2227;--soft:#5b656e;--line:#d9dee2;--accent:#0b5a75;--tint:#e7f0f3;--metal:#e4e9ee;--shade:#b9c3cd;--edge:#2a3138";
const DARK =
  "--ground:#14191d;--ink:#e6e9eb;--soft:#a3adb5;--line:#333c43;--accent:#7cc8e4;--tint:#1c2d35;--metal:#66727c;--shade:#3c464e;--edge:#d3dae0";

/**
 * The report page's one style sheet: a calculation sheet with its headings in the margin, and over it, where a reader opens one,
 * the sheet of a spring as white as the paper that it is for. Such a sheet is printed by itself, with margins of its own.
 */
export const stylesheet = `${sheetStyle}${calculationStyle}
:root{color-scheme:light dark;${LIGHT}}
@media screen and (prefers-color-scheme:dark){:root{${DARK}}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:15px/1.5 system-ui,sans-serif;font-variant-numeric:tabular-nums;counter-reset:part}
main{max-width:1240px;margin:0 auto;padding:40px 32px 64px}
main h1{font-size:28px;line-height:1.25;font-weight:600;margin:0 0 8px;overflow-wrap:anywhere}
.asked{font-size:17px;max-width:68ch;margin:0 0 6px;text-wrap:pretty;overflow-wrap:anywhere}
.verdict{color:var(--soft);margin:0 0 32px}
.proof{margin:0 0 32px}
.verdict:has(~.proof:not([hidden])),.proof:has(+.proof:not([hidden])){margin-bottom:8px}
.part{display:grid;grid-template-columns:168px minmax(0,1fr);gap:0 32px;border-top:1px solid var(--line);padding:20px 0 32px}
.part>h2{font-size:15px;line-height:1.5;font-weight:600;margin:0;padding-left:24px;text-indent:-24px;counter-increment:part}
.part>h2::before{content:counter(part);display:inline-block;width:24px;text-indent:0;color:var(--soft);font-weight:400}
main h3{font-size:15px;font-weight:600;margin:0 0 6px}
main p{max-width:76ch;margin:0 0 10px;overflow-wrap:anywhere}
main ul{margin:0;padding-left:18px;max-width:76ch}
main li{margin-bottom:4px;overflow-wrap:anywhere}
.part[hidden]{display:none}
.soft{color:var(--soft)}
.box{overflow-x:auto}
.box+ul{margin-top:12px}
.box:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
main table{border-collapse:collapse;width:100%;font-size:14px}
main th,main td{padding:5px 14px 5px 0;text-align:left;vertical-align:baseline;border-bottom:1px solid var(--line)}
main th:last-child,main td:last-child{padding-right:0}
main thead th{font-weight:600;vertical-align:top}
main tbody th{font-weight:400;color:var(--soft);white-space:nowrap}
.number{text-align:right;white-space:nowrap}
.unit{display:block;font-weight:400;color:var(--soft)}
.wrap{overflow-wrap:break-word;min-width:72px}
.chosen-name{font-size:17px;margin-bottom:12px}
.chosen-name b{font-weight:600}
.chosen{display:grid;grid-template-columns:minmax(0,640px) minmax(210px,1fr);gap:24px 32px;margin-bottom:24px}
.chosen h3{margin-top:20px}
.spring{display:block;max-width:100%;height:auto}
.spring .wire-edge{stroke:var(--edge);fill:var(--edge)}
.spring .wire-face{stroke:var(--edge)}
.spring .wire-front{stroke:var(--metal);fill:var(--metal)}
.spring .wire-cut{fill:var(--ground);stroke:var(--edge)}
.spring .wire-hatch{stroke:var(--edge)}
.spring .wire-back{stroke:var(--shade);fill:var(--shade)}
.spring .dimension,.spring .axis{stroke:var(--soft)}
.spring .dimension-arrow{fill:var(--soft)}
.spring .dimension-text{fill:var(--ink)}
.spring .seat{stroke:var(--edge)}
.lengths{border:0;margin:0 0 8px;padding:0;display:flex;flex-wrap:wrap;gap:2px 18px}
.lengths legend{float:left;padding:0 18px 0 0;color:var(--soft)}
.lengths label{display:inline-flex;gap:6px;align-items:baseline}
.lengths input{accent-color:var(--accent);margin:0}
.lengths input:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
.load-lines{display:block;max-width:100%;height:auto;margin-bottom:8px}
.load-lines text{fill:var(--ink);stroke:var(--ground)}
.load-lines .rule{stroke:var(--soft)}
.load-lines .hair{stroke:var(--line)}
.load-lines .line{stroke:var(--ink)}
.load-lines .allowance{stroke:var(--shade)}
.load-lines .window{stroke:var(--accent)}
.load-lines .dot{fill:var(--ink);stroke:var(--ink)}
.load-lines .dot-solid{fill:var(--ground);stroke:var(--ink)}
.drawn-beside .spring{max-width:none}
.part[hidden]{display:none}
.compared .same td,.compared .same th{color:var(--soft)}
.compared b{font-weight:600}
.take{margin-top:-8px}
button[aria-disabled]{color:var(--soft);text-decoration:none;cursor:default}
.paper-only{display:none}
.figures{margin:0;display:grid;grid-template-columns:1fr auto;align-content:start;font-size:14px}
.figures dt{color:var(--soft);border-bottom:1px solid var(--line);padding:3px 12px 3px 0}
.figures dd{margin:0;text-align:right;border-bottom:1px solid var(--line);padding:3px 0}
.bar{display:block;width:100%;min-width:70px;height:10px}
.bar .rail{fill:var(--line)}
.bar .room{fill:var(--accent)}
.bar .limit{fill:var(--ink)}
.margins{margin-bottom:8px}
.margins th{white-space:nowrap}
.bar-cell{width:26%;vertical-align:top;padding-top:11px}
.facts{columns:2 300px;column-gap:40px;margin-top:24px}
.facts section{break-inside:avoid;padding-bottom:20px}
.facts .figures{margin-bottom:10px}
.facts .box{margin-bottom:10px}
.facts p{font-size:13px;margin-bottom:6px}
.fatigue{display:block;max-width:100%;height:auto;margin:0 0 10px}
.fatigue .line{stroke:var(--edge)}
.fatigue .hair{stroke:var(--line)}
.fatigue .rule{stroke:var(--soft)}
.fatigue .duty{stroke:var(--accent)}
.fatigue .duty-dot{fill:var(--accent)}
.fatigue .dot{fill:var(--ground);stroke:var(--edge)}
.fatigue text{fill:var(--ink)}
.role{border-top:1px solid var(--line);margin:28px 0 0;padding-top:16px}
.role+.facts{margin-top:12px}
.chosen-pair{grid-template-columns:minmax(0,520px) minmax(0,1fr)}
.chosen-pair h3{margin-top:0}
.roles{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,400px),1fr));gap:0 40px}
.pair-figures{margin-bottom:24px}
.number.head-wrap{white-space:normal}
.papers{margin:0 0 14px;display:flex;flex-wrap:wrap;align-items:baseline;gap:4px 20px}
.papers button,.paper-bar button{padding:2px 0}
.paper{${LIGHT};color:#1c2227;background:#fff;border:1px solid var(--soft);padding:0;width:min(230mm,calc(100vw - 24px));max-height:calc(100vh - 24px)}
.paper::backdrop{background:#14191d99}
.paper-bar{position:sticky;top:0;z-index:1;display:flex;gap:20px;align-items:baseline;padding:10px 20px;background:#fff;border-bottom:1px solid #d9dee2}
.paper-bar p{margin:0;flex:1;font-weight:600}
.paper-bar button{color:#0b5a75}
.paper-bar button:focus-visible{outline-color:#0b5a75}
.paper .working{padding:20px}
.cautions{border-left:3px solid var(--accent);padding:2px 0 2px 14px;margin:0 0 24px;list-style:none}
.warnings{margin:-16px 0 32px;max-width:90ch}
.run{margin:-20px 0 32px;max-width:90ch}
.run p{margin:0 0 6px}
.run .problems{border-left:3px solid var(--accent);padding:2px 0 2px 14px;list-style:none;margin:0 0 6px}
.run .acts{display:flex;flex-wrap:wrap;gap:4px 20px}
.run button{padding:2px 0}
.run button[disabled]{color:var(--soft);text-decoration:none;cursor:default}
.chart{position:relative;width:100%}
.chart canvas{display:block}
.charts{display:grid;grid-template-columns:minmax(0,5fr) minmax(0,3fr);gap:16px 28px;align-items:end;margin-bottom:16px}
.beside p{font-size:14px;color:var(--soft)}
summary{cursor:pointer}
summary:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
.chart-head{display:flex;flex-wrap:wrap;gap:4px 24px;align-items:baseline;margin-bottom:10px}
.chart-head p{margin:0}
a{color:var(--accent)}
select{font:inherit;color:inherit;background:var(--ground);border:1px solid var(--soft);border-radius:3px;padding:2px 6px}
button{font:inherit;color:var(--accent);background:none;border:0;padding:2px 8px;min-width:34px;text-align:right;cursor:pointer;text-decoration:underline;text-underline-offset:3px}
a:focus-visible,select:focus-visible,button:focus-visible{outline:2px solid var(--accent);outline-offset:1px}
.springs{margin-top:8px}
.springs td{white-space:nowrap}
.springs thead th{white-space:normal;vertical-align:bottom}
.springs td:first-child,.springs th:first-child{padding-left:0}
.springs tbody tr{cursor:pointer}
.springs tbody tr:hover{background:var(--tint)}
.springs tbody tr.pointed{background:var(--tint)}
.springs tbody tr[aria-current]{background:var(--tint);box-shadow:inset 3px 0 var(--accent)}
.tip{position:fixed;z-index:1;pointer-events:none;background:var(--ground);color:var(--ink);border:1px solid var(--soft);padding:6px 10px;font-size:13px;display:grid;grid-template-columns:auto auto;gap:0 14px}
.tip[hidden]{display:none}
.tip span:nth-child(odd){color:var(--soft)}
.tip span:nth-child(even){text-align:right}
@media(max-width:1000px){.charts{grid-template-columns:minmax(0,1fr)}.chosen,.chosen-pair{grid-template-columns:minmax(0,1fr)}}
@media(max-width:760px){main tbody th{white-space:normal}main{padding:24px 16px 40px}.part{display:block;padding:16px 0 24px}.part>h2{margin-bottom:10px}.where-wide{display:none}.bar-cell{width:45%}main h1{font-size:23px}.asked{font-size:16px}.pair-figures .number{white-space:normal}main th,main td{padding-right:10px}}
@media print{
@page{margin:14mm}
body{font-size:10pt;background:#fff}
main{max-width:none;padding:0}
.part{display:block;padding:8pt 0 12pt}
.part>h2{margin-bottom:6pt;break-after:avoid}
main h1{font-size:17pt}.asked{font-size:11pt}.verdict{margin-bottom:12pt}.run{margin-top:-6pt}
main table{font-size:8.5pt}main th,main td{padding:2pt 6pt 2pt 0}
main thead{display:table-header-group}
main tr,.spring,.load-lines,.chart,.figures,.cautions,main li{break-inside:avoid}
main h3,.part>div>p:first-child{break-after:avoid;break-inside:avoid}
.box{overflow:visible}
.chosen-name{font-size:11pt;break-after:avoid}
.chosen{grid-template-columns:minmax(0,1fr) 170pt;gap:12pt 18pt}
.figures{font-size:8pt;line-height:1.3}.figures dt,.figures dd{padding:2pt 0}
.chart canvas{max-width:100%;height:auto!important}
.charts{grid-template-columns:minmax(0,5fr) minmax(0,3fr);gap:8pt 12pt;break-inside:avoid}
#wires-table table{font-size:7pt;line-height:1.2}#wires-table th,#wires-table td{padding:1pt 4pt 1pt 0}
.beside p{font-size:8pt}
summary{display:none}
.facts{columns:2;column-gap:18pt;margin-top:12pt}
.facts section{padding-bottom:8pt}
.chosen-pair{grid-template-columns:minmax(0,1fr);gap:8pt}
.roles{grid-template-columns:1fr 1fr;gap:0 18pt}
.roles .facts{columns:1}
.role{margin-top:12pt;padding-top:8pt;break-after:avoid}
.facts p{font-size:8pt}
.bar-cell{padding-top:4pt}
.bar{height:5pt}
.warnings{margin:-6pt 0 12pt}
.tip,.screen-only{display:none!important}
.paper-only{display:block}
.drawn-beside .spring{max-width:100%}
body:has(.paper[open])>main{display:none}
.paper,.paper[open]{border:0;width:auto;max-width:none;max-height:none;overflow:visible}
.paper[open]{position:static;margin:0}
@page sheet{margin:9mm 12mm}
.paper .sheet{page:sheet}
.paper .working{padding:0}
button{color:inherit;text-decoration:none;padding:0}
.springs tbody tr[aria-current]{background:none;font-weight:600}
}
${controlStyle}`;
