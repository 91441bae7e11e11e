import { printError, printOut, readPageScript, writeText } from "../files.ts";
import type { Brief, NestedResult } from "../model.ts";
import { ProblemError } from "../problem.ts";
import { pairsCsv } from "../report/pairs-csv.ts";
import { pairsJson } from "../report/pairs-json.ts";
import { pairsPage } from "../report/pairs-page.ts";
import { pairsTable } from "../report/pairs-table.ts";
import { warningWords } from "../report/words.ts";
import { actedUnlessStopped } from "./apart.ts";
import type { SweepCommandOptions } from "./sweep.ts";
import { thisTerminal } from "./terminal.ts";

/** Options that ask for what only single springs have, each with what a pair has instead. */
const SINGLE_ONLY = {
  each: "a pair has two wires, materials and ends; leave it out",
  front: "pairs have no front; leave it out",
  pin: "check judges one spring; leave it out",
  worked: "the working is of single springs; leave it out",
  sheet: "a data sheet holds one spring; leave it out",
  drawing: "the drawing shows one spring; leave it out",
  at: "the drawing shows one spring; leave it out",
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
export function checkNestedOptions(briefs: readonly Brief[], options: SweepCommandOptions): void {
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
export async function runNested(brief: Brief, options: SweepCommandOptions, before: string): Promise<boolean | null> {
  const { csv, html, json, top } = options;
  const result = await actedUnlessStopped("nested", { brief, options: top === undefined ? {} : { top } });
  if (result === null) return null;
  for (const warning of result.warnings) await printError(`warning: ${warningWords[warning]}\n`);
  if (csv !== undefined && csv !== "-") writeText(csv, pairsCsv(result), "--csv");
  if (json !== undefined && json !== "-") writeText(json, pairsJson(result), "--json");
  if (html !== undefined) writeText(html, await pairsPage(result, readPageScript("pairs")), "--html");
  await printOut(`${before}${printed(result, options)}`);
  return result.pairsFit > 0;
}

function printed(result: NestedResult, { csv, json, color }: SweepCommandOptions): string {
  if (csv === "-") return pairsCsv(result);
  if (json === "-") return pairsJson(result);
  return pairsTable(result, thisTerminal(color));
}
