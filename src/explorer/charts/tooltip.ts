import type { Brief, Design, MeritName } from "../../model.ts";
import { figureTitle } from "../../report/charts/scatter.ts";
import { type FigureName, figureWords } from "../../report/text/labels.ts";
import { showNumber } from "../../units/show.ts";
import { element } from "../parts/element.ts";

/** What a tip says: labels with their figures. */
export type TooltipEntries = readonly (readonly [label: string, text: string])[];

let made: HTMLElement | undefined;

/** The page's one tip, beside the pointer; it is made when it is first needed. */
function tooltipElement(): HTMLElement {
  if (made === undefined) {
    made = element("div", { class: "tip", attributes: { id: "tip", hidden: "" } });
    document.body.append(made);
  }
  return made;
}

/** Show a tip beside the pointer; null takes it away. */
export function showTooltip(
  pointer: { readonly clientX: number; readonly clientY: number },
  entries: TooltipEntries | null,
): void {
  if (entries === null && made === undefined) return;
  const tooltip = tooltipElement();
  tooltip.hidden = entries === null;
  if (entries === null) return;
  tooltip.replaceChildren(...entries.flatMap(([label, text]) => [element("span", { text: label }), element("span", { text })]));
  const { width, height } = tooltip.getBoundingClientRect();
  tooltip.style.left = `${Math.max(4, Math.min(pointer.clientX + 14, window.innerWidth - width - 4))}px`;
  tooltip.style.top = `${Math.max(4, Math.min(pointer.clientY + 14, window.innerHeight - height - 4))}px`;
}

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
export function springTooltip(design: Design, axes: readonly MeritName[], brief: Brief): TooltipEntries {
  const figures = [...new Set<FigureName>([...axes, ...TOLD])];
  return [
    ...(["wire", "material", "ends"] as const).map((name) => [name, design[name]] as const),
    ...figures.map((name) => {
      const { dimension } = figureWords[name];
      return [figureTitle(name, brief), showNumber(design[name] as number, dimension, brief.units)] as const;
    }),
  ];
}
