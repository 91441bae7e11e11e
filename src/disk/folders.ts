import { existsSync, lstatSync, mkdirSync, readlinkSync, realpathSync, rmdirSync, statSync } from "node:fs";
import { basename, dirname, resolve } from "node:path";
import { ProblemError } from "../problem.ts";

/** True where a file of that name is there. */
export function isThere(path: string): boolean {
  return existsSync(path);
}

/** A device or a pipe, which must not be renamed over. */
export function isSpecial(path: string): boolean {
  return existsSync(path) && !statSync(path).isFile();
}

/** A pipe, named or of a shell. */
export function isPipe(path: string): boolean {
  return existsSync(path) && statSync(path).isFIFO();
}

/** Links that are followed from one to the next; systems follow no more. */
const MOST_LINKS = 40;

/** The name of the file that a name leads to, which need not be there; the name itself where it is no link. */
export function followed(path: string): string {
  let target = path;
  for (let i = 0; i < MOST_LINKS && lstatSync(target, { throwIfNoEntry: false })?.isSymbolicLink(); i++) {
    target = resolve(dirname(target), readlinkSync(target));
  }
  return target;
}

/**
 * Whether two names lead to one file, through links and folders; one that is not there yet is where its name would put it.
 *
 * @returns false for devices and pipes, which may be written to more than once
 */
export function isOneFile(one: string, other: string): boolean {
  if (isSpecial(one) || isSpecial(other)) return false;
  if (!existsSync(one) || !existsSync(other)) return placeOf(one) === placeOf(other);
  const [a, b] = [statSync(one), statSync(other)];
  return a.dev === b.dev && a.ino === b.ino;
}

/** A name with its links and those of its folder followed. */
function placeOf(path: string): string {
  const target = followed(path);
  const folder = dirname(target);
  return resolve(existsSync(folder) ? realpathSync(folder) : folder, basename(target));
}

/** True where a folder of that name is there. */
export function isFolder(path: string): boolean {
  return existsSync(path) && statSync(path).isDirectory();
}

/**
 * Make a folder in one that is there.
 *
 * @param path    as the person named it
 * @param option  the option that named it, for the message
 * @returns false where it is there already
 * @throws ProblemError `notFolder`, `missing` or `unwritable`
 */
export function makeFolder(path: string, option: string): boolean {
  if (isFolder(path)) return false;
  try {
    mkdirSync(path);
    return true;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "EEXIST") {
      const problem = { code: "notFolder", key: option, got: `${path} is a file, no folder` };
      throw new ProblemError([{ ...problem, want: "name a folder, or leave out the slash" }]);
    }
    const problem =
      code === "ENOENT"
        ? { code: "missing", got: `there is no folder ${dirname(path)} to make ${path} in`, want: "make it, or name another" }
        : { code: "unwritable", got: `the folder ${path} cannot be made (${code})`, want: "name one that you may make" };
    throw new ProblemError([{ key: option, ...problem }]);
  }
}

/** Remove a folder that was made for nothing, where it is empty. */
export function removeFolder(path: string): void {
  try {
    rmdirSync(path);
  } catch {
    // Somebody has put something into it, so it is not ours to remove.
  }
}
