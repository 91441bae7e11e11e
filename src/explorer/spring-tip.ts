import type { Brief, Design, MeritName } from "../model.ts";
import { figureTitle } from "../report/charts.ts";
import { type FigureName, figureWords } from "../report/words.ts";
import { showNumber } from "../units/show.ts";
import type { TipEntries } from "./tip.ts";

/** Figures told of every spring, after those of the axes. */
const TOLD: readonly FigureName[] = [
  "totalTurns",
  "outsideDiameter",
  "freeLength",
  "rate",
  "solidSafety",
  "mass",
  "wireDiameter",
];

/** What a tip says of a spring: which it is, the figures of the axes, then the others. */
export function springTip(design: Design, axes: readonly MeritName[], brief: Brief): TipEntries {
  const figures = [...new Set<FigureName>([...axes, ...TOLD])];
  return [
    ...(["wire", "material", "ends"] as const).map((name) => [name, design[name]] as const),
    ...figures.map((name) => {
      const { dimension } = figureWords[name];
      return [figureTitle(name, brief), showNumber(design[name] as number, dimension, brief.units)] as const;
    }),
  ];
}
