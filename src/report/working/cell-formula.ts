import { tokensOf } from "./expression.ts";
import type { Derived, Reading, Step, Table } from "./step.ts";

/** What stands in a cell for a figure without end, since a cell cannot hold one. */
export const ENDLESS = 1e99;

/**
 * The equation of a step as a spreadsheet's formula.
 *
 * @param step   a step of the sheet
 * @param known  its steps by symbol
 * @returns such as `shearModulus*wireDiameter^4/(8*meanDiameter^3*activeTurns)`, without the sign of equality
 */
export function equationFormula({ expression, endlessBelow }: Derived, known: ReadonlyMap<string, Step>): string {
  const formula = formulaOf(expression, known);
  return endlessBelow === undefined ? formula : `IF(${nameOf(endlessBelow, known)}<0,1E+99,${formula})`;
}

function formulaOf(expression: string, known: ReadonlyMap<string, Step>): string {
  return tokensOf(expression)
    .map(({ kind, text }) => {
      if (kind === "symbol") return nameOf(text, known);
      if (kind === "pi") return "PI()";
      if (kind === "function") return text === "log" ? "LN" : text.toUpperCase();
      return text;
    })
    .join("");
}

function nameOf(symbol: string, known: ReadonlyMap<string, Step>): string {
  return (known.get(symbol) as Step).name;
}

/**
 * A reading of a table as a spreadsheet's formula, so that it follows the figure that it goes by.
 *
 * @param reading  where it stands
 * @param table    the table
 * @param column   the cells of a column of it, by number, such as `$A$3:$A$9`
 * @param known    the steps of the sheet by symbol
 */
export function readingFormula(
  reading: Reading,
  table: Table,
  column: (number: number) => string,
  known: ReadonlyMap<string, Step>,
): string {
  // Rows say "up to and including", the same size to a billionth counting as it.
  const atOrAbove = `COUNTIF(${column(0)},"<"&${nameOf(reading.by, known)}*(1-1E-9))+1`;
  const upper = `MIN(MAX(${atOrAbove},2),${table.rows.length})`;
  const row = { atOrAbove, upper, lower: `${upper}-1` }[reading.row];
  return `INDEX(${column(reading.column)},${row})`;
}
