import type { Brief, Design } from "../model.ts";
import { otherUnits, show, unitLabel } from "../units/show.ts";
import { quantityWords } from "./asked.ts";
import { columnNumbers } from "./column.ts";
import { forceWindows } from "./load-windows.ts";
import { escapeMarkup } from "./markup.ts";
import { blankLine, sheetPart } from "./sheet-fields.ts";
import { gradeWords } from "./sheet-tolerances.ts";

/**
 * Load points with what the brief asks and what the grade allows, and solid for information.
 *
 * @param brief   the brief that the spring answers
 * @param design  the spring
 * @returns markup; a tolerance that no table gives is a line to fill in
 */
export function loadsPart(brief: Brief, design: Design): string {
  const { units } = brief;
  const other = otherUnits(units);
  const { points, tolerance, freeLength, solidLength, forceAtSolid, stressAtSolid } = design;
  const solid = { length: solidLength, deflection: freeLength - solidLength, force: forceAtSolid, stress: stressAtSolid };
  const all = [...points, solid];
  const columns = [
    { head: "length", dimension: "length", values: all.map(({ length }) => length), units },
    { head: "deflection", dimension: "length", values: all.map(({ deflection }) => deflection), units },
    { head: "force", dimension: "force", values: all.map(({ force }) => force), units },
    { head: "force", dimension: "force", values: all.map(({ force }) => force), units: other },
    { head: "shear stress", dimension: "stress", values: all.map(({ stress }) => stress), units },
  ] as const;
  const numbers = columns.map(({ values, dimension, units }) => columnNumbers(values, dimension, units));
  const windows = forceWindows(brief);
  const rows = all.map((_, i) => {
    const point = points[i];
    const window = windows[i];
    const deviation = tolerance.points[i]?.force ?? null;
    const asked = window === undefined ? "" : escapeMarkup(quantityWords(window, "force", units));
    const allowed = deviation === null ? blankLine : escapeMarkup(`± ${show(deviation, "force", units, 2)}`);
    const name = point === undefined ? "Solid, for information" : `${i + 1} ${point.name}`;
    const figures = numbers.map((column) => `<td class="figure">${column[i]}</td>`);
    const [ask, allow] = point === undefined ? ["", ""] : [asked, allowed];
    return `<tr><th scope="row">${escapeMarkup(name)}</th>${figures.join("")}<td>${ask}</td><td>${allow}</td></tr>`;
  });
  const heads = columns.map(
    ({ head, dimension, units }) => `<th scope="col" class="figure">${head}, ${unitLabel(dimension, units)}</th>`,
  );
  const head = `<tr><td></td>${heads.join("")}<th scope="col">asked</th><th scope="col">${gradeWords(tolerance.grade)}</th></tr>`;
  return sheetPart("loads", "Load points", `<table><thead>${head}</thead><tbody>${rows.join("")}</tbody></table>`);
}
