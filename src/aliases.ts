import { type Document, type LineCounter, visit } from "yaml";
import type { Problem } from "./problem.ts";

/** Lines of one alias that are told one by one. */
const MOST_LINES = 7;

/**
 * What is wrong with the aliases of a YAML text: they are refused, for a few of them can stand for a text without end.
 *
 * @param document  parsed, not expanded
 * @param lines     of the same text
 * @param file      as the person named it
 * @param key       what the whole text is called in messages
 * @returns one problem for each name, `alias`, with every line that it stands in
 */
export function aliasProblems(document: Document, lines: LineCounter, file: string, key: string): Problem[] {
  const linesOf = new Map<string, number[]>();
  visit(document, {
    Alias: (_, { source, range }) => {
      const { line } = lines.linePos(range?.[0] ?? 0);
      const before = linesOf.get(source);
      if (before) before.push(line);
      else linesOf.set(source, [line]);
    },
  });
  return [...linesOf].map(([name, places]) => {
    const got = `*${name} stands for another value${placeWords(places)}`;
    return { code: "alias", file, line: places[0] as number, key, got, want: "write it out" };
  });
}

/** Where it stands beside the line that the message begins with; nothing where it stands there once. */
function placeWords(places: readonly number[]): string {
  const lines = [...new Set(places)];
  const often = places.length === 2 ? "twice" : `${places.length} times`;
  if (places.length === 1) return "";
  if (lines.length === 1) return `, ${often} in this line`;
  const more = lines.length > MOST_LINES + 1 ? `${lines.length - MOST_LINES} more` : String(lines.at(-1));
  const told = lines.slice(0, Math.min(MOST_LINES, lines.length - 1)).join(", ");
  return `, ${places.length === lines.length ? "" : `${often} `}in lines ${told} and ${more}`;
}
