import { clashAllowanceOf } from "../../constrain/design.ts";
import type { Brief, Design, EndStyle } from "../../model.ts";
import { calculationFragment } from "../../report/calculation/html.ts";
import { dataSheet } from "../../report/datasheet/datasheet.ts";
import { type SpringState, springStates } from "../../report/drawing/lengths-shown.ts";
import { drawnHand, springDrawing } from "../../report/drawing/spring.ts";
import { stateDrawing } from "../../report/drawing/spring-at-length.ts";
import { marginRows, tightest } from "../../report/page/margins.ts";
import { springFacts } from "../../report/page/spring-facts.ts";
import { absentWords, CHOSEN_FIGURES, figureWordsIn, limitWords, showFigure } from "../../report/text/labels.ts";
import { lowerFirst, upperFirst } from "../../report/text/layout.ts";
import { cautionSentence } from "../../report/text/spring-summary.ts";
import { showNumber, unitLabel } from "../../units/show.ts";
import { box, element, svgElement } from "../parts/element.ts";
import { factsGrid, marginBar } from "../parts/figures.ts";
import { paperButtons } from "../parts/sheet-dialog.ts";
import type { Spring } from "../session/springs.ts";
import type { Beside } from "./comparison.ts";
import { exportSpring } from "./export-spring.ts";
import { lengthButtons, lookedAt } from "./length-picker.ts";
import { forceLines } from "./load-curves.ts";

/** Which spring it is, in a few words: `rank 3` or, beyond the ranked ones, `one of the sample`. */
export function placeWords({ rank }: Design): string {
  return rank > 0 ? `rank ${rank}` : "one of the sample";
}

/** Name one spring in words. */
export function nameChosen(host: HTMLElement, design: Design): void {
  const { wire, series, material, ends, strengthBasis } = design;
  host.replaceChildren(
    element("b", { text: `${upperFirst(placeWords(design))}: ` }),
    `wire ${wire} of ${series} in ${material}, ${ends} ends, strength ${strengthBasis}`,
  );
}

/** Show one spring: its sheets, drawing, figures, load points, cautions, margins, and what it does in its duty. */
export function showChosen(host: HTMLElement, { design, choice }: Spring, brief: Brief, beside: Beside): void {
  const ends = brief.sweep.ends.find(({ name }) => name === design.ends) as EndStyle;
  const width = Math.max(330, Math.min(640, host.clientWidth));
  const hand = drawnHand(brief);
  const states = springStates(brief, design);
  const drawing = (index: number) => stateDrawing(design, ends, states[index] as SpringState, brief.units, width, hand);
  let looked = lookedAt(host, LENGTHS.name, states.length);
  const picture = element("div", { class: "screen-only" }, [svgElement(drawing(looked))]);
  const look = (index: number) => {
    looked = index;
    picture.replaceChildren(svgElement(drawing(index)));
  };
  const isKeeping = document.activeElement?.id === "keep";
  host.replaceChildren(
    element("p", { class: "papers screen-only" }, [
      beside.button(design, brief),
      ...paperButtons([
        { name: "Data sheet for the maker", write: () => dataSheet(brief, design) },
        { name: "Calculation sheet", write: () => calculationFragment(brief, design) },
      ]),
    ]),
    exportSpring(
      brief,
      design,
      placeWords(design),
      () => states[looked] as SpringState,
      () => drawing(looked),
    ),
    element("div", { class: "chosen" }, [
      element("div", {}, [
        lengthButtons(
          LENGTHS,
          states.map(({ name }) => name),
          looked,
          look,
        ),
        picture,
        element("div", { class: "paper-only" }, [svgElement(springDrawing(design, ends, brief.units, width, hand))]),
        element("h3", { text: "Load points" }),
        pointTable(design, brief),
        ...forceLines(brief, [{ name: placeWords(design), design, clashAllowance: clashAllowanceOf(brief, choice) }], width),
      ]),
      figureList(design, brief),
    ]),
    ...cautionList(design, brief),
    element("h3", { text: "Margins of its limits" }),
    ...marginTable(design, brief),
    factsGrid(springFacts(brief, design), "the chosen spring"),
  );
  // The button is written anew: whoever pressed it stays on it.
  if (isKeeping) document.getElementById("keep")?.focus();
}

const LENGTHS = { name: "length-chosen", words: "Drawn at length" };

function figureList(design: Design, brief: Brief): HTMLElement {
  const entries = CHOSEN_FIGURES.flatMap((name) => {
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
  const heading = (text: string, given: Readonly<Record<string, string>>) =>
    element("th", {
      class: given.class ?? "",
      text,
      attributes: { scope: "col", ...(given.span ? { colspan: given.span } : {}) },
    });
  const head = element("tr", {}, [
    heading("limit", {}),
    heading("distance from the limit", { span: "2" }),
    heading("what it holds", { class: "where-wide" }),
  ]);
  const least = tightest(rows, brief);
  const words = least ? `Least room: ${least.label}. What gives it more: ${lowerFirst(limitWords[least.limit].raise)}` : "";
  return [
    box("Margins", [element("table", { class: "margins" }, [element("thead", {}, [head]), element("tbody", {}, lines)])]),
    element("p", { class: "soft", text: words }),
  ];
}

function cautionList(design: Design, { units }: Brief): HTMLElement[] {
  if (design.cautions.length === 0) return [];
  const items = design.cautions.map((name) => element("li", { text: cautionSentence(name, [design], units) }));
  return [element("ul", { class: "cautions", attributes: { "aria-label": "Cautions for this spring" } }, items)];
}
