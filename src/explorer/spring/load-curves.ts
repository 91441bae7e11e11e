import type { Brief } from "../../model.ts";
import { type LoadLine, loadLengthLines } from "../../report/drawing/load-curve.ts";
import { element, svgElement } from "../parts/element.ts";

/**
 * Force over length of springs, from free to solid, with a heading and what its marks mean.
 *
 * @param brief  whose windows are shown
 * @param lines  at most three
 * @param width  of the place that it stands in
 */
export function forceLines(brief: Brief, lines: readonly LoadLine[], width: number): HTMLElement[] {
  return [
    element("h3", { text: "Force over length" }),
    element("div", {}, [svgElement(loadLengthLines(brief, lines, Math.min(width, 560), 300))]),
    element("p", {
      class: "soft",
      text: "From free at the left to solid, the open circle; dots are load points, bars the forces that are asked. The broad band before solid is the clash allowance.",
    }),
  ];
}
