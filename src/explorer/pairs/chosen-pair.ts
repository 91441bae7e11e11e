import type { Brief, NestedRole, Pair, Units } from "../../model.ts";
import { calculationFragment } from "../../report/calculation/html.ts";
import { dataSheet } from "../../report/datasheet/datasheet.ts";
import { pairDrawing } from "../../report/drawing/nested-pair.ts";
import { fileName } from "../../report/files/file-name.ts";
import { marginRows } from "../../report/page/margins.ts";
import { springFacts } from "../../report/page/spring-facts.ts";
import { type PairState, pairSolid, pairStates } from "../../report/solid/body.ts";
import { lowerFirst } from "../../report/text/layout.ts";
import { pairColumns } from "../../report/text/pairs.ts";
import { cautionSentence } from "../../report/text/spring-summary.ts";
import { roleBrief } from "../../studies/nested.ts";
import { show, showNumber, unitLabel } from "../../units/show.ts";
import { exportLine, exportSolid } from "../parts/download.ts";
import { box, element, svgElement } from "../parts/element.ts";
import { factsGrid, marginColumns } from "../parts/figures.ts";
import { type Paper, paperButtons } from "../parts/sheet-dialog.ts";

const ROLES: readonly NestedRole[] = ["outer", "inner"];

/** Name one pair in words. */
export function namePair(host: HTMLElement, { rank, outer, inner }: Pair): void {
  const spring = ({ wire, series, material }: Pair["outer"]) => `wire ${wire} of ${series} in ${material}`;
  host.replaceChildren(element("b", { text: `Rank ${rank}: ` }), `outer of ${spring(outer)}, inner of ${spring(inner)}`);
}

/** Show one pair: both springs in one another, how they share each force, every figure of both, margins, cautions. */
export function showPair(host: HTMLElement, pair: Pair, brief: Brief): void {
  const width = Math.max(330, Math.min(520, host.clientWidth));
  host.replaceChildren(
    element("p", { class: "papers screen-only" }, paperButtons(ROLES.flatMap((role) => rolePapers(role, pair, brief)))),
    exportLine(
      "Take both springs away, free:",
      exportSolid(
        (ending) => fileName(brief.title, `rank ${pair.rank} free`, ending),
        () => pairSolid(brief, pair, pairStates(brief, pair)[0] as PairState),
      ),
    ),
    element("div", { class: "chosen chosen-pair" }, [
      element("div", {}, [svgElement(pairDrawing(pair, brief.sweep.ends, brief.units, width))]),
      element("div", {}, [element("h3", { text: "How they share the load" }), shareTable(pair, brief)]),
    ]),
    ...cautionList(pair, brief),
    element("h3", { text: "Figures of both springs" }),
    figureTable(pair, brief),
    element("h3", { text: "Margins of both" }),
    marginColumns(
      "Margins of both",
      ROLES.map((role) => [role, marginRows(pair[role], brief)] as const),
    ),
    element(
      "div",
      { class: "roles" },
      ROLES.map((role) => roleFacts(role, pair, brief)),
    ),
  );
}

/** The sheets of one spring, which answers its share of the brief and is wound in its own hand. */
function rolePapers(role: NestedRole, pair: Pair, brief: Brief): Paper[] {
  const spring = pair[role];
  const own = roleBrief(brief, role, pair.share);
  const ordered: Brief = { ...own, title: `${brief.title}, ${role} spring`, order: { ...own.order, hand: spring.hand } };
  return [
    { name: `Data sheet of the ${role}`, write: () => dataSheet(ordered, spring) },
    { name: `Calculation sheet of the ${role}`, write: () => calculationFragment(ordered, spring) },
  ];
}

function roleFacts(role: NestedRole, pair: Pair, brief: Brief): HTMLElement {
  return element("section", {}, [
    element("h3", { class: "role", text: `The ${role} alone` }),
    factsGrid(springFacts(brief, pair[role]), `the ${role}`),
  ]);
}

function shareTable(pair: Pair, { units }: Brief): HTMLElement {
  const { outer, inner, rate } = pair;
  const row = (label: string, length: string, shares: readonly [number, number], dimension: "force" | "rate") => {
    const [a, b] = shares;
    const cells = [
      length,
      showNumber(a, dimension, units),
      showNumber(b, dimension, units),
      showNumber(a + b, dimension, units),
      a + b > 0 ? showNumber(a / (a + b), "share", units, 3) : "–",
    ];
    return element("tr", {}, [
      element("th", { class: "wrap", text: label, attributes: { scope: "row" } }),
      ...cells.map((text) => element("td", { class: "number", text })),
    ]);
  };
  const points = outer.points.map(({ name, length, force }, i) =>
    row(name, showNumber(length, "length", units), [force, inner.points[i]?.force ?? 0], "force"),
  );
  const head = (label: string, unit: string) =>
    element("th", { class: "number head-wrap", attributes: { scope: "col" } }, [
      label,
      element("span", { class: "unit", text: unit }),
    ]);
  const force = unitLabel("force", units);
  const heads = [
    head("length", unitLabel("length", units)),
    head("outer", force),
    head("inner", force),
    head("together", force),
    head("outer's share", unitLabel("share", units)),
  ];
  return element("div", {}, [
    box("How they share the load", [
      element("table", {}, [element("thead", {}, [element("tr", {}, [element("td"), ...heads])]), element("tbody", {}, points)]),
    ]),
    element("p", { class: "soft", text: `Together they have a rate of ${show(rate, "rate", units)}.` }),
    element("p", { text: roomSentence(pair, units) }),
  ]);
}

function roomSentence({ clearance, toleranceRoom }: Pair, units: Units): string {
  const length = (value: number) => show(value, "length", units, 3);
  const left = `With the inner solid, ${length(clearance)} is left between them on the diameter beyond the clearance asked`;
  if (toleranceRoom === null) return `${left}; how much at the worst tolerances is not known.`;
  const worst = toleranceRoom < 0 ? `${length(-toleranceRoom)} too little` : length(toleranceRoom);
  return `${left}; with both coil diameters at the wrong end of their tolerance, ${worst}.`;
}

/** Both springs in columns, as the terminal shows them. */
function figureTable(pair: Pair, brief: Brief): HTMLElement {
  const [labels, ...columns] = pairColumns(pair, brief);
  const heads = columns.map(({ head }) => element("th", { class: "number", text: head, attributes: { scope: "col" } }));
  const rows = (labels?.cells ?? []).map((label, i) =>
    element("tr", {}, [
      element("th", { class: "wrap", text: label, attributes: { scope: "row" } }),
      ...columns.map(({ cells }) => element("td", { class: "number wrap", text: cells[i] ?? "" })),
    ]),
  );
  return box("Figures of both springs", [
    element("table", { class: "pair-figures" }, [
      element("thead", {}, [element("tr", {}, [element("td"), ...heads])]),
      element("tbody", {}, rows),
    ]),
  ]);
}

function cautionList(pair: Pair, { units }: Brief): HTMLElement[] {
  const { outer, inner, toleranceRoom } = pair;
  const names = [...new Set([...outer.cautions, ...inner.cautions])];
  const springs = names.map((name) => {
    const roles = ROLES.filter((role) => pair[role].cautions.includes(name));
    const sentence = cautionSentence(
      name,
      roles.map((role) => pair[role]),
      units,
    );
    return `${roles.length > 1 ? "Both springs" : `The ${roles[0]}`}: ${lowerFirst(sentence)}`;
  });
  const tight = "With both diameters at the wrong end of their tolerance, less than the clearance asked is left between them.";
  const sentences = [...springs, ...(toleranceRoom !== null && toleranceRoom < 0 ? [tight] : [])];
  if (sentences.length === 0) return [];
  const items = sentences.map((text) => element("li", { text }));
  return [element("ul", { class: "cautions", attributes: { "aria-label": "Cautions for this pair" } }, items)];
}
