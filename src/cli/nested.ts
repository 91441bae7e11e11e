import { printError, printOut, readPageScript, writeText } from "../files.ts";
import type { Brief, NestedResult } from "../model.ts";
import { ProblemError } from "../problem.ts";
import { pairsCsv } from "../report/pairs-csv.ts";
import { pairsJson } from "../report/pairs-json.ts";
import { pairsPage } from "../report/pairs-page.ts";
import { pairsTable } from "../report/pairs-table.ts";
import { type PairState, pairSolid, pairStates } from "../report/solid/body.ts";
import { warningWords } from "../report/words.ts";
import { actedUnlessStopped } from "./apart.ts";
import { SOLIDS, writeSolidFiles } from "./solid.ts";
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
  await writePairSolids(result, options);
  await printOut(`${before}${printed(result, options)}`);
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

function printed(result: NestedResult, { csv, json, color }: SweepCommandOptions): string {
  if (csv === "-") return pairsCsv(result);
  if (json === "-") return pairsJson(result);
  return pairsTable(result, thisTerminal(color));
}
