import { readBrief, readCheckBrief } from "../brief/read.ts";
import { lookupOn } from "../catalog/find.ts";
import type { Brief, CheckBrief, Lookup } from "../model.ts";
import { readShelf, readText, readTextBeside } from "./files.ts";

/**
 * What the names in a brief resolve to: the catalogs of this package, and files by their path beside the brief. Serves
 * `readBrief` and `readCheckBrief`, which take the text of a brief.
 */
export function shippedCatalogs(): Lookup {
  return lookupOn(readShelf(), readTextBeside);
}

/**
 * The brief in a file, in SI, with the catalog entries that it names; for `sweep`, `relax` and `nestedSweep`.
 *
 * @param path    of a YAML or JSON file
 * @param lookup  what its names resolve to
 * @throws ProblemError with every problem of the brief, each with its line, or why the file cannot be read
 */
export function loadBrief(path: string, lookup = shippedCatalogs()): Brief {
  return readBrief(readText(path), path, lookup);
}

/**
 * The brief in a file with the one spring that its `design` gives; for `check`.
 *
 * @param path    of a YAML or JSON file
 * @param lookup  what its names resolve to
 * @throws ProblemError as `loadBrief`
 */
export function loadCheckBrief(path: string, lookup = shippedCatalogs()): CheckBrief {
  return readCheckBrief(readText(path), path, lookup);
}
