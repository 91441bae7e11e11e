import type { CautionName, NestedResult, NestedRole } from "../model.ts";
import { oneLine } from "../problem.ts";
import { askedSentence } from "./asked.ts";
import { cautionSentence } from "./caution-words.ts";
import { bites, countWords } from "./funnel.ts";
import { type GridColumn, gridLines } from "./grid.ts";
import { memoryWords } from "./memory-words.ts";
import { pairColumns } from "./pair-details.ts";
import { pairsLines } from "./pairs-columns.ts";
import { aloneSentence, pairCautions, pairsSentence, sharingSentence } from "./pairs-words.ts";
import { lowerFirst, wrap } from "./paragraph.ts";
import { strengthReadings } from "./strength.ts";
import type { Terminal } from "./table.ts";
import { cautionWords, screeningWords, warningWords } from "./words.ts";

/**
 * A sweep of nested pairs as a terminal shows it: what was asked, a line for each pair, the best one in full, where springs
 * fell in either place, what was taken, cautions. Text of the brief cannot act on the terminal.
 *
 * @param result    a finished sweep of nested pairs
 * @param terminal  its width and whether it takes bold
 * @returns lines no wider than the terminal, ended by a line break; does not throw
 */
export function pairsTable(result: NestedResult, { width, colour }: Terminal): string {
  const { brief, pairs } = result;
  const bold = (text: string) => (colour ? `\u001b[1m${text}\u001b[22m` : text);
  const fill = (text: string, indent = 0) => wrap(oneLine(text), width, indent);
  const { heads, rows, key } = pairsLines(result, width);
  const headed = ([head = "", ...lines]: readonly string[]) => [bold(head), ...lines];
  const [first] = pairs;
  const taken = brief.defaults.map(({ key, text, source }) => `${key} ${text} (${source})`).join("; ");
  const parts: readonly (readonly string[])[] = [
    [
      ...fill(brief.title).map(bold),
      ...fill(askedSentence(brief)),
      ...fill(sharingSentence(result)),
      ...fill(memoryWords(brief)),
    ],
    first ? [...key.flatMap((text) => fill(text, 2)), ...heads.map(bold), ...rows] : [],
    first ? [bold("Rank 1"), ...headed(gridLines(pairColumns(first, brief), width))] : [],
    [...fill(`${pairsSentence(result)} ${aloneSentence(result)}`), ...headed(gridLines(funnelColumns(result), width))],
    strengthReadings(brief).flatMap(({ materials, sentence }) =>
      fill(`Strength of ${materials.join(", ")}: ${lowerFirst(sentence)}`, 2),
    ),
    taken === "" ? [] : fill(`Not in the brief, so taken: ${taken}.`, 2),
    [
      ...result.warnings.flatMap((warning) => fill(`Caution: ${warningWords[warning]}`, 2)),
      ...springCautions(result).flatMap((words) => fill(`Caution: ${words}`, 2)),
      ...pairCautions(pairs).flatMap((words) => fill(`Caution: ${words}`, 2)),
    ],
    fill(screeningWords),
  ];
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

/** Where springs fell in either place, the limit that bites most first. */
function funnelColumns(result: NestedResult): GridColumn[] {
  const limits = bites(result).map(({ limit }) => limit);
  const counts = (role: NestedRole): GridColumn => ({
    head: `as the ${role}`,
    cells: limits.map((limit) => countWords(result.roles[role].rejected[limit] ?? 0)),
    align: "right",
    most: 20,
  });
  return [{ head: "fell at", cells: limits, align: "left", most: 20 }, counts("outer"), counts("inner")];
}

/** Cautions of single springs, each with the places of those that have it. */
function springCautions({ brief, pairs }: NestedResult): string[] {
  return (Object.keys(cautionWords) as CautionName[]).flatMap((caution) => {
    const having = (["outer", "inner"] as const).map((role) => ({
      role,
      springs: pairs.map((pair) => pair[role]).filter(({ cautions }) => cautions.includes(caution)),
    }));
    const roles = having.filter(({ springs }) => springs.length > 0).map(({ role }) => role);
    if (roles.length === 0) return [];
    const springs = having.flatMap((one) => one.springs);
    return [`some springs listed (${roles.join(" and ")}). ${cautionSentence(caution, springs, brief.units)}`];
  });
}
