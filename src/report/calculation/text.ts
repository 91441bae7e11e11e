import { oneLine } from "../../problem.ts";
import { type Terminal, wrap } from "../text/layout.ts";
import { numbersPutIn, printedValue, stepsBySymbol } from "./printed.ts";
import type { Calculation, Step } from "./steps.ts";

/** Characters that symbols take, the longest with a space after it. */
const INDENT = 6;

/**
 * A calculation sheet as a terminal shows it. Text of the brief cannot act on the terminal.
 *
 * @param working   the sheet
 * @param terminal  its width and whether it takes bold
 * @returns lines ended by a line break; none wider than the terminal but for a long word's sake
 */
export function calculationText(working: Calculation, { width, colour }: Terminal): string {
  const known = stepsBySymbol(working);
  const bold = (text: string) => (colour ? `\u001b[1m${text}\u001b[22m` : text);
  const fill = (text: string, indent = 0) => wrap(oneLine(text), width, indent);
  const chapters = working.chapters.map(({ title, steps, notes }, i) => [
    bold(`${i + 1}. ${title}`),
    ...steps.flatMap((step) => stepLines(step, known, width)),
    ...notes.flatMap((note) => indented(note, 2, width)),
  ]);
  const head = [...fill(`Working: ${working.title}`).map(bold), ...fill(working.subject)];
  const cautions = working.cautions.flatMap((caution) => fill(`Caution: ${caution}`, 2));
  return `${[head, ...chapters, cautions].map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

function stepLines(step: Step, known: ReadonlyMap<string, Step>, width: number): string[] {
  const value = printedValue(step);
  if (step.kind === "given") return besideSymbol(step, `${step.label} = ${value} [${step.source}]`, width);
  const put = numbersPutIn(step, known);
  const endless = step.value === Number.POSITIVE_INFINITY ? `, for ${step.endlessBelow} is below zero` : "";
  return [
    ...besideSymbol(step, `${step.label} [${step.source}]`, width),
    ...indented(`= ${step.expression}`, INDENT + 2, width),
    ...(put === step.expression ? [] : indented(`= ${put}`, INDENT + 2, width)),
    ...indented(`= ${value}${endless}`, INDENT + 2, width),
  ];
}

/** Words in a column of their own, the symbol before the first line of them. */
function besideSymbol({ symbol }: Step, words: string, width: number): string[] {
  return wrap(oneLine(words), width - INDENT - 2, 0).map((line, i) => `  ${(i === 0 ? symbol : "").padEnd(INDENT)}${line}`);
}

function indented(text: string, indent: number, width: number): string[] {
  return wrap(oneLine(text), width - indent, 2).map((line) => " ".repeat(indent) + line);
}
