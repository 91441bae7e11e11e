import type { Brief, Design, EndStyle, Material } from "../../model.ts";
import { loadLengthDiagram } from "../drawing/load-curve.ts";
import { drawnHand, springDrawing } from "../drawing/spring.ts";
import { escapeMarkup } from "../html/markup.ts";
import { memoryWords } from "../text/material-data.ts";
import { sheetCautions } from "./cautions.ts";
import { dimensionsPart, loadsPart } from "./dimensions.ts";
import { sheetPart } from "./fields.ts";
import { headFields, makingPart, orderPart, servicePart, wirePart } from "./order.ts";

/** Widths of the two pictures and the tallest view, so that drawing and dimensions stand beside diagram and fields. */
const DRAWING = { width: 400, tallest: 56 };
const DIAGRAM = { width: 300, height: 200 };

/**
 * The sheet that a spring maker quotes from: the fields as ISO 2162-2 lists them for compression springs, from memory. What
 * neither the brief nor the design states is a line or a box to fill in by hand.
 *
 * @param brief   the brief that the spring answers, with its order where it has one
 * @param design  one of its springs
 * @returns an article element as text, to stand in a page with `sheetStyle`; no text of the brief is markup; does not throw
 */
export function dataSheet(brief: Brief, design: Design): string {
  const ends = brief.sweep.ends.find(({ name }) => name === design.ends) as EndStyle;
  const material = brief.sweep.materials.find(({ name }) => name === design.material) as Material;
  const cautions = sheetCautions(brief, design, material).map((text) => `<li>${escapeMarkup(text)}</li>`);
  return [
    `<article class="${sheetClass(brief, design, cautions)}"><header><div><h1>Compression spring: data sheet</h1>`,
    `<p class="title">${escapeMarkup(brief.title)}</p></div>${headFields(brief.order)}</header><p class="memory">${escapeMarkup(memoryWords(brief, [material]))}</p>`,
    `<div class="pictures"><figure>${springDrawing(design, ends, brief.units, DRAWING.width, drawnHand(brief), DRAWING.tallest)}`,
    `<figcaption>${handWords(brief)}</figcaption></figure>`,
    `<figure>${loadLengthDiagram(brief, design, DIAGRAM.width, DIAGRAM.height)}</figure></div>`,
    loadsPart(brief, design),
    '<div class="columns"><div>',
    dimensionsPart(brief, design, ends),
    wirePart(brief, design, material),
    "</div><div>",
    makingPart(brief),
    servicePart(brief, design),
    orderPart(brief),
    "</div></div>",
    sheetPart("cautions", "Cautions", `<ul>${cautions.join("")}</ul>`),
    "<footer>Arranged after ISO 2162-2, its fields from memory. In parentheses: for reference. An empty line or box is not stated: fill it in, or leave it to the maker.</footer></article>",
  ].join("");
}

/** Load points, cautions, lines of notes and of what is from memory, above which the sheet takes smaller type, then smaller pictures too, to print on one page. */
const MOST_LINES = { large: 10, dense: 17 };

function sheetClass({ order }: Brief, { points }: Design, cautions: readonly string[]): string {
  const lines = points.length + cautions.length + 2 + (order?.notes?.length ?? 0) / 50;
  if (lines <= MOST_LINES.large) return "sheet";
  return lines <= MOST_LINES.dense ? "sheet dense" : "sheet dense tight";
}

function handWords(brief: Brief): string {
  const asked = brief.order?.hand;
  const drawn = `Drawn to scale, ${drawnHand(brief)}-hand`;
  if (asked === undefined) return `${drawn}; the hand is not stated.`;
  return asked === "either" ? `${drawn}; either hand will do.` : `${drawn}.`;
}
