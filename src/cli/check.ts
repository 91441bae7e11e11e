import { readCheckBrief } from "../brief/read.ts";
import { lookupOn } from "../catalog/find.ts";
import { check } from "../check.ts";
import { checkWritable, printError, printOut, readShelf, readText, readTextBeside, writeText } from "../files.ts";
import type { CheckResult } from "../model.ts";
import { ProblemError } from "../problem.ts";
import { checkJson } from "../report/check-json.ts";
import { checkTable } from "../report/check-table.ts";
import { warningWords } from "../report/words.ts";
import { thisTerminal } from "./terminal.ts";

/** What may be typed after `check`, as commander hands it over. */
export interface CheckCommandOptions {
  readonly json?: string;
  readonly color: boolean;
}

/**
 * One brief with a design -> the verdict on stdout.
 *
 * @returns exit status: 0 where the design passes, 1 where it fails a limit or its data disagree
 * @throws ProblemError for what is wrong in the brief, options and files
 */
export async function runCheck(path: string, { json, color }: CheckCommandOptions): Promise<number> {
  if (json !== undefined && json !== "-") checkWritable(json, "--json");
  const result = checkFile(path);
  for (const warning of result.warnings) await printError(`warning: ${warningWords[warning]}\n`);
  if (json !== undefined && json !== "-") writeText(json, checkJson(result), "--json");
  await printOut(json === "-" ? checkJson(result) : checkTable(result, thisTerminal(color)));
  return result.passes ? 0 : 1;
}

/** The check of a file; a problem that belongs to no file is about this one. */
function checkFile(path: string): CheckResult {
  try {
    return check(readCheckBrief(readText(path), path, lookupOn(readShelf(), readTextBeside)));
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    throw new ProblemError(error.problems.map((problem) => ({ file: path, ...problem })));
  }
}
