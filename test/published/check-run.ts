import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { CheckResult } from "../../src/model.ts";
import { newFolder, run } from "../cli/run.ts";

/** A check's JSON: the names of the model, SI. */
export type CheckJson = Pick<CheckResult, "passes" | "design" | "entries" | "disagreements" | "quotedRate">;

/**
 * Writes a brief with a design, and the files it names, to a new folder and has the built program judge it.
 *
 * @param brief   YAML
 * @param beside  text of the files beside it, by name
 * @throws Error with the program's own words where the brief is bad
 */
export function checkBrief(brief: string, beside: Readonly<Record<string, string>> = {}): CheckJson {
  const folder = newFolder();
  for (const [name, text] of Object.entries({ ...beside, "brief.yaml": brief })) writeFileSync(join(folder, name), text);
  const { stdout, stderr, status } = run(["check", "brief.yaml", "--json", "-"], folder);
  if (status === 2) throw new Error(`check ended with 2: ${stderr}`);
  return JSON.parse(stdout);
}
