import { closeSync, existsSync, openSync, readdirSync, readSync, statSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, isAbsolute, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { ProblemError } from "../problem.ts";
import { isPipe } from "./folders.ts";
import { WholeFile } from "./whole-file.ts";

/** A file's text with the name a person knows it by. */
export interface NamedText {
  readonly file: string;
  readonly text: string;
}

/** Largest file that is read, bytes: many times the page's script, which is the largest of ours. */
const largestFile = 16_000_000;

/** Below the root of the package, whether this runs from `src/disk` or from the bundle in `dist`. */
const besideHere = (path: string) => fileURLToPath(new URL(path, packageRoot()));

/** The folder that holds `package.json`: above `dist`, and two above this file. */
function packageRoot(): URL {
  const above = new URL("../", import.meta.url);
  return existsSync(new URL("package.json", above)) ? above : new URL("../", above);
}

/**
 * The text of a UTF-8 file, its byte order mark left out.
 *
 * @param path  as the person named it
 * @throws ProblemError `missing`, `directory`, `unreadable`, `tooLarge`, `utf16`, `notText` or `notUtf8`
 */
export function readText(path: string): string {
  const fail = (code: string, got: string, want: string): never => {
    throw new ProblemError([{ code, file: path, key: "file", got, want }]);
  };
  let bytes: Buffer;
  try {
    bytes = readBytes(path, largestFile + 1);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOENT" || code === "ENOTDIR") return fail("missing", "there is no such file", "name one that exists");
    if (code === "EISDIR") return fail("directory", "is a folder", "name a file in it");
    return fail("unreadable", `cannot be read (${code})`, "name a file that you may read");
  }
  if (bytes.length > largestFile) return fail("tooLarge", "is over 16 MB", "a brief or a catalog is a few pages of text");
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

/** The first bytes of a file, up to a count of them: a device may give bytes without end. */
function readBytes(path: string, most: number): Buffer {
  const file = openSync(path, "r");
  try {
    const chunks: Buffer[] = [];
    let length = 0;
    while (length < most) {
      const chunk = Buffer.allocUnsafe(1 << 16);
      const read = readSync(file, chunk, 0, Math.min(chunk.length, most - length), null);
      if (read === 0) break;
      chunks.push(chunk.subarray(0, read));
      length += read;
    }
    return Buffer.concat(chunks, length);
  } finally {
    closeSync(file);
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
  const file = pathBeside(path, from);
  return { file, text: readText(file) };
}

/** The same for many files that name others: each is read once, and the same object is its text every time. */
export function readerBeside(): (path: string, from: string) => NamedText {
  const read = new Map<string, NamedText>();
  return (path, from) => {
    const target = resolve(dirname(from), path);
    const known = read.get(target);
    if (known !== undefined) return known;
    const text = readTextBeside(path, from);
    read.set(target, text);
    return text;
  };
}

/** A path, where it is not absolute, from the folder of a file. */
export function pathBeside(path: string, file: string): string {
  return isAbsolute(path) ? path : join(dirname(file), path);
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

/** The script that a page of single springs or of nested pairs carries; the build makes both. */
export function readPageScript(kind: "springs" | "pairs"): string {
  return readText(besideHere(`dist/${kind}-page.js`));
}

/** Where the font stands whose letters pictures are drawn with. @throws where its package is not installed */
export function fontFile(): string {
  return createRequire(import.meta.url).resolve("dejavu-fonts-ttf/ttf/DejaVuSans.ttf");
}

/** The script of a thread that walks; the build makes it. */
export function workerEntry(): string {
  return besideHere("dist/cli/threads/worker.js");
}

/**
 * Make sure that a file can be written, before the work whose result it is to hold; leaves nothing behind.
 *
 * @param path    as the person named it
 * @param option  the option that named it, for the message
 * @throws ProblemError `directory`, `missing`, `noReader` or `unwritable`
 */
export function checkWritable(path: string, option: string): void {
  const fail = (code: string, got: string, want: string): never => {
    throw new ProblemError([{ code, key: option, got, want }]);
  };
  if (path === "") fail("missing", "names no file", "name one");
  if (path.endsWith("/")) fail("directory", `${path} names a folder`, "name a file in it");
  if (existsSync(path) && statSync(path).isDirectory()) fail("directory", `${path} is a folder`, "name a file in it");
  const folder = dirname(path);
  if (!existsSync(folder)) fail("missing", `there is no folder ${folder}`, "make it, or name another");
  if (!statSync(folder).isDirectory()) fail("missing", `${folder} is no folder`, "name another");
  try {
    const probe = new WholeFile(path);
    // A pipe stays open: closed, it would tell its reader that all has come.
    if (!isPipe(path)) probe.leave();
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENXIO" && isPipe(path)) fail("noReader", `${path} is a pipe that nobody reads`, "start its reader first");
    fail("unwritable", `${path} cannot be written (${code})`, "name a file that you may write");
  }
}

/**
 * Write a whole file or nothing, as `WholeFile` has it.
 *
 * @param path    as the person named it
 * @param text    what it is to hold; a string as UTF-8
 * @param option  the option that named it, for the message
 * @throws ProblemError `unwritable`; the file is then as it was before
 */
export function writeText(path: string, text: string | Uint8Array, option: string): void {
  let file: WholeFile | undefined;
  try {
    file = new WholeFile(path);
    writeFileSync(file.number, text);
    file.keep();
  } catch (error) {
    file?.leave();
    const got = `${path} could not be written (${(error as NodeJS.ErrnoException).code})`;
    throw new ProblemError([{ code: "unwritable", key: option, got, want: "nothing of it was kept" }]);
  }
}

/**
 * Print results; resolves once they are handed over. A reader that has closed the pipe has what it wanted, so that is no error.
 *
 * @throws ProblemError `unwritable`, such as where stdout is a file on a full disk
 */
export async function printOut(text: string): Promise<void> {
  const code = await print(process.stdout, text);
  if (code === null || code === "EPIPE") return;
  const got = `could not be written (${code})`;
  throw new ProblemError([{ code: "unwritable", key: "stdout", got, want: "what it holds is not whole" }]);
}

/** Print what is not a result: problems and warnings. Where that fails there is nowhere left to say so. */
export async function printError(text: string): Promise<void> {
  await print(process.stderr, text);
}

/** Resolves to the code of the error that came of it, or null. */
function print(stream: NodeJS.WriteStream, text: string): Promise<string | null> {
  return new Promise((resolve) => {
    // The stream emits the error that its callback gets as well; unheard it would end the program.
    const settle = (error?: NodeJS.ErrnoException | null) => {
      if (!error) stream.off("error", settle);
      resolve(error ? (error.code ?? error.message) : null);
    };
    stream.on("error", settle);
    stream.write(text, settle);
  });
}
