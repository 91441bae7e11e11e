import type { Brief, Design } from "../../model.ts";
import { type FigureName, figureWords, figureWordsIn } from "../../report/text/labels.ts";
import { columnNumbers } from "../../report/text/layout.ts";
import { countWords } from "../../report/text/rejections.ts";
import { yieldColumn, yieldTexts } from "../../report/text/yield.ts";
import { element } from "../parts/element.ts";
import type { Spring } from "../session/springs.ts";

/** Rows listed at most: what a reader can compare, not what a page can hold. */
const LISTED = 25;

const FIGURES: readonly FigureName[] = [
  "wireDiameter",
  "totalTurns",
  "outsideDiameter",
  "freeLength",
  "rate",
  "solidSafety",
  "mass",
];

/** The columns of figures: those every reader wants, then those that the brief ranks by. */
function figuresOf({ rank }: Brief): FigureName[] {
  return [...new Set([...FIGURES, ...rank])];
}

/** What the ranked table shows. */
export interface Ranked {
  /** Every spring of the page, best first. */
  readonly springs: readonly Spring[];
  /** Those that lie in the brush, best first. */
  readonly inside: readonly Spring[];
  readonly brushed: boolean;
  readonly chosen: number;
}

/** The springs to list: the best inside the brush, and the chosen one at the end where it is not among them. */
function listed({ springs, inside, chosen }: Ranked): Spring[] {
  const best = inside.slice(0, LISTED);
  const away = springs.filter(({ id }) => id === chosen && !best.some((spring) => spring.id === id));
  return [...best, ...away];
}

/** How many of how many are shown. */
export function listedWords({ springs, inside, brushed }: Ranked): string {
  const all = countWords(springs.length);
  const shown = inside.length > LISTED ? ` The best ${LISTED} are listed.` : "";
  if (brushed) return `${countWords(inside.length)} of ${all} springs drawn lie in the brush.${shown}`;
  return inside.length > LISTED
    ? `The best ${LISTED} of ${all} springs drawn are listed.`
    : `All ${all} springs drawn are listed.`;
}

/** Write the ranked table; a click on a row, or its button by keyboard, chooses the spring; pointing at either marks it in the charts. */
export function showRanked(
  host: HTMLElement,
  ranked: Ranked,
  brief: Brief,
  onChoose: (id: number) => void,
  onPoint: (id: number | null) => void,
): void {
  const springs = listed(ranked);
  const figures = figuresOf(brief).map((name) =>
    columnNumbers(
      springs.map(({ design }) => design[name]),
      figureWords[name].dimension,
      brief.units,
    ),
  );
  const yields = yieldTexts(
    springs.map(({ design }) => design),
    brief.units,
  );
  if (yields) figures.push(yields);
  const focused = (document.activeElement as HTMLElement | null)?.dataset.spring;
  const rows = springs.map(({ id, design }, row) => {
    const button = element("button", {
      text: design.rank > 0 ? String(design.rank) : "–",
      attributes: { type: "button", "data-spring": String(id), "aria-label": buttonWords(design) },
    });
    const cells = [
      element("td", { class: "number" }, [button]),
      ...[design.wire, design.material, design.ends].map((text) => element("td", { text })),
      ...figures.map((texts) => element("td", { class: "number", text: texts[row] ?? "" })),
    ];
    const current = id === ranked.chosen ? { "aria-current": "true" } : {};
    const line = element("tr", { attributes: { "data-spring": String(id), ...current } }, cells);
    line.addEventListener("click", () => onChoose(id));
    for (const comes of ["mouseenter", "focusin"]) line.addEventListener(comes, () => onPoint(id));
    for (const goes of ["mouseleave", "focusout"]) line.addEventListener(goes, () => onPoint(null));
    return line;
  });
  host.replaceChildren(head(brief), element("tbody", {}, rows));
  // Choosing writes the table anew: whoever pressed a row's button stays on it.
  if (focused !== undefined) host.querySelector<HTMLElement>(`button[data-spring="${focused}"]`)?.focus();
}

/** Mark the row of the spring that a reader points at in any view; null: none. */
export function markPointed(host: HTMLElement, id: number | null): void {
  for (const row of host.querySelectorAll<HTMLElement>("tbody tr"))
    row.classList.toggle("pointed", row.dataset.spring === String(id));
}

function buttonWords({ rank, wire, material, ends }: Design): string {
  return `${rank > 0 ? `Rank ${rank}` : "Unranked"}: choose wire ${wire}, ${material}, ${ends}`;
}

function head(brief: Brief): HTMLElement {
  const words = ["wire", "material", "ends"].map((text) => element("th", { text, attributes: { scope: "col" } }));
  const figures = figuresOf(brief).map((name) => {
    const { label, unit, sentence } = figureWordsIn(name, brief);
    const below = element("span", { class: "unit", text: unit });
    return element("th", { class: "number", attributes: { scope: "col", title: sentence } }, [label, below]);
  });
  if (brief.service.scatter) {
    const { label, sentence } = yieldColumn;
    const unit = element("span", { class: "unit", text: "%" });
    figures.push(element("th", { class: "number", attributes: { scope: "col", title: sentence } }, [label, unit]));
  }
  return element("thead", {}, [
    element("tr", {}, [element("th", { class: "number", text: "rank", attributes: { scope: "col" } }), ...words, ...figures]),
  ]);
}
