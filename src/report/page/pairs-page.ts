import type { Brief, NestedResult, NestedRole, Pair } from "../../model.ts";
import { escapeMarkup, pageTable, type Row } from "../html/markup.ts";
import { askedSentence } from "../text/brief-summary.ts";
import { limitWords, screeningWords } from "../text/labels.ts";
import { upperFirst } from "../text/layout.ts";
import { memoryWords } from "../text/material-data.ts";
import { aloneSentence, pairCautions, pairsSentence, sharingSentence } from "../text/pairs.ts";
import { bites, countWords } from "../text/rejections.ts";
import { pageFrame, paperDialog, unbroken } from "./frame.ts";
import { askedPart, cautionsPart, part, practicePart, sourcesPart, strengthPart, warningList } from "./sections.ts";

/** What a page of nested pairs carries for its script. */
export interface PairsData {
  readonly brief: Brief;
  readonly pairs: readonly Pair[];
}

/**
 * A sweep of nested pairs as one HTML page that needs no network: nothing in it runs but the script given, held by its hash, and
 * no text of the brief is ever markup.
 *
 * @param result  a finished sweep of nested pairs
 * @param script  the page's own script, bundled
 * @returns the whole page
 * @throws Error where the script would break out of its element
 */
export async function pairsPage(result: NestedResult, script: string): Promise<string> {
  const { brief, pairs } = result;
  const data: PairsData | null = pairs.length > 0 ? { brief, pairs } : null;
  return pageFrame({ title: brief.title, script, body: sheet(result), blocks: { "page-pairs": data } });
}

function sheet(result: NestedResult): string {
  const { brief, pairs, warnings } = result;
  const found = pairs.length > 0 ? chosenPart() + rankedPart(result) : "";
  return [
    `<main><h1>${escapeMarkup(brief.title)}</h1>`,
    `<p class="asked">${escapeMarkup(unbroken(askedSentence(brief)))}</p>`,
    `<p>${escapeMarkup(unbroken(sharingSentence(result)))}</p>`,
    `<p class="verdict">${escapeMarkup(`${pairsSentence(result)} ${aloneSentence(result)} ${screeningWords} ${memoryWords(brief)}`)}</p>`,
    warningList(warnings),
    found,
    rolesPart(result),
    askedPart(brief),
    practicePart(brief),
    strengthPart(brief),
    sourcesPart(brief),
    cautionsPart(pairCautions(pairs).map(upperFirst)),
    "</main>",
    pairs.length > 0 ? paperDialog : "",
  ].join("");
}

/** Filled by the page's script with the pair that a reader points at, the best one at first. */
function chosenPart(): string {
  return part(
    "chosen",
    "The chosen pair",
    '<noscript><p>This part needs the script that the page carries.</p></noscript><p class="chosen-name" id="chosen-name" role="status"></p><div id="chosen-pair"></div>',
  );
}

function rankedPart({ pairs, pairsFit }: NestedResult): string {
  const shown =
    pairs.length < pairsFit
      ? `The best ${countWords(pairs.length)} of ${countWords(pairsFit)} pairs that fit are listed.`
      : `Every pair that fits is listed: ${countWords(pairsFit)}.`;
  return part(
    "pairs",
    "What fits",
    `<p>${shown} <span class="screen-only">A row chooses its pair.</span></p>` +
      '<div class="box" tabindex="0" role="region" aria-label="Ranked pairs"><table class="springs" id="ranked"></table></div>',
  );
}

/** Where the springs of either place fell, the limit that bites most first. */
function rolesPart(result: NestedResult): string {
  const { roles } = result;
  const fell = (role: NestedRole, limit: keyof typeof limitWords) => countWords(roles[role].rejected[limit] ?? 0);
  const rows = bites(result).map(({ limit, label }): Row => {
    return [label, limitWords[limit].sentence, fell("outer", limit), fell("inner", limit)];
  });
  const total = (role: NestedRole) => countWords(roles[role].walked);
  const words =
    `<p>${total("outer")} springs walked as the outer and ${total("inner")} as the inner, over all shares of the load. ` +
    "Each that does not fit is counted in its place at the first limit that it breaks.</p>";
  const heads = ["limit", "what it holds", "as outer", "as inner"];
  return part("funnel", "Rejected by limit", words + (rows.length > 0 ? pageTable(heads, rows, [2, 3]) : ""));
}
