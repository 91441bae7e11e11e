import { checkWritable, printError, printOut, writeText } from "../disk/files.ts";
import { loadBrief } from "../disk/load-brief.ts";
import type { Brief, Lookup } from "../model.ts";
import { ProblemError } from "../problem.ts";
import { relaxJson } from "../report/files/json.ts";
import { relaxTable } from "../report/terminal/relax-table.ts";
import { warningWords } from "../report/text/labels.ts";
import { aboutFile } from "./briefs.ts";
import { checkApart, notingLookup, outputsOf } from "./outputs/output-paths.ts";
import { thisTerminal } from "./outputs/terminal.ts";
import { actedUnlessStopped, INTERRUPTED } from "./threads/interrupt.ts";

/** What may be typed after `relax`, as commander hands it over. */
export interface RelaxCommandOptions {
  readonly json?: string;
  readonly color: boolean;
}

/**
 * One brief -> the price of each of its limits, or what must give, on stdout.
 *
 * @returns exit status: 0, 1 where nothing fits and no limit or pair of limits makes anything fit, or 130 where Ctrl-C stopped it
 * @throws ProblemError for what is wrong in the brief, options and files
 */
export async function runRelax(path: string, { json, color }: RelaxCommandOptions): Promise<number> {
  if (json !== undefined && json !== "-") checkWritable(json, "--json");
  const { lookup, read } = notingLookup();
  const brief = singleBrief(path, lookup);
  checkApart(outputsOf({ json }, ["json"]), [path, ...read]);
  const result = await aboutFile(path, () => actedUnlessStopped("relax", { brief }));
  if (result === null) return INTERRUPTED;
  for (const warning of result.warnings) await printError(`warning: ${warningWords[warning]}\n`);
  if (json !== undefined && json !== "-") writeText(json, relaxJson(result), "--json");
  await printOut(json === "-" ? relaxJson(result) : relaxTable(result, thisTerminal(color)));
  return result.feasible > 0 || result.concessions.length > 0 ? 0 : 1;
}

function singleBrief(path: string, lookup: Lookup): Brief {
  const brief = loadBrief(path, lookup);
  if (brief.nested === undefined) return brief;
  const want = "relax prices the limits of single springs; leave nested out";
  throw new ProblemError([{ code: "nestedRelax", file: path, key: "nested", got: "asks for two springs", want }]);
}
