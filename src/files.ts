import {
  closeSync,
  existsSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { dirname, isAbsolute, join } from "node:path";
import { fileURLToPath } from "node:url";
import { ProblemError } from "./problem.ts";

/** A file's text with the name a person knows it by. */
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

/** Beside the folder of this file, whether that is `src` or the bundle's `dist`. */
const besideHere = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

/**
 * The text of a UTF-8 file, its byte order mark left out.
 *
 * @param path  as the person named it
 * @throws ProblemError `missing`, `directory`, `unreadable`, `utf16`, `notText` or `notUtf8`
 */
export function readText(path: string): string {
  const fail = (code: string, got: string, want: string): never => {
    throw new ProblemError([{ code, file: path, key: "file", got, want }]);
  };
  let bytes: Buffer;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOENT" || code === "ENOTDIR") return fail("missing", "there is no such file", "name one that exists");
    if (code === "EISDIR") return fail("directory", "is a folder", "name a file in it");
    return fail("unreadable", `cannot be read (${code})`, "name a file that you may read");
  }
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    return fail("utf16", "is UTF-16 text", "save it as UTF-8");
  }
  if (bytes.includes(0)) return fail("notText", "holds null bytes, so it is no UTF-8 text", "save it as UTF-8");
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return fail("notUtf8", "is not UTF-8 text", "save it as UTF-8");
  }
}

/**
 * The text of a file that another file names.
 *
 * @param path  relative to the folder of `from`, or absolute
 * @param from  the file that names it
 * @throws ProblemError as `readText`
 */
export function readTextBeside(path: string, from: string): NamedText {
  const file = isAbsolute(path) ? path : join(dirname(from), path);
  return { file, text: readText(file) };
}

/** The shipped catalogs as texts; a series and a material go by the name of their file, without its ending. */
export function readShelf(): {
  readonly wires: ReadonlyMap<string, NamedText>;
  readonly materials: ReadonlyMap<string, NamedText>;
  readonly ends: NamedText;
} {
  const folder = (name: string, ending: string) => {
    const files = readdirSync(besideHere(`catalogs/${name}`)).filter((file) => file.endsWith(ending));
    return new Map(files.sort().map((file) => [file.slice(0, -ending.length), shipped(`catalogs/${name}/${file}`)]));
  };
  return { wires: folder("wires", ".csv"), materials: folder("materials", ".yaml"), ends: shipped("catalogs/ends.yaml") };
}

function shipped(path: string): NamedText {
  return { file: path, text: readText(besideHere(path)) };
}

/** The script that report pages carry; the build makes it. */
export function readPageScript(): string {
  return readText(besideHere("dist/explorer.js"));
}

/** The version of this package, such as `0.1.0`. */
export function packageVersion(): string {
  return (JSON.parse(readText(besideHere("package.json"))) as { version: string }).version;
}

/**
 * Make sure that a file can be written, before the work whose result it is to hold; leaves nothing behind.
 *
 * @param path    as the person named it
 * @param option  the option that named it, for the message
 * @throws ProblemError `directory`, `missing` or `unwritable`
 */
export function checkWritable(path: string, option: string): void {
  const fail = (code: string, got: string, want: string): never => {
    throw new ProblemError([{ code, key: option, got, want }]);
  };
  if (existsSync(path) && statSync(path).isDirectory()) fail("directory", `${path} is a folder`, "name a file in it");
  if (!existsSync(dirname(path))) fail("missing", `there is no folder ${dirname(path)}`, "make it, or name another");
  const probe = temporaryName(path);
  try {
    closeSync(openSync(isSpecial(path) ? path : probe, "a"));
  } catch (error) {
    fail("unwritable", `${path} cannot be written (${(error as NodeJS.ErrnoException).code})`, "name a file that you may write");
  } finally {
    rmSync(probe, { force: true });
  }
}

/**
 * Write a whole file or nothing: under a temporary name beside it, then renamed over it.
 *
 * @param path    as the person named it; a link is followed, a device is written to as it is
 * @param text    what it is to hold; a string as UTF-8
 * @param option  the option that named it, for the message
 * @throws ProblemError `unwritable`; the file is then as it was before
 */
export function writeText(path: string, text: string | Uint8Array, option: string): void {
  const target = existsSync(path) ? realpathSync(path) : path;
  const temporary = temporaryName(target);
  try {
    if (isSpecial(target)) writeFileSync(target, text);
    else {
      writeFileSync(temporary, text);
      renameSync(temporary, target);
    }
  } catch (error) {
    rmSync(temporary, { force: true });
    const got = `${path} could not be written (${(error as NodeJS.ErrnoException).code})`;
    throw new ProblemError([{ code: "unwritable", key: option, got, want: "nothing of it was kept" }]);
  }
}

/** True where a file of that name is there. */
export function isThere(path: string): boolean {
  return existsSync(path);
}

function temporaryName(path: string): string {
  return `${path}.${process.pid}.tmp`;
}

/** A device or a pipe, which must not be renamed over. */
function isSpecial(path: string): boolean {
  return existsSync(path) && !statSync(path).isFile();
}

/** Print results; resolves once they are handed over. A reader that has closed the pipe has what it wanted, so that is no error. */
export function printOut(text: string): Promise<void> {
  return print(process.stdout, text);
}

/** Print what is not a result: problems and warnings. */
export function printError(text: string): Promise<void> {
  return print(process.stderr, text);
}

function print(stream: NodeJS.WriteStream, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    // The stream emits the error that its callback gets as well; unheard it would end the program.
    const settle = (error?: Error | null) => {
      if (error && (error as NodeJS.ErrnoException).code !== "EPIPE") return reject(error);
      if (!error) stream.off("error", settle);
      return resolve();
    };
    stream.on("error", settle);
    stream.write(text, settle);
  });
}
