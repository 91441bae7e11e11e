import type { Brief, EndStyle } from "../model.ts";
import { type ComparedCell, comparisonRows } from "../report/comparison.ts";
import { drawnHand } from "../report/drawing.ts";
import { marginRows } from "../report/margins.ts";
import { sideBySide } from "../report/side-by-side.ts";
import { springStates } from "../report/spring-states.ts";
import { box } from "./box.ts";
import { element, svgElement } from "./element.ts";
import { forceLines } from "./force-lines.ts";
import { lengthButtons, lookedAt } from "./lengths.ts";
import { marginColumns } from "./margin-columns.ts";
import { type Judged, misfitWords } from "./still-fits.ts";

/**
 * Show kept springs side by side: drawn to one scale, every figure in columns, their load-length lines in one diagram, their margins.
 *
 * @param judged    the springs, held against the brief as it stands
 * @param onPutOut  told which spring its reader puts out
 */
export function showComparison(host: HTMLElement, judged: readonly Judged[], onPutOut: (name: string) => void): void {
  const [first] = judged;
  if (first === undefined) {
    host.replaceChildren();
    return;
  }
  const names = springStates(first.brief, first.design).map(({ name }) => name);
  const looked = lookedAt(host, GROUP.name, names.length);
  const width = Math.max(330, Math.min(900, host.clientWidth));
  const picture = box("Drawing of the kept springs", [svgElement(drawing(judged, looked, width))]);
  picture.classList.add("drawn-beside");
  const look = (place: number) => picture.replaceChildren(svgElement(drawing(judged, place, width)));
  const misfits = judged.filter((one) => misfitWords(one) !== "");
  host.replaceChildren(
    ...(judged.length < 2 ? [element("p", { class: "soft", text: "Choose another spring and keep it beside this one." })] : []),
    ...(misfits.length === 0 ? [] : [misfitList(misfits)]),
    lengthButtons(GROUP, names, looked, look),
    picture,
    figureTable(judged, onPutOut),
    ...forceLines(first.brief, judged.map(lineOf), width),
    element("h3", { text: "Margins side by side" }),
    marginColumns(
      "Margins of the kept springs",
      judged.map(({ kept, design, brief }) => [kept.name, marginRows(design, brief)] as const),
    ),
  );
}

const GROUP = { name: "length-beside", words: "Drawn at length" };

function drawing(judged: readonly Judged[], place: number, width: number): string {
  const springs = judged.flatMap(({ kept, design, brief }) => {
    const state = springStates(brief, design)[place];
    return state === undefined ? [] : [{ name: kept.name, design, ends: endsOf(brief), state }];
  });
  const [{ brief }] = judged as [Judged];
  return sideBySide(springs, brief.units, width, drawnHand(brief));
}

/** A brief of one spring has its end style alone. */
function endsOf({ sweep }: Brief): EndStyle {
  return sweep.ends[0] as EndStyle;
}

const lineOf = ({ kept, design, clashAllowance }: Judged) => ({ name: kept.name, design, clashAllowance });

function misfitList(misfits: readonly Judged[]): HTMLElement {
  const items = misfits.map((one) => element("li", { text: `${one.kept.name}: ${misfitWords(one)}` }));
  return element("ul", { class: "cautions", attributes: { "aria-label": "Kept springs that do not fit any more" } }, items);
}

function figureTable(judged: readonly Judged[], onPutOut: (name: string) => void): HTMLElement {
  const [{ brief }] = judged as [Judged];
  const heads = judged.map(({ kept }) => {
    const button = element("button", {
      text: "put out",
      attributes: { type: "button", "aria-label": `put out ${kept.name}` },
    });
    button.addEventListener("click", () => onPutOut(kept.name));
    return element("th", { class: "number", attributes: { scope: "col" } }, [
      kept.name,
      element("span", { class: "unit screen-only" }, [button]),
    ]);
  });
  const rows = comparisonRows(
    judged.map(({ design }) => design),
    brief,
  ).map(({ label, sentence, cells, same }) =>
    element("tr", { class: same && judged.length > 1 ? "same" : "differs" }, [
      element("th", { class: "wrap", text: label, attributes: { scope: "row", ...(sentence ? { title: sentence } : {}) } }),
      ...cells.map(figureCell),
    ]),
  );
  return box("Kept springs, figure by figure", [
    element("table", { class: "pair-figures compared" }, [
      element("thead", {}, [element("tr", {}, [element("td"), ...heads])]),
      element("tbody", {}, rows),
    ]),
  ]);
}

/** The best of a row stands out by its weight and by the word that says why. */
function figureCell({ text, best }: ComparedCell): HTMLElement {
  if (best === undefined) return element("td", { class: "number wrap", text });
  return element("td", { class: "number wrap" }, [element("b", { text }), ` ${best}`]);
}
