import type { Brief, Design, EndStyle, Units } from "../../model.ts";
import { otherUnits, show, showNumber, unitLabel } from "../../units/show.ts";
import { forceWindows } from "../drawing/load-curve.ts";
import { escapeMarkup } from "../html/markup.ts";
import { quantityWords } from "../text/brief-summary.ts";
import { columnNumbers, upperFirst } from "../text/layout.ts";
import { freeLengthRangeNumbers, gradeWords, toleranceSentence } from "../text/spring-summary.ts";
import { blankLine, sheetPart } from "./fields.ts";

/** One dimension of the sheet. */
export interface DimensionRow {
  readonly label: string;
  readonly value: string;
  /** Plus-minus; null: not known, a line to fill in; absent: none is due. */
  readonly tolerance?: string | null;
  /** In the other system of units. */
  readonly other?: string;
}

/**
 * Dimensions with their tolerances. A value in parentheses is for reference: the order lets the maker adjust it, or another
 * diameter governs.
 *
 * @param brief   the brief that the spring answers
 * @param design  the spring
 * @param ends    its end style
 * @returns markup
 */
export function dimensionsPart(brief: Brief, design: Design, ends: EndStyle): string {
  const { units } = brief;
  const other = otherUnits(units);
  const head = `<tr><td></td><th scope="col">${units.length}</th><th scope="col">tolerance</th><th scope="col">${other.length}</th></tr>`;
  const rows = dimensionRows(brief, design).map(({ label, value, tolerance, other }) => {
    const allowed = tolerance === null ? blankLine : escapeMarkup(tolerance ?? "");
    return `<tr><th scope="row">${escapeMarkup(label)}</th><td>${escapeMarkup(value)}</td><td>${allowed}</td><td>${escapeMarkup(other ?? "")}</td></tr>`;
  });
  const table = `<table><thead>${head}</thead><tbody>${rows.join("")}${endRows(ends)}</tbody></table>`;
  return sheetPart("dimensions", "Dimensions", `${table}<p>${escapeMarkup(toleranceSentence(brief, design))}</p>`);
}

/** The dimensions in their order, as texts. */
export function dimensionRows(brief: Brief, design: Design): DimensionRow[] {
  return [...lengthRows(brief, design), ...turnRows(brief, design), rateRow(brief, design)];
}

function lengthRows({ units, service, order = {} }: Brief, design: Design): DimensionRow[] {
  const { governing, free = [] } = order;
  const { tolerance } = design;
  const row = (label: string, value: number, deviation: number | null | undefined, isReference: boolean): DimensionRow => ({
    label,
    value: reference(showNumber(value, "length", units), isReference),
    ...(isReference || deviation === undefined
      ? {}
      : { tolerance: deviation === null ? null : `± ${showNumber(deviation, "length", units, 2)}` }),
    other: reference(showNumber(value, "length", otherUnits(units)), isReference),
  });
  const diameter = (name: "outside" | "mean" | "inside", value: number) => {
    const isReference = free.includes("coil diameter") || (governing !== undefined && governing !== name);
    return row(`${upperFirst(name)} diameter`, value, tolerance.coilDiameter, isReference);
  };
  const range = (shown: Units) => freeLengthRangeNumbers(design, shown);
  const adjustable: DimensionRow[] =
    range(units) === null
      ? []
      : [{ label: "may be adjusted to", value: range(units) ?? "", other: range(otherUnits(units)) ?? "" }];
  const setRemoved = service.set === "removed" ? ", set removed" : "";
  return [
    row("Wire diameter", design.wireDiameter, tolerance.wireDiameter, free.includes("wire")),
    diameter("outside", design.outsideDiameter),
    diameter("mean", design.meanDiameter),
    diameter("inside", design.insideDiameter),
    row(`Free length${setRemoved}`, design.freeLength, tolerance.freeLength, free.includes("free length")),
    ...adjustable,
    row("Solid length", design.solidLength, undefined, true),
    row("Outside, at solid", design.outsideDiameterAtSolid, undefined, true),
  ];
}

function turnRows({ order }: Brief, { totalTurns, activeTurns }: Design): DimensionRow[] {
  const turns = (value: number) => reference(String(Number(value.toFixed(2))), order?.free?.includes("turns") ?? false);
  return [
    { label: "Total turns", value: turns(totalTurns) },
    { label: "Active turns", value: turns(activeTurns) },
  ];
}

function rateRow({ load, units }: Brief, { rate }: Design): DimensionRow {
  const asked = "rate" in load ? { tolerance: `asked ${quantityWords(load.rate, "rate", units)}` } : {};
  const shown = (digits: typeof units) => reference(show(rate, "rate", digits), !("rate" in load));
  return { label: "Rate", value: shown(units), ...asked, other: shown(otherUnits(units)) };
}

/** How far ground ends may be out of square and out of parallel is the customer's to say. */
function endRows({ name, closed, ground }: EndStyle): string {
  const row = (label: string, value: string) => `<tr><th scope="row">${label}</th><td colspan="3">${value}</td></tr>`;
  const words = `${name} (${closed ? "closed" : "open"}, ${ground ? "ground" : "not ground"})`;
  return row("Ends", escapeMarkup(words)) + (ground ? row("Squareness, parallelism", blankLine) : "");
}

function reference(text: string, isReference: boolean): string {
  return isReference ? `(${text})` : text;
}

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
