import type { EndStyle } from "../model.ts";
import { type Entry, entryOf, listOf, openYaml, quantityAt, report, textAt, throwProblems, wordAt } from "./fields.ts";
import type { CatalogText } from "./text.ts";

const constants = ["deadTurns", "solidExtra", "pitchTurns", "pitchWires"] as const;

/**
 * YAML text of a list of end styles -> the end styles in the file's order. Throws a `ProblemError` with every problem of the
 * file: `duplicateName` and those of the fields.
 *
 * @param catalog  the file's text and name
 */
export function readEnds(catalog: CatalogText): EndStyle[] {
  const root = openYaml(catalog);
  const entries = listOf(root, `write a list of end styles, each with name, ${constants.join(", ")}, closed, ground`).map(
    (item) => entryOf(item, ["name", ...constants, "closed", "ground"]),
  );
  const ends = entries.map(readEnd);
  for (const [i, { name }] of ends.entries()) {
    const entry = entries[i] as Entry;
    if (ends.findIndex((other) => other.name === name) < i)
      report(entry, "duplicateName", `"${name}" comes twice`, "give each its own");
  }
  throwProblems(root.sheet);
  return ends;
}

function readEnd(entry: Entry): EndStyle {
  const constant = (key: (typeof constants)[number]) => quantityAt(entry, key, "number", "zero or more");
  return {
    name: textAt(entry, "name"),
    deadTurns: constant("deadTurns"),
    solidExtra: constant("solidExtra"),
    pitchTurns: constant("pitchTurns"),
    pitchWires: constant("pitchWires"),
    closed: wordAt(entry, "closed", ["false", "true"]) === "true",
    ground: wordAt(entry, "ground", ["false", "true"]) === "true",
  };
}
