/**
 * The style of what a reader changes on the page: fields that look like entries of a sheet, handles on the chart's axes, a legend
 * that is pressed. On paper fields are plain values and handles are gone.
 */
export const controlStyle = `
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
