import type { Brief, Design, EndStyle, Units } from "../model.ts";
import { otherUnits, show, showNumber } from "../units/show.ts";
import { quantityWords } from "./asked.ts";
import { freeLengthRangeNumbers } from "./free-length-words.ts";
import { escapeMarkup } from "./markup.ts";
import { blankLine, sheetPart } from "./sheet-fields.ts";
import { toleranceSentence } from "./sheet-tolerances.ts";

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
    return row(`${name.charAt(0).toUpperCase()}${name.slice(1)} diameter`, value, tolerance.coilDiameter, isReference);
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
