/** Colours of the page by ground. One accent; everything else is ink, softer ink and hairlines. */
const LIGHT =
  "--ground:#fdfdfc;--ink:#1c2227;--soft:#5b656e;--line:#d9dee2;--accent:#0b5a75;--tint:#e7f0f3;--metal:#e4e9ee;--shade:#b9c3cd;--edge:#2a3138";
const DARK =
  "--ground:#14191d;--ink:#e6e9eb;--soft:#a3adb5;--line:#333c43;--accent:#7cc8e4;--tint:#1c2d35;--metal:#66727c;--shade:#3c464e;--edge:#d3dae0";

/** The report page's one style sheet: a calculation sheet with its headings in the margin. */
export const stylesheet = `
:root{color-scheme:light dark;${LIGHT}}
@media screen and (prefers-color-scheme:dark){:root{${DARK}}}
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:15px/1.5 system-ui,sans-serif;font-variant-numeric:tabular-nums;counter-reset:part}
main{max-width:1240px;margin:0 auto;padding:40px 32px 64px}
h1{font-size:28px;line-height:1.25;font-weight:600;margin:0 0 8px;overflow-wrap:anywhere}
.asked{font-size:17px;max-width:68ch;margin:0 0 6px;text-wrap:pretty;overflow-wrap:anywhere}
.verdict{color:var(--soft);margin:0 0 32px}
.part{display:grid;grid-template-columns:168px minmax(0,1fr);gap:0 32px;border-top:1px solid var(--line);padding:20px 0 32px}
.part>h2{font-size:15px;line-height:1.5;font-weight:600;margin:0;padding-left:24px;text-indent:-24px;counter-increment:part}
.part>h2::before{content:counter(part);display:inline-block;width:24px;text-indent:0;color:var(--soft);font-weight:400}
h3{font-size:15px;font-weight:600;margin:0 0 6px}
p{max-width:76ch;margin:0 0 10px;overflow-wrap:anywhere}
ul{margin:0;padding-left:18px;max-width:76ch}
li{margin-bottom:4px;overflow-wrap:anywhere}
.soft{color:var(--soft)}
.box{overflow-x:auto}
.box+ul{margin-top:12px}
.box:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
table{border-collapse:collapse;width:100%;font-size:14px}
th,td{padding:5px 14px 5px 0;text-align:left;vertical-align:baseline;border-bottom:1px solid var(--line)}
th:last-child,td:last-child{padding-right:0}
thead th{font-weight:600;vertical-align:top}
tbody th{font-weight:400;color:var(--soft);white-space:nowrap}
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
.spring .wire-back{stroke:var(--shade);fill:var(--shade)}
.spring .dimension,.spring .axis{stroke:var(--soft)}
.spring .dimension-arrow{fill:var(--soft)}
.spring .dimension-text{fill:var(--ink)}
.figures{margin:0;display:grid;grid-template-columns:1fr auto;align-content:start;font-size:14px}
.figures dt{color:var(--soft);border-bottom:1px solid var(--line);padding:3px 12px 3px 0}
.figures dd{margin:0;text-align:right;border-bottom:1px solid var(--line);padding:3px 0}
.bar{display:block;width:100%;min-width:70px;height:10px}
.bar .rail{fill:var(--line)}
.bar .room{fill:var(--accent)}
.margins{margin-bottom:8px}
.margins th{white-space:nowrap}
.bar-cell{width:26%;vertical-align:top;padding-top:11px}
.cautions{border-left:3px solid var(--accent);padding:2px 0 2px 14px;margin:20px 0 0;list-style:none}
.chart{position:relative;width:100%}
.chart canvas{display:block}
.chart-head{display:flex;flex-wrap:wrap;gap:4px 24px;align-items:baseline;margin-bottom:10px}
.chart-head p{margin:0}
a{color:var(--accent)}
select{font:inherit;color:inherit;background:var(--ground);border:1px solid var(--soft);border-radius:3px;padding:2px 6px}
button{font:inherit;color:var(--accent);background:none;border:0;padding:2px 8px;min-width:34px;text-align:right;cursor:pointer;text-decoration:underline;text-underline-offset:3px}
a:focus-visible,select:focus-visible,button:focus-visible{outline:2px solid var(--accent);outline-offset:1px}
.springs{margin-top:8px}
.springs td,.springs th{white-space:nowrap}
.springs td:first-child,.springs th:first-child{padding-left:0}
.springs tbody tr{cursor:pointer}
.springs tbody tr:hover{background:var(--tint)}
.springs tbody tr[aria-current]{background:var(--tint);box-shadow:inset 3px 0 var(--accent)}
.tip{position:fixed;z-index:1;pointer-events:none;background:var(--ground);color:var(--ink);border:1px solid var(--soft);padding:6px 10px;font-size:13px;display:grid;grid-template-columns:auto auto;gap:0 14px}
.tip[hidden]{display:none}
.tip span:nth-child(odd){color:var(--soft)}
.tip span:nth-child(even){text-align:right}
@media(max-width:1000px){.chosen{grid-template-columns:minmax(0,1fr)}}
@media(max-width:760px){tbody th{white-space:normal}main{padding:24px 16px 40px}.part{display:block;padding:16px 0 24px}.part>h2{margin-bottom:10px}.where-wide{display:none}.bar-cell{width:45%}h1{font-size:23px}.asked{font-size:16px}th,td{padding-right:10px}}
@media print{
@page{margin:14mm}
body{font-size:10pt;background:#fff}
main{max-width:none;padding:0}
.part{display:block;padding:8pt 0 12pt}
.part>h2{margin-bottom:6pt;break-after:avoid}
h1{font-size:17pt}.asked{font-size:11pt}.verdict{margin-bottom:12pt}
table{font-size:8.5pt}th,td{padding:2pt 6pt 2pt 0}
thead{display:table-header-group}
tr,.spring,.chart,.figures,.cautions,li{break-inside:avoid}
h3,.part>div>p:first-child{break-after:avoid}
.box{overflow:visible}
.chosen-name{font-size:11pt;break-after:avoid}
.chosen{grid-template-columns:minmax(0,1fr) 170pt;gap:12pt 18pt}
.figures{font-size:8pt;line-height:1.3}.figures dt,.figures dd{padding:2pt 0}
.chart canvas{max-width:100%;height:auto!important}
.tip,.screen-only{display:none!important}
button{color:inherit;text-decoration:none;padding:0}
.springs tbody tr[aria-current]{background:none;font-weight:600}
}
`;
