import { isScalar, type Node, Scalar, type YAMLMap } from "yaml";
import { quoted } from "../problem.ts";
import { partedAtComma } from "../units/read.ts";
import type { Reading } from "./reading.ts";
import { suggestion, textOf } from "./wording.ts";

/** What stands at a key of a map. */
export interface Entry {
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
export function readEntries(reading: Reading, path: string, map: YAMLMap, known: readonly string[]): ReadonlyMap<string, Entry> {
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
