import type { CautionName, Design, Dimension, NestedResult, NestedRole, Pair } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { unitLabel } from "../../units/show.ts";
import { askedSentence } from "../text/brief-summary.ts";
import { cautionWords, screeningWords, warningWords } from "../text/labels.ts";
import { columnNumbers, type GridColumn, gridLines, lowerFirst, type Terminal, wrap } from "../text/layout.ts";
import { memoryWords, strengthReadings } from "../text/material-data.ts";
import { aloneSentence, pairCautions, pairColumns, pairsSentence, sharingSentence } from "../text/pairs.ts";
import { bites, countWords } from "../text/rejections.ts";
import { cautionSentence } from "../text/spring-summary.ts";
import { type Column, tableLines } from "./ranked-columns.ts";

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
  return [{ head: "rejected by", cells: limits, align: "left", most: 20 }, counts("outer"), counts("inner")];
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

/** A line for each pair, as a terminal shows it. */
export interface PairsLines {
  readonly heads: readonly string[];
  readonly rows: readonly string[];
  /** What letters in a column stand for. */
  readonly key: readonly string[];
}

/** A column of letters, and what they stand for. */
interface Lettered {
  readonly column: Column;
  readonly key: string;
}

/**
 * The ranked pairs in columns. Materials and end styles are two letters, the outer's and the inner's, where they differ among the
 * pairs and there is room; the best pair is shown in full elsewhere.
 *
 * @param result  a finished sweep of nested pairs
 * @param width   characters in a line
 */
function pairsLines({ pairs, brief: { units } }: NestedResult, width: number): PairsLines {
  const column = (above: string, label: string, dimension: Dimension, read: (pair: Pair) => number): Column => ({
    head: [above, label, unitLabel(dimension, units)],
    cells: columnNumbers(pairs.map(read), dimension, units),
    align: "right",
  });
  const figures = [
    column("", "rank", "number", ({ rank }) => rank),
    column("outer", "wire", "length", ({ outer }) => outer.wireDiameter),
    column("inner", "wire", "length", ({ inner }) => inner.wireDiameter),
    column("outer", "turns", "number", ({ outer }) => outer.totalTurns),
    column("inner", "turns", "number", ({ inner }) => inner.totalTurns),
    column("outer", "dia", "length", ({ outer }) => outer.outsideDiameter),
    column("outer", "share", "share", ({ share }) => share),
    column("outer", "safety", "number", ({ outer }) => outer.solidSafety),
    column("inner", "safety", "number", ({ inner }) => inner.solidSafety),
    column("total", "mass", "mass", ({ mass }) => mass),
  ];
  const names = [lettered("Material", pairs, ({ material }) => material), lettered("Ends", pairs, ({ ends }) => ends)];
  let shown = names.filter((name) => name !== null);
  const lines = () => tableLines([...figures, ...shown.map((name) => name.column)]);
  while (
    shown.length > 0 &&
    Math.max(
      ...lines()
        .flat()
        .map(({ length }) => length),
    ) > width
  )
    shown = shown.slice(0, -1);
  const [heads, rows] = lines();
  return { heads, rows, key: shown.map(({ key }) => key) };
}

/** null where every spring has the same, or where letters run out. */
function lettered(label: string, pairs: readonly Pair[], read: (spring: Design) => string): Lettered | null {
  const names = [...new Set(pairs.flatMap(({ outer, inner }) => [read(outer), read(inner)]))];
  if (names.length < 2 || names.length > 26) return null;
  const letter = (name: string) => String.fromCharCode(97 + names.indexOf(name));
  const cells = pairs.map(({ outer, inner }) => `${letter(read(outer))} ${letter(read(inner))}`);
  const meanings = names.map((name) => `${letter(name)} ${oneLine(name)}`);
  return {
    column: { head: ["", label.slice(0, 3).toLowerCase(), ""], cells, align: "left" },
    key: `${label} of outer and inner: ${meanings.join(", ")}.`,
  };
}
