import { type BriefKey, briefKeys, keyAt } from "./keys.ts";

/** Where the comments of the starter brief begin, columns. */
const commentColumn = 50;

/**
 * A commented brief to begin from: every key with what it means, those that it does not give as comments. It runs as it
 * stands; its scenario is invented and its head says so.
 *
 * @param schema  path of the JSON Schema of a brief, from the brief's own folder; editors look for it in the first line
 */
export function starterBrief(schema?: string): string {
  const head = [
    ...(schema === undefined ? [] : [`# yaml-language-server: $schema=${schema}`]),
    "# A brief for coilsieve, to be changed (the scenario is invented). Every number carries its unit, mm or in, N or lbf;",
    "# a quantity is exact, has a tolerance (45 N ± 10 %), or is a window of freedom ({ min: 40 N, max: 50 N }).",
  ];
  return `${[...head, ...briefKeys.filter(isShown).flatMap(linesOf)].join("\n")}\n`;
}

/** A key stands there on its own unless the section above it is shown whole, as its example. */
function isShown(key: BriefKey): boolean {
  const parent = key.path.replace(/(\[\])?\.?[^.]*$/, "");
  return parent === "" || keyAt(parent).example === undefined;
}

function linesOf(key: BriefKey): string[] {
  const steps = key.path.split(".");
  const indent = "  ".repeat(steps.length - 1);
  const mark = key.started ? "" : "# ";
  const [first = "", ...rest] = (key.example ?? key.words?.[0] ?? "").split("\n");
  const isList = first.startsWith("- ");
  const line = `${indent}${mark}${steps.at(-1)}:${first === "" || isList ? "" : ` ${first}`}`.padEnd(commentColumn);
  const items = isList ? [first, ...rest].map((item) => `${indent}  ${mark}${item}`) : [];
  const gap = steps.length === 1 ? [""] : [];
  // A key that takes one of several words shows them beside it and its meaning above.
  const choices = key.kind === "word" && key.words !== undefined && key.words.length > 1 ? key.words.join(" | ") : undefined;
  if (choices !== undefined) return [...gap, `${indent}# ${key.sentence}`, `${line}# ${choices}`];
  return [...gap, `${line}# ${key.sentence}`, ...items];
}
