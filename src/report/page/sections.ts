import type { Brief, SweepResult, WarningName } from "../../model.ts";
import { otherUnits, show, unitLabel } from "../../units/show.ts";
import { axisFigures } from "../charts/scatter.ts";
import { soldSizes, type WireSize, wireSizes, wiresSentence, wireTable } from "../charts/wires.ts";
import { escapeMarkup, pageList, pageTable, type Row } from "../html/markup.ts";
import { keyWords, takenWords } from "../text/key-labels.ts";
import { figureWords, generalCautions, limitWords, practiceWords, warningWords } from "../text/labels.ts";
import { strengthReadings } from "../text/material-data.ts";
import { bites, countWords, missWords, percentText, walkedSentence } from "../text/rejections.ts";

/** One part of the sheet: its heading in the margin, its body beside it; a hidden one waits for the page's script. */
export function part(id: string, heading: string, body: string, hidden = false): string {
  return `<section class="part" id="${id}" aria-labelledby="${id}-heading"${hidden ? " hidden" : ""}><h2 id="${id}-heading">${heading}</h2><div>${body}</div></section>`;
}

/** What the brief's author wrote, in the words of a reader who never saw a brief, beside both systems of units. */
export function askedPart(brief: Brief): string {
  const { units, asked, sweep, service } = brief;
  const other = otherUnits(units);
  const head = ["", "as written", `${units.length}, ${units.force}`, `${other.length}, ${other.force}`];
  const named = (key: string) => ({ words: keyWords(key, brief), title: key });
  const quantities = asked.map(({ key, text, dimension, value }): Row => {
    const isSame = unitLabel(dimension, units) === unitLabel(dimension, other);
    const shown = key === "service.cycles" ? countWords(value) : show(value, dimension, units);
    return [named(key), text, shown, isSame ? "" : show(value, dimension, other)];
  });
  const words: readonly Row[] = [
    [named("sweep.wires"), sweep.wires.map(({ name }) => name).join(", ")],
    [named("sweep.materials"), sweep.materials.map(({ name }) => name).join(", ")],
    [named("sweep.ends"), sweep.ends.map(({ name }) => name).join(", ")],
    [named("sweep.turns"), sweep.turns],
    ...(sweep.meanDiameter === "exact" ? [[named("sweep.meanDiameter"), "exact"] as const] : []),
    [named("service.seats"), service.seats],
    ...(service.farEnd === undefined ? [] : [[named("service.farEnd"), service.farEnd] as const]),
    [named("service.set"), service.set],
    [named("service.surface"), service.surface],
  ];
  return part("asked", "What was asked", pageTable(head, [...quantities, ...words], [2, 3]));
}

/** The practice, and every default that it supplied because the brief is silent. */
export function practicePart(brief: Brief): string {
  const rows = brief.defaults.map(({ key, text, source }): Row => {
    return [{ words: keyWords(key, brief), title: `${key}: ${text}` }, takenWords(text), source];
  });
  const words = `<p>Judged by ${escapeMarkup(practiceWords[brief.practice])}. ${
    rows.length === 0 ? "The brief states every value itself." : "Where the brief is silent, these values were taken:"
  }</p>`;
  return part("practice", "Practice and defaults", words + (rows.length === 0 ? "" : pageTable(["", "taken", "source"], rows)));
}

/** What to know of a whole result before its figures are read; nothing where there is nothing to know. */
export function warningList(warnings: readonly WarningName[]): string {
  if (warnings.length === 0) return "";
  const items = warnings.map((warning) => `<li>${escapeMarkup(warningWords[warning])}</li>`);
  return `<ul class="cautions warnings" aria-label="Warnings">${items.join("")}</ul>`;
}

/** Where candidates fell, the limit that bites most first. */
export function funnelPart(result: SweepResult): string {
  const rows = bites(result).map(
    ({ limit, label, count, fraction }): Row => [label, limitWords[limit].sentence, countWords(count), percentText(fraction)],
  );
  const words = `<p>${walkedSentence(result)} Each other one is counted at the first limit that it breaks.</p>`;
  return part(
    "funnel",
    "Rejected by limit",
    words + (rows.length > 0 ? pageTable(["limit", "what it holds", "rejected", "share"], rows, [2, 3]) : ""),
  );
}

/** With nothing feasible: how near the nearest came, and what would let it pass. */
export function missPart({ nearest = [], brief }: SweepResult): string {
  const rows = nearest.map(
    (miss): Row => [
      limitWords[miss.limit].label,
      missWords(miss, brief.units, (limit) => limitWords[limit].label),
      limitWords[miss.limit].raise,
    ],
  );
  const words =
    "<p>Nothing fits. For each limit, the candidate that comes nearest to it, and what gives the limit more room:</p>";
  return part("nearest", "What to relax", words + pageTable(["limit", "nearest candidate", "what helps"], rows));
}

/** How the strength of each material was read. */
export function strengthPart(brief: Brief): string {
  const rows = strengthReadings(brief).map(({ materials, sentence }): Row => [materials.join(", "), sentence]);
  const notes = brief.sweep.materials.flatMap(({ name, notes }) => notes.map((note) => `${name}: ${note}`));
  return part("strength", "How strength was read", pageTable(["material", "strength"], rows) + pageList(notes));
}

/** Where the wires and materials come from, in words. */
export function sourcesPart({ sweep }: Brief): string {
  const rows = [...sweep.wires, ...sweep.materials].map(({ name, source }): Row => [name, source]);
  return part("sources", "Sources", pageTable(["entry", "source"], rows));
}

/** What holds for every spring of this kind, after what is special to these. */
export function cautionsPart(special: readonly string[] = []): string {
  return part("cautions", "Cautions", pageList([...special, ...generalCautions]));
}

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
      '<p class="soft">The stronger a field, the more of the candidates in that wire that limit rejects; the last column is what fits. ' +
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
export function sensitivityPart(): string {
  return part(
    "prices",
    "What each limit costs",
    "<noscript><p>This part needs the script that the page carries; <code>coilsieve relax</code> prints the same.</p></noscript>" +
      '<p id="prices-words" role="status"></p><div class="chart" id="prices-chart" role="img" ' +
      'aria-label="What the best design gains by easing each limit; the sentences below say the same"></div>' +
      '<ul id="prices-list"></ul><p class="soft" id="prices-note"></p>',
  );
}
