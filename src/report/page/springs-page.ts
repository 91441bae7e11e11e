import { writeBrief } from "../../brief/write.ts";
import type { SweepResult } from "../../model.ts";
import { keepMaterials, massSpec } from "../charts/mass.ts";
import { colourFigures, giveSpans, type Scaled, scaleOver, scatterSpec, type Theme } from "../charts/scatter.ts";
import { PRICE_STEPS, sensitivitySpec } from "../charts/sensitivity.ts";
import { wiresSpec } from "../charts/wires.ts";
import { escapeMarkup } from "../html/markup.ts";
import { askedSentence } from "../text/brief-summary.ts";
import { figureWords } from "../text/labels.ts";
import { tableEndsWords } from "../text/material-data.ts";
import { proofWords, springsSentence, verdictSentence } from "../text/verdict.ts";
import { pageFrame, paperDialog, unbroken } from "./frame.ts";
import { type PageData, type PageSource, pageData } from "./page-data.ts";
import {
  askedPart,
  axesChoice,
  cautionsPart,
  funnelPart,
  massChart,
  missPart,
  part,
  practicePart,
  sensitivityPart,
  sourcesPart,
  strengthPart,
  warningList,
  wiresPart,
} from "./sections.ts";

/**
 * A sweep as one HTML page that needs no network: nothing in it runs but the script given, held by its hash, and no text of the
 * brief is ever markup. The page carries the brief's text, so that it can be changed and swept again there.
 *
 * @param result  a finished sweep, best with a sample of feasible springs to draw
 * @param script  the page's own script, bundled
 * @param source  the text that was swept; of a brief that never was a text, one that reads to the same
 * @returns the whole page
 * @throws Error where the script would break out of its element
 */
export async function reportPage(result: SweepResult, script: string, source = sourceOf(result)): Promise<string> {
  const data = pageData(result);
  // A chart that has nothing to draw yet is ready for what a change lets fit.
  const drawn = data.springs.material.length;
  const charts: Readonly<Record<ChartName, object>> = {
    scatter: await themed((theme) => scatterSpec(result, drawn, theme), giveSpans),
    mass: await themed(massSpec, (chart) => keepMaterials(chart, result)),
    wires: await themed(wiresSpec),
    prices: await themed((theme) => sensitivitySpec(theme, PRICE_STEPS)),
  };
  const { title } = result.brief;
  const blocks = { "page-data": data, "page-source": source, "page-charts": charts };
  return pageFrame({ title, script, body: sheet(result, data), blocks });
}

function sourceOf({ brief }: SweepResult): PageSource {
  return { text: writeBrief(brief), file: "brief.yaml", options: {} };
}

/** The charts of a page, each compiled for both grounds. */
export type ChartName = "scatter" | "mass" | "wires" | "prices";

/** Parts that do not apply stand hidden, for a change in the page to bring them out. */
function sheet(result: SweepResult, data: PageData): string {
  const { brief, feasible, proof, warnings } = result;
  const ends = tableEndsWords(result.tableEnds, feasible > 0, brief.units);
  return [
    `<main><h1>${escapeMarkup(brief.title)}</h1>`,
    `<p class="asked" id="asked-sentence">${escapeMarkup(unbroken(askedSentence(brief)))}</p>`,
    `<p class="verdict" id="verdict">${escapeMarkup(verdictSentence(result))}</p>`,
    `<p class="soft proof" id="proof"${proof === undefined ? " hidden" : ""}>${escapeMarkup(proof === undefined ? "" : proofWords(proof, brief))}</p>`,
    `<p class="soft proof" id="table-ends"${ends === "" ? " hidden" : ""}>${escapeMarkup(ends)}</p>`,
    '<div id="run" class="run" hidden></div>',
    `<div id="warnings">${warningList(warnings)}</div>`,
    shownWhere(feasible > 0, chosenPart()),
    besidePart(),
    shownWhere(feasible > 0, springsPart(result, data)),
    shownWhere(feasible === 0, feasible === 0 ? missPart(result) : part("nearest", "What to relax", "")),
    funnelPart(result),
    wiresPart(result),
    sensitivityPart(),
    askedPart(brief),
    practicePart(brief),
    strengthPart(brief),
    sourcesPart(brief),
    cautionsPart(),
    "</main>",
    paperDialog,
  ].join("");
}

function shownWhere(applies: boolean, sections: string): string {
  return applies ? sections : sections.replaceAll("<section ", "<section hidden ");
}

/** Filled by the page's script with the spring that a reader points at, the best one at first. */
function chosenPart(): string {
  return part(
    "chosen",
    "The chosen spring",
    '<noscript><p>This part needs the script that the page carries.</p></noscript><p class="chosen-name" id="chosen-name" role="status"></p><div id="chosen-spring"></div>',
  );
}

/** Filled by the page's script with the springs that a reader keeps; until then it is not there. */
function besidePart(): string {
  return part("beside", "Side by side", '<div id="kept-springs"></div>', true);
}

function springsPart(result: SweepResult, data: PageData): string {
  const options = colourFigures.map((name) => `<option value="${name}">${figureWords[name].label}</option>`).join("");
  const words = springsSentence(result, data.springs.material.length);
  return part(
    "springs",
    "What fits",
    `<p id="springs-sentence">${words}</p><div class="chart-head screen-only">${axesChoice()}<p><label>Colour shows <select id="colour-by">${options}</select></label></p>` +
      '<p class="soft">Drag over the chart to keep only what lies inside; a click beside the points lifts that. ' +
      "Click a point or a row to choose it.</p></div>" +
      `<div class="charts" id="charts"><div class="chart" id="chart" role="img" aria-label="Scatter of two figures; the table below holds the same springs"></div>${massChart}</div>` +
      '<div id="take-springs"></div><p><span id="listed" role="status"></span> <span class="screen-only">Chosen: <a href="#chosen" id="chosen-link"></a>.</span></p>' +
      '<div class="box" tabindex="0" role="region" aria-label="Ranked springs"><table class="springs" id="ranked"></table></div>',
  );
}

/** Vega-Lite becomes Vega here, so that the page carries only the smaller runtime. */
async function themed(
  specFor: (theme: Theme) => object,
  finish?: (spec: object) => void,
): Promise<Readonly<Record<Theme, object>>> {
  const { compile } = await import("vega-lite");
  const chart = (theme: Theme) => {
    const { spec } = compile(specFor(theme) as Parameters<typeof compile>[0]);
    clearPoints(spec as Marked);
    scaleOver(spec as Scaled, ["designs", "front"]);
    finish?.(spec);
    lighten(spec as Marked);
    return workedInPlace(spec as Marked);
  };
  return { light: chart("light"), dark: chart("dark") };
}

interface ChartData {
  readonly name: string;
  readonly source?: string;
  transform?: readonly { readonly type: string; readonly expr?: string }[] | undefined;
}

interface Marked {
  readonly name?: string;
  readonly encode?: { readonly update?: { description?: unknown } };
  readonly data?: readonly ChartData[];
  interactive?: boolean;
  marks?: Marked[];
}

/**
 * Take out what costs as much for each point as drawing it: words for a screen reader, which no canvas speaks (the table tells
 * them), and a check that its figures are numbers, which those of a spring always are.
 */
function lighten({ encode, marks, data }: Marked): void {
  delete encode?.update?.description;
  for (const source of data ?? []) {
    source.transform = source.transform?.filter(({ type, expr }) => type !== "filter" || !expr?.startsWith("isValid("));
  }
  marks?.forEach(lighten);
}

/**
 * Let formulas write into the rows themselves. Of rows that only formulas are added to Vega would work on copies, and of each row
 * that it ever copied it keeps a place: a page that is swept again a thousand times would fill with them.
 */
function workedInPlace(spec: Marked): Marked {
  const { data = [] } = spec;
  const copies = data.filter(
    ({ source, transform }) => source && transform?.length && transform.every(({ type }) => type === "formula"),
  );
  const originals = new Map(copies.map(({ name, source }) => [name, source]));
  const whole = data
    .filter(({ name }) => !originals.has(name))
    .map((one) => {
      const added = copies.filter(({ source }) => source === one.name).flatMap(({ transform }) => transform ?? []);
      return added.length === 0 ? one : { ...one, transform: [...(one.transform ?? []), ...added] };
    });
  return JSON.parse(JSON.stringify({ ...spec, data: whole }), (_key, value) => originals.get(value) ?? value);
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
    const background = others.findIndex(({ name }) => name === "brush_brush_bg");
    group.marks = others.toSpliced(background + 1, 0, brush);
  }
  group.marks?.forEach(clearPoints);
}
