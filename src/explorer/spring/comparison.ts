import type { Brief, Design, EndStyle } from "../../model.ts";
import { springStates } from "../../report/drawing/lengths-shown.ts";
import { sideBySide } from "../../report/drawing/side-by-side.ts";
import { drawnHand } from "../../report/drawing/spring.ts";
import { type ComparedCell, comparisonRows } from "../../report/page/comparison.ts";
import { marginRows } from "../../report/page/margins.ts";
import { box, element, svgElement } from "../parts/element.ts";
import { marginColumns } from "../parts/figures.ts";
import { lengthButtons, lookedAt } from "./length-picker.ts";
import { forceLines } from "./load-curves.ts";
import { type Compared, type Judged, judge, misfitWords } from "./recheck.ts";

/** Springs compared at most: what stands side by side on a page. */
const MOST = 3;

const NAMES = ["A", "B", "C"] as const;

/** The springs that a reader keeps beside one another, whatever is chosen and whatever the brief becomes. */
export class Beside {
  private readonly part: HTMLElement;
  private readonly host: HTMLElement;
  private readonly onChange: () => void;
  private compared: readonly Compared[] = [];
  private brief: Brief;

  /**
   * @param part      the part of the page, hidden while nothing is compared
   * @param host      what is filled
   * @param brief     as it stands at first
   * @param onChange  told after a spring was added or removed
   */
  constructor(part: HTMLElement, host: HTMLElement, brief: Brief, onChange: () => void) {
    this.part = part;
    this.host = host;
    this.brief = brief;
    this.onChange = onChange;
  }

  /** Judge the compared springs by the brief as it now stands, and draw them anew: after a run, a switch of units, a resize. */
  show(brief = this.brief): void {
    this.brief = brief;
    this.part.hidden = this.compared.length === 0;
    const judged = this.compared.map((compared) => judge(compared, brief));
    showComparison(this.host, judged, (name) => this.remove(name));
  }

  /** The button that adds a spring to the comparison or removes it; where the comparison is full it says so and does nothing. */
  button(design: Design, brief: Brief): HTMLElement {
    const held = this.compared.find((one) => isSame(one.design, design));
    const isFull = held === undefined && this.compared.length === MOST;
    const text = held ? `Remove ${held.name}` : isFull ? `Compare: ${MOST} are compared, remove one first` : "Compare";
    const button = element("button", {
      text,
      attributes: { type: "button", id: "keep", ...(isFull ? { "aria-disabled": "true" } : {}) },
    });
    button.addEventListener("click", () => {
      if (isFull) return;
      if (held) this.remove(held.name);
      else this.add(design, brief);
    });
    return button;
  }

  private add(design: Design, brief: Brief): void {
    const name = NAMES.find((one) => !this.compared.some((compared) => compared.name === one)) as string;
    this.compared = [...this.compared, { name, design, brief }].sort((a, b) => a.name.localeCompare(b.name));
    this.changed();
  }

  private remove(name: string): void {
    this.compared = this.compared.filter((one) => one.name !== name);
    this.changed();
  }

  private changed(): void {
    this.show();
    this.onChange();
  }
}

/** The same wire wound the same way. */
function isSame(a: Design, b: Design): boolean {
  return (
    a.material === b.material &&
    a.series === b.series &&
    a.wire === b.wire &&
    a.ends === b.ends &&
    a.totalTurns === b.totalTurns &&
    a.meanDiameter === b.meanDiameter &&
    a.freeLength === b.freeLength
  );
}

/**
 * Show the compared springs side by side: drawn to one scale, every figure in columns, their load-length lines in one diagram, their
 * margins.
 *
 * @param judged    the springs, held against the brief as it stands
 * @param onRemove  told which spring its reader removes
 */
function showComparison(host: HTMLElement, judged: readonly Judged[], onRemove: (name: string) => void): void {
  const [first] = judged;
  if (first === undefined) {
    host.replaceChildren();
    return;
  }
  const names = springStates(first.brief, first.design).map(({ name }) => name);
  const looked = lookedAt(host, GROUP.name, names.length);
  const width = Math.max(330, Math.min(900, host.clientWidth));
  const picture = box("Drawing of the compared springs", [svgElement(drawing(judged, looked, width))]);
  picture.classList.add("drawn-beside");
  const look = (index: number) => picture.replaceChildren(svgElement(drawing(judged, index, width)));
  const misfits = judged.filter((one) => misfitWords(one) !== "");
  host.replaceChildren(
    ...(judged.length < 2 ? [element("p", { class: "soft", text: "Choose another spring and compare it with this one." })] : []),
    ...(misfits.length === 0 ? [] : [misfitList(misfits)]),
    lengthButtons(GROUP, names, looked, look),
    picture,
    figureTable(judged, onRemove),
    ...forceLines(first.brief, judged.map(lineOf), width),
    element("h3", { text: "Margins side by side" }),
    marginColumns(
      "Margins of the compared springs",
      judged.map(({ compared, design, brief }) => [compared.name, marginRows(design, brief)] as const),
    ),
  );
}

const GROUP = { name: "length-beside", words: "Drawn at length" };

function drawing(judged: readonly Judged[], index: number, width: number): string {
  const springs = judged.flatMap(({ compared, design, brief }) => {
    const state = springStates(brief, design)[index];
    return state === undefined ? [] : [{ name: compared.name, design, ends: endsOf(brief), state }];
  });
  const [{ brief }] = judged as [Judged];
  return sideBySide(springs, brief.units, width, drawnHand(brief));
}

/** A brief of one spring has its end style alone. */
function endsOf({ sweep }: Brief): EndStyle {
  return sweep.ends[0] as EndStyle;
}

const lineOf = ({ compared, design, clashAllowance }: Judged) => ({ name: compared.name, design, clashAllowance });

function misfitList(misfits: readonly Judged[]): HTMLElement {
  const items = misfits.map((one) => element("li", { text: `${one.compared.name}: ${misfitWords(one)}` }));
  return element("ul", { class: "cautions", attributes: { "aria-label": "Compared springs that do not fit any more" } }, items);
}

function figureTable(judged: readonly Judged[], onRemove: (name: string) => void): HTMLElement {
  const [{ brief }] = judged as [Judged];
  const heads = judged.map(({ compared }) => {
    const button = element("button", {
      text: "remove",
      attributes: { type: "button", "aria-label": `remove ${compared.name}` },
    });
    button.addEventListener("click", () => onRemove(compared.name));
    return element("th", { class: "number", attributes: { scope: "col" } }, [
      compared.name,
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
  return box("Compared springs, figure by figure", [
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
