import type { Brief, Dimension, MeritName, NestedDesign, NestedResult, Pair, Units } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { show } from "../../units/show.ts";
import { type FigureName, figureWithValue, figureWordsIn, nestedCautions, showFigure } from "./labels.ts";
import type { GridColumn } from "./layout.ts";
import { countWords } from "./rejections.ts";

/**
 * How the load is shared and what is left between the springs, in a few sentences.
 *
 * @param result  a finished sweep of nested pairs
 */
export function sharingSentence({ brief: { envelope, units }, shares }: NestedResult): string {
  const share = (value: number) => show(value, "share", units);
  const { clearance } = envelope;
  const left =
    clearance === undefined
      ? "No clearance between them is asked."
      : "length" in clearance
        ? `Between them ${show(clearance.length, "length", units)} is left on the diameter with the inner solid.`
        : `Between them ${share(clearance.share)} of the outer's inside diameter is left with the inner solid.`;
  return (
    "Two springs of equal free length, one inside the other, share this load by their rates at every length. " +
    `The outer is tried at shares from ${share(shares.least)} to ${share(shares.greatest)} in steps of ${share(shares.step)}. ${left}`
  );
}

/**
 * How many springs were walked and how many pairs fit, and what keeps them apart where none does.
 *
 * @param result  a finished sweep of nested pairs
 */
export function pairsSentence({ walked, roles, pairsFit, lacking, brief: { units } }: NestedResult): string {
  const springs =
    `${countWords(walked)} springs walked at all shares; ` +
    `${countWords(roles.outer.feasible)} fit as the outer, ${countWords(roles.inner.feasible)} as the inner. `;
  if (pairsFit > 0) return `${springs}${countWords(pairsFit)} ${pairsFit === 1 ? "pair fits" : "pairs fit"} in one another.`;
  if (lacking === null) return `${springs}No share of the load has both, so no pair fits.`;
  return `${springs}No pair fits: the nearest lacks ${show(lacking, "length", units)} between its springs.`;
}

/** The figures by which pairs are compared, of both springs. */
const FIGURE_OF_PAIR: Readonly<Record<MeritName, (pair: Pair) => number>> = {
  mass: ({ mass }) => mass,
  relativeCost: ({ relativeCost }) => relativeCost,
  outsideDiameter: ({ outer }) => outer.outsideDiameter,
  freeLength: ({ outer }) => outer.freeLength,
  solidSafety: ({ outer, inner }) => Math.min(outer.solidSafety, inner.solidSafety),
};

/**
 * Whether one spring alone answers the brief, and whether it does better than the best pair, by the first figure that ranks pairs.
 *
 * @param result  a finished sweep of nested pairs
 */
export function aloneSentence({ brief, pairs: [pair], alone }: NestedResult): string {
  if (alone === null) return "No spring alone fits this brief.";
  const merit = brief.rank.find((name) => name !== "freeLength") ?? "mass";
  const shown = (value: number) => showFigure(merit, value, brief);
  const own = figureWithValue(merit, alone[merit], brief);
  if (pair === undefined) return `One spring alone fits, with ${own}.`;
  const both = FIGURE_OF_PAIR[merit](pair);
  const better = merit === "solidSafety" ? alone[merit] > both : alone[merit] < both;
  return `One spring alone ${better ? "is better:" : "fits too, with"} ${own}, where the best pair has ${shown(both)}.`;
}

/** What to watch in every pair, and in those of which the springs may touch. */
export function pairCautions(pairs: readonly Pair[]): readonly string[] {
  if (pairs.length === 0) return [];
  const ranks = pairs.filter(({ toleranceRoom }) => (toleranceRoom ?? 0) < 0).map(({ rank }) => rank);
  const which = ranks.length === pairs.length ? "all pairs listed" : `rank ${ranks.join(", ")}`;
  const touching = `${which}. With both diameters at the wrong end of their tolerance, less than the clearance asked is left.`;
  return [...(ranks.length > 0 ? [touching] : []), ...nestedCautions];
}

/** Figures of each spring, in the order in which they are read; those that add up have a sum. */
const FIGURES: readonly (readonly [FigureName, "added" | "apart"])[] = [
  ["wireDiameter", "apart"],
  ["totalTurns", "apart"],
  ["activeTurns", "apart"],
  ["meanDiameter", "apart"],
  ["outsideDiameter", "apart"],
  ["insideDiameter", "apart"],
  ["outsideDiameterAtSolid", "apart"],
  ["freeLength", "apart"],
  ["solidLength", "apart"],
  ["rate", "added"],
  ["stressAtSolid", "apart"],
  ["solidSafety", "apart"],
  ["workingSafety", "apart"],
  ["mass", "added"],
  ["relativeCost", "added"],
];

type Row = readonly [label: string, outer: string, inner: string, together: string];

/**
 * One pair in columns: every figure of the outer and of the inner spring, and what they give together.
 *
 * @param pair   two nested springs
 * @param brief  the requirement
 */
export function pairColumns({ outer, inner, clearance, toleranceRoom }: Pair, brief: Brief): GridColumn[] {
  const { units } = brief;
  const words = (label: string, read: (spring: NestedDesign) => string): Row => [label, read(outer), read(inner), ""];
  const figure = (label: string, dimension: Dimension, a: number | null, b: number | null, added: boolean): Row => [
    label,
    shown(a, dimension, units),
    shown(b, dimension, units),
    added && a !== null && b !== null ? shown(a + b, dimension, units) : "",
  ];
  const rows: readonly Row[] = [
    words("hand", ({ hand }) => hand),
    words("wire", ({ wire, series }) => oneLine(`${series} ${wire}`)),
    words("material", ({ material }) => oneLine(material)),
    words("ends", ({ ends }) => oneLine(ends)),
    ...FIGURES.map(([name, sum]) => {
      const { label, dimension } = figureWordsIn(name, brief);
      return figure(label, dimension, outer[name], inner[name], sum === "added");
    }),
    ...outer.points.map(({ name, force }, i) =>
      figure(oneLine(`force at ${name}`), "force", force, inner.points[i]?.force ?? null, true),
    ),
    ["clearance beyond that asked", "", "", shown(clearance, "length", units)],
    ["the same at worst tolerance", "", "", shown(toleranceRoom, "length", units)],
  ];
  const column = (head: string, at: 1 | 2 | 3): GridColumn => ({
    head,
    cells: rows.map((row) => row[at]),
    align: "right",
    most: 18,
  });
  return [
    { head: "", cells: rows.map(([label]) => label), align: "left", most: 28 },
    column("outer", 1),
    column("inner", 2),
    column("together", 3),
  ];
}

function shown(value: number | null, dimension: Dimension, units: Units): string {
  return value === null ? "not known" : show(value, dimension, units);
}
