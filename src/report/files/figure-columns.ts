import type { Design, DesignPoint, Dimension, LimitName } from "../../model.ts";
import { type FigureName, figureWords, limitWords } from "../text/labels.ts";

/** One column of a table of designs: a text, or a figure in SI that is null where it does not exist. */
export type FigureColumn =
  | { readonly name: string; readonly dimension: null; readonly value: (design: Design) => string }
  | { readonly name: string; readonly dimension: Dimension; readonly value: (design: Design) => number | null };

export type PointFigure = Exclude<keyof DesignPoint, "name">;

/** How a form of output names what stands in a list or a map of a design. */
export interface ColumnNames {
  /** A figure of a load point, by the point's own name and its place. */
  readonly point: (name: string, index: number, figure: PointFigure) => string;
  /** The column of the point's own name; absent: that stands in the names of its figures. */
  readonly pointName?: (index: number) => string;
  readonly margin: (limit: LimitName) => string;
}

/** What springs drawn about a design do, where any are. */
const YIELD: readonly FigureColumn[] = [
  { name: "yield", dimension: "share", value: ({ scatter }) => scatter?.share ?? null },
  { name: "yieldStandardError", dimension: "share", value: ({ scatter }) => scatter?.standardError ?? null },
];

/** The figures of a load point, in the order of the model. */
const POINT_FIGURES: readonly (readonly [PointFigure, Dimension])[] = [
  ["length", "length"],
  ["deflection", "length"],
  ["force", "force"],
  ["stress", "stress"],
  ["shareOfDeflection", "share"],
];

/**
 * Every figure of a design but its rank, for outputs that are tables.
 *
 * @param designs  those that rows may hold, or one of them where all have the same points and limits: only limits that one of them has
 *   a margin for get a column
 * @param names    how points and margins are named
 */
export function figureColumns(designs: readonly Design[], names: ColumnNames): FigureColumn[] {
  const { rank, ...figures } = figureWords;
  const limits = (Object.keys(limitWords) as LimitName[]).filter((name) => designs.some(({ margins }) => name in margins));
  return [
    text("material", ({ material }) => material),
    text("wire", ({ wire }) => wire),
    text("series", ({ series }) => series),
    text("ends", ({ ends }) => ends),
    ...(Object.keys(figures) as Exclude<FigureName, "rank">[]).map(
      (name): FigureColumn => ({ name, dimension: figures[name].dimension, value: (design) => design[name] }),
    ),
    { name: "freeLengthMin", dimension: "length", value: ({ freeLengthRange }) => freeLengthRange?.min ?? null },
    { name: "freeLengthMax", dimension: "length", value: ({ freeLengthRange }) => freeLengthRange?.max ?? null },
    text("strengthBasis", ({ strengthBasis }) => strengthBasis),
    ...(designs[0]?.points ?? []).flatMap(({ name }, index) => pointColumns(name, index, names)),
    ...(designs.some(({ scatter }) => scatter !== undefined) ? YIELD : []),
    ...limits.map(
      (limit): FigureColumn => ({
        name: names.margin(limit),
        dimension: "number",
        value: ({ margins }) => margins[limit] ?? null,
      }),
    ),
    text("cautions", ({ cautions, cyclic, fatigueSafety }) =>
      [...cautions, ...(cyclic !== null && fatigueSafety === null ? ["fatigueNotJudged"] : [])].join(" "),
    ),
  ];
}

function pointColumns(point: string, index: number, names: ColumnNames): FigureColumn[] {
  const figures = POINT_FIGURES.map(
    ([name, dimension]): FigureColumn => ({
      name: names.point(point, index, name),
      dimension,
      value: ({ points }) => points[index]?.[name] ?? null,
    }),
  );
  if (names.pointName === undefined) return figures;
  return [text(names.pointName(index), ({ points }) => points[index]?.name ?? ""), ...figures];
}

function text(name: string, value: (design: Design) => string): FigureColumn {
  return { name, dimension: null, value };
}
