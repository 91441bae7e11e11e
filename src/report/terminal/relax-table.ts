import type { Concession, RelaxResult } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { askedSentence } from "../text/brief-summary.ts";
import { figureWithValue, figureWordsIn, meritWords, screeningWords, warningWords } from "../text/labels.ts";
import { columnNumbers, type GridColumn, gridLines, type Terminal, wrap } from "../text/layout.ts";
import { memoryWords, relaxedEndsText } from "../text/material-data.ts";
import { bites, countWords } from "../text/rejections.ts";
import {
  gainOf,
  percentWords,
  RELAXING,
  requiredRelaxationText,
  sensitivitiesByGain,
  valueSentence,
} from "../text/relaxation.ts";

/** Concessions of one kind that are printed: more are in the JSON. */
const MOST_SHOWN = 8;

/**
 * The prices of limits as a terminal shows them: the best design as asked, each limit relaxed and removed, the most valuable one;
 * where nothing fits, what must give. Text of the brief cannot act on the terminal.
 *
 * @param result    finished prices
 * @param terminal  its width and whether it takes bold
 * @returns lines no wider than the terminal, ended by a line break; does not throw
 */
export function relaxTable(result: RelaxResult, { width, colour }: Terminal): string {
  const { brief } = result;
  const bold = (text: string) => (colour ? `\u001b[1m${text}\u001b[22m` : text);
  const fill = (text: string, indent = 0) => (text === "" ? [] : wrap(oneLine(text), width, indent));
  const parts: readonly (readonly string[])[] = [
    [...fill(brief.title).map(bold), ...fill(askedSentence(brief)), ...fill(memoryWords(brief))],
    ...(result.best === null ? requiredRelaxationParts(result, fill, bold) : sensitivityParts(result, width, fill, bold)),
    fill(RELAXING, 2),
    fill(relaxedEndsText(result)),
    result.warnings.flatMap((warning) => fill(`Caution: ${warningWords[warning]}`, 2)),
    fill(screeningWords),
  ];
  const filled = parts.filter((lines) => lines.length > 0);
  return `${filled.map((lines) => lines.join("\n")).join("\n\n")}\n`;
}

type Fill = (text: string, indent?: number) => string[];
type Bold = (text: string) => string;

function sensitivityParts(result: RelaxResult, width: number, fill: Fill, bold: Bold): string[][] {
  const { brief, merit, best } = result;
  if (best === null) return [];
  const { unit } = figureWordsIn(merit, brief);
  const [heads = "", ...rows] = gridLines(sensitivityColumns(result), width);
  return [
    fill(
      `As asked the best design has ${figureWithValue(merit, best[merit], brief)}. With one limit alone relaxed or removed${unit && ` (${unit})`}:`,
    ),
    [bold(heads), ...rows],
    fill(valueSentence(result)).map(bold),
  ];
}

/** The limits that gain most first. */
function sensitivityColumns(result: RelaxResult): GridColumn[] {
  const { brief, merit, prices } = result;
  const sorted = sensitivitiesByGain(result);
  const column = (head: string, cells: readonly string[], align: GridColumn["align"]): GridColumn => ({
    head,
    cells,
    align,
    most: Number.POSITIVE_INFINITY,
  });
  const stepColumns = (prices[0]?.steps ?? []).flatMap(({ share: fraction }, step) => {
    const head = fraction === null ? "removed" : `${100 * fraction} %`;
    const bests = sorted.map(({ steps }) => steps[step]?.best ?? null);
    const moved = bests.map((best) => (best !== null && gainOf(best, merit) !== 0 ? best : null));
    const figures = columnNumbers(
      moved.map((best) => best?.merit ?? null),
      meritWords[merit].dimension,
      brief.units,
    );
    const unmoved = (row: number) => (bests[row] === null ? "–" : "no gain");
    return [
      column(
        head,
        moved.map((best, row) => (best === null ? "" : (figures[row] as string))),
        "right",
      ),
      column(
        "",
        moved.map((best, row) => (best === null ? unmoved(row) : percentWords(best.change, true))),
        "right",
      ),
    ];
  });
  return [
    column(
      "limit",
      sorted.map(({ limit }) => limit),
      "left",
    ),
    column(
      "margin",
      sorted.map(({ margin }) => (margin === null ? "–" : percentWords(margin))),
      "right",
    ),
    ...stepColumns,
  ];
}

function requiredRelaxationParts(result: RelaxResult, fill: Fill, bold: Bold): string[][] {
  const { brief, walked, concessions } = result;
  const [worst] = bites(result);
  const fell = worst === undefined ? "" : `, most of them rejected by ${worst.limit}`;
  const lines = (kind: string, found: readonly Concession[]) => {
    if (found.length === 0) return [];
    const more = found.length > MOST_SHOWN ? [`  and ${found.length - MOST_SHOWN} more in the JSON`] : [];
    return [
      bold(kind),
      ...found.slice(0, MOST_SHOWN).flatMap((one) => fill(requiredRelaxationText(one, brief.units), 2)),
      ...more,
    ];
  };
  const singles = concessions.filter(({ limits }) => limits.length === 1);
  const pairs = concessions.filter(({ limits }) => limits.length > 1);
  const none = "No limit gives enough alone, and no two do together: ask less of load or room, or try other wires and materials.";
  return [
    fill(`Nothing fits: ${countWords(walked)} candidates walked${fell}.`),
    lines("One limit that would have to give", singles),
    lines("Two limits that would have to give alike", pairs),
    concessions.length === 0 ? fill(none) : [],
  ];
}
