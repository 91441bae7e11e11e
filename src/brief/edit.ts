import { Document, isCollection, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, Scalar, YAMLMap } from "yaml";
import { textOf } from "./wording.ts";

/** What may be put at a key of a brief: a quantity or word as its author would write it, or a list of names. */
export type BriefValue = string | readonly string[];

/** Every text of a brief by its key, such as `load.points[1].force.min`; a list of names or words is one value. */
export type BriefTexts = ReadonlyMap<string, BriefValue>;

/**
 * The texts that stand in a brief, in the order in which they are written.
 *
 * @param text  YAML or JSON that reads as a brief
 */
export function briefTexts(text: string): BriefTexts {
  const texts = new Map<string, BriefValue>();
  const gather = (node: Node | null, key: string): void => {
    if (isMap(node)) {
      for (const { key: name, value } of node.items as BriefPair[]) {
        gather(value, key === "" ? (textOf(name) ?? "") : `${key}.${textOf(name)}`);
      }
    } else if (isSeq(node) && !node.items.every(isScalar)) {
      node.items.forEach((item, i) => {
        gather(item as Node, `${key}[${i + 1}]`);
      });
    } else if (isSeq(node))
      texts.set(
        key,
        (node.items as Node[]).map((item) => textOf(item) ?? ""),
      );
    else if (node !== null) texts.set(key, textOf(node) ?? "");
  };
  gather(parsed(text).contents as Node | null, "");
  return texts;
}

/** A value as a reader sees it; a list joined by commas. */
export function shownText(value: BriefValue | undefined): string | undefined {
  return typeof value === "string" || value === undefined ? value : value.join(", ");
}

/**
 * A brief with one value put or taken out. Its author's comments, order and layout stay; sections that are missing are made, and
 * one that loses its last key goes.
 *
 * @param text   YAML or JSON that reads as a brief; JSON stays JSON
 * @param key    from the top, such as `envelope.bore` or `load.points[1].force.min`
 * @param value  what is to stand there, in place of whatever does; undefined takes the key out
 * @returns the text, which reads as before but for that key
 */
export function editBrief(text: string, key: string, value: BriefValue | undefined): string {
  const path = key.split(/\.|(?=\[)/).map((step) => (step.startsWith("[") ? Number(step.slice(1, -1)) - 1 : step));
  const wanted = textsWith(briefTexts(text), key, value);
  const spliced = splice(text, path, value);
  if (spliced !== undefined && sameTexts(briefTexts(spliced), wanted)) return spliced;
  return rewritten(text, path, value);
}

type Path = readonly (string | number)[];
type BriefPair = Pair<Node, Node | null>;

/** Scalars as they are typed, as the reader of briefs takes them. */
const AS_TYPED = { schema: "failsafe", uniqueKeys: false } as const;

function parsed(text: string): Document {
  return parseDocument(text, AS_TYPED) as unknown as Document;
}

function textsWith(texts: BriefTexts, key: string, value: BriefValue | undefined): BriefTexts {
  const isAt = (other: string) => other === key || other.startsWith(`${key}.`) || other.startsWith(`${key}[`);
  // A word in place of a section above the key, such as off, gives way to the section.
  const isAbove = (other: string) => value !== undefined && key.startsWith(`${other}.`);
  const left = new Map([...texts].filter(([other]) => !isAt(other) && !isAbove(other)));
  return value === undefined ? left : left.set(key, value);
}

function sameTexts(a: BriefTexts, b: BriefTexts): boolean {
  return a.size === b.size && [...a].every(([key, value]) => JSON.stringify(value) === JSON.stringify(b.get(key)));
}

/** The text with only the place of the key changed; undefined where it is laid out so that this cannot be done in place. */
function splice(text: string, path: Path, value: BriefValue | undefined): string | undefined {
  const top = parsed(text).contents as Node | null;
  const written = writing(text);
  let at: Node | null | undefined = top;
  for (const [depth, step] of path.entries()) {
    if (isSeq(at) && typeof step === "number") {
      at = at.items[step] as Node | undefined;
      continue;
    }
    if (!isMap(at)) return undefined;
    const map: YAMLMap = at;
    const pair = pairAt(map, step);
    if (pair === undefined) {
      return value === undefined ? text : inserted(text, map, written(path.slice(depth), value));
    }
    const isLast = depth === path.length - 1;
    if (isLast && value === undefined) return removed(text, top, path);
    const { value: held } = pair;
    if (isLast || (isScalar(held) && value !== undefined)) {
      return isInline(held) ? replaced(text, held, written(path.slice(depth + 1), value as BriefValue)) : undefined;
    }
    at = held;
  }
  return undefined;
}

function pairAt(map: YAMLMap, step: string | number | undefined): BriefPair | undefined {
  return (map.items as BriefPair[]).find(({ key }) => textOf(key) === step);
}

/** A value on lines of its own key: it can be put in the place of another. */
function isInline(node: Node | null): node is Node {
  if (isCollection(node)) return node.flow === true;
  return isScalar(node) && node.type !== Scalar.BLOCK_LITERAL && node.type !== Scalar.BLOCK_FOLDED;
}

/** Writes a value under the names that lead to it, in one line, in the notation of the text. */
function writing(text: string): (path: Path, value: BriefValue) => string {
  const isJson = text.trimStart().startsWith("{") && isJsonText(text);
  const scalar = (value: string) => (isJson ? JSON.stringify(value) : flowScalar(value));
  const whole = (value: BriefValue) => (typeof value === "string" ? scalar(value) : `[${value.map(scalar).join(", ")}]`);
  const write = (path: Path, value: BriefValue): string => {
    const [name, ...rest] = path;
    if (name === undefined) return whole(value);
    const inner = rest.length === 0 ? whole(value) : `{ ${write(rest, value)} }`;
    return `${scalar(String(name))}: ${inner}`;
  };
  return (path, value) => write(path, value);
}

function isJsonText(text: string): boolean {
  try {
    JSON.parse(text);
    return true;
  } catch {
    return false;
  }
}

/** A scalar as it may stand inside brackets, quoted where it must be. */
function flowScalar(value: string): string {
  const list = new Document(undefined, AS_TYPED).createNode([value], { flow: true });
  const document = new Document(undefined, AS_TYPED);
  document.contents = list as never;
  return document.toString({ lineWidth: 0, flowCollectionPadding: false }).trim().slice(1, -1);
}

function replaced(text: string, node: Node, by: string): string {
  const [start, end] = node.range as [number, number, number];
  // What takes the place of a scalar under longer names is a section of its own.
  return text.slice(0, start) + (/^[^"[{]*: /.test(by) && !by.startsWith("{") ? `{ ${by} }` : by) + text.slice(end);
}

function inserted(text: string, map: YAMLMap, entry: string): string | undefined {
  const [start] = map.range as [number, number, number];
  const last = map.items.at(-1) as BriefPair | undefined;
  if (last === undefined)
    return map.flow ? `${text.slice(0, start + 1)} ${entry} ${text.slice(start + 1).trimStart()}` : undefined;
  const end = endOf(last);
  if (map.flow) return `${text.slice(0, end)}, ${entry}${text.slice(end)}`;
  const first = (map.items[0] as BriefPair).key.range?.[0] as number;
  const indent = " ".repeat(first - (text.lastIndexOf("\n", first - 1) + 1));
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const after = afterLine(text, end);
  const before = text.slice(0, after);
  return `${before}${before.endsWith("\n") ? "" : lineEnd}${indent}${entry}${lineEnd}${text.slice(after)}`;
}

function removed(text: string, top: Node | null, path: Path): string | undefined {
  // A section goes with its last key.
  let least = path.length - 1;
  while (least > 0 && (nodeAt(top, path.slice(0, least)) as YAMLMap | undefined)?.items?.length === 1) least--;
  const map = nodeAt(top, path.slice(0, least));
  if (!isMap(map)) return undefined;
  const pairs = map.items as BriefPair[];
  const place = pairs.findIndex(({ key }) => textOf(key) === path[least]);
  const pair = pairs[place];
  if (pair === undefined) return text;
  const [before, after] = [pairs[place - 1], pairs[place + 1]];
  const start = pair.key.range?.[0] as number;
  const end = endOf(pair);
  if (map.flow) {
    if (before !== undefined) return text.slice(0, endOf(before)) + text.slice(end);
    return text.slice(0, start) + text.slice(after?.key.range?.[0] ?? end);
  }
  const lineStart = text.lastIndexOf("\n", start - 1) + 1;
  if (text.slice(lineStart, start).trim() !== "") return undefined;
  return text.slice(0, lineStart) + text.slice(afterLine(text, end));
}

function nodeAt(top: Node | null, path: Path): Node | null | undefined {
  return path.reduce<Node | null | undefined>((node, step) => {
    if (isMap(node)) return pairAt(node, step)?.value;
    return isSeq(node) ? (node.items[step as number] as Node | undefined) : undefined;
  }, top);
}

function endOf({ key, value }: BriefPair): number {
  return (value?.range?.[1] ?? key.range?.[1]) as number;
}

/** The beginning of the line after the one on which something ends. */
function afterLine(text: string, end: number): number {
  if (text[end - 1] === "\n") return end;
  const next = text.indexOf("\n", end);
  return next < 0 ? text.length : next + 1;
}

/** The text written anew from its parts: comments and order stay, the layout is the writer's. */
function rewritten(text: string, path: Path, value: BriefValue | undefined): string {
  const document = parsed(text);
  if (value === undefined) {
    let least = path.length;
    while (least > 1 && (document.getIn(path.slice(0, least - 1)) as YAMLMap | undefined)?.items?.length === 1) least--;
    document.deleteIn(path.slice(0, least));
  } else {
    for (let depth = 1; depth < path.length; depth++) {
      const above = path.slice(0, depth);
      if (!isCollection(document.getIn(above))) document.setIn(above, new YAMLMap());
    }
    document.setIn(path, document.createNode(value, { flow: true }));
  }
  if (text.trimStart().startsWith("{") && isJsonText(text)) quoteAll(document.contents as Node | null);
  return document.toString({ lineWidth: 0 });
}

/** JSON quotes every name, and here every value that is new. */
function quoteAll(node: Node | null): void {
  if (isMap(node)) {
    for (const { key, value } of node.items as BriefPair[]) {
      if (isScalar(key)) key.type = Scalar.QUOTE_DOUBLE;
      quoteAll(value);
    }
  } else if (isSeq(node)) for (const item of node.items) quoteAll(item as Node);
  else if (isScalar(node) && node.source === undefined) node.type = Scalar.QUOTE_DOUBLE;
}
