import { cpSync, existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, it } from "vitest";
import { run as coilsieve } from "../cli/run.ts";
import { filesBelow, root, textOf } from "./tree.ts";

/** Fenced blocks of one language in a paper, in order. */
export function blocksOf(paper: string, language: string): readonly string[] {
  return [...textOf(paper).matchAll(/^```(\w*)\n([\s\S]*?)^```/gm)]
    .filter(([, name]) => name === language)
    .map(([, , text]) => text as string);
}

/** What is typed in a block of terminal, with what is shown below it. */
interface Typed {
  readonly command: string;
  readonly shown: readonly string[];
}

function typedIn(paper: string): readonly Typed[] {
  return blocksOf(paper, "console").flatMap((block) =>
    block
      .split(/^\$ /m)
      .slice(1)
      .map((part) => {
        const [command = "", ...shown] = part.trimEnd().split("\n");
        return { command, shown };
      }),
  );
}

/** What is asked for after a command, to show its exit status. */
const ASKED = "; echo $?";

/** Runs what is typed, written into a file where it says so; its lines, the exit status last where that is asked for. */
function run(folder: string, command: string): { readonly lines: readonly string[]; readonly status: number | null } {
  const [typed = "", file] = command.replace(ASKED, "").split(" > ");
  const [, ...words] = typed.split(" ");
  const { stdout, stderr, status } = coilsieve(words, folder);
  if (file !== undefined) writeFileSync(path.join(folder, file), stdout);
  const lines = `${file === undefined ? stdout : ""}${stderr}`.trimEnd().split("\n");
  return { lines: command.endsWith(ASKED) ? [...lines, `${status}`] : lines, status };
}

/** Holds everything that a paper types to what stands below it, run in turn in an empty folder with the demo briefs. */
export function holdsWhatIsTyped(paper: string, least: number): void {
  const folder = mkdtempSync(path.join(tmpdir(), "coilsieve-paper-"));
  for (const file of filesBelow("reports").filter((name) => /\.(yaml|csv)$/.test(name)))
    cpSync(path.join(root, file), path.join(folder, file));
  const typed = typedIn(paper);

  it("is there", () => {
    expect(typed.length).toBeGreaterThanOrEqual(least);
    for (const { command } of typed) expect(command).toMatch(/^coilsieve \w/);
  });

  it.each(typed)("$command shows what stands below it", ({ command, shown }) => {
    const { lines, status } = run(folder, command);
    if (!command.endsWith(ASKED)) expect(status, lines.join("\n")).toBe(0);
    expect(shown.filter((line) => [...line].length > 80)).toEqual([]);
    // A line of three dots stands for lines that are left out.
    let from = 0;
    for (const stretch of shown.join("\n").split(/^\.\.\.$\n?/m)) {
      const wanted = stretch.replace(/\n$/, "").split("\n");
      if (wanted.join("") === "") continue;
      const at = lines.findIndex((_, i) => i >= from && wanted.every((line, j) => lines[i + j] === line));
      expect(at, `${wanted.join("\n")}\nis not in\n${lines.slice(from).join("\n")}`).toBeGreaterThanOrEqual(0);
      from = at + wanted.length;
    }
  });

  it("names npm scripts that are there", () => {
    const { scripts } = JSON.parse(textOf("package.json")) as { scripts: Record<string, string> };
    const named = [...textOf(paper).matchAll(/npm run ([\w:]+)/g)].map(([, name]) => name as string);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  it("shows no picture that is not there", () => {
    const pictures = [...textOf(paper).matchAll(/!\[[^\]]+\]\(([^)]+)\)/g)].map(([, file]) => file as string);
    expect(pictures.filter((file) => !existsSync(path.join(root, path.dirname(paper), file)))).toEqual([]);
  });
}
