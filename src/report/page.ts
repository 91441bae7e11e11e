import type { SweepResult } from "../model.ts";
import { askedSentence } from "./asked.ts";
import { colourFigures, scatterSpec, type Theme } from "./charts.ts";
import { walkedSentence } from "./funnel.ts";
import { escapeMarkup } from "./markup.ts";
import { drawnSentence, type PageData, pageData } from "./page-data.ts";
import { pageFrame, unbroken } from "./page-frame.ts";
import { paperDialog } from "./paper.ts";
import { rankedAgainWords } from "./scatter-words.ts";
import {
  askedPart,
  cautionsPart,
  funnelPart,
  missPart,
  part,
  practicePart,
  sourcesPart,
  strengthPart,
  warningList,
} from "./sections.ts";
import { figureWords, screeningWords } from "./words.ts";

/**
 * A sweep as one HTML page that needs no network: nothing in it runs but the script given, held by its hash, and no text of the
 * brief is ever markup.
 *
 * @param result  a finished sweep, best with a sample of survivors to draw
 * @param script  the page's own script, bundled
 * @returns the whole page
 * @throws Error where the script would break out of its element
 */
export async function reportPage(result: SweepResult, script: string): Promise<string> {
  const data = pageData(result);
  const drawn = data.springs.material.length;
  const charts = drawn > 0 ? { light: await chart(result, drawn, "light"), dark: await chart(result, drawn, "dark") } : null;
  const { title } = result.brief;
  const blocks = { "page-data": data, "page-charts": charts };
  return pageFrame({ title, script, body: sheet(result, data), blocks });
}

function sheet(result: SweepResult, data: PageData): string {
  const { brief, feasible, warnings } = result;
  const found =
    feasible > 0 ? chosenPart() + springsPart(result, data) + funnelPart(result) : missPart(result) + funnelPart(result);
  return [
    `<main><h1>${escapeMarkup(brief.title)}</h1>`,
    `<p class="asked">${escapeMarkup(unbroken(askedSentence(brief)))}</p><p class="verdict">${walkedSentence(result)} ${screeningWords}</p>`,
    warningList(warnings),
    askedPart(brief),
    practicePart(brief),
    found,
    strengthPart(brief),
    sourcesPart(brief),
    cautionsPart(),
    "</main>",
    feasible > 0 ? paperDialog : "",
  ].join("");
}

/** Filled by the page's script with the spring that a reader points at, the best one at first. */
function chosenPart(): string {
  return part(
    "chosen",
    "The chosen spring",
    '<noscript><p>This part needs the script that the page carries.</p></noscript><p class="chosen-name" id="chosen-name" role="status"></p><div id="chosen-spring"></div>',
  );
}

function springsPart(result: SweepResult, data: PageData): string {
  const [across, up] = result.frontAxes.map((name) => figureWords[name].label);
  const options = colourFigures.map((name) => `<option value="${name}">${figureWords[name].label}</option>`).join("");
  const drawn = `${drawnSentence(result, data.springs.material.length)} The line joins the front: springs that no other betters in both.`;
  const words = [drawn, rankedAgainWords(result)].join(" ").trimEnd();
  return part(
    "springs",
    "What fits",
    `<p>${words}</p><div class="chart-head screen-only"><p><label>Colour shows <select id="colour-by">${options}</select></label></p>` +
      '<p class="soft">Drag over the chart to keep only what lies inside; a click beside the points lifts that. ' +
      "Click a point or a row to choose it.</p></div>" +
      `<div class="chart" id="chart" role="img" aria-label="Scatter of ${up} against ${across}; the table below holds the same springs"></div>` +
      '<p><span id="listed" role="status"></span> <span class="screen-only">Chosen: <a href="#chosen" id="chosen-link"></a>.</span></p>' +
      '<div class="box" tabindex="0" role="region" aria-label="Ranked springs"><table class="springs" id="ranked"></table></div>' +
      '<div class="tip" id="tip" hidden></div>',
  );
}

/** Vega-Lite becomes Vega here, so that the page carries only the smaller runtime. */
async function chart(result: SweepResult, count: number, theme: Theme): Promise<object> {
  const { compile } = await import("vega-lite");
  const { spec } = compile(scatterSpec(result, count, theme) as Parameters<typeof compile>[0]);
  clearPoints(spec as Marked);
  return spec;
}

interface Marked {
  readonly name?: string;
  interactive?: boolean;
  marks?: Marked[];
}

/**
 * Let the pointer reach the points. The brush comes compiled above them and would take their tooltips and clicks: it belongs just
 * above its own ground. The front and the ring about the chosen spring lie over points and only show.
 */
function clearPoints(group: Marked): void {
  const { marks } = group;
  if (!marks) return;
  for (const mark of marks) {
    if (/^layer_[12]_/.test(mark.name ?? "")) mark.interactive = false;
  }
  const brush = marks.find(({ name }) => name === "brush_brush");
  if (brush) {
    const others = marks.filter((mark) => mark !== brush);
    const ground = others.findIndex(({ name }) => name === "brush_brush_bg");
    group.marks = others.toSpliced(ground + 1, 0, brush);
  }
  group.marks?.forEach(clearPoints);
}
