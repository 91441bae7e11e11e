import { isMap, isScalar, isSeq, LineCounter, type Node, parseDocument, Scalar } from "yaml";
import { aliasProblems } from "../document/yaml.ts";
import { nearestNames, type Problem, ProblemError, quoted } from "../problem.ts";
import { partedAtComma, readQuantity } from "../units/read.ts";
import { type CatalogKey, implausible, type QuantityRule } from "./keys.ts";
import { type CatalogText, largestYaml, plainText } from "./source-text.ts";

/** A YAML text being read: the keys that it may have, and where its problems gather. */
export interface Sheet {
  readonly file: string;
  readonly keys: readonly CatalogKey[];
  readonly lines: LineCounter;
  readonly problems: Problem[];
}

/** A value of the text with the path of keys that leads to it. */
export interface Field {
  readonly sheet: Sheet;
  readonly path: string;
  /** Where it stands, in characters from the start of the text. */
  readonly at: number;
  /** null: a key without any value. */
  readonly node: Node | null;
}

/** A map of the text whose keys are all known; a key that is absent or wrong is not among its fields. */
export interface Entry extends Field {
  readonly fields: ReadonlyMap<string, Field>;
}

/**
 * YAML text -> its one value, every scalar of it still text as its author wrote it. Throws a `ProblemError` where the text is no
 * YAML (`yaml`), is empty (`empty`), `tooLarge`, or has aliases (`alias`).
 *
 * @param catalog  the file's text and name
 * @param keys     what may stand in an entry of it
 */
export function openYaml(catalog: CatalogText, keys: readonly CatalogKey[]): Field {
  const sheet: Sheet = { file: catalog.file, keys, lines: new LineCounter(), problems: [] };
  const text = plainText(catalog, largestYaml);
  // "failsafe" keeps scalars text, so that 1e7 or true mean what the key says, not what YAML guesses. Keys are compared where a
  // map is read; the library would compare each with each.
  const options = { lineCounter: sheet.lines, schema: "failsafe", prettyErrors: false, uniqueKeys: false } as const;
  const document = parseDocument(text, options);
  // One problem a line: what follows the first on a line is mostly its echo.
  const first = new Map<number, string>();
  for (const { message, pos } of document.errors) {
    const { line } = sheet.lines.linePos(pos[0]);
    if (!first.has(line)) first.set(line, message.includes("call stack") ? "brackets nest too deeply" : quoted(message, 120));
  }
  for (const [line, message] of first) {
    sheet.problems.push({ code: "yaml", file: catalog.file, line, key: "text", got: "not YAML here", want: message });
  }
  if (document.contents === null && sheet.problems.length === 0) {
    sheet.problems.push({ code: "empty", file: catalog.file, key: "file", got: "nothing came", want: "write the entry" });
  }
  sheet.problems.push(...aliasProblems(document, sheet.lines, catalog.file, "text"));
  if (document.contents === null || sheet.problems.length > 0) throw new ProblemError(sheet.problems);
  return { sheet, path: "", at: 0, node: document.contents };
}

/** Puts a problem at a field's line under its path. */
export function report({ sheet, path, at }: Field, code: string, got: string, want: string): void {
  const { line } = sheet.lines.linePos(at);
  sheet.problems.push({ code, file: sheet.file, line, key: path === "" ? "file" : path, got, want });
}

/** Throws every problem that was reported; passes where there is none. */
export function throwProblems({ problems }: Sheet): void {
  if (problems.length > 0) throw new ProblemError(problems);
}

/** A path as keys are listed: without the places in lists. */
function plainPath(path: string): string {
  return path.replace(/\[\d+\]/g, "").replace(/^\./, "");
}

/** The key that stands at a path. */
function knownKey({ keys }: Sheet, path: string): CatalogKey {
  const key = keys.find((one) => one.path === plainPath(path));
  if (key === undefined) throw new Error(`no such key of a catalog: ${path}`);
  return key;
}

/** The names of the keys directly under a field, those that must be there and all, such first. */
function namesUnder({ sheet, path }: Field): { readonly required: readonly string[]; readonly known: readonly string[] } {
  const plain = plainPath(path);
  const prefix = plain === "" ? "" : `${plain}.`;
  const under = sheet.keys
    .map((key) => ({ ...key, name: key.path.slice(prefix.length) }))
    .filter((key) => key.path.startsWith(prefix) && !key.name.includes("."));
  const required = under.filter((key) => key.required).map(({ name }) => name);
  return { required, known: [...required, ...under.filter((key) => !key.required).map(({ name }) => name)] };
}

/**
 * A field as a map. Reports what is no map (`notAMap`), keys it does not know (`unknownKey`), keys that come twice
 * (`duplicateKey`) and required keys that are missing (`missingKey`).
 */
export function entryOf(field: Field): Entry {
  const { sheet, path, at, node } = field;
  const fields = new Map<string, Field>();
  const entry = { ...field, fields };
  const { required, known } = namesUnder(field);
  if (!isMap(node)) {
    report(field, "notAMap", describe(node), `write keys with values: ${known.join(", ")}`);
    return entry;
  }
  for (const { key, value } of withWholeNumbers(node.items as readonly Pair[])) {
    const name = isScalar(key) ? String(key.value) : "";
    const keyAt = key?.range?.[0] ?? at;
    const inner = {
      sheet,
      path: path === "" ? quoted(name) : `${path}.${quoted(name)}`,
      at: value?.range?.[0] ?? keyAt,
      node: value,
    };
    if (fields.has(name)) report({ ...inner, at: keyAt }, "duplicateKey", `${quoted(name)} stands twice here`, "write it once");
    else if (known.includes(name)) fields.set(name, inner);
    else {
      const nearest = nearestNames(name, known);
      const want = nearest.length > 0 ? `nearest is ${nearest[0]}` : `the keys here are ${known.join(", ")}`;
      report({ ...field, at: keyAt }, "unknownKey", `no key "${quoted(name)}"`, want);
    }
  }
  for (const name of required.filter((key) => !fields.has(key))) {
    report(field, "missingKey", `${name} is missing`, "write it; it has no default");
  }
  return entry;
}

interface Pair {
  readonly key: Node | null;
  readonly value: Node | null;
}

/** In braces YAML ends a value at a comma: what it parted of a number is put together, for whoever reads it to say what is wrong. */
function withWholeNumbers(pairs: readonly Pair[]): readonly Pair[] {
  const whole: Pair[] = [];
  for (const pair of pairs) {
    const before = whole.at(-1);
    const joined = pair.value === null && before ? joinedAtComma(before.value, pair.key) : undefined;
    if (before && joined) whole[whole.length - 1] = { key: before.key, value: joined };
    else whole.push(pair);
  }
  return whole;
}

/** The same in brackets, where the second half must have a unit: two bare numbers may be meant. */
function withWholeItems(items: readonly (Node | null)[]): readonly (Node | null)[] {
  const whole: (Node | null)[] = [];
  for (const item of items) {
    const unit = isScalar(item) && /^\d+(\.\d+)?\s*[^\d.\s]/.test(String(item.value));
    const joined = unit ? joinedAtComma(whole.at(-1) ?? null, item) : undefined;
    if (joined) whole[whole.length - 1] = joined;
    else whole.push(item);
  }
  return whole;
}

function joinedAtComma(first: Node | null, second: Node | null): Scalar | undefined {
  if (!isScalar(first) || !isScalar(second) || !partedAtComma(String(first.value), String(second.value))) return undefined;
  const joined = new Scalar(`${first.value},${second.value}`);
  joined.range = first.range ?? null;
  return joined;
}

/** A field as a list; what is no list is reported (`notAList`) and read as an empty one. */
export function listOf(field: Field, want: string): Field[] {
  const { sheet, path, at, node } = field;
  if (isSeq(node)) {
    const items = withWholeItems(node.items as readonly (Node | null)[]);
    return items.map((item, i) => ({ sheet, path: `${path}[${i + 1}]`, at: item?.range?.[0] ?? at, node: item }));
  }
  report(field, "notAList", describe(node), want);
  return [];
}

/** A key's value under its own name where the text has the key, and nothing where it has not. */
export function given<Key extends string, Value>(
  { fields }: Entry,
  key: Key,
  read: (field: Field) => Value,
): Record<Key, Value> | Record<never, never> {
  const field = fields.get(key);
  return field === undefined ? {} : ({ [key]: read(field) } as Record<Key, Value>);
}

/** A field that may be one value or a list of them, as a list. */
export function oneOrMore(field: Field): Field[] {
  return isSeq(field.node) ? listOf(field, "") : [field];
}

/** A field as two quantities in brackets, SI, each NaN once a problem is reported: `notAPair` and those of `quantityOf`. */
export function pairOf(field: Field, example: string): readonly [number, number] {
  const rules = knownKey(field.sheet, field.path).pair;
  const [first, second, ...more] = isSeq(field.node) ? listOf(field, "") : [];
  if (rules !== undefined && first !== undefined && second !== undefined && more.length === 0) {
    return [quantityOf(first, rules[0]), quantityOf(second, rules[1])];
  }
  report(field, "notAPair", "not two values in brackets", `write ${example}`);
  return [Number.NaN, Number.NaN];
}

/** Reports each row whose value is not above that of the row before it (`notRising`). */
export function checkRising(rows: readonly Field[], values: readonly number[], what: string): void {
  for (const [i, row] of rows.entries()) {
    const [before, value] = [values[i - 1], values[i]];
    if (before !== undefined && value !== undefined && value <= before) {
      report(row, "notRising", `its ${what} is not above that of the row before`, `write the rows with rising ${what}`);
    }
  }
}

/** A key's text; empty where it is absent. Reports what is no text or has none (`notAText`). */
export function textAt({ fields }: Entry, key: string): string {
  const field = fields.get(key);
  return field === undefined ? "" : textOf(field);
}

/** A field's text; reports what is no text or has none (`notAText`). */
export function textOf(field: Field): string {
  const text = isScalar(field.node) ? String(field.node.value).trim() : "";
  if (text === "") report(field, "notAText", describe(field.node), "write a text");
  return text;
}

/** A key's text as one of its words; the first of them where it is absent or reported (`unknownWord`). */
export function wordAt<Word extends string>(entry: Entry, key: string): Word {
  const field = entry.fields.get(key);
  const words = knownKey(entry.sheet, `${entry.path}.${key}`).words as readonly Word[];
  const first = words[0] as Word;
  if (field === undefined) return first;
  const text = textOf(field);
  const word = words.find((candidate) => candidate === text);
  if (word === undefined && text !== "") report(field, "unknownWord", `"${quoted(text)}" came`, `one of ${words.join(" | ")}`);
  return word ?? first;
}

/** A key's quantity in SI; NaN where it is absent or reported. */
export function quantityAt({ fields }: Entry, key: string): number {
  const field = fields.get(key);
  return field === undefined ? Number.NaN : quantityOf(field);
}

/**
 * A field's quantity in SI; NaN once a problem is reported: those of `readQuantity`, `notAText`, `notPositive`, `negative`, `implausible`.
 *
 * @param field  the value
 * @param rule   what is wanted; that of the field's key unless given
 */
export function quantityOf(field: Field, rule = knownKey(field.sheet, field.path).quantity as QuantityRule): number {
  const text = textOf(field);
  if (text === "") return Number.NaN;
  const read = readQuantity(text, rule.dimension);
  const wrong = "value" in read ? wrongSize(text, read.value, rule) : read;
  if (wrong === undefined) return (read as { readonly value: number }).value;
  report(field, wrong.code, wrong.got, wrong.want);
  return Number.NaN;
}

function wrongSize(text: string, value: number, { least, plausible }: QuantityRule) {
  if (least === "zero or more" && value < 0) return { code: "negative", got: `${text} is negative`, want: "write zero or more" };
  if (least === undefined && !(value > 0)) return { code: "notPositive", got: `${text} is not above zero`, want: "it must be" };
  return implausible(text, value, plausible);
}

function describe(node: Node | null): string {
  if (isMap(node)) return "a map came";
  if (isSeq(node)) return "a list came";
  return isScalar(node) && node.value !== "" ? `"${quoted(String(node.value))}" came` : "nothing came";
}
