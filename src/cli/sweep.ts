import { pinnedBrief } from "../brief/pin.ts";
import { readBrief } from "../brief/read.ts";
import { writeBrief } from "../brief/write.ts";
import { lookupOn } from "../catalog/find.ts";
import { checkWritable, printError, printOut, readPageScript, readShelf, readText, readTextBeside, writeText } from "../files.ts";
import type { Brief, Design, MeritName, SweepOptions, SweepResult } from "../model.ts";
import { type Problem, ProblemError } from "../problem.ts";
import { designsCsv } from "../report/csv.ts";
import { resultJson } from "../report/json.ts";
import { sweepTable } from "../report/table.ts";
import { warningWords } from "../report/words.ts";
import { sweep } from "../sweep.ts";
import { checkNestedOptions, runNested } from "./nested.ts";
import { checkSpringFiles, type SpringFiles, springOptions, writeSpringFiles } from "./sheet.ts";
import { checkSurvivorFiles, type SurvivorFiles, survivorOptions, writeSurvivors } from "./survivors.ts";
import { thisTerminal } from "./terminal.ts";
import { checkWorked, isPrinted, type WorkedOption, worked } from "./worked.ts";

/** What may be typed after `sweep`, as commander hands it over. */
export interface SweepCommandOptions extends SpringFiles, SurvivorFiles {
  readonly html?: string;
  readonly csv?: string;
  readonly json?: string;
  readonly top?: number;
  readonly each?: "wire" | "material" | "ends";
  readonly rank?: readonly MeritName[];
  readonly front?: readonly [MeritName, MeritName];
  readonly nearest?: true;
  readonly pin?: number;
  readonly worked?: WorkedOption;
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
  checkNestedOptions(briefs, options);

  let exitCode = 0;
  for (const [index, brief] of briefs.entries()) {
    const before = index === 0 ? "" : "\n";
    if (brief.nested !== undefined) {
      if (!(await runNested(brief, options, before))) exitCode = 1;
      continue;
    }
    const result = sweep(brief, sweepOptions(options));
    if (result.feasible === 0) exitCode = 1;
    for (const warning of result.warnings) await printError(`warning: ${warningWords[warning]}\n`);
    await writeOutputs(result, options);
    await writeSurvivors(result, options);
    await writeSpringFiles(brief, result.designs[0], "nothing fits, so there is no spring to show", options);
    const below = await workedBest(result, options);
    if (options.pin !== undefined && result.feasible === 0)
      await printError("--pin: nothing fits, so there is no design to pin\n");
    else await printOut(`${before}${printed(result, options)}${below}`);
  }
  return exitCode;
}

function checkOutputs(paths: readonly string[], options: SweepCommandOptions): void {
  const fail = (code: string, key: string, got: string, want: string): never => {
    throw new ProblemError([{ code, key, got, want }]);
  };
  const outputs = (["html", "csv", "json"] as const).filter((name) => options[name] !== undefined);
  const sheet = isPrinted(options.worked) ? [] : ["--worked"];
  const files = [...springOptions(options), ...survivorOptions(options)];
  const named = [...outputs.map((name) => `--${name}`), ...files, ...sheet].join(", ");
  if (paths.length > 1 && named !== "") {
    fail("severalBriefs", named, `${paths.length} briefs and one file`, "sweep the briefs one at a time to write files");
  }
  if (paths.length > 1 && options.pin !== undefined) {
    fail("severalBriefs", "--pin", `${paths.length} briefs and one rank`, "sweep the brief that ranks it");
  }
  const alone = (["csv", "json", "ndjson"] as const).filter((name) => options[name] === "-").map((name) => `--${name}`);
  if (options.pin !== undefined && alone.length > 0) {
    fail("twoOutputs", "--pin", "stdout is to hold something else too", "write that to a file");
  }
  if (options.html === "-") fail("pageOnStdout", "--html", "a page is not printed", "name a file, such as report.html");
  if (alone.length > 1) {
    const all = alone.length > 2 ? "all" : "both";
    fail("twoOutputs", alone.join(", "), `${all} are -`, `print one, write the other${alone.length > 2 ? "s" : ""}`);
  }
  for (const name of outputs) {
    const path = options[name] as string;
    if (path !== "-") checkWritable(path, `--${name}`);
  }
  checkSpringFiles(options);
  checkSurvivorFiles(options);
  checkWorked(options.worked, options.pin === undefined ? alone : [...alone, "--pin"]);
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

/** The working of the best design, where it is asked for and there is one; what of it goes to stdout. */
async function workedBest({ brief, designs }: SweepResult, options: SweepCommandOptions): Promise<string> {
  const [best] = designs;
  if (options.worked !== undefined && best === undefined) {
    await printError("--worked: nothing fits, so there is no design to work through\n");
  }
  return best === undefined ? "" : worked(options.worked, brief, best, options.color);
}

/** What goes to stdout: a pinned design, CSV or JSON where one was asked for there, else the table; survivors stand alone. */
function printed(result: SweepResult, { csv, json, ndjson, pin, color }: SweepCommandOptions): string {
  if (ndjson === "-") return "";
  if (pin !== undefined) return writeBrief(pinnedBrief(result.brief, rankedAt(result, pin)));
  if (csv === "-") return designsCsv(result);
  if (json === "-") return resultJson(result);
  return sweepTable(result, thisTerminal(color));
}

/** The design of a rank, which must be among those kept. */
function rankedAt({ designs }: SweepResult, rank: number): Design {
  const design = designs.find((one) => one.rank === rank);
  if (design !== undefined) return design;
  const got = `rank ${rank} is not among the ${designs.length} designs kept`;
  throw new ProblemError([
    { code: "noRank", key: "--pin", got, want: `name one up to ${designs.length}, or keep more with --top` },
  ]);
}
