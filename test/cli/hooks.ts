import { writeFileSync } from "node:fs";
import { join } from "node:path";

/** What a script does to the program before it starts, as the environment that makes Node run it first, in every thread. */
function before(folder: string, name: string, script: string): { readonly NODE_OPTIONS: string } {
  const hook = join(folder, `${name}.cjs`);
  writeFileSync(hook, script);
  return { NODE_OPTIONS: `--require ${hook}` };
}

/** stderr counts as a terminal, so that progress is shown. */
export const asTerminal = (folder: string) =>
  before(folder, "terminal", 'Object.defineProperty(process.stderr, "isTTY", { value: true });');

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
