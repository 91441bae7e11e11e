import { unbroken } from "../report/page/frame.ts";
import { askedPart, missPart, practicePart, sourcesPart, strengthPart, warningList } from "../report/page/sections.ts";
import { askedSentence } from "../report/text/brief-summary.ts";
import { tableEndsWords } from "../report/text/material-data.ts";
import { proofWords, springsSentence, verdictSentence } from "../report/text/verdict.ts";
import { byId, htmlNodes } from "./parts/element.ts";
import type { Shown } from "./session/springs.ts";

/** Write the parts of the page that are plain words and tables for a run, by the functions that wrote them at first. */
export function showSections({ brief, result, springs, sampled }: Shown): void {
  const drawn = { ...result, ...(sampled !== undefined && { sample: { length: sampled } }) };
  setText("asked-sentence", unbroken(askedSentence(brief)));
  setText("verdict", verdictSentence(result));
  setText("proof", result.proof === undefined ? "" : proofWords(result.proof, brief));
  byId("proof").hidden = result.proof === undefined;
  const ends = tableEndsWords(result.tableEnds, result.feasible > 0, brief.units);
  setText("table-ends", ends);
  byId("table-ends").hidden = ends === "";
  setText("springs-sentence", springsSentence(drawn, springs.length));
  refill(byId("warnings"), warningList(result.warnings));
  refillPart("asked", askedPart(brief));
  refillPart("practice", practicePart(brief));
  refillPart("strength", strengthPart(brief));
  refillPart("sources", sourcesPart(brief));
  if (result.feasible === 0) refillPart("nearest", missPart(result));
  for (const [id, applies] of [
    ["chosen", result.feasible > 0],
    ["nearest", result.feasible === 0],
  ] as const) {
    byId(id).hidden = !applies;
  }
}

function setText(id: string, text: string): void {
  const host = byId(id);
  if (host.textContent !== text) host.textContent = text;
}

/** What each part last held; a part that stays the same is not written again. */
const held = new WeakMap<HTMLElement, string>();

function refill(host: HTMLElement, markup: string): void {
  if (held.get(host) === markup) return;
  held.set(host, markup);
  host.replaceChildren(...htmlNodes(markup));
}

/** The markup is a whole section; its heading stays and its body is written. */
function refillPart(id: string, markup: string): void {
  const host = byId(id);
  if (held.get(host) === markup) return;
  held.set(host, markup);
  const [section] = htmlNodes(markup) as HTMLElement[];
  host.lastElementChild?.replaceWith(section?.lastElementChild as Element);
}
