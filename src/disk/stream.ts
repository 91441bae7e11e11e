import { writeSync } from "node:fs";
import { ProblemError } from "../problem.ts";
import { WholeFile } from "./whole-file.ts";

/** Where bytes go as they come, however many: each call waits until they are taken, so that nothing piles up. */
export interface Stream {
  /** Throws `ReaderClosed` or a ProblemError `unwritable`. */
  readonly write: (bytes: string | Uint8Array) => void;
  /** Hands on what is left; a file then stands under its name. Throws as `write`. */
  readonly finish: () => void;
  /** Leaves a file that is not finished as it was before. */
  readonly abandon: () => void;
}

/** A reader that has closed the pipe has what it wanted: no problem, but nothing more needs to be made. */
export class ReaderClosed extends Error {}

/** Bytes that are gathered before they are handed on. */
const HANDED_ON = 1 << 16;

/** How long to wait for a reader who is behind, ms. */
const PATIENCE = 2;

/** Stdout, as it is. */
export function streamOut(): Stream {
  const { gather, flush } = gathering(1, (code) =>
    unwritable("stdout", `could not be written (${code})`, "what it holds is not whole"),
  );
  return { write: gather, finish: flush, abandon: () => {} };
}

/**
 * A file, whole or not at all, as `WholeFile` has it.
 *
 * @param path    as the person named it
 * @param option  the option that named it, for the message
 * @throws ProblemError `unwritable`
 */
export function streamInto(path: string, option: string): Stream {
  const fail = (code: string) => unwritable(option, `${path} could not be written (${code})`, "nothing of it was kept");
  const attempt = <T>(act: () => T): T => {
    try {
      return act();
    } catch (error) {
      throw fail((error as NodeJS.ErrnoException).code ?? "unknown");
    }
  };
  const file = attempt(() => new WholeFile(path));
  const { gather, flush } = gathering(file.number, fail);
  return {
    write: gather,
    finish: () => {
      flush();
      attempt(() => file.keep());
    },
    abandon: () => file.leave(),
  };
}

/** Gathers bytes for an open file and hands them on in pieces that are worth a call. */
function gathering(file: number, fail: (code: string) => ProblemError) {
  let pieces: Uint8Array[] = [];
  let size = 0;
  const flush = () => {
    const bytes = Buffer.concat(pieces, size);
    pieces = [];
    size = 0;
    writeAll(file, bytes, fail);
  };
  const gather = (bytes: string | Uint8Array) => {
    const piece = Buffer.from(bytes);
    pieces.push(piece);
    size += piece.length;
    if (size >= HANDED_ON) flush();
  };
  return { gather, flush };
}

function writeAll(file: number, bytes: Uint8Array, fail: (code: string) => ProblemError): void {
  let from = 0;
  while (from < bytes.length) {
    try {
      from += writeSync(file, bytes, from);
    } catch (error) {
      const { code = "unknown" } = error as NodeJS.ErrnoException;
      if (code === "EPIPE") throw new ReaderClosed();
      if (code !== "EAGAIN") throw fail(code);
      // A slice of the walk is one call without a pause, so there is no event to wait for.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, PATIENCE);
    }
  }
}

function unwritable(key: string, got: string, want: string): ProblemError {
  return new ProblemError([{ code: "unwritable", key, got, want }]);
}
