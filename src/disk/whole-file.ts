import { randomBytes } from "node:crypto";
import { closeSync, constants, fchmodSync, fchownSync, openSync, renameSync, rmSync, type Stats, statSync } from "node:fs";
import { followed, isPipe, isSpecial } from "./folders.ts";

/** Signals that end the program where nobody else hears them. */
const ENDING = ["SIGINT", "SIGTERM", "SIGHUP"] as const;

/** Temporary names of files that are not whole yet. */
const unfinished = new Set<string>();

/**
 * A file open to be written whole or not at all: under a temporary name beside it until it is kept. It takes the mode of a file that
 * it replaces, and its owner where the system lets us give it. A device or a pipe is written to as it is.
 */
export class WholeFile {
  /** As calls of the system know it. */
  readonly number: number;
  private readonly target: string;
  private readonly written: string;
  private open = true;

  /**
   * @param path  a link is followed, also to a file that is not there yet
   * @throws as the calls of the system do, `ENXIO` for a pipe that nobody reads; nothing is left then
   */
  constructor(path: string) {
    this.target = followed(path);
    this.written = isSpecial(path) ? this.target : `${this.target}.${process.pid}.${randomBytes(4).toString("hex")}.tmp`;
    if (this.written === this.target) {
      this.number = isPipe(path) ? openPipe(path) : openSync(path, "w");
      return;
    }
    const replaced = statSync(this.target, { throwIfNoEntry: false });
    note(this.written);
    try {
      // It never lets in more readers than the file that it replaces, not even while it is written.
      this.number = openSync(this.written, "wx", replaced && replaced.mode & 0o777);
      if (replaced) takeAfter(this.number, replaced);
    } catch (error) {
      remove(this.written);
      throw error;
    }
  }

  /** Close it; it then stands under its name. */
  keep(): void {
    this.close();
    if (this.written === this.target) return;
    renameSync(this.written, this.target);
    forget(this.written);
  }

  /** Leave what stood under its name before; where it is kept, that is what it leaves. */
  leave(): void {
    this.close();
    if (this.written !== this.target) remove(this.written);
  }

  private close(): void {
    if (this.open) closeSync(this.number);
    this.open = false;
  }
}

/** Remove every file that is not whole, and end the program by a signal. */
export function endBy(signal: NodeJS.Signals): void {
  for (const temporary of unfinished) rmSync(temporary, { force: true });
  process.removeAllListeners(signal);
  process.kill(process.pid, signal);
}

/** Mode and owner of the file that another one replaces. */
function takeAfter(number: number, { uid, gid, mode }: Stats): void {
  try {
    fchownSync(number, uid, gid);
  } catch {
    // Only root may give a file away.
  }
  fchmodSync(number, mode & 0o777);
}

/** A pipe that has a reader; one without is not waited for. */
function openPipe(path: string): number {
  const probe = openSync(path, constants.O_WRONLY | constants.O_NONBLOCK);
  try {
    // Opened once more, since writing is to wait for a reader who is behind.
    return openSync(path, "w");
  } finally {
    closeSync(probe);
  }
}

function note(temporary: string): void {
  for (const signal of ENDING) if (!process.listeners(signal).includes(end)) process.on(signal, end);
  unfinished.add(temporary);
}

function remove(temporary: string): void {
  try {
    rmSync(temporary, { force: true });
  } catch {
    // What could not be made is not left behind; why is told where it was to be made.
  }
  forget(temporary);
}

function forget(temporary: string): void {
  unfinished.delete(temporary);
  // A signal that has come meanwhile is still to be heard, which takes a turn.
  setImmediate(() => {
    if (unfinished.size === 0) for (const signal of ENDING) process.off(signal, end);
  });
}

/** Where another hears the signal too, it stops the work and leaves its files. */
function end(signal: NodeJS.Signals): void {
  if (process.listenerCount(signal) === 1) endBy(signal);
}
