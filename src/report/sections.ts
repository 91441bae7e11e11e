import type { Brief, SweepResult } from "../model.ts";
import { otherUnits, show, unitLabel } from "../units/show.ts";
import { bites, countWords, missWords, shareWords, walkedSentence } from "./funnel.ts";
import { escapeMarkup } from "./markup.ts";
import { strengthReadings } from "./strength.ts";
import { generalCautions, limitWords, practiceWords, warningWords } from "./words.ts";

/** One part of the sheet: its heading in the margin, its body beside it. */
export function part(id: string, heading: string, body: string): string {
  return `<section class="part" id="${id}" aria-labelledby="${id}-heading"><h2 id="${id}-heading">${heading}</h2><div>${body}</div></section>`;
}

/** What the brief's author wrote, beside both systems of units. */
export function askedPart({ units, asked, sweep, service }: Brief): string {
  const other = otherUnits(units);
  const head = ["", "as written", `${units.length}, ${units.force}`, `${other.length}, ${other.force}`];
  const quantities = asked.map(({ key, text, dimension, value }) =>
    unitLabel(dimension, units) === unitLabel(dimension, other)
      ? [key, text, show(value, dimension, units), ""]
      : [key, text, show(value, dimension, units), show(value, dimension, other)],
  );
  const words = [
    ["sweep.wires", sweep.wires.map(({ name }) => name).join(", ")],
    ["sweep.materials", sweep.materials.map(({ name }) => name).join(", ")],
    ["sweep.ends", sweep.ends.map(({ name }) => name).join(", ")],
    ["sweep.turns", sweep.turns],
    ...(sweep.meanDiameter === "exact" ? [["sweep.meanDiameter", "exact"]] : []),
    ["service", `seats ${service.seats}, ${service.set === "removed" ? "set removed" : "as wound"}, ${service.surface}`],
  ];
  return part("asked", "What was asked", table(head, [...quantities, ...words], [2, 3]));
}

/** The practice, and every default that it supplied because the brief is silent. */
export function practicePart({ practice, defaults }: Brief): string {
  const rows = defaults.map(({ key, text, source }) => [key, text, source]);
  const words = `<p>Judged by ${escapeMarkup(practiceWords[practice])}. ${
    rows.length === 0 ? "The brief states every value itself." : "Where the brief is silent, these values were taken:"
  }</p>`;
  return part("practice", "Practice and defaults", words + (rows.length === 0 ? "" : table(["", "taken", "source"], rows)));
}

/** Where candidates fell, the limit that bites most first. */
export function funnelPart(result: SweepResult): string {
  const rows = bites(result).map(({ limit, label, count, share }) => [
    label,
    limitWords[limit].sentence,
    countWords(count),
    shareWords(share),
  ]);
  const words = `<p>${walkedSentence(result)} Each other one is counted at the first limit that it breaks.</p>`;
  return part(
    "funnel",
    "Where the others fell",
    words + (rows.length > 0 ? table(["limit", "what it holds", "fell", "share"], rows, [2, 3]) : ""),
  );
}

/** With nothing feasible: how near the nearest came, and what would let it pass. */
export function missPart({ nearest = [], brief }: SweepResult): string {
  const rows = nearest.map((miss) => [
    limitWords[miss.limit].label,
    missWords(miss, brief.units, (limit) => limitWords[limit].label),
    limitWords[miss.limit].raise,
  ]);
  const words =
    "<p>Nothing fits. For each limit, the candidate that comes nearest to it, and what gives the limit more room:</p>";
  return part("nearest", "What to relax", words + table(["limit", "nearest candidate", "what helps"], rows));
}

/** How the strength of each material was read. */
export function strengthPart(brief: Brief): string {
  const rows = strengthReadings(brief).map(({ materials, sentence }) => [materials.join(", "), sentence]);
  const notes = brief.sweep.materials.flatMap(({ name, notes }) => notes.map((note) => `${name}: ${note}`));
  return part("strength", "How strength was read", table(["material", "strength"], rows) + list(notes));
}

/** Where the wires and materials come from, in words. */
export function sourcesPart({ sweep }: Brief): string {
  const rows = [...sweep.wires, ...sweep.materials].map(({ name, source }) => [name, source]);
  return part("sources", "Sources", table(["entry", "source"], rows));
}

/** What holds for the whole result, and for every spring of this kind. */
export function cautionsPart({ warnings }: SweepResult): string {
  return part("cautions", "Cautions", list([...warnings.map((warning) => warningWords[warning]), ...generalCautions]));
}

function list(sentences: readonly string[]): string {
  return sentences.length === 0 ? "" : `<ul>${sentences.map((text) => `<li>${escapeMarkup(text)}</li>`).join("")}</ul>`;
}

/** A table in a box of its own to scroll in; the first column names its row, and the last cell of a short row takes what is left. */
function table(head: readonly string[], rows: readonly (readonly string[])[], numbers: readonly number[] = []): string {
  const kind = (i: number) => (numbers.includes(i) ? "number" : "wrap");
  const heads = head.map((text, i) =>
    text === "" ? "<td></td>" : `<th scope="col" class="${kind(i)}">${escapeMarkup(text)}</th>`,
  );
  const lines = rows.map((cells) => {
    const [first = "", ...others] = cells.map(escapeMarkup);
    const left = head.length - cells.length;
    const span = (i: number) => (left > 0 && i === others.length - 1 ? ` colspan="${left + 1}"` : "");
    const data = others.map((text, i) => `<td class="${kind(i + 1)}"${span(i)}>${text}</td>`);
    return `<tr><th scope="row" class="wrap">${first}</th>${data.join("")}</tr>`;
  });
  return `<div class="box" tabindex="0"><table><thead><tr>${heads.join("")}</tr></thead><tbody>${lines.join("")}</tbody></table></div>`;
}
