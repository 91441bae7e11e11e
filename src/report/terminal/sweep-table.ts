import type { CautionName, Design, Miss, SweepResult, Units } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { askedSentence } from "../text/brief-summary.ts";
import { limitWords, screeningWords, warningWords } from "../text/labels.ts";
import { lowerFirst, type Terminal, wrap } from "../text/layout.ts";
import { memoryWords, strengthReadings, tableEndsWords } from "../text/material-data.ts";
import { bites, countWords, missWords, percentText, walkedSentence } from "../text/rejections.ts";
import { cautionSentence, dutySentences } from "../text/spring-summary.ts";
import { proofWords } from "../text/verdict.ts";
import { rankedAgainWords } from "../text/yield.ts";
import { columnsOf, sharedWords, tableLines } from "./ranked-columns.ts";

/**
 * A sweep as a terminal shows it: what was asked, the ranked designs, where the others fell, how strength was read, what the
 * practice supplied, cautions. Text of the brief cannot act on the terminal.
 *
 * @param result    a finished sweep
 * @param terminal  its width and whether it takes bold
 * @returns lines no wider than the terminal, ended by a line break; does not throw
 */
export function sweepTable(result: SweepResult, terminal: Terminal): string {
  const { brief } = result;
  const bold = (text: string) => (terminal.colour ? `\u001b[1m${text}\u001b[22m` : text);
  const fill = (text: string, indent = 0) => (text === "" ? [] : wrap(oneLine(text), terminal.width, indent));
  const parts: string[][] = [
    [...fill(brief.title).map(bold), ...fill(askedSentence(brief)), ...fill(memoryWords(brief))],
    result.designs.length > 0 ? rankedPart(result, terminal.width, bold, fill) : [],
    dutyPart(result, bold, fill),
    [...fill(walkedSentence(result)), ...funnelLines(result, terminal.width)],
    result.proof === undefined ? [] : fill(proofWords(result.proof, brief)),
    fill(tableEndsWords(result.tableEnds, result.feasible > 0, brief.units)),
    missPart(result.nearest ?? [], brief.units, bold, fill),
    strengthReadings(brief).flatMap(({ materials, sentence }) =>
      fill(`Strength of ${materials.join(", ")}: ${lowerFirst(sentence)}`, 2),
    ),
    defaultsPart(result, fill),
    cautionsPart(result, fill),
    fill(screeningWords),
  ];
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

type Fill = (text: string, indent?: number) => string[];
type Bold = (text: string) => string;

function rankedPart(result: SweepResult, width: number, bold: Bold, fill: Fill): string[] {
  const { columns, shared, key } = columnsOf(result, width);
  const above = [rankedAgainWords(result), sharedWords(shared), ...key]
    .filter((text) => text !== "")
    .flatMap((text) => fill(text, 2));
  const [heads, rows] = tableLines(columns);
  return [...above, ...(above.length > 0 ? [""] : []), ...heads.map(bold), ...rows];
}

function dutyPart({ brief, designs: [first] }: SweepResult, bold: Bold, fill: Fill): string[] {
  const sentences = first === undefined ? [] : dutySentences(brief, first);
  return sentences.length === 0 ? [] : [bold("Rank 1"), ...sentences.flatMap((sentence) => fill(sentence, 2))];
}

function funnelLines(result: SweepResult, width: number): string[] {
  const rows = bites(result);
  const names = Math.max(...rows.map(({ limit }) => limit.length));
  const counts = Math.max(...rows.map(({ count }) => countWords(count).length));
  const lines = rows.map(
    ({ limit, count, fraction }) =>
      `  ${limit.padEnd(names)}  ${countWords(count).padStart(counts)}  ${percentText(fraction).padStart(8)}`,
  );
  return lines.length > 0 ? [...wrap("Rejected by limit, each candidate by the first that it breaks:", width, 0), ...lines] : [];
}

function missPart(misses: readonly Miss[], units: Units, bold: Bold, fill: Fill): string[] {
  if (misses.length === 0) return [];
  const lines = misses.flatMap((miss) =>
    fill(`${miss.limit}: ${missWords(miss, units, (limit) => limit)}. ${limitWords[miss.limit].raise}`, 2),
  );
  return [
    bold("Nearest misses"),
    ...lines,
    ...fill("coilsieve relax, on the same brief, prices each limit, or says what must give.", 2),
  ];
}

function defaultsPart({ brief }: SweepResult, fill: Fill): string[] {
  if (brief.defaults.length === 0) return [];
  return fill(
    `Not in the brief, so taken: ${brief.defaults.map(({ key, text, source }) => `${key} ${text} (${source})`).join("; ")}.`,
    2,
  );
}

function cautionsPart({ brief, designs, warnings }: SweepResult, fill: Fill): string[] {
  const names = [...new Set(designs.flatMap(({ cautions }) => cautions))];
  const spring = (name: CautionName) => {
    const having = designs.filter(({ cautions }) => cautions.includes(name));
    return `${ranksOf(having, designs)}. ${cautionSentence(name, having, brief.units)}`;
  };
  return [
    ...warnings.flatMap((warning) => fill(`Caution: ${warningWords[warning]}`, 2)),
    ...names.flatMap((name) => fill(`Caution: ${spring(name)}`, 2)),
  ];
}

function ranksOf(having: readonly Design[], designs: readonly Design[]): string {
  if (having.length === designs.length) return "all designs listed";
  const ranks = having.map(({ rank }) => rank);
  return `rank ${ranks.slice(0, 12).join(", ")}${ranks.length > 12 ? " and others" : ""}`;
}
