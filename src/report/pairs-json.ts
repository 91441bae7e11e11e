import type { NestedResult } from "../model.ts";
import { jsonText } from "../problem.ts";
import { compactBrief } from "./json.ts";

/**
 * A sweep of nested pairs as JSON for other programs: SI, the names of the model, catalog entries by name and source.
 *
 * @param result  a finished sweep of nested pairs
 * @returns keys in a fixed order, two spaces, ended by a line break; a figure that is not finite is null; does not throw
 */
export function pairsJson(result: NestedResult): string {
  const { brief, practice, nested, shares, walked, rejected, feasible, roles, pairsFit, lacking, pairs, alone, warnings } =
    result;
  const plain = {
    brief: compactBrief(brief),
    practice,
    nested,
    shares,
    walked,
    rejected,
    feasible,
    roles,
    pairsFit,
    lacking,
    pairs,
    alone,
    warnings,
  };
  return `${jsonText(plain, 2)}\n`;
}
