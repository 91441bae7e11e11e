import type { Brief, Design, EndStyle } from "../model.ts";
import { figureWordsIn, showFigure } from "../report/cost-words.ts";
import { drawnHand, springDrawing } from "../report/drawing.ts";
import { springFacts } from "../report/facts.ts";
import { marginRows, tightest } from "../report/margins.ts";
import { lowerFirst } from "../report/paragraph.ts";
import { dataSheet } from "../report/sheet.ts";
import { absentWords, cautionWords, type FigureName, limitWords } from "../report/words.ts";
import { workingFragment } from "../report/working/working-fragment.ts";
import { showNumber, unitLabel } from "../units/show.ts";
import { box } from "./box.ts";
import { element, svgElement } from "./element.ts";
import { factsGrid } from "./facts.ts";
import { marginBar } from "./margin-bar.ts";
import { paperButtons } from "./paper.ts";

/** Figures beside the drawing, in the order in which an engineer checks them. */
const KEY_FIGURES: readonly FigureName[] = [
  "wireDiameter",
  "meanDiameter",
  "outsideDiameter",
  "insideDiameter",
  "outsideDiameterAtSolid",
  "index",
  "totalTurns",
  "activeTurns",
  "freeLength",
  "solidLength",
  "pitch",
  "rate",
  "forceAtSolid",
  "stressAtSolid",
  "solidSafety",
  "workingSafety",
  "tensileStrength",
  "bucklingDeflection",
  "surgeFrequency",
  "wireLength",
  "mass",
  "relativeCost",
];

/** Which spring it is, in a few words: `rank 3` or, beyond the ranked ones, `one of the sample`. */
export function placeWords({ rank }: Design): string {
  return rank > 0 ? `rank ${rank}` : "one of the sample";
}

/** Name one spring in words. */
export function nameChosen(host: HTMLElement, design: Design): void {
  const { wire, series, material, ends, strengthBasis } = design;
  const place = placeWords(design);
  host.replaceChildren(
    element("b", { text: `${place.charAt(0).toUpperCase()}${place.slice(1)}: ` }),
    `wire ${wire} of ${series} in ${material}, ${ends} ends, strength ${strengthBasis}`,
  );
}

/** Show one spring: its sheets, drawing, figures, load points, cautions, margins, and what it does in its duty. */
export function showChosen(host: HTMLElement, design: Design, brief: Brief): void {
  const ends = brief.sweep.ends.find(({ name }) => name === design.ends) as EndStyle;
  const width = Math.max(330, Math.min(640, host.clientWidth));
  host.replaceChildren(
    paperButtons([
      { name: "Data sheet for the maker", write: () => dataSheet(brief, design) },
      { name: "Calculation sheet", write: () => workingFragment(brief, design) },
    ]),
    element("div", { class: "chosen" }, [
      element("div", {}, [
        svgElement(springDrawing(design, ends, brief.units, width, drawnHand(brief))),
        element("h3", { text: "Load points" }),
        pointTable(design, brief),
      ]),
      figureList(design, brief),
    ]),
    ...cautionList(design),
    element("h3", { text: "Margins of its limits" }),
    ...marginTable(design, brief),
    factsGrid(springFacts(brief, design), "the chosen spring"),
  );
}

function figureList(design: Design, brief: Brief): HTMLElement {
  const entries = KEY_FIGURES.flatMap((name) => {
    const value = design[name];
    const { label, sentence } = figureWordsIn(name, brief);
    const text = value === null ? (absentWords[name] ?? "–") : showFigure(name, value, brief);
    return [element("dt", { text: label, attributes: { title: sentence } }), element("dd", { text })];
  });
  return element("dl", { class: "figures" }, entries);
}

function pointTable({ points }: Design, { units }: Brief): HTMLElement {
  const columns = [
    ["length", "length", "length"],
    ["deflection", "deflection", "length"],
    ["force", "force", "force"],
    ["stress", "stress", "stress"],
    ["of travel", "shareOfDeflection", "share"],
  ] as const;
  const head = columns.map(([label, , dimension]) =>
    element("th", { class: "number", attributes: { scope: "col" } }, [
      label,
      element("span", { class: "unit", text: unitLabel(dimension, units) }),
    ]),
  );
  const rows = points.map((point) =>
    element("tr", {}, [
      element("th", { class: "wrap", text: point.name, attributes: { scope: "row" } }),
      ...columns.map(([, name, dimension]) =>
        element("td", { class: "number", text: showNumber(point[name], dimension, units) }),
      ),
    ]),
  );
  return box("Load points", [
    element("table", {}, [element("thead", {}, [element("tr", {}, [element("td"), ...head])]), element("tbody", {}, rows)]),
  ]);
}

function marginTable(design: Design, brief: Brief): HTMLElement[] {
  const rows = marginRows(design, brief);
  const lines = rows.map(({ limit, label, margin, words }) =>
    element("tr", {}, [
      element("th", { text: label, attributes: { scope: "row" } }),
      element("td", { class: "bar-cell" }, [marginBar(margin)]),
      element("td", { class: "number", text: words }),
      element("td", { class: "soft where-wide", text: limitWords[limit].sentence }),
    ]),
  );
  const least = tightest(rows, brief);
  const words = least ? `Least room: ${least.label}. What gives it more: ${lowerFirst(limitWords[least.limit].raise)}` : "";
  return [
    box("Margins", [element("table", { class: "margins" }, [element("tbody", {}, lines)])]),
    element("p", { class: "soft", text: words }),
  ];
}

function cautionList({ cautions }: Design): HTMLElement[] {
  if (cautions.length === 0) return [];
  const items = cautions.map((name) => element("li", { text: cautionWords[name] }));
  return [element("ul", { class: "cautions", attributes: { "aria-label": "Cautions for this spring" } }, items)];
}
