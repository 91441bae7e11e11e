import { csvParseRows } from "d3-dsv";
import type { Wire, WireSeries } from "../model.ts";
import { nearestNames, type Problem, ProblemError, quoted } from "../problem.ts";
import { partedAtComma, readQuantity } from "../units/read.ts";
import { implausible, type QuantityRule, wireColumns } from "./keys.ts";
import { type CatalogText, headLines, largestCatalog, plainText } from "./source-text.ts";

const columns = wireColumns.map(({ path }) => path);
const neededColumns = wireColumns.filter(({ required }) => required).map(({ path }) => path);
const rules = new Map(wireColumns.map(({ path, quantity }) => [path, quantity]));
const soldInMark = "sold in:";
const sensitivitiesInMark = "prices in:";

/** Longest name of a currency, characters: it heads a column. */
const longestCurrency = 12;

/** Longest label, characters: it stands in every table. */
const longestLabel = 80;

/** One row of the table with the line it stands on. */
interface Row {
  readonly line: number;
  readonly cells: ReadonlyMap<string, string>;
}

/**
 * CSV text of a wire series -> its wires, rising in diameter; wires of one diameter keep the file's order. The header is
 * `label,diameter[,price][,materials]`; the lines before it that begin with # are the source, one of them may be `# sold in: NAME,
 * NAME`, and a row's own `materials` win over it; one may be `# prices in: CURRENCY`.
 *
 * Throws a `ProblemError` with every problem of the file: `missingHeader`, `missingColumn`, `unknownColumn`, `duplicateColumn`,
 * `separator`, `cells`, `comma`, `noWires`, `noLabel`, `longLabel`, `duplicateLabel`, `duplicateSize`, `noPrice`, `noPrices`,
 * `longCurrency`, `notPositive`, `implausible`, `tooLarge` and those of `readQuantity`.
 *
 * @param catalog  the file's text and name
 * @param name     name of the series
 */
export function readWireSeries(catalog: CatalogText, name: string): WireSeries {
  const { file } = catalog;
  const plain = plainText(catalog, largestCatalog);
  const head = headLines(plain);
  const problems: Problem[] = [];
  const report = (problem: Omit<Problem, "file">) => problems.push({ ...problem, file });

  const { header, rows } = readTable(plain, head.length, report);
  const marked = (mark: string) => head.find((line) => line.toLowerCase().startsWith(mark));
  const soldInLine = marked(soldInMark);
  const pricesInLine = marked(sensitivitiesInMark);
  const soldIn = namesIn(soldInLine?.slice(soldInMark.length) ?? "");
  const currency = pricesInLine?.slice(sensitivitiesInMark.length).trim() ?? "";
  const wires = rows.map((row) => readWire(row, name, soldIn, header.includes("price"), report));
  reportRepeated(rows, report);
  reportSizes(rows, wires, report);
  if (currency !== "") checkCurrency(currency, header, head.indexOf(pricesInLine as string) + 1, report);
  if (header.length > 0 && rows.length === 0 && problems.length === 0) {
    report({
      code: "noWires",
      line: head.length + 1,
      key: "header",
      got: "no row follows it",
      want: "write one row for each wire",
    });
  }
  if (problems.length > 0) throw new ProblemError(problems);

  const source = head.filter((line) => line !== soldInLine && line !== pricesInLine && line !== "").join(" ");
  return {
    name,
    source: source === "" ? "no source stated" : source,
    wires: wires.sort((a, b) => a.diameter - b.diameter),
    ...(currency === "" ? {} : { currency }),
  };
}

type Report = (problem: Omit<Problem, "file">) => void;

/** The header's columns and the rows under them; no rows where the header is wrong, for their cells would mean nothing. */
function readTable(plain: string, headLength: number, report: Report): { header: string[]; rows: Row[] } {
  const [first, ...records] = csvParseRows(plain.split("\n").slice(headLength).join("\n"));
  const header = (first ?? []).map((cell) => cell.trim());
  const line = headLength + 1;
  if (!checkHeader(header, line, report)) return { header: [], rows: [] };

  const rows: Row[] = [];
  // A quoted cell may hold line ends, so the line of a row is counted, not its index.
  let at = line + 1;
  for (const record of records) {
    const cells = record.map((cell) => cell.trim());
    if (cells.some((cell) => cell !== "")) {
      if (cells.length === header.length) rows.push({ line: at, cells: new Map(header.map((key, i) => [key, cells[i] ?? ""])) });
      else reportCells(cells, header, at, report);
    }
    at += 1 + record.join("").split("\n").length - 1;
  }
  return { header, rows };
}

/** A row with another count of cells than the header: mostly a decimal comma, which parts a number. */
function reportCells(cells: readonly string[], header: readonly string[], line: number, report: Report): void {
  const at = cells.findIndex((cell, i) => header[i] !== "label" && partedAtComma(cell, cells[i + 1] ?? ""));
  const count = `${cells.length} ${cells.length === 1 ? "cell" : "cells"} came, where the header has ${header.length}`;
  if (cells.length > header.length && at >= 0) {
    const [whole, rest] = [cells[at], cells[at + 1]];
    report({
      code: "comma",
      line,
      key: "row",
      got: `${count}: ${quoted(`${whole},${rest}`)} has a comma`,
      want: `write ${quoted(`${whole}.${rest}`)}`,
    });
    return;
  }
  report({ code: "cells", line, key: "row", got: count, want: `write ${header}, and a text with a comma in quotes` });
}

function checkHeader(header: readonly string[], line: number, report: Report): boolean {
  const wrong = (code: string, got: string, want: string) => report({ code, line, key: "header", got, want });
  const [only = ""] = header;
  if (header.length === 1 && /[;\t]/.test(only)) {
    const by = only.includes(";") ? "semicolons" : "tabs";
    wrong("separator", `cells are parted by ${by}`, "part them by commas, and write decimals with a point");
    return false;
  }
  if (!header.some((key) => columns.includes(key) || nearestNames(key, columns).length > 0)) {
    const got =
      only === "" && header.length < 2 ? "nothing came" : `the first row is ${quoted(`${header}`)}, which names no column`;
    wrong("missingHeader", got, "begin the table with a row label,diameter or label,diameter,price,materials");
    return false;
  }
  const unknown = header.filter((key) => !columns.includes(key));
  for (const key of unknown) {
    const nearest = nearestNames(key, columns)[0];
    wrong(
      "unknownColumn",
      `no column "${quoted(key)}"`,
      nearest === undefined ? `the columns are ${columns.join(",")}` : `nearest is ${nearest}`,
    );
  }
  const missing = neededColumns.filter((key) => !header.includes(key));
  for (const key of missing) wrong("missingColumn", `column ${key} is missing`, `begin the table with ${neededColumns}`);
  const repeated = columns.filter((key) => header.indexOf(key) !== header.lastIndexOf(key));
  for (const key of repeated) wrong("duplicateColumn", `column "${key}" comes twice`, "keep one");
  return unknown.length + missing.length + repeated.length === 0;
}

/** One wire; where a problem is reported its numbers are not used. */
function readWire({ line, cells }: Row, series: string, soldIn: readonly string[], priced: boolean, report: Report): Wire {
  const positive = (key: string): number => {
    const text = cells.get(key) ?? "";
    const { dimension, plausible } = rules.get(key) as QuantityRule;
    const read = readQuantity(text, dimension);
    const sized = (value: number) =>
      value > 0
        ? implausible(text, value, plausible)
        : { code: "notPositive", got: `${text} is not above zero`, want: `write a ${key} above zero` };
    const wrong = "value" in read ? sized(read.value) : read;
    if (wrong !== undefined) report({ ...wrong, line, key });
    return "value" in read && wrong === undefined ? read.value : Number.NaN;
  };
  const label = cells.get("label") ?? "";
  if (label === "") report({ code: "noLabel", line, key: "label", got: "nothing came", want: "write the name it is ordered by" });
  if (label.length > longestLabel) {
    const want = `write the name it is ordered by, of ${longestLabel} at most`;
    report({ code: "longLabel", line, key: "label", got: `${label.length} characters came`, want });
  }
  const own = namesIn(cells.get("materials") ?? "");
  if (priced && cells.get("price") === "") {
    const want = "write a price for every wire, such as 4.2 / kg, or leave the column out";
    report({ code: "noPrice", line, key: "price", got: "nothing came, though other wires have prices", want });
  }
  const names = own.length > 0 ? own : soldIn;
  return {
    label,
    diameter: positive("diameter"),
    series,
    ...(names.length > 0 ? { soldIn: names } : {}),
    ...(priced && cells.get("price") !== "" ? { price: positive("price") } : {}),
  };
}

function reportRepeated(rows: readonly Row[], report: Report): void {
  const lines = new Map<string, number>();
  for (const { line, cells } of rows) {
    const label = cells.get("label") ?? "";
    const earlier = lines.get(label);
    if (earlier === undefined) lines.set(label, line);
    else if (label !== "") {
      report({
        code: "duplicateLabel",
        line,
        key: "label",
        got: `"${quoted(label)}" stands in line ${earlier} too`,
        want: "give each wire its own",
      });
    }
  }
}

/** Rows of one size: the first of all, and the first of those for each material and for any. */
interface SizeRows {
  readonly first: number;
  readonly of: Map<string, number>;
}

/** Stands for every material where a wire names none. */
const ANY = "";

/** Two wires of one size in one material: whichever were taken, the other's label and price would never be seen. */
function reportSizes(rows: readonly Row[], wires: readonly Wire[], report: Report): void {
  const bySize = new Map<number, SizeRows>();
  for (const [i, { diameter, soldIn }] of wires.entries()) {
    if (Number.isNaN(diameter)) continue;
    const before = bySize.get(diameter) ?? { first: i, of: new Map() };
    bySize.set(diameter, before);
    const meeting = soldIn ? [ANY, ...soldIn].flatMap((name) => before.of.get(name) ?? []) : [before.first];
    const other = meeting.reduce((earlier, row) => Math.min(earlier, row), i);
    for (const name of soldIn ?? [ANY]) if (!before.of.has(name)) before.of.set(name, i);
    if (other === i) continue;
    const got = `${rows[i]?.cells.get("diameter")} stands in line ${rows[other]?.line} too, for the same material`;
    const want = "keep one of them, or say under materials which is drawn in which";
    report({ code: "duplicateSize", line: rows[i]?.line as number, key: "diameter", got, want });
  }
}

function checkCurrency(currency: string, header: readonly string[], line: number, report: Report): void {
  const wrong = (code: string, got: string, want: string) =>
    report({ code, line, key: sensitivitiesInMark.slice(0, -1), got, want });
  if (header.length > 0 && !header.includes("price"))
    wrong("noPrices", `${quoted(currency)} came, but there is no column price`, "add the column, or leave the line out");
  if (currency.length > longestCurrency)
    wrong("longCurrency", `${currency.length} characters came`, `write a short name, such as EUR, of ${longestCurrency} at most`);
}

function namesIn(text: string): string[] {
  return text.split(/[\s,;]+/).filter((name) => name !== "");
}
