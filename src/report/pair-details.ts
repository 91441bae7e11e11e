import type { Brief, Dimension, NestedDesign, Pair, Units } from "../model.ts";
import { oneLine } from "../problem.ts";
import { show } from "../units/show.ts";
import { figureWordsIn } from "./cost-words.ts";
import type { GridColumn } from "./grid.ts";
import type { FigureName } from "./words.ts";

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
