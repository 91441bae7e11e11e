import type { Design, EndStyle, Units } from "../../model.ts";
import { show } from "../../units/show.ts";
import { escapeMarkup } from "../html/markup.ts";
import { acrossDimension, caption } from "./dimension-lines.ts";
import type { SpringState } from "./lengths-shown.ts";
import type { Hand } from "./spring.ts";
import { seatLine, standingCoil } from "./spring-at-length.ts";

/** Room about each spring for its length and words, in units of the picture. */
const MARGIN = { left: 96, right: 14, top: 22, bottom: 58 };

/** The narrowest share of the picture that a spring takes. */
const NARROWEST = 190;

/** The tallest a free spring is drawn. */
const TALLEST = 280;

/** A spring of the picture. */
export interface DrawnSpring {
  /** What it goes by, a letter. */
  readonly name: string;
  readonly design: Design;
  readonly ends: EndStyle;
  readonly state: SpringState;
}

/**
 * Springs beside one another on one seat and to one scale, which is that of the free springs at every length.
 *
 * @param springs  two or three, each pressed to one of its lengths
 * @param units    the reader's units
 * @param width    width of the picture, which is wider where they would not find room
 * @param hand     which way their coils wind
 * @returns an SVG document element as text; does not throw
 */
export function sideBySide(springs: readonly DrawnSpring[], units: Units, width: number, hand: Hand): string {
  const widthOfEach = Math.max(NARROWEST, width / springs.length);
  const widest = Math.max(...springs.map(({ design }) => Math.max(design.outsideDiameter, design.outsideDiameterAtSolid)));
  const longest = Math.max(...springs.map(({ design }) => design.freeLength));
  const scale = Math.min((widthOfEach - MARGIN.left - MARGIN.right) / widest, TALLEST / longest);
  const seat = MARGIN.top + scale * longest;
  const height = Math.ceil(seat + MARGIN.bottom);
  const parts = springs.map(({ name, design, ends, state }, i) => {
    const centre = widthOfEach * i + MARGIN.left + (widthOfEach - MARGIN.left - MARGIN.right) / 2;
    const half = (scale * state.outsideDiameter) / 2;
    const tall = scale * state.length;
    const force = state.kind === "free" ? "no force" : show(state.force, "force", units);
    const words = [`${name}: Ø ${show(state.outsideDiameter, "length", units)}`, force];
    return [
      seatLine(centre, (scale * widest) / 2 + 8, seat),
      standingCoil(design, ends, state, { scale, seat }, centre, hand),
      acrossDimension(centre - half, seat - tall / 2, tall, "left", show(state.length, "length", units), ""),
      caption(centre - half, seat + 32, words),
    ].join("");
  });
  const all = Math.round(widthOfEach * springs.length);
  const title = `Springs ${springs.map(({ name }) => name).join(", ")} drawn to one scale, ${springs[0]?.state.name}`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" class="spring" role="img" width="${all}" height="${height}" ` +
    `viewBox="0 0 ${all} ${height}" font-family="system-ui, sans-serif" font-size="12" fill="none">` +
    `<title>${escapeMarkup(title)}</title>${parts.join("")}</svg>`
  );
}
