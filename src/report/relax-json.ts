import type { RelaxResult } from "../model.ts";
import { jsonText } from "../problem.ts";
import { compactBrief } from "./json.ts";

/**
 * The prices of limits as JSON for other programs: SI, the names of the model, catalog entries by name and source.
 *
 * @param result  finished prices
 * @returns keys in a fixed order, two spaces, ended by a line break; a figure that is not finite is null; does not throw
 */
export function relaxJson(result: RelaxResult): string {
  const { brief, practice, walked, rejected, feasible, merit, best, prices, concessions, tableEnds, warnings } = result;
  const plain = {
    brief: compactBrief(brief),
    practice,
    walked,
    rejected,
    feasible,
    merit,
    best,
    prices,
    concessions,
    tableEnds,
    warnings,
  };
  return `${jsonText(plain, 2)}\n`;
}
