import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

/** The root of the checkout. */
export const root = fileURLToPath(new URL("../../", import.meta.url));

/** A file's text, named from the root. */
export function textOf(file: string): string {
  return readFileSync(path.join(root, file), "utf8");
}

/** What is built, fetched or written by a run, and so is no part of the tree. */
const NOT_OURS = /^(node_modules|dist|\.git)$|^reports\/[^/]*\.(html|csv|json|svg|xlsx|ndjson|parquet)$|\.(log|tmp)$/;

/** Every file of the tree below a folder, named from the root, in order. */
export function filesBelow(folder = ""): readonly string[] {
  return readdirSync(path.join(root, folder), { withFileTypes: true })
    .map((entry) => ({ entry, file: path.posix.join(folder, entry.name) }))
    .filter(({ file }) => !NOT_OURS.test(file))
    .flatMap(({ entry, file }) => (entry.isDirectory() ? filesBelow(file) : [file]))
    .sort();
}

/** The TypeScript files of `src`, named from it, such as `units/read.ts`. */
export const sources: readonly string[] = filesBelow("src")
  .filter((file) => file.endsWith(".ts"))
  .map((file) => file.slice("src/".length));

/** One import of a source file. */
export interface Import {
  /** A source, such as `units/read.ts`, or what stands outside, such as `mathjs` or `node:fs`. */
  readonly target: string;
  readonly ours: boolean;
  /** True where the compiler erases it. */
  readonly typeOnly: boolean;
}

/** Every static, re-exporting and lazy import of a source. */
export function importsOf(source: string): readonly Import[] {
  const text = textOf(`src/${source}`);
  const statements = text.matchAll(/^(?:import|export)( type)?\s[^;"]*?from "([^"]+)";/gm);
  const lazy = text.matchAll(/\bimport\("([^"]+)"\)/g);
  return [
    ...[...statements].map(([, type, name]) => ({ name: name as string, typeOnly: type !== undefined })),
    ...[...lazy].map(([, name]) => ({ name: name as string, typeOnly: false })),
  ].map(({ name, typeOnly }) => {
    const ours = name.startsWith(".");
    return { target: ours ? path.posix.join(path.posix.dirname(source), name) : name, ours, typeOnly };
  });
}

/** The part of a Markdown text under a heading, up to the next of its level or above. */
export function underHeading(markdown: string, heading: string): string {
  const [, after] = markdown.split(`${heading}\n`);
  if (after === undefined) throw new Error(`there is no heading "${heading}"`);
  const level = heading.indexOf(" ");
  return after.split(new RegExp(`^#{1,${level}} `, "m"))[0] as string;
}

/** The rows of the first table of a Markdown text, its head first, each cell trimmed. */
export function tableOf(markdown: string): readonly (readonly string[])[] {
  const lines = markdown.split("\n");
  const start = lines.findIndex((line) => line.startsWith("|"));
  const end = lines.findIndex((line, i) => i > start && !line.startsWith("|"));
  return lines
    .slice(start, end < 0 ? undefined : end)
    .filter((line) => !/^\|[\s|:-]+\|$/.test(line))
    .map((line) =>
      line
        .split("|")
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

/** What stands in backquotes, in order. */
export function quoted(text: string): readonly string[] {
  return [...text.matchAll(/`([^`]+)`/g)].map(([, name]) => name as string);
}
