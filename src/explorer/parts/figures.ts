import type { LimitName } from "../../model.ts";
import type { MarginRow } from "../../report/page/margins.ts";
import type { Facts } from "../../report/page/spring-facts.ts";
import { limitWords } from "../../report/text/labels.ts";
import { box, element, svgElement } from "./element.ts";

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

/**
 * Margins of several springs as bars in columns, one row for each limit that one of them has a margin for.
 *
 * @param label    what the table is of
 * @param columns  each spring's head and margins
 */
export function marginColumns(
  label: string,
  columns: readonly (readonly [head: string, rows: readonly MarginRow[]])[],
): HTMLElement {
  const byLimit = columns.map(([, rows]) => new Map(rows.map((row) => [row.limit, row])));
  const rows = (Object.keys(limitWords) as LimitName[]).flatMap((limit) => {
    const margins = byLimit.map((one) => one.get(limit));
    if (margins.every((row) => row === undefined)) return [];
    const cells = margins.flatMap((row) => [
      element("td", { class: "bar-cell" }, row ? [marginBar(row.margin)] : []),
      element("td", { class: "number", text: row?.words ?? "not asked" }),
    ]);
    const { label: name, sentence } = limitWords[limit];
    return [element("tr", {}, [element("th", { text: name, attributes: { scope: "row", title: sentence } }), ...cells])];
  });
  const heads = columns.map(([head]) => element("th", { text: head, attributes: { scope: "colgroup", colspan: "2" } }));
  return box(label, [
    element("table", { class: "margins" }, [
      element("thead", {}, [element("tr", {}, [element("td"), ...heads])]),
      element("tbody", {}, rows),
    ]),
  ]);
}

/** The distance from a limit, which stands at the left end of its rail, as a bar; the number beside it says the same. */
export function marginBar(margin: number): Element {
  const room = 100 * Math.max(0, Math.min(1, margin));
  return svgElement(
    '<svg xmlns="http://www.w3.org/2000/svg" class="bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">' +
      `<rect class="rail" y="4.5" width="100" height="1" fill="#d9dee2"/><rect class="room" width="${room.toFixed(2)}" height="10" fill="#0b5a75"/>` +
      '<rect class="limit" width="0.8" height="10" fill="#1c2227"/></svg>',
  );
}
