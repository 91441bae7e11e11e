import type { Facts } from "../report/facts.ts";
import { box } from "./box.ts";
import { element, svgElement } from "./element.ts";

/**
 * Groups of figures side by side where there is room, each under its heading.
 *
 * @param groups  of one spring
 * @param spring  which it is, so that the tables of two springs on a page are told apart
 */
export function factsGrid(groups: readonly Facts[], spring: string): HTMLElement {
  return element(
    "div",
    { class: "facts" },
    groups.map((facts) => factsPart(facts, spring)),
  );
}

function factsPart({ heading, entries, table, picture, notes }: Facts, spring: string): HTMLElement {
  const list = entries.flatMap(([label, text]) => [element("dt", { text: label }), element("dd", { text })]);
  return element("section", {}, [
    element("h3", { text: heading }),
    ...(list.length > 0 ? [element("dl", { class: "figures" }, list)] : []),
    ...(table === undefined ? [] : [box(`${heading}, ${spring}`, [factsTable(table)])]),
    ...(picture === undefined ? [] : [svgElement(picture)]),
    ...notes.map((text) => element("p", { class: "soft", text })),
  ]);
}

function factsTable({ heads, rows }: NonNullable<Facts["table"]>): HTMLElement {
  const head = heads.map((text) => element("th", { class: "number", text, attributes: { scope: "col" } }));
  const lines = rows.map(([label = "", ...cells]) =>
    element("tr", {}, [
      element("th", { class: "wrap", text: label, attributes: { scope: "row" } }),
      ...cells.map((text) => element("td", { class: "number", text })),
    ]),
  );
  return element("table", {}, [element("thead", {}, [element("tr", {}, [element("td"), ...head])]), element("tbody", {}, lines)]);
}
