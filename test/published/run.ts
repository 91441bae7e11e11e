import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { SweepResult } from "../../src/model.ts";
import { newFolder, run } from "../cli/run.ts";

/** A sweep's JSON: figures of designs by the names of the model, SI. */
export type SweepJson = Pick<SweepResult, "walked" | "feasible" | "designs" | "rejected">;

/**
 * Runs the built program on a brief file, as a user would.
 *
 * @throws Error with the program's own words where nothing fits or the brief is bad
 */
export function sweepFile(path: string, options: readonly string[] = []): SweepJson {
  const { stdout, stderr, status } = run(["sweep", path, "--json", "-", ...options]);
  if (status !== 0) throw new Error(`sweep ${path} ended with ${status}: ${stderr}`);
  return JSON.parse(stdout);
}

/**
 * Writes a brief, and the files it names, to a new folder and runs the built program on it.
 *
 * @param brief   YAML
 * @param beside  text of the files beside it, by name
 */
export function sweepBrief(
  brief: string,
  beside: Readonly<Record<string, string>> = {},
  options: readonly string[] = [],
): SweepJson {
  const folder = newFolder();
  for (const [name, text] of Object.entries({ ...beside, "brief.yaml": brief })) writeFileSync(join(folder, name), text);
  return sweepFile(join(folder, "brief.yaml"), options);
}

/** A stock file of wires named by their diameters. */
export function stockOf(diameters: readonly string[]): string {
  return ["# Wires of a book's example", "label,diameter", ...diameters.map((diameter) => `${diameter},${diameter}`), ""].join(
    "\n",
  );
}
