import { availableParallelism } from "node:os";
import { designToBrief } from "../brief/design-to-brief.ts";
import type { RankWord } from "../brief/sections/sweep.ts";
import { writeBrief } from "../brief/write.ts";
import { checkWritable, printError, printOut, readPageScript, writeText } from "../disk/files.ts";
import type { Brief, Design, MeritName, NestedResult, SweepOptions, SweepResult } from "../model.ts";
import { ProblemError } from "../problem.ts";
import { designsCsv, pairsCsv } from "../report/files/csv.ts";
import { pairsJson, resultJson } from "../report/files/json.ts";
import { MOST_DRAWN, type PageSource } from "../report/page/page-data.ts";
import { pairsPage } from "../report/page/pairs-page.ts";
import { type PairState, pairSolid, pairStates } from "../report/solid/body.ts";
import { pairsTable } from "../report/terminal/pairs-table.ts";
import { sweepTable } from "../report/terminal/sweep-table.ts";
import { warningWords } from "../report/text/labels.ts";
import { aboutFile, type BriefFile, pageSource, readBriefs } from "./briefs.ts";
import { type CalculationOption, calculation, checkCalculation, isPrinted } from "./outputs/calculation.ts";
import { type ChartFiles, checkChartFiles, writeChartFiles } from "./outputs/chart.ts";
import { checkAt, checkSpringFiles, type SpringFiles, writeSpringFiles } from "./outputs/datasheet.ts";
import { checkSurvivorFiles, type SurvivorFiles, writeSurvivors } from "./outputs/feasible-designs.ts";
import { checkApart, notingLookup, outputsOf, PLACED, placedForEach, withFolders } from "./outputs/output-paths.ts";
import { checkSolidFiles, SOLIDS, solidOutputs, writeSolidFiles } from "./outputs/solid.ts";
import { thisTerminal } from "./outputs/terminal.ts";
import { actedUnlessStopped, INTERRUPTED, sweptUnlessStopped } from "./threads/interrupt.ts";
import { Threads } from "./threads/threads.ts";

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
  readonly worked?: CalculationOption;
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
      const below = await calculationOfBest(result, options);
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
  checkCalculation(options.worked, options.pin === undefined ? alone : [...alone, "--pin"]);
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
    const { reportPage } = await import("../report/page/springs-page.ts");
    writeText(html, await reportPage(result, readPageScript("springs"), source), "--html");
  }
}

/** The working of the best design, where it is asked for and there is one; what of it goes to stdout. */
async function calculationOfBest({ brief, designs }: SweepResult, options: SweepCommandOptions): Promise<string> {
  const [best] = designs;
  if (options.worked !== undefined && best === undefined) {
    await printError("--worked: nothing fits, so there is no design to work through\n");
  }
  return best === undefined ? "" : calculation(options.worked, brief, best, options.color);
}

/** What goes to stdout: a pinned design, CSV or JSON where one was asked for there, else the table; survivors stand alone. */
function printed(result: SweepResult, { csv, json, ndjson, pin, color }: SweepCommandOptions): string {
  if (ndjson === "-") return "";
  if (pin !== undefined) return result.feasible === 0 ? "" : writeBrief(designToBrief(result.brief, rankedAt(result, pin)));
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

/** Options that ask for what only single springs have, each with what a pair has instead. */
const SINGLE_ONLY = {
  each: "a pair has two wires, materials and ends; leave it out",
  front: "pairs have no front; leave it out",
  pin: "check judges one spring; leave it out",
  worked: "the working is of single springs; leave it out",
  sheet: "a data sheet holds one spring; leave it out",
  drawing: "the drawing shows one spring; leave it out",
  dxf: "the drawing shows one spring; --step and --glb hold both",
  svg: "pairs have no chart; leave it out",
  png: "pairs have no chart; leave it out",
  ndjson: "pairs are ranked, not streamed; --json holds them",
  parquet: "pairs are ranked, not streamed; --csv holds them",
  nearest: "pairs have no nearest misses; leave it out",
} as const;

/**
 * Notes every option that nested springs do not take.
 *
 * @throws ProblemError `nestedOption`
 */
function checkNestedOptions(briefs: readonly Brief[], options: SweepCommandOptions): void {
  if (!briefs.some(({ nested }) => nested !== undefined)) return;
  const given = (Object.keys(SINGLE_ONLY) as (keyof typeof SINGLE_ONLY)[]).filter((name) => options[name] !== undefined);
  if (given.length === 0) return;
  throw new ProblemError(
    given.map((name) => ({
      code: "nestedOption",
      key: `--${name}`,
      got: "the brief asks for nested springs",
      want: SINGLE_ONLY[name],
    })),
  );
}

/**
 * One nested brief -> the table of its pairs, or the files asked for.
 *
 * @param before  what stands on stdout between this table and one above it
 * @returns whether a pair fits; null where Ctrl-C stopped it
 */
async function runNested(brief: Brief, options: SweepCommandOptions, before: string): Promise<boolean | null> {
  const { csv, html, json, top } = options;
  const result = await actedUnlessStopped("nested", { brief, options: top === undefined ? {} : { top } });
  if (result === null) return null;
  for (const warning of result.warnings) await printError(`warning: ${warningWords[warning]}\n`);
  if (csv !== undefined && csv !== "-") writeText(csv, pairsCsv(result), "--csv");
  if (json !== undefined && json !== "-") writeText(json, pairsJson(result), "--json");
  if (html !== undefined) writeText(html, await pairsPage(result, readPageScript("pairs")), "--html");
  await writePairSolids(result, options);
  await printOut(`${before}${printedPairs(result, options)}`);
  return result.pairsFit > 0;
}

/** The best pair as solids, where they are asked for and there is one. */
async function writePairSolids({ brief, pairs }: NestedResult, options: SweepCommandOptions): Promise<void> {
  const asked = SOLIDS.filter((kind) => options[kind] !== undefined).map((kind) => `--${kind}`);
  if (asked.length === 0) return;
  const [best] = pairs;
  if (best === undefined) return printError(`${asked.join(", ")}: no pair fits, so there are no springs to show\n`);
  const states = pairStates(brief, best);
  writeSolidFiles(brief, options, (name) => pairSolid(brief, best, states.find(([{ name: one }]) => one === name) as PairState));
}

function printedPairs(result: NestedResult, { csv, json, color }: SweepCommandOptions): string {
  if (csv === "-") return pairsCsv(result);
  if (json === "-") return pairsJson(result);
  return pairsTable(result, thisTerminal(color));
}
