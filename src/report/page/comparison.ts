import type { Brief, Design, Dimension } from "../../model.ts";
import { show } from "../../units/show.ts";
import { absentWords, CHOSEN_FIGURES, type FigureName, figureWordsIn, showFigure } from "../text/labels.ts";

/** Which end of a figure is the better one, where that does not depend on what the spring is for. */
const BETTER: Readonly<Partial<Record<FigureName, "least" | "greatest">>> = {
  outsideDiameter: "least",
  outsideDiameterAtSolid: "least",
  freeLength: "least",
  solidLength: "least",
  stressAtSolid: "least",
  wireLength: "least",
  mass: "least",
  relativeCost: "least",
  solidSafety: "greatest",
  workingSafety: "greatest",
  fatigueSafety: "greatest",
  bucklingDeflection: "greatest",
  surgeFrequency: "greatest",
};

/** One figure of springs side by side. */
export interface ComparedRow {
  readonly label: string;
  /** What the figure is, one plain sentence; absent where the label says it. */
  readonly sentence?: string;
  readonly cells: readonly ComparedCell[];
  /** True where no cell differs from another. */
  readonly same: boolean;
}

export interface ComparedCell {
  readonly text: string;
  /** Why this cell is the best of its row; absent where it is not, or no end is the better one. */
  readonly best?: "least" | "greatest";
}

/**
 * Springs side by side, figure by figure, the best of each marked where one end of it is the better. What a reader cannot tell
 * apart is not marked.
 *
 * @param springs  that answer one brief
 * @param brief    with the reader's units
 * @returns one cell in each row for each spring, in their order; does not throw
 */
export function comparisonRows(springs: readonly Design[], brief: Brief): ComparedRow[] {
  const words = (label: string, read: (spring: Design) => string) => rowOf({ label }, springs.map(read));
  const figures = [...CHOSEN_FIGURES, "fatigueSafety" as const].filter((name) => springs.some((spring) => isThere(spring, name)));
  return [
    words("wire", ({ wire, series }) => `${wire} of ${series}`),
    words("material", ({ material }) => material),
    words("ends", ({ ends }) => ends),
    ...figures.map((name) => figureRow(name, springs, brief)),
    ...(springs[0]?.points ?? []).flatMap(({ name }, i) => {
      const at = (read: (point: Design["points"][number]) => number, label: string, dimension: Dimension) =>
        words(label, ({ points }) => (points[i] === undefined ? "–" : show(read(points[i]), dimension, brief.units)));
      return [
        at(({ length }) => length, `length at ${name}`, "length"),
        at(({ force }) => force, `force at ${name}`, "force"),
        at(({ stress }) => stress, `stress at ${name}`, "stress"),
      ];
    }),
  ];
}

/** A spring that never buckles has that figure; one in static duty has no safety in cyclic duty. */
function isThere(spring: Design, name: FigureName): boolean {
  return name === "bucklingDeflection" || spring[name] !== null;
}

function figureRow(name: FigureName, springs: readonly Design[], brief: Brief): ComparedRow {
  const { label, sentence } = figureWordsIn(name, brief);
  const better = BETTER[name];
  const texts = springs.map((spring) => {
    const value = spring[name];
    return value === null ? (absentWords[name] ?? "–") : showFigure(name, value, brief);
  });
  if (better === undefined) return rowOf({ label, sentence }, texts);
  // What is null is never reached: a spring that never buckles is the last to.
  const values = springs.map((spring) => spring[name] ?? Number.POSITIVE_INFINITY);
  const best = better === "least" ? Math.min(...values) : Math.max(...values);
  return rowOf({ label, sentence }, texts, { text: texts[values.indexOf(best)] as string, better });
}

function rowOf(
  head: Pick<ComparedRow, "label" | "sentence">,
  texts: readonly string[],
  best?: { readonly text: string; readonly better: "least" | "greatest" },
): ComparedRow {
  const same = texts.every((text) => text === texts[0]);
  const cells = texts.map((text) => ({
    text,
    ...(best !== undefined && !same && text === best.text ? { best: best.better } : {}),
  }));
  return { ...head, cells, same };
}
