import { lookupOn } from "../catalog/find.ts";
import { readerBeside, readShelf } from "../files.ts";
import { isOneFile } from "../folders.ts";
import type { Lookup } from "../model.ts";
import { type Problem, ProblemError } from "../problem.ts";

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
