import type { Brief, Design } from "../../model.ts";
import { escapeMarkup } from "../html/markup.ts";
import { calculationOf } from "./calculation.ts";
import { numbersPutIn, printedValue, stepsBySymbol } from "./printed.ts";
import type { Chapter, Step } from "./steps.ts";

/**
 * The calculation sheet of one design as a part of a page: a table for each chapter, cautions at the foot. It needs no script, and
 * no text of the brief is ever markup.
 *
 * @param brief   the brief that the design answers
 * @param design  one of its designs
 * @returns an `article` of class `working`, which `workingStyle` dresses
 * @throws Error where the design is none of the brief's
 */
export function calculationFragment(brief: Brief, design: Design): string {
  const working = calculationOf(brief, design);
  const known = stepsBySymbol(working);
  const cautions = working.cautions.map((caution) => `<li>${escapeMarkup(caution)}</li>`).join("");
  return [
    `<article class="working"><header><h1>Working: ${escapeMarkup(working.title)}</h1>`,
    `<p>${escapeMarkup(working.subject)}</p></header>`,
    ...working.chapters.map((chapter, i) => chapterPart(chapter, i + 1, known)),
    `<footer><h2>Cautions</h2><ul>${cautions}</ul></footer></article>`,
  ].join("");
}

function chapterPart({ title, steps, notes }: Chapter, number: number, known: ReadonlyMap<string, Step>): string {
  const heading = `<h2><span class="chapter-number">${number}</span> ${escapeMarkup(title)}</h2>`;
  const rows = steps.map((step) => row(step, known)).join("");
  const head =
    '<thead><tr><th scope="col">Symbol</th><th scope="col">Figure and source</th><th scope="col">Working</th>' +
    '<th scope="col" class="result">Result</th></tr></thead>';
  const label = `tabindex="0" role="region" aria-label="${escapeMarkup(title)}"`;
  const table = steps.length > 0 ? `<div class="steps" ${label}><table>${head}<tbody>${rows}</tbody></table></div>` : "";
  return `<section>${heading}${table}${notes.map((note) => `<p>${escapeMarkup(note)}</p>`).join("")}</section>`;
}

function row(step: Step, known: ReadonlyMap<string, Step>): string {
  const source = `<span class="source">${escapeMarkup(step.source)}</span>`;
  return (
    `<tr><th scope="row">${escapeMarkup(step.symbol)}</th><td>${escapeMarkup(step.label)} ${source}</td>` +
    `<td class="equation">${equation(step, known)}</td><td class="result">${shown(printedValue(step))}</td></tr>`
  );
}

function equation(step: Step, known: ReadonlyMap<string, Step>): string {
  if (step.kind === "given") return "given";
  const put = numbersPutIn(step, known);
  const endless = step.value === Number.POSITIVE_INFINITY ? `${step.endlessBelow} is below zero: no end` : "";
  return [step.expression, ...(put === step.expression ? [] : [put]), ...(endless === "" ? [] : [endless])]
    .map((line) => `<span>${shown(line)}</span>`)
    .join("");
}

/** A number and its unit stay on one line. */
function shown(text: string): string {
  return escapeMarkup(text).replace(/([\d∞]) (?=\p{L})/gu, "$1\u00a0");
}
