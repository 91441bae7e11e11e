import { readBrief } from "../brief/read.ts";
import { lookupOn } from "../catalog/find.ts";
import { checkWritable, printError, printOut, readPageScript, readShelf, readText, readTextBeside, writeText } from "../files.ts";
import type { Brief, MeritName, SweepOptions, SweepResult } from "../model.ts";
import { type Problem, ProblemError } from "../problem.ts";
import { designsCsv } from "../report/csv.ts";
import { resultJson } from "../report/json.ts";
import { sweepTable } from "../report/table.ts";
import { warningWords } from "../report/words.ts";
import { sweep } from "../sweep.ts";

/** What may be typed after `sweep`, as commander hands it over. */
export interface SweepCommandOptions {
  readonly html?: string;
  readonly csv?: string;
  readonly json?: string;
  readonly top?: number;
  readonly each?: "wire" | "material" | "ends";
  readonly rank?: readonly MeritName[];
  readonly front?: readonly [MeritName, MeritName];
  readonly nearest?: true;
  readonly color: boolean;
}

/** Survivors that the report page draws at most: a chart of more is slow to brush. */
const mostDrawn = 5000;

/**
 * Briefs -> a table each on stdout, or the files asked for. Every brief and every output is checked before the first sweep.
 *
 * @returns exit status: 0, or 1 where nothing fits one of the briefs
 * @throws ProblemError for what is wrong in the briefs, options and files
 */
export async function runSweep(paths: readonly string[], options: SweepCommandOptions): Promise<number> {
  checkOutputs(paths, options);
  const briefs = readBriefs(paths).map((brief) => (options.rank ? rankedBy(brief, options.rank) : brief));

  let exitCode = 0;
  for (const [index, brief] of briefs.entries()) {
    const result = sweep(brief, sweepOptions(options));
    if (result.feasible === 0) exitCode = 1;
    for (const warning of result.warnings) await printError(`warning: ${warningWords[warning]}\n`);
    await writeOutputs(result, options);
    await printOut(`${index === 0 ? "" : "\n"}${printed(result, options)}`);
  }
  return exitCode;
}

function checkOutputs(paths: readonly string[], options: SweepCommandOptions): void {
  const fail = (code: string, key: string, got: string, want: string): never => {
    throw new ProblemError([{ code, key, got, want }]);
  };
  const outputs = (["html", "csv", "json"] as const).filter((name) => options[name] !== undefined);
  const named = outputs.map((name) => `--${name}`).join(", ");
  if (paths.length > 1 && outputs.length > 0) {
    fail("severalBriefs", named, `${paths.length} briefs and one file`, "sweep the briefs one at a time to write files");
  }
  if (options.html === "-") fail("pageOnStdout", "--html", "a page is not printed", "name a file, such as report.html");
  if (options.csv === "-" && options.json === "-")
    fail("twoOutputs", "--csv, --json", "both are -", "print one, write the other");
  for (const name of outputs) {
    const path = options[name] as string;
    if (path !== "-") checkWritable(path, `--${name}`);
  }
}

/** All briefs, or the problems of all of them together. */
function readBriefs(paths: readonly string[]): readonly Brief[] {
  const lookup = lookupOn(readShelf(), readTextBeside);
  const problems: Problem[] = [];
  const briefs = paths.map((path) => {
    try {
      return readBrief(readText(path), path, lookup);
    } catch (error) {
      if (!(error instanceof ProblemError)) throw error;
      problems.push(...error.problems);
      return undefined;
    }
  });
  if (!briefs.every((brief) => brief !== undefined)) throw new ProblemError(problems);
  return briefs;
}

/** The brief with the ranking that was typed, which is then no default. */
function rankedBy(brief: Brief, rank: readonly MeritName[]): Brief {
  return { ...brief, rank, defaults: brief.defaults.filter(({ key }) => key !== "rank") };
}

function sweepOptions({ top, each, front, nearest, html }: SweepCommandOptions): SweepOptions {
  return {
    ...(top === undefined ? {} : { top }),
    ...(each === undefined ? {} : { each }),
    ...(front === undefined ? {} : { frontAxes: front }),
    ...(nearest === undefined ? {} : { nearest }),
    ...(html === undefined ? {} : { sample: mostDrawn }),
  };
}

async function writeOutputs(result: SweepResult, { html, csv, json }: SweepCommandOptions): Promise<void> {
  if (csv !== undefined && csv !== "-") writeText(csv, designsCsv(result), "--csv");
  if (json !== undefined && json !== "-") writeText(json, resultJson(result), "--json");
  if (html !== undefined) {
    const { reportPage } = await import("../report/page.ts");
    writeText(html, await reportPage(result, readPageScript()), "--html");
  }
}

/** What goes to stdout: CSV or JSON where one was asked for there, else the table. */
function printed(result: SweepResult, { csv, json, color }: SweepCommandOptions): string {
  if (csv === "-") return designsCsv(result);
  if (json === "-") return resultJson(result);
  const { isTTY, columns } = process.stdout;
  // A table is laid out for 80 columns at least; a terminal that does not know its width says 0.
  return sweepTable(result, { width: Math.max(columns ?? 0, 80), colour: color && isTTY === true && !process.env.NO_COLOR });
}
