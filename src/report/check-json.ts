import type { CheckBrief, CheckResult } from "../model.ts";
import { jsonText } from "../problem.ts";
import { compactBrief } from "./json.ts";

/**
 * A check as JSON for other programs: SI, the names of the model, catalog entries by name.
 *
 * @param result  a finished check
 * @returns keys in a fixed order, two spaces, ended by a line break; a figure that is not finite is null; does not throw
 */
export function checkJson(result: CheckResult): string {
  const { brief, practice, passes, design, entries, quotedRate, disagreements, tableEnds, notes, warnings } = result;
  const plain = {
    brief: { ...compactBrief(brief), ...givenOf(brief) },
    practice,
    passes,
    design,
    entries,
    quotedRate,
    disagreements,
    tableEnds,
    notes,
    warnings,
  };
  return `${jsonText(plain, 2)}\n`;
}

/** The data of the spring in place of a sweep and a rank, which a check has no use for. */
function givenOf({ design }: CheckBrief): object {
  const { material, wire, ends, ...data } = design;
  return {
    sweep: undefined,
    rank: undefined,
    yieldFirst: undefined,
    design: { material: material.name, wire, ends: ends.name, ...data },
  };
}
