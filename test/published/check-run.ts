import { readCheckBrief } from "../../src/brief/read.ts";
import { readText } from "../../src/disk/files.ts";
import type { CheckResult } from "../../src/model.ts";
import { checkJson } from "../../src/report/files/json.ts";
import { check } from "../../src/studies/check.ts";
import { shelf, written } from "./run.ts";

/** A check's JSON: the names of the model, SI. */
export type CheckJson = Pick<CheckResult, "passes" | "design" | "entries" | "disagreements" | "quotedRate">;

/**
 * Writes a brief with a design, and the files it names, to a new folder, judges it, and hands back what `--json` would print.
 *
 * @param brief   YAML
 * @param beside  text of the files beside it, by name
 * @throws ProblemError where the brief is bad
 */
export function checkBrief(brief: string, beside: Readonly<Record<string, string>> = {}): CheckJson {
  const path = written(brief, beside);
  return JSON.parse(checkJson(check(readCheckBrief(readText(path), path, shelf))));
}
