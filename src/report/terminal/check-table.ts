import type { CheckEntry, CheckResult, Design, Dimension, Units } from "../../model.ts";
import { oneLine } from "../../problem.ts";
import { show, showNumber } from "../../units/show.ts";
import { askedSentence } from "../text/brief-summary.ts";
import { checkNoteWords, disagreementWords, entryLabel, quotedRateWords, verdictWords } from "../text/check.ts";
import { type FigureName, figureWords, screeningWords, warningWords } from "../text/labels.ts";
import { type GridColumn, gridLines, type Terminal, wrap } from "../text/layout.ts";
import { givenEndWords, memoryWords } from "../text/material-data.ts";
import { cautionSentence, dutySentences } from "../text/spring-summary.ts";

/** The figures that stand above the limits, in two columns. */
const FIGURES: readonly FigureName[] = [
  "outsideDiameter",
  "insideDiameter",
  "index",
  "rate",
  "solidLength",
  "forceAtSolid",
  "stressAtSolid",
  "solidSafety",
  "workingSafety",
  "tensileStrength",
  "pitch",
  "mass",
];

/**
 * A check as a terminal shows it: what was judged, its figures, the load points, every bound with its margin and source, what
 * disagrees, the verdict. Text of the brief cannot act on the terminal.
 *
 * @param result    a finished check
 * @param terminal  its width and whether it takes bold
 * @returns lines no wider than the terminal, ended by a line break; does not throw
 */
export function checkTable(result: CheckResult, terminal: Terminal): string {
  const { brief, design, quotedRate, disagreements } = result;
  const { width } = terminal;
  const bold = (text: string) => (terminal.colour ? `\u001b[1m${text}\u001b[22m` : text);
  const fill = (text: string, indent = 0) => wrap(oneLine(text), width, indent);
  const headed = ([heads = "", ...rows]: readonly string[]) => [bold(heads), ...rows];
  const rateAgrees = quotedRate !== null && !disagreements.some(({ figure }) => figure === "rate");
  const parts: readonly (readonly string[])[] = [
    [
      ...fill(brief.title).map(bold),
      ...fill(judgedSentence(result)),
      ...fill(`Asked: ${askedSentence(brief)}`),
      ...fill(memoryWords(brief)),
    ],
    gridLines(figureColumns(design, brief.units), width).slice(1),
    headed(gridLines(pointColumns(result), width)),
    dutySentences(brief, design).flatMap((sentence) => fill(sentence, 2)),
    headed(gridLines(limitColumns(result), width)),
    [
      ...disagreements.flatMap((one) => fill(`Disagrees: ${disagreementWords(one, result)}`, 2)),
      ...(rateAgrees ? fill(`${quotedRateWords(result)} Near enough; the one that they give is judged.`, 2) : []),
      ...result.tableEnds.flatMap((end) => fill(givenEndWords(end, brief.units), 2)),
      ...result.notes.flatMap((note) => fill(checkNoteWords[note], 2)),
    ],
    [
      ...result.warnings.flatMap((warning) => fill(`Caution: ${warningWords[warning]}`, 2)),
      ...design.cautions.flatMap((caution) => fill(`Caution: ${cautionSentence(caution, [design], brief.units)}`, 2)),
    ],
    fill(verdictWords(result)).map(bold),
    fill(screeningWords),
  ];
  return `${parts
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`;
}

function judgedSentence({ design, brief: { units } }: CheckResult): string {
  const length = (metres: number) => show(metres, "length", units);
  return (
    `Judged: wire ${length(design.wireDiameter)} of ${design.material}, ${design.ends} ends, ` +
    `mean diameter ${length(design.meanDiameter)}, ${show(design.totalTurns, "number", units)} total turns ` +
    `(${show(design.activeTurns, "number", units)} active), free length ${length(design.freeLength)}.`
  );
}

function figureColumns(design: Design, units: CheckResult["brief"]["units"]): GridColumn[] {
  const half = Math.ceil(FIGURES.length / 2);
  return [FIGURES.slice(0, half), FIGURES.slice(half)].flatMap((names): GridColumn[] => [
    { head: "", cells: names.map((name) => figureWords[name].label), align: "left", most: 30 },
    { head: "", cells: names.map((name) => finite(design[name], figureWords[name].dimension, units)), align: "left", most: 20 },
  ]);
}

function pointColumns({ design, quotedRate, brief: { units } }: CheckResult): GridColumn[] {
  const { points } = design;
  const column = (head: string, cells: readonly string[]): GridColumn => ({ head, cells, align: "right", most: 20 });
  return [
    { head: "load point", cells: points.map(({ name }) => oneLine(name)), align: "left", most: 20 },
    column(
      "length",
      points.map(({ length }) => show(length, "length", units)),
    ),
    column(
      "deflection",
      points.map(({ deflection }) => show(deflection, "length", units)),
    ),
    column(
      "force",
      points.map(({ force }) => show(force, "force", units)),
    ),
    ...(quotedRate === null
      ? []
      : [
          column(
            "by quoted rate",
            quotedRate.forces.map((force) => show(force, "force", units)),
          ),
        ]),
    column(
      "stress",
      points.map(({ stress }) => show(stress, "stress", units)),
    ),
  ];
}

function limitColumns(result: CheckResult): GridColumn[] {
  const rows = checkRows(result);
  const failed = rows.some(({ passes }) => !passes);
  return [
    { head: "limit", cells: rows.map(({ label }) => oneLine(label)), align: "left", most: 18 },
    { head: "value", cells: rows.map(({ value }) => value), align: "right", most: 14 },
    { head: "asked", cells: rows.map(({ bound }) => bound), align: "left", most: 18 },
    { head: "margin", cells: rows.map(({ margin }) => margin), align: "right", most: 12 },
    ...(failed ? [{ head: "", cells: rows.map(({ passes }) => (passes ? "" : "fails")), align: "left", most: 5 } as const] : []),
    { head: "set by", cells: rows.map(({ source }) => source), align: "left", most: 40 },
  ];
}

/** A spring without room to deflect has no force or stress at solid, and one that is never pressed has no safety. */
function finite(value: number | null, dimension: Dimension, units: CheckResult["brief"]["units"]): string {
  return value === null || !Number.isFinite(value) || value < 0 ? "none" : show(value, dimension, units);
}

/** One line of the table of a check. */
export interface CheckRow {
  readonly label: string;
  readonly value: string;
  readonly bound: string;
  readonly margin: string;
  readonly passes: boolean;
  readonly source: string;
}

/**
 * The entries of a check as they are read: both ends of a window on one line, with the margin of the nearer one.
 *
 * @param result  a finished check
 * @returns in the order of the entries, in the brief's units
 */
function checkRows({ entries, brief: { units } }: CheckResult): CheckRow[] {
  const rows: CheckRow[] = [];
  for (let i = 0; i < entries.length; i++) {
    const entry = entries[i] as CheckEntry;
    const next = entries[i + 1];
    const other = next !== undefined && isOtherEnd(entry, next) ? next : undefined;
    if (other !== undefined) i++;
    rows.push(rowOf(entry, other, units));
  }
  return rows;
}

function isOtherEnd(entry: CheckEntry, next: CheckEntry): boolean {
  const same = entry.limit === next.limit && entry.point === next.point && entry.figure === next.figure;
  return (
    same && entry.dimension === next.dimension && entry.value === next.value && entry.sense === "least" && next.sense === "most"
  );
}

function rowOf(entry: CheckEntry, other: CheckEntry | undefined, units: Units): CheckRow {
  const ends = other === undefined ? [entry] : [entry, other];
  return {
    label: entryLabel(entry),
    value: Number.isNaN(entry.value) ? "none" : show(entry.value, entry.dimension, units),
    bound: other === undefined ? boundWords(entry, units) : windowWords(entry, other, units),
    margin: marginWords(Math.min(...ends.map(({ margin }) => margin))),
    passes: ends.every(({ passes }) => passes),
    source: [...new Set(ends.map(sourceWords))].join("; "),
  };
}

function boundWords({ bound, sense, dimension }: CheckEntry, units: Units): string {
  return `${sense === "most" ? "at most" : "at least"} ${show(bound, dimension, units)}`;
}

function windowWords(least: CheckEntry, most: CheckEntry, units: Units): string {
  const { dimension } = least;
  if (least.bound === most.bound) return `exactly ${show(least.bound, dimension, units)}`;
  return `${showNumber(least.bound, dimension, units)} to ${show(most.bound, dimension, units)}`;
}

function marginWords(margin: number): string {
  if (!Number.isFinite(margin)) return "none";
  if (margin === 0) return "0 %";
  const percent = 100 * margin;
  // A margin that fails must not be rounded to one that holds.
  return Math.abs(percent) < 0.05 ? `${percent < 0 ? "-" : ""}<0.1 %` : `${percent.toFixed(1)} %`;
}

function sourceWords({ source: { from, text } }: CheckEntry): string {
  switch (from) {
    case "brief":
      return "brief";
    case "material":
      return "material's data";
    default:
      return text;
  }
}
