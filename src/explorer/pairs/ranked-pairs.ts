import type { Brief, Dimension, Pair } from "../../model.ts";
import { columnNumbers } from "../../report/text/layout.ts";
import { unitLabel } from "../../units/show.ts";
import { element } from "../parts/element.ts";

/** A column of figures of pairs. */
interface PairFigure {
  readonly label: string;
  readonly dimension: Dimension;
  readonly read: (pair: Pair) => number;
}

const FIGURES: readonly PairFigure[] = [
  { label: "outer wire", dimension: "length", read: ({ outer }) => outer.wireDiameter },
  { label: "inner wire", dimension: "length", read: ({ inner }) => inner.wireDiameter },
  { label: "outer turns", dimension: "number", read: ({ outer }) => outer.totalTurns },
  { label: "inner turns", dimension: "number", read: ({ inner }) => inner.totalTurns },
  { label: "outside diameter", dimension: "length", read: ({ outer }) => outer.outsideDiameter },
  { label: "outer's share", dimension: "share", read: ({ share }) => share },
  { label: "outer's safety at solid", dimension: "number", read: ({ outer }) => outer.solidSafety },
  { label: "inner's safety at solid", dimension: "number", read: ({ inner }) => inner.solidSafety },
  { label: "mass of both", dimension: "mass", read: ({ mass }) => mass },
  { label: "cost of both", dimension: "number", read: ({ relativeCost }) => relativeCost },
];

/** Write the ranked table; a click on a row, or its button by keyboard, chooses the pair. */
export function showRankedPairs(
  host: HTMLElement,
  pairs: readonly Pair[],
  chosen: number,
  { units }: Brief,
  onChoose: (rank: number) => void,
): void {
  const columns = FIGURES.map(({ dimension, read }) => columnNumbers(pairs.map(read), dimension, units));
  const focused = (document.activeElement as HTMLElement | null)?.dataset.pair;
  const rows = pairs.map((pair, row) => {
    const { rank, outer, inner } = pair;
    const button = element("button", {
      text: String(rank),
      attributes: {
        type: "button",
        "data-pair": String(rank),
        "aria-label": `Rank ${rank}: choose ${outer.wire} outside ${inner.wire}`,
      },
    });
    const current = rank === chosen ? { "aria-current": "true" } : {};
    const line = element("tr", { attributes: { "data-pair": String(rank), ...current } }, [
      element("td", { class: "number" }, [button]),
      ...columns.map((texts) => element("td", { class: "number", text: texts[row] ?? "" })),
      element("td", { text: materialWords(pair) }),
    ]);
    line.addEventListener("click", () => onChoose(rank));
    return line;
  });
  const head = FIGURES.map(({ label, dimension }) =>
    element("th", { class: "number head-wrap", attributes: { scope: "col" } }, [
      label,
      element("span", { class: "unit", text: unitLabel(dimension, units) }),
    ]),
  );
  host.replaceChildren(
    element("thead", {}, [
      element("tr", {}, [
        element("th", { class: "number", text: "rank", attributes: { scope: "col" } }),
        ...head,
        element("th", { text: "material", attributes: { scope: "col" } }),
      ]),
    ]),
    element("tbody", {}, rows),
  );
  // Choosing writes the table anew: whoever pressed a row's button stays on it.
  if (focused !== undefined) host.querySelector<HTMLElement>(`button[data-pair="${focused}"]`)?.focus();
}

function materialWords({ outer, inner }: Pair): string {
  return outer.material === inner.material ? outer.material : `${outer.material}, ${inner.material}`;
}
