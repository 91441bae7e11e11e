import type { EndStyle } from "../model.ts";
import { quoted } from "../problem.ts";
import { type Entry, entryOf, listOf, openYaml, quantityAt, report, textAt, throwProblems, wordAt } from "./fields.ts";
import { endKeys } from "./keys.ts";
import type { CatalogText } from "./source-text.ts";

/**
 * YAML text of a list of end styles -> the end styles in the file's order. Throws a `ProblemError` with every problem of the
 * file: `duplicateName`, `overlap` (a pitch below the wire) and those of the fields.
 *
 * @param catalog  the file's text and name
 */
export function readEnds(catalog: CatalogText): EndStyle[] {
  const root = openYaml(catalog, endKeys);
  const names = endKeys.map(({ path }) => path);
  const entries = listOf(root, `write a list of end styles, each with ${names.join(", ")}`).map((item) => entryOf(item));
  const ends = entries.map(readEnd);
  for (const [i, { name }] of ends.entries()) {
    const entry = entries[i] as Entry;
    if (ends.findIndex((other) => other.name === name) < i)
      report(entry, "duplicateName", `"${quoted(name)}" comes twice`, "give each its own");
  }
  throwProblems(root.sheet);
  return ends;
}

/** Sums of decimals that differ by less are equal. */
const ROUNDING = 1e-9;

function readEnd(entry: Entry): EndStyle {
  const style = {
    name: textAt(entry, "name"),
    deadTurns: quantityAt(entry, "deadTurns"),
    solidExtra: quantityAt(entry, "solidExtra"),
    pitchTurns: quantityAt(entry, "pitchTurns"),
    pitchWires: quantityAt(entry, "pitchWires"),
    closed: wordAt(entry, "closed") === "true",
    ground: wordAt(entry, "ground") === "true",
  };
  const { deadTurns, solidExtra, pitchTurns, pitchWires } = style;
  if (pitchTurns + pitchWires > deadTurns + solidExtra + ROUNDING) {
    const got = `pitchTurns + pitchWires, ${pitchTurns + pitchWires}, is above deadTurns + solidExtra, ${deadTurns + solidExtra}`;
    report(entry, "overlap", got, "the pitch of the solid spring would be below the wire; both are equal for common ends");
  }
  return style;
}
