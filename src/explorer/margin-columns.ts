import type { LimitName } from "../model.ts";
import type { MarginRow } from "../report/margins.ts";
import { limitWords } from "../report/words.ts";
import { box } from "./box.ts";
import { element } from "./element.ts";
import { marginBar } from "./margin-bar.ts";

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
