import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { newFolder, run } from "./run.ts";

const folder = newFolder();

beforeAll(() => {
  for (const file of ["latch one.yaml", "latch.json", "latch.txt"]) writeFileSync(join(folder, file), "");
  mkdirSync(join(folder, "lathes"));
});

/** True where a shell is installed on this machine. */
const has = (shell: string) => spawnSync(shell, ["-c", "exit 0"]).status === 0;

/** What bash offers for the last of the words typed. */
function offered(...words: string[]): readonly string[] {
  const typed = ["coilsieve", ...words];
  const script = `eval "$(cat)"; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _coilsieve; printf '%s\\n' "\${COMPREPLY[@]}"`;
  const { stdout, stderr } = spawnSync("bash", ["--norc", "-c", script, "bash", ...typed], {
    cwd: folder,
    encoding: "utf8",
    input: run(["completion", "bash"]).stdout,
  });
  expect(stderr).toBe("");
  return stdout.split("\n").filter((line) => line !== "");
}

describe("completion", () => {
  const { stdout: help } = run(["--help"]);
  const commands = [...help.matchAll(/^ {2}(\w+) .*$/gm)]
    .map(([, name]) => name as string)
    .filter((name) => name !== "coilsieve" && name !== "help");
  const optionsOf = (command: string) =>
    [...run([command, "--help"]).stdout.matchAll(/^ +(?:-\w, )?(--[\w-]+)/gm)].map(([, name]) => name as string);

  it.each(["bash", "zsh", "fish"])("for %s knows every command and every option that the help shows", (shell) => {
    const { stdout, stderr, status } = run(["completion", shell]);
    expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
    expect(commands).toEqual(expect.arrayContaining(["sweep", "check", "relax", "catalog", "start", "schema", "completion"]));
    for (const command of commands) {
      const lines = stdout.split("\n").filter((line) => line.includes(command));
      expect(lines.length, command).toBeGreaterThan(0);
      const about = lines.join("\n");
      for (const name of optionsOf(command)) expect(about).toContain(shell === "fish" ? `-l ${name.slice(2)} ` : name);
    }
  });

  it("says which shells there are", () => {
    expect(run(["completion", "tcsh"])).toMatchObject({ stdout: "", status: 2 });
    expect(run(["completion", "tcsh"]).stderr).toBe('completion: no script for "tcsh"; it takes bash, zsh, fish\n');
  });

  describe.skipIf(!has("bash"))("in bash offers", () => {
    it("commands and what they mean to begin with", () => {
      expect(offered("")).toEqual(expect.arrayContaining([...commands, "--help", "--version"]));
      expect(offered("s")).toEqual(["sweep", "start", "schema"]);
    });

    it("the options of the command", () => {
      expect(offered("relax", "--")).toEqual(["--json", "--no-color", "--help"]);
      expect(offered("sweep", "latch.json", "--h")).toEqual(["--html", "--help"]);
    });

    it("briefs and folders where a brief is due, one with a space in its name among them", () => {
      expect(offered("sweep", "lat")).toEqual(["lathes", "latch one.yaml", "latch.json"]);
      expect(offered("check", "--no-color", "latch")).toEqual(["latch one.yaml", "latch.json"]);
    });

    it("any file after an option that takes one, and nothing after one that takes a number", () => {
      expect([...offered("sweep", "latch.json", "--html", "latch")].sort()).toEqual([
        "latch one.yaml",
        "latch.json",
        "latch.txt",
      ]);
      expect(offered("sweep", "latch.json", "--top", "")).toEqual([]);
    });

    it("the words of options, catalogs, schemas and shells", () => {
      expect(offered("sweep", "--each", "")).toEqual(["wire", "material", "ends"]);
      expect(offered("sweep", "--rank", "y")).toEqual(["yield"]);
      expect(offered("sweep", "--front", "y")).toEqual([]);
      expect(offered("catalog", "")).toEqual(["wires", "materials", "ends"]);
      expect(offered("schema", "m")).toEqual(["material"]);
      expect(offered("completion", "")).toEqual(["bash", "zsh", "fish"]);
    });
  });

  it.skipIf(!has("zsh"))("for zsh is a script that zsh reads", () => {
    const { stderr, status } = spawnSync("zsh", ["-n"], { encoding: "utf8", input: run(["completion", "zsh"]).stdout });
    expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
  });

  it.skipIf(!has("fish"))("in fish offers commands, and words of options", () => {
    const asked = (line: string) => {
      const script = `${run(["completion", "fish"]).stdout}\ncomplete -C ${JSON.stringify(line)}\n`;
      const { stdout } = spawnSync("fish", ["--no-config"], { cwd: folder, encoding: "utf8", input: script });
      return stdout.split("\n").map((one) => one.split("\t")[0]);
    };
    expect(asked("coilsieve s")).toEqual(expect.arrayContaining(["sweep", "start", "schema"]));
    expect(asked("coilsieve sweep --each ")).toEqual(expect.arrayContaining(["wire", "material", "ends"]));
    expect(asked("coilsieve sweep --h")).toEqual(expect.arrayContaining(["--html"]));
  });
});
