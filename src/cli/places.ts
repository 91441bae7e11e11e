import { basename, extname, join } from "node:path";
import { isFolder, makeFolder, removeFolder } from "../folders.ts";
import { ProblemError } from "../problem.ts";

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
        const place = options[name] as string;
        if (single.includes(name)) return [name, place];
        const file = join(place, `${basename(path, extname(path))}${ENDINGS[name]}`);
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
      const place = options[name];
      if (place?.endsWith("/") && makeFolder(place, `--${name}`)) made.push(place);
    }
    return await act();
  } catch (error) {
    for (const folder of made) removeFolder(folder);
    throw error;
  }
}

function takesFolder(place: string, paths: readonly string[]): boolean {
  return place.endsWith("/") || (paths.length > 1 && isFolder(place));
}
