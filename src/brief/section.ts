import { isMap, isScalar, isSeq, type Node, Scalar, type YAMLMap } from "yaml";
import type { BriefDocument } from "../document/yaml.ts";
import type { Asked, DefaultTaken } from "../model.ts";
import { nearestNames, type Problem, quoted } from "../problem.ts";
import { partedAtComma } from "../units/read.ts";
import { keyAt, keysUnder } from "./keys.ts";
import { kindOf, suggestion, textOf, wantOf } from "./wording.ts";

/** A name in a list, with its line. */
export interface Listed {
  readonly name: string;
  readonly line: number;
}

/**
 * One map of a brief, read key by key. What stands wrong there (an unknown key, a wrong kind, an unknown word) goes to the
 * reading's problems and reads as undefined, so that one pass finds all of it.
 */
export class Section {
  readonly reading: Reading;
  readonly path: string;
  readonly line: number;
  private readonly entries: ReadonlyMap<string, Entry>;

  /** @param known  names of the keys that may stand here; those of the table of keys unless given */
  constructor(reading: Reading, path: string, line: number, map: YAMLMap | undefined, known = keysUnder(path)) {
    this.reading = reading;
    this.path = path;
    this.line = line;
    this.entries = map === undefined ? new Map() : readEntries(reading, path, map, known);
  }

  has(name: string): boolean {
    return this.entries.has(name);
  }

  /** True where a number or a word stands, so neither section nor list. */
  holdsText(name: string): boolean {
    return isScalar(this.entries.get(name)?.node);
  }

  pathOf(name: string): string {
    return this.path === "" ? name : `${this.path}.${name}`;
  }

  lineOf(name: string): number {
    return this.entries.get(name)?.line ?? this.line;
  }

  /** Notes a problem at a key of this section, or with "" at the section itself. */
  problem(name: string, code: string, got: string, want: string): undefined {
    const key = name === "" ? this.path || "brief" : this.pathOf(name);
    this.reading.problems.push({ code, file: this.reading.file, line: this.lineOf(name), key, got, want });
  }

  /** Notes a problem where a key that has no default is left out; true where it is there. */
  require(name: string): boolean {
    if (this.has(name)) return true;
    const { sentence, example, words } = keyAt(this.pathOf(name));
    const values = words !== undefined && words.length < 4 ? words : [example?.includes("\n") ? "" : (example ?? "…")];
    const shown = values.map((value) => `${name}: ${value}`.trim()).join(" or ");
    this.problem(name, "missing", "is missing", `write ${shown} (${sentence})`);
    return false;
  }

  /** Takes a default and says so. */
  takeDefault(name: string, text: string, source: string): void {
    this.reading.defaults.push({ key: this.pathOf(name), text, source });
  }

  /** The text of a scalar exactly as it was written; undefined where the key is left out or holds no scalar. */
  scalar(name: string): string | undefined {
    const node = this.node(name);
    if (node === undefined) return undefined;
    const text = textOf(node);
    if (text === undefined) return this.problem(name, "wrongKind", kindOf(node), wantOf(this.pathOf(name)));
    return text;
  }

  /** One of the key's words. */
  word<Word extends string>(name: string): Word | undefined {
    const text = this.scalar(name);
    return text === undefined ? undefined : (this.knownWord(name, text, this.lineOf(name)) as Word | undefined);
  }

  /** One of the key's words, or a list of them without repeats. */
  words<Word extends string>(name: string): readonly Word[] | undefined {
    const listed = this.names(name, true);
    const known = listed?.map((item) => this.knownWord(name, item.name, item.line) as Word | undefined);
    return known?.every((word) => word !== undefined) ? known : undefined;
  }

  /** A list of names without repeats; a single name counts as a list where `single` says so. */
  names(name: string, single = false): readonly Listed[] | undefined {
    const node = this.node(name);
    if (node === undefined) return undefined;
    const text = textOf(node);
    if (text !== undefined && single) return [{ name: text, line: this.lineOf(name) }];
    if (text !== undefined)
      return this.problem(name, "wrongKind", `"${quoted(text)}" is not a list`, `write ${name}: [${quoted(text)}]`);
    if (!isSeq(node)) return this.problem(name, "wrongKind", kindOf(node), wantOf(this.pathOf(name)));
    if (node.items.length === 0) return this.problem(name, "empty", "is an empty list", "name at least one");
    const seen = new Set<string>();
    const listed: Listed[] = [];
    for (const item of node.items as Node[]) {
      const itemText = textOf(item);
      const line = this.reading.source.lineOf(item);
      const note = (code: string, got: string, want: string) =>
        this.reading.problems.push({ code, file: this.reading.file, line, key: this.pathOf(name), got, want });
      if (itemText === undefined) note("wrongKind", `an item ${kindOf(item)}`, "it takes names");
      else if (seen.has(itemText)) note("twice", `"${quoted(itemText)}" stands twice`, "name it once");
      else listed.push({ name: itemText, line });
      if (itemText !== undefined) seen.add(itemText);
    }
    return listed;
  }

  /** The section under a key; empty where it is left out, a word where one of the key's words stands instead. */
  section(name: string, known?: readonly string[]): Section | string | undefined {
    const path = this.pathOf(name);
    if (!this.has(name)) return new Section(this.reading, path, this.line, undefined, known);
    const node = this.node(name);
    if (node === undefined) return undefined;
    if (isMap(node)) return new Section(this.reading, path, this.lineOf(name), node, known);
    const text = textOf(node);
    if (text !== undefined && keyAt(path).words?.includes(text)) return text;
    return this.problem(name, "wrongKind", text === undefined ? kindOf(node) : `"${quoted(text)}" is no section`, wantOf(path));
  }

  /** The section under a key that takes no word, and that must be there; undefined where it is not. */
  requiredSection(name: string): Section | undefined {
    const section = this.require(name) ? this.section(name) : undefined;
    return section instanceof Section ? section : undefined;
  }

  /** The section under a key that takes no word; empty where it is left out or wrong. */
  subsection(name: string): Section {
    const section = this.section(name);
    return section instanceof Section ? section : new Section(this.reading, this.pathOf(name), this.lineOf(name), undefined);
  }

  /** The sections of a list, numbered from 1 in their paths, undefined for an item that is none; undefined where it is no list. */
  items(name: string): readonly (Section | undefined)[] | undefined {
    const node = this.node(name);
    if (node === undefined) return undefined;
    if (!isSeq(node)) return this.problem(name, "wrongKind", kindOf(node), wantOf(this.pathOf(name)));
    return (node.items as Node[]).map((item, index) => {
      const path = `${this.pathOf(name)}[${index + 1}]`;
      const line = this.reading.source.lineOf(item);
      if (isMap(item)) return new Section(this.reading, path, line, item);
      const empty = new Section(this.reading, path, line, undefined);
      return empty.problem("", "wrongKind", kindOf(item), `write a set of keys: ${keysUnder(path).join(", ")}`);
    });
  }

  private node(name: string): Node | undefined {
    const entry = this.entries.get(name);
    if (entry === undefined) return undefined;
    const { node } = entry;
    if (node === null || textOf(node) === "") {
      return this.problem(name, "empty", "is empty", wantOf(this.pathOf(name)));
    }
    return node;
  }

  private knownWord(name: string, text: string, line: number): string | undefined {
    const words = keyAt(this.pathOf(name)).words ?? [];
    if (words.includes(text)) return text;
    const [nearest] = nearestNames(text, words);
    const want = nearest === undefined ? `write ${words.join(", ")}` : `did you mean ${nearest}? It takes ${words.join(", ")}`;
    const key = this.pathOf(name);
    this.reading.problems.push({
      code: "unknownWord",
      file: this.reading.file,
      line,
      key,
      got: `"${quoted(text)}" is not known here`,
      want,
    });
    return undefined;
  }
}

/** What stands at a key of a map. */
interface Entry {
  /** 1-based line of the key. */
  readonly line: number;
  readonly node: Node | null;
}

/**
 * A map of a brief -> its entries by key. Keys that are unknown or stand twice are left out and noted.
 *
 * @param reading  told what is wrong
 * @param path     where the map stands; "" is the top
 * @param map      the map
 * @param known    keys that may stand in it
 */
function readEntries(reading: Reading, path: string, map: YAMLMap, known: readonly string[]): ReadonlyMap<string, Entry> {
  const { file, problems, source } = reading;
  const entries = new Map<string, Entry>();
  for (const pair of withWholeNumbers(map.items as Pair[])) {
    const name = textOf(pair.key) ?? "?";
    const key = path === "" ? quoted(name) : `${path}.${quoted(name)}`;
    const line = source.lineOf(pair.key);
    const note = (code: string, got: string, want: string) => problems.push({ code, file, line, key, got, want });
    if (entries.has(name)) note("duplicateKey", "stands twice in this section", "write it once");
    else if (known.includes(name)) entries.set(name, { line, node: pair.value });
    else note("unknownKey", "is not a key here", suggestion(name, known));
  }
  return entries;
}

interface Pair {
  readonly key: Node;
  readonly value: Node | null;
}

/**
 * In braces YAML ends a value at a comma, so that `{ force: 30,5 N }` is a force of 30 and a key `5 N`. Such halves are put together
 * again, for whoever reads the number to say what is wrong with it.
 */
function withWholeNumbers(pairs: readonly Pair[]): readonly Pair[] {
  const whole: Pair[] = [];
  for (const pair of pairs) {
    const before = whole.at(-1);
    const [first, second] = [before?.value && textOf(before.value), textOf(pair.key)];
    if (before && pair.value === null && partedAtComma(first ?? "", second ?? "")) {
      const joined = new Scalar(`${first},${second}`);
      if (isScalar(before.value)) joined.range = before.value.range ?? null;
      whole[whole.length - 1] = { key: before.key, value: joined };
    } else whole.push(pair);
  }
  return whole;
}

/** What gathers while a brief is read; the only thing that reading changes. */
export interface Reading {
  readonly file: string;
  readonly source: BriefDocument;
  readonly problems: Problem[];
  readonly asked: Asked[];
  readonly defaults: DefaultTaken[];
}
