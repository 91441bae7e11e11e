import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf, readText, readTextBeside } from "../../src/disk/files.ts";
import type { Lookup, SweepOptions, SweepResult } from "../../src/model.ts";
import { resultJson } from "../../src/report/files/json.ts";
import { sweep } from "../../src/studies/sweep.ts";

/** A sweep's JSON: figures of designs by the names of the model, SI. */
export type SweepJson = Pick<SweepResult, "walked" | "feasible" | "designs" | "rejected" | "proof">;

/** The shipped catalogs, and files beside a brief. */
export const shelf: Lookup = lookupOn(readShelf(), readTextBeside);

/**
 * Sweeps a brief file and hands back what `--json` would print.
 *
 * @throws ProblemError where the brief is bad, and Error where nothing fits
 */
export function sweepFile(path: string, options: SweepOptions = {}): SweepJson {
  const result = sweep(readBrief(readText(path), path, shelf), options);
  if (result.feasible === 0) throw new Error(`nothing fits ${path}`);
  return JSON.parse(resultJson(result));
}

/**
 * Writes a brief, and the files it names, to a new folder and sweeps it.
 *
 * @param brief   YAML
 * @param beside  text of the files beside it, by name
 */
export function sweepBrief(brief: string, beside: Readonly<Record<string, string>> = {}, options: SweepOptions = {}): SweepJson {
  return sweepFile(written(brief, beside), options);
}

/** Path of a brief written to a new folder with the files that it names. */
export function written(brief: string, beside: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), "coilsieve-"));
  for (const [name, text] of Object.entries({ ...beside, "brief.yaml": brief })) writeFileSync(join(folder, name), text);
  return join(folder, "brief.yaml");
}

/** A stock file of wires named by their diameters. */
export function stockOf(diameters: readonly string[]): string {
  return ["# Wires of a book's example", "label,diameter", ...diameters.map((diameter) => `${diameter},${diameter}`), ""].join(
    "\n",
  );
}
