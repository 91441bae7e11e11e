import { writeFileSync } from "node:fs";
import { join } from "node:path";

/** A script that runs before the program, in every thread of it, as the environment that tells Node to. */
type Hook = { readonly NODE_OPTIONS: string };

/** What a script does to the program before it starts. */
function before(folder: string, name: string, script: string): Hook {
  const hook = join(folder, `${name}.cjs`);
  writeFileSync(hook, script);
  return { NODE_OPTIONS: `--require ${hook}` };
}

/** Several of them, one after the other. */
export const together = (...hooks: readonly Hook[]): Hook => ({
  NODE_OPTIONS: hooks.map(({ NODE_OPTIONS }) => NODE_OPTIONS).join(" "),
});

/** stderr counts as a terminal, so that progress is shown. */
export const asTerminal = (folder: string) =>
  before(folder, "terminal", 'Object.defineProperty(process.stderr, "isTTY", { value: true });');

/** Each piece of a walk takes so many milliseconds of the processor's time, however fast it is. */
export const pieceTakes = (folder: string, milliseconds: number) =>
  before(
    folder,
    "clock",
    `let looks = 0;
    process.cpuUsage = (since = { user: 0 }) => ({ user: ${1000 * milliseconds} * looks++ - since.user, system: 0 });`,
  );

/** Every thread but the first ends as it starts. */
export const deadThreads = (folder: string) =>
  before(folder, "dead", 'if (!require("node:worker_threads").isMainThread) process.exit(7);');

/** Every thread but the first leaves a file. */
export const markedThreads = (folder: string, mark: string) =>
  before(
    folder,
    "marked",
    `if (!require("node:worker_threads").isMainThread) require("node:fs").writeFileSync(${JSON.stringify(mark)}, "");`,
  );

/** At the end a file holds the name of every file that was opened, one a line, each as often as it was. */
export const openedFiles = (folder: string, list: string) =>
  before(
    folder,
    "opened",
    `const fs = require("node:fs");
    const { openSync, writeFileSync } = fs;
    const opened = [];
    fs.openSync = (path, ...rest) => { opened.push(path); return openSync(path, ...rest); };
    require("node:module").syncBuiltinESMExports();
    process.on("exit", () => writeFileSync(${JSON.stringify(list)}, opened.join("\\n")));`,
  );

/**
 * The program is killed at one moment of its work on files whose path holds a name. Moments are counted from 1: one before each call
 * that changes such a file, and one half-way through each that writes it.
 */
export const killedAt = (folder: string, name: string, moment: number) =>
  before(
    folder,
    "killed",
    `const fs = require("node:fs");
    let moments = 0;
    const reach = () => { if (++moments === ${moment}) process.kill(process.pid, "SIGKILL"); };
    const open = new Set();
    let within = false;
    const isOurs = (file) => open.has(file) || String(file).includes(${JSON.stringify(name)});
    const halved = (bytes) => Buffer.from(bytes).subarray(0, Buffer.byteLength(bytes) / 2);
    for (const act of ["open", "write", "writeFile", "fsync", "close", "chmod", "chown", "rename", "rm", "unlink"]) {
      const real = fs[act + "Sync"];
      fs[act + "Sync"] = (file, ...given) => {
        if (within || !isOurs(file)) return real(file, ...given);
        reach();
        within = true;
        if (act.startsWith("write")) {
          if (moments === ${moment - 1}) real(file, halved(given[0]));
          reach();
        }
        const result = real(file, ...given);
        within = false;
        if (act === "open") open.add(result);
        if (act === "close") open.delete(file);
        return result;
      };
    }
    require("node:module").syncBuiltinESMExports();`,
  );
