import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { fits, fitsNothing, newFolder, type Run, run, runProcess } from "./run.ts";

/** What is typed, and the exit status that it leaves. */
const typed: readonly (readonly [string, number])[] = [
  ["sweep flap.yaml", 0],
  ["sweep flap.yaml --json - --top 3 --nearest", 0],
  ["sweep flap.yaml --ndjson -", 0],
  ["sweep flap.yaml none.yaml --csv out/ --sheet out/ --svg out/", 1],
  ["relax flap.yaml", 0],
  ["sweep bad.yaml flap.yaml", 2],
  ["sweep flap.yaml --csv no/a.csv", 2],
  ["sweep flap.yaml --tpo 3", 2],
  ["swep", 2],
  ["", 2],
  ["--version", 0],
  ["sweep --help", 0],
  ["start new.yaml --schema", 0],
];

/** What a call leaves: both streams, the exit status, and every file by its name. */
function leftBy(call: typeof run, words: string): Run & { readonly files: Readonly<Record<string, string>> } {
  const folder = newFolder();
  writeFileSync(join(folder, "flap.yaml"), fits);
  writeFileSync(join(folder, "none.yaml"), fitsNothing);
  writeFileSync(join(folder, "bad.yaml"), fits.replace("20 N", "20 lb"));
  const ran = call(words === "" ? [] : words.split(" "), folder);
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return {
    ...ran,
    files: Object.fromEntries(files.map(({ parentPath, name }) => [name, readFileSync(join(parentPath, name), "utf8")])),
  };
}

describe("a call in the thread that has the program loaded", () => {
  const inProcess = new Map<string, ReturnType<typeof leftBy>>();
  beforeAll(() => {
    for (const [words] of typed) inProcess.set(words, leftBy(runProcess, words));
  });

  it.each(typed)("leaves what a process of its own leaves: coilsieve %s", (words, status) => {
    expect(inProcess.get(words)?.status).toBe(status);
    expect(leftBy(run, words)).toEqual(inProcess.get(words));
  });

  it("leaves nothing to the call after it, whichever that is", () => {
    for (const [words] of typed.toReversed()) expect(leftBy(run, words)).toEqual(inProcess.get(words));
  });

  it("leaves the folder and the exit status of whoever calls it", () => {
    const before = { folder: process.cwd(), status: process.exitCode };
    expect(run(["swep"]).status).toBe(2);
    expect({ folder: process.cwd(), status: process.exitCode }).toEqual(before);
  });
});
