import { basename, extname, join } from "node:path";
import { lookupOn } from "../../catalog/find.ts";
import { readerBeside, readShelf } from "../../disk/files.ts";
import { isFolder, isOneFile, makeFolder, removeFolder } from "../../disk/folders.ts";
import type { Lookup } from "../../model.ts";
import { type Problem, ProblemError } from "../../problem.ts";

/** What a file of each output is named in a folder, after the name of its brief. */
const ENDINGS = {
  html: ".html",
  csv: ".csv",
  json: ".json",
  ndjson: ".ndjson",
  parquet: ".parquet",
  svg: ".svg",
  png: ".png",
  sheet: ".sheet.html",
  drawing: ".drawing.svg",
  step: ".step",
  dxf: ".dxf",
  glb: ".glb",
} as const;

/** Outputs that a folder may hold, each by the option that names its file. */
export const PLACED = Object.keys(ENDINGS) as readonly (keyof typeof ENDINGS)[];

type Placed = { readonly [Name in keyof typeof ENDINGS]?: string } & { readonly inFolder?: readonly string[] };

/**
 * Options for each brief in turn: an output that is a folder becomes the file there that is named after the brief's own. It is a
 * folder where it ends in a slash, and with several briefs where it is one; `inFolder` then has its name.
 *
 * @param paths    of the briefs
 * @param options  as typed
 * @throws ProblemError `severalBriefs` where several briefs would write one file, `sameFile` where two outputs would
 */
export function placedForEach<Options extends Placed>(paths: readonly string[], options: Options): Options[] {
  const given = PLACED.filter((name) => options[name] !== undefined);
  const single = given.filter((name) => !takesFolder(options[name] as string, paths));
  if (paths.length > 1 && single.length > 0) {
    const got = `${paths.length} briefs and one file`;
    const want = "name a folder, such as out/, to get a file for each brief, or sweep the briefs one at a time";
    throw new ProblemError([{ code: "severalBriefs", key: single.map((name) => `--${name}`).join(", "), got, want }]);
  }
  const written = new Map<string, string>();
  return paths.map((path) => {
    const own = Object.fromEntries(
      given.map((name) => {
        const outputPath = options[name] as string;
        if (single.includes(name)) return [name, outputPath];
        const file = join(outputPath, `${basename(path, extname(path))}${ENDINGS[name]}`);
        const other = written.get(file);
        if (other !== undefined) {
          const got = `${other} and ${path} would both write ${file}`;
          throw new ProblemError([{ code: "sameFile", key: `--${name}`, got, want: "give the briefs different names" }]);
        }
        written.set(file, path);
        return [name, file];
      }),
    );
    return { ...options, ...own, inFolder: given.filter((name) => !single.includes(name)) };
  });
}

/**
 * Make the folders that outputs name and that are not there, and do what needs them.
 *
 * @throws ProblemError as `makeFolder`, or as what is done throws; none that was made is left then
 */
export async function withFolders<T>(options: Placed, act: () => T | Promise<T>): Promise<T> {
  const made: string[] = [];
  try {
    for (const name of PLACED) {
      const outputPath = options[name];
      if (outputPath?.endsWith("/") && makeFolder(outputPath, `--${name}`)) made.push(outputPath);
    }
    return await act();
  } catch (error) {
    for (const folder of made) removeFolder(folder);
    throw error;
  }
}

function takesFolder(outputPath: string, paths: readonly string[]): boolean {
  return outputPath.endsWith("/") || (paths.length > 1 && isFolder(outputPath));
}

/** A file that an option names to be written. */
export interface Output {
  readonly option: string;
  readonly path: string;
}

/** The files among the options given, in the order of the names; what goes to stdout is none. */
export function outputsOf<Name extends string>(options: { readonly [name in Name]?: unknown }, names: readonly Name[]): Output[] {
  return names.flatMap((name) => {
    const path = options[name];
    return typeof path === "string" && path !== "-" ? [{ option: `--${name}`, path }] : [];
  });
}

/** A lookup on the shipped catalogs, and the files beside a brief that it has read so far. */
export function notingLookup(): { readonly lookup: Lookup; readonly read: readonly string[] } {
  const read: string[] = [];
  const beside = readerBeside();
  const lookup = lookupOn(readShelf(), (path, from) => {
    const text = beside(path, from);
    read.push(text.file);
    return text;
  });
  return { lookup, read };
}

/**
 * Make sure that no output would overwrite another one, or a file that is read.
 *
 * @param outputs  to be written
 * @param read     briefs and what they name
 * @throws ProblemError `oneFile`, before anything is written
 */
export function checkApart(outputs: readonly Output[], read: readonly string[]): void {
  const problems = outputs.flatMap(({ option, path }, i): Problem[] => {
    const before = outputs.slice(0, i).find((other) => isOneFile(other.path, path));
    if (before)
      return [{ code: "oneFile", key: option, got: `${path} is what ${before.option} writes too`, want: "name another file" }];
    const source = read.find((file) => isOneFile(file, path));
    if (source === undefined) return [];
    return [{ code: "oneFile", key: option, got: `${path} is read for this and would be lost`, want: "name another file" }];
  });
  if (problems.length > 0) throw new ProblemError(problems);
}
