import type { SweepResult } from "../model.ts";
import { askedSentence } from "./asked.ts";
import { type Scaled, scaleOver } from "./chart-scales.ts";
import { colourFigures, scatterSpec, type Theme } from "./charts.ts";
import { walkedSentence } from "./funnel.ts";
import { escapeMarkup } from "./markup.ts";
import { massSpec } from "./mass-chart.ts";
import { drawnSentence, frontSentence, type PageData, pageData } from "./page-data.ts";
import { pageFrame, unbroken } from "./page-frame.ts";
import { paperDialog } from "./paper.ts";
import { pricesSpec } from "./prices-chart.ts";
import { PRICE_STEPS } from "./prices-words.ts";
import { proofWords } from "./proof-words.ts";
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
import { axesChoice, massChart, pricesPart, wiresPart } from "./view-parts.ts";
import { wiresSpec } from "./wires-chart.ts";
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
  const charts = drawn > 0 ? await themed((theme) => scatterSpec(result, drawn, theme)) : null;
  const { title } = result.brief;
  const blocks = {
    "page-data": data,
    "page-charts": charts,
    "page-views": {
      mass: await themed(massSpec),
      wires: await themed(wiresSpec),
      prices: await themed((theme) => pricesSpec(theme, PRICE_STEPS)),
    },
  };
  return pageFrame({ title, script, body: sheet(result, data), blocks });
}

function sheet(result: SweepResult, data: PageData): string {
  const { brief, feasible, proof, warnings } = result;
  const found =
    feasible > 0 ? chosenPart() + springsPart(result, data) + funnelPart(result) : missPart(result) + funnelPart(result);
  return [
    `<main><h1>${escapeMarkup(brief.title)}</h1>`,
    `<p class="asked">${escapeMarkup(unbroken(askedSentence(brief)))}</p><p class="verdict">${walkedSentence(result)} ${screeningWords}</p>`,
    proof === undefined ? "" : `<p class="soft proof">${escapeMarkup(proofWords(proof))}</p>`,
    warningList(warnings),
    askedPart(brief),
    practicePart(brief),
    found,
    wiresPart(result),
    pricesPart(),
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
  const options = colourFigures.map((name) => `<option value="${name}">${figureWords[name].label}</option>`).join("");
  const words = `${drawnSentence(result, data.springs.material.length)} <span id="front-words">${frontSentence(true)}</span>`;
  return part(
    "springs",
    "What fits",
    `<p>${words}</p><div class="chart-head screen-only">${axesChoice()}<p><label>Colour shows <select id="colour-by">${options}</select></label></p>` +
      '<p class="soft">Drag over the chart to keep only what lies inside; a click beside the points lifts that. ' +
      "Click a point or a row to choose it.</p></div>" +
      `<div class="charts"><div class="chart" id="chart" role="img" aria-label="Scatter of two figures; the table below holds the same springs"></div>${massChart}</div>` +
      '<p><span id="listed" role="status"></span> <span class="screen-only">Chosen: <a href="#chosen" id="chosen-link"></a>.</span></p>' +
      '<div class="box" tabindex="0" role="region" aria-label="Ranked springs"><table class="springs" id="ranked"></table></div>',
  );
}

/** Vega-Lite becomes Vega here, so that the page carries only the smaller runtime. */
async function themed(specFor: (theme: Theme) => object): Promise<Readonly<Record<Theme, object>>> {
  const { compile } = await import("vega-lite");
  const chart = (theme: Theme) => {
    const { spec } = compile(specFor(theme) as Parameters<typeof compile>[0]);
    clearPoints(spec as Marked);
    scaleOver(spec as Scaled, "designs");
    return spec;
  };
  return { light: chart("light"), dark: chart("dark") };
}

interface Marked {
  readonly name?: string;
  interactive?: boolean;
  marks?: Marked[];
}

/**
 * Let the pointer reach the points. The brush comes compiled above them and would take their tooltips and clicks: it belongs just
 * above its own ground. The front and the rings about springs, named after the data that they show, lie over points and only show.
 */
function clearPoints(group: Marked): void {
  const { marks } = group;
  if (!marks) return;
  for (const mark of marks) {
    if (/^(front|chosen|pointed)_/.test(mark.name ?? "")) mark.interactive = false;
  }
  const brush = marks.find(({ name }) => name === "brush_brush");
  if (brush) {
    const others = marks.filter((mark) => mark !== brush);
    const ground = others.findIndex(({ name }) => name === "brush_brush_bg");
    group.marks = others.toSpliced(ground + 1, 0, brush);
  }
  group.marks?.forEach(clearPoints);
}
