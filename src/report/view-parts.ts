import type { SweepResult } from "../model.ts";
import { axisFigures } from "./charts.ts";
import { escapeMarkup } from "./markup.ts";
import { pageTable } from "./page-table.ts";
import { part } from "./sections.ts";
import { soldSizes, type WireSize, wireSizes, wiresSentence, wireTable } from "./wires-words.ts";
import { figureWords } from "./words.ts";

/** The two selects that put other figures on the axes of the scatter. */
export function axesChoice(): string {
  const options = axisFigures.map((name) => `<option value="${name}">${figureWords[name].label}</option>`).join("");
  const select = (id: string, label: string) => `<label>${label} <select id="${id}">${options}</select></label>`;
  return `<p>${select("axis-across", "Across")} ${select("axis-up", "up")}</p>`;
}

/** Mass against wire diameter, below the scatter. */
export const massChart =
  '<div class="beside"><h3>How heavy in which wire?</h3>' +
  '<div class="chart" id="mass-chart" role="img" aria-label="Mass against wire diameter by material; the table below holds the same springs"></div>' +
  '<p id="mass-words"></p></div>';

/** Which limits stop which wire: filled by the page's script, and as a table without it; hidden until a run tells it by wire. */
export function wiresPart({ wires = [], brief }: SweepResult): string {
  const sizes = wireSizes(wires, brief.units, null);
  return part(
    "wires",
    "Which limits stop which wire",
    `<p id="wires-words">${escapeMarkup(wiresSentence(sizes))}</p>` +
      '<div class="chart-head screen-only"><p><label>Wire <select id="wire-size"></select></label> ' +
      '<label id="wire-material-label">Material <select id="wire-material"></select></label></p>' +
      '<p class="soft">The stronger a field, the more of the candidates in that wire fell at that limit; the last column is what fits. ' +
      "Click a row to read it.</p></div>" +
      '<p id="wire-words" role="status"></p>' +
      '<div class="chart" id="wires-chart" role="img" aria-label="Wire sizes against limits; the table below holds the same counts"></div>' +
      `<details id="wires-details"><summary>The counts as a table</summary><div id="wires-table">${wiresMarkup(soldSizes(sizes))}</div></details>`,
    wires.length === 0,
  );
}

/** The table of the map's counts. */
export function wiresMarkup(sizes: readonly WireSize[]): string {
  const { head, rows } = wireTable(sizes);
  return pageTable(head, rows, head.map((_, i) => i).slice(1));
}

/** What each limit costs: worked out by the page's script. */
export function pricesPart(): string {
  return part(
    "prices",
    "What each limit costs",
    "<noscript><p>This part needs the script that the page carries; <code>coilsieve relax</code> prints the same.</p></noscript>" +
      '<p id="prices-words" role="status"></p><div class="chart" id="prices-chart" role="img" ' +
      'aria-label="What the best design gains by easing each limit; the sentences below say the same"></div>' +
      '<ul id="prices-list"></ul><p class="soft" id="prices-note"></p>',
  );
}
