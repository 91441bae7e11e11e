import { availableParallelism } from "node:os";
import { pinnedBrief } from "../brief/pin.ts";
import type { RankWord } from "../brief/rank.ts";
import { writeBrief } from "../brief/write.ts";
import { checkWritable, printError, printOut, readPageScript, writeText } from "../files.ts";
import type { Design, MeritName, SweepOptions, SweepResult } from "../model.ts";
import { ProblemError } from "../problem.ts";
import { designsCsv } from "../report/csv.ts";
import { resultJson } from "../report/json.ts";
import { MOST_DRAWN, type PageSource } from "../report/page-data.ts";
import { sweepTable } from "../report/table.ts";
import { warningWords } from "../report/words.ts";
import { aboutFile } from "./about-file.ts";
import { type BriefFile, pageSource, readBriefs } from "./briefs.ts";
import { type ChartFiles, checkChartFiles, writeChartFiles } from "./chart.ts";
import { checkApart, notingLookup, outputsOf } from "./files-apart.ts";
import { checkNestedOptions, runNested } from "./nested.ts";
import { PLACED, placedForEach, withFolders } from "./places.ts";
import { checkAt, checkSpringFiles, type SpringFiles, writeSpringFiles } from "./sheet.ts";
import { checkSolidFiles, SOLIDS, solidOutputs } from "./solid.ts";
import { INTERRUPTED, sweptUnlessStopped } from "./stop.ts";
import { checkSurvivorFiles, type SurvivorFiles, writeSurvivors } from "./survivors.ts";
import { thisTerminal } from "./terminal.ts";
import { Threads } from "./threads.ts";
import { checkWorked, isPrinted, type WorkedOption, worked } from "./worked.ts";

/** What may be typed after `sweep`, as commander hands it over. */
export interface SweepCommandOptions extends SpringFiles, ChartFiles, SurvivorFiles {
  readonly html?: string;
  readonly csv?: string;
  readonly json?: string;
  readonly top?: number;
  readonly each?: "wire" | "material" | "ends";
  readonly rank?: readonly RankWord[];
  readonly front?: readonly [MeritName, MeritName];
  readonly nearest?: true;
  readonly pin?: number;
  readonly workers?: number;
  readonly worked?: WorkedOption;
  readonly color: boolean;
}

/**
 * Briefs -> a table each on stdout, or the files asked for. Every brief and every output is checked before the first sweep. Briefs
 * are swept one after the other, each in all threads: tables come in order, and one long brief leaves no thread idle.
 *
 * @returns exit status: 0, 1 where nothing fits one of the briefs, or 130 where Ctrl-C stopped a sweep
 * @throws ProblemError for what is wrong in the briefs, options and files, or `threadDied`
 */
export async function runSweep(paths: readonly string[], typed: SweepCommandOptions): Promise<number> {
  const { files, optionsOf } = await checked(paths, typed);
  const threads = new Threads(typed.workers ?? availableParallelism());
  let exitCode = 0;
  try {
    for (const [index, file] of files.entries()) {
      const { brief } = file;
      const options = optionsOf[index] as SweepCommandOptions;
      const before = index === 0 ? "" : "\n";
      if (brief.nested !== undefined) {
        const fits = await aboutFile(file.path, () => runNested(brief, options, before));
        if (fits === null) return INTERRUPTED;
        if (!fits) exitCode = 1;
        continue;
      }
      const result = await aboutFile(file.path, () => sweptUnlessStopped(threads, brief, sweepOptions(options)));
      if (result === null) return INTERRUPTED;
      if (result.feasible === 0) exitCode = 1;
      const shown = printed(result, options);
      for (const warning of result.warnings) await printError(`warning: ${warningWords[warning]}\n`);
      await writeOutputs(result, options, pageSource(file, options));
      await writeChartFiles(result, options);
      if (!(await writeSurvivors(result, options))) return INTERRUPTED;
      await writeSpringFiles(brief, result.designs[0], "nothing fits, so there is no spring to show", options);
      const below = await workedBest(result, options);
      if (options.pin !== undefined && result.feasible === 0)
        await printError("--pin: nothing fits, so there is no design to pin\n");
      else await printOut(`${before}${shown}${below}`);
    }
  } finally {
    await threads.close();
  }
  return exitCode;
}

/** Options that name one file for a brief; those of `SOLIDS` may name one for each length. */
const FILES = [...PLACED.filter((name) => !SOLIDS.some((solid) => solid === name)), "worked"] as const;

/** The briefs, each with its options, once all is found right; a folder that was made for it is gone where something is wrong. */
function checked(
  paths: readonly string[],
  typed: SweepCommandOptions,
): Promise<{ readonly files: readonly BriefFile[]; readonly optionsOf: readonly SweepCommandOptions[] }> {
  const optionsOf = placedForEach(paths, typed);
  return withFolders(typed, async () => {
    for (const options of optionsOf) await checkOutputs(paths, options);
    const { lookup, read } = notingLookup();
    const files = readBriefs(paths, lookup, typed.rank);
    const briefs = files.map(({ brief }) => brief);
    checkNestedOptions(briefs, typed);
    for (const brief of briefs) checkAt(brief, typed);
    const eachBrief = briefs.map((brief, i) => [brief, optionsOf[i] as SweepCommandOptions] as const);
    for (const [brief, options] of eachBrief) checkSolidFiles(brief, options);
    const written = eachBrief.flatMap(([brief, options]) => [...outputsOf(options, FILES), ...solidOutputs(brief, options)]);
    checkApart(written, [...paths, ...read]);
    return { files, optionsOf };
  });
}

async function checkOutputs(paths: readonly string[], options: SweepCommandOptions): Promise<void> {
  const fail = (code: string, key: string, got: string, want: string): never => {
    throw new ProblemError([{ code, key, got, want }]);
  };
  const outputs = (["html", "csv", "json"] as const).filter((name) => options[name] !== undefined);
  if (paths.length > 1 && !isPrinted(options.worked)) {
    fail("severalBriefs", "--worked", `${paths.length} briefs and one file`, "work through the briefs one at a time");
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
  await checkChartFiles(options);
  checkSpringFiles(options);
  checkSurvivorFiles(options);
  checkWorked(options.worked, options.pin === undefined ? alone : [...alone, "--pin"]);
}

function sweepOptions({ top, each, front, nearest, html, svg, png }: SweepCommandOptions): SweepOptions {
  return {
    ...(top === undefined ? {} : { top }),
    ...(each === undefined ? {} : { each }),
    ...(front === undefined ? {} : { frontAxes: front }),
    ...(nearest === undefined ? {} : { nearest }),
    ...(html === undefined && svg === undefined && png === undefined ? {} : { sample: MOST_DRAWN }),
    ...(html === undefined ? {} : { byWire: true as const }),
  };
}

async function writeOutputs(result: SweepResult, { html, csv, json }: SweepCommandOptions, source: PageSource): Promise<void> {
  if (csv !== undefined && csv !== "-") writeText(csv, designsCsv(result), "--csv");
  if (json !== undefined && json !== "-") writeText(json, resultJson(result), "--json");
  if (html !== undefined) {
    const { reportPage } = await import("../report/page.ts");
    writeText(html, await reportPage(result, readPageScript("springs"), source), "--html");
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
  if (pin !== undefined) return result.feasible === 0 ? "" : writeBrief(pinnedBrief(result.brief, rankedAt(result, pin)));
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
