import { spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { killedAt } from "./hooks.ts";
import { fits, newFolder, program, type Run, run, runProcess } from "./run.ts";

function folderWithBrief(): string {
  const folder = newFolder();
  writeFileSync(join(folder, "flap.yaml"), fits);
  return folder;
}

/** Runs a line of shell in which `coilsieve` is the program. */
function shell(line: string, folder: string): Run {
  const script = `coilsieve() { "${process.execPath}" "${program}" "$@"; }\n${line}`;
  const { stdout, stderr, status } = spawnSync("bash", ["-c", script], { cwd: folder, encoding: "utf8" });
  return { stdout, stderr, status };
}

const options = ["--json", "--csv", "--html", "--sheet", "--drawing"] as const;

describe("a file that cannot be written", () => {
  it.each(options)("on a full disk is named, and the exit is 2 (%s)", (option) => {
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", option, "/dev/full"], folderWithBrief());
    expect(stderr).toBe(`${option}: /dev/full could not be written (ENOSPC); nothing of it was kept\n`);
    expect([stdout, status]).toEqual(["", 2]);
  });

  it.each(options)("beyond a few kilobytes stays as it was, and nothing is left beside it (%s)", (option) => {
    const folder = folderWithBrief();
    writeFileSync(join(folder, "out"), "before");
    // Files of more than two blocks of 1 kB fail part way, as on a disk that fills up.
    const { stderr, status } = shell(`ulimit -f 2; coilsieve sweep flap.yaml --top 100 ${option} out`, folder);
    expect(stderr).toBe(`${option}: out could not be written (EFBIG); nothing of it was kept\n`);
    expect(status).toBe(2);
    expect(readFileSync(join(folder, "out"), "utf8")).toBe("before");
    expect(readdirSync(folder).sort()).toEqual(["flap.yaml", "out"]);
  });

  it.each([
    ["in a folder that takes no files", "/proc/out.csv", /^--csv: \/proc\/out\.csv cannot be written \(E\w+\); name a file/],
    ["that is a folder", ".", /^--csv: \. is a folder; name a file in it\n$/],
    ["in a folder that is a file", "flap.yaml/out.csv", /^--csv: flap\.yaml is no folder; name another\n$/],
    ["with a name beyond any disk", "x".repeat(300), /^--csv: x+ cannot be written \(ENAMETOOLONG\)/],
    ["without a name", "", /^--csv: names no file; name one\n$/],
  ])("%s is told before the sweep", (_title, path, message) => {
    const folder = folderWithBrief();
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", "--json", "a.json", "--csv", path], folder);
    expect(stderr).toMatch(message);
    expect([stdout, status]).toEqual(["", 2]);
    expect(readdirSync(folder)).toEqual(["flap.yaml"]);
  });

  it.skipIf(process.getuid?.() === 0)("in a folder that is not ours is told before the sweep", () => {
    const folder = folderWithBrief();
    mkdirSync(join(folder, "theirs"));
    chmodSync(join(folder, "theirs"), 0o555);
    const { stderr, status } = run(["sweep", "flap.yaml", "--csv", "theirs/a.csv"], folder);
    expect(stderr).toBe("--csv: theirs/a.csv cannot be written (EACCES); name a file that you may write\n");
    expect(status).toBe(2);
  });
});

describe("a run that is killed", () => {
  const folder = folderWithBrief();
  const args = ["sweep", "flap.yaml", "--json", "out.json"];
  const out = () => readFileSync(join(folder, "out.json"), "utf8");
  let whole: string;

  /** What is seen after it was killed at each moment in turn: its file, files beside that, and then the next run with its file. */
  const seen: { readonly left: string; readonly beside: readonly string[]; readonly next: Run; readonly after: string }[] = [];

  beforeAll(() => {
    expect(run(args, folder).status).toBe(0);
    whole = out();
    for (let moment = 1; ; moment++) {
      writeFileSync(join(folder, "out.json"), "before");
      const { status } = runProcess(args, folder, killedAt(folder, "out.json", moment));
      if (status === 0) break;
      expect(status).toBe(null);
      const left = out();
      const beside = readdirSync(folder).filter((file) => file.startsWith("out.json."));
      const texts = beside.map((file) => readFileSync(join(folder, file), "utf8"));
      seen.push({ left, beside: texts, next: run(args, folder), after: out() });
      for (const file of beside) rmSync(join(folder, file), { force: true });
    }
  });

  it("at any moment leaves the old file or the new one, whole, and the next run goes on as ever", () => {
    expect(seen.length).toBeGreaterThanOrEqual(4);
    for (const { left, next, after } of seen) {
      expect(["before", whole]).toContain(left);
      expect(next).toMatchObject({ stderr: "", status: 0 });
      expect(after).toBe(whole);
    }
  });

  it("while it writes leaves a file beside that does not stop the next", () => {
    const writing = seen.filter(({ beside }) => beside.some((text) => text !== "" && text !== whole && whole.startsWith(text)));
    expect(writing.length).toBeGreaterThanOrEqual(1);
    for (const { left, next, after } of writing) {
      expect(left).toBe("before");
      expect(next).toMatchObject({ stderr: "", status: 0 });
      expect(after).toBe(whole);
    }
  });
});

const printing = ["sweep flap.yaml", "sweep flap.yaml --json - --top 5000", "catalog materials", "start", "--help", "--version"];

describe("stdout", () => {
  it.each(printing)("whose reader has gone is success without a message: %s", (args) => {
    const { stderr, stdout } = shell(`coilsieve ${args} | true; echo "\${PIPESTATUS[0]}"`, folderWithBrief());
    expect([stderr, stdout]).toEqual(["", "0\n"]);
  });

  it.each(printing)("whose reader takes one line is success without a message: %s", (args) => {
    const { stderr, stdout } = shell(`coilsieve ${args} | head -1; echo "\${PIPESTATUS[0]}"`, folderWithBrief());
    expect([stderr, stdout.split("\n")[1]]).toEqual(["", "0"]);
  });

  it.each(printing)("on a full disk is named, and the exit is 2: %s", (args) => {
    const { stderr, status } = shell(`coilsieve ${args} > /dev/full`, folderWithBrief());
    expect(stderr).toBe("stdout: could not be written (ENOSPC); what it holds is not whole\n");
    expect(status).toBe(2);
  });

  it("that is closed changes nothing for the files asked for", () => {
    const folder = folderWithBrief();
    expect(shell("coilsieve sweep flap.yaml --csv a.csv >&-", folder)).toEqual({ stdout: "", stderr: "", status: 0 });
    expect(existsSync(join(folder, "a.csv"))).toBe(true);
  });
});

describe("stdin and stderr", () => {
  it("closed stdin is not asked for", () => {
    expect(shell("coilsieve sweep flap.yaml <&-", folderWithBrief())).toMatchObject({ stderr: "", status: 0 });
  });

  it("a brief on stdin reads like a file", () => {
    const { stdout, status } = shell("cat flap.yaml | coilsieve sweep /dev/stdin", folderWithBrief());
    expect(stdout).toMatch(/^stdin\n/);
    expect(status).toBe(0);
  });

  it.each(["2>/dev/full", "2>&-"])("stderr that cannot be written leaves the exit as it is: %s", (to) => {
    expect(shell(`coilsieve sweep missing.yaml ${to}`, folderWithBrief()).status).toBe(2);
    expect(shell(`coilsieve --wrong ${to}`, folderWithBrief()).status).toBe(2);
  });
});

describe("a file that cannot be read", () => {
  it.each([
    ["/dev/zero", /^\/dev\/zero file: is over 16 MB/],
    ["/dev/null", /^\/dev\/null brief: is empty/],
    [".", /^\. file: is a folder/],
    ["flap.yaml/x", /^flap\.yaml\/x file: there is no such file/],
    ["no\u001b[31m\u202e.yaml", /^no\\x1b\[31m\\u202e\.yaml file: there is no such file/],
    ["wide.yaml", /^wide\.yaml file: is UTF-16 text; save it as UTF-8/],
    ["null.yaml", /^null\.yaml file: holds null bytes/],
    ["latin.yaml", /^latin\.yaml file: is not UTF-8 text/],
  ])("%s is one line, and the exit is 2", (path, message) => {
    const folder = folderWithBrief();
    writeFileSync(join(folder, "wide.yaml"), Buffer.from(`\ufeff${fits}`, "utf16le"));
    writeFileSync(join(folder, "null.yaml"), `${fits}\u0000`);
    writeFileSync(join(folder, "latin.yaml"), Buffer.from(`title: \u00e9\n${fits}`, "latin1"));
    const { stdout, stderr, status } = run(["sweep", path], folder);
    expect(stderr).toMatch(message);
    expect(stderr.split("\n")).toHaveLength(2);
    expect([stdout, status]).toEqual(["", 2]);
  });

  it("a catalog that the brief names and that is no catalog is told by its own name", () => {
    const folder = folderWithBrief();
    writeFileSync(join(folder, "flap.yaml"), fits.replace("iso-r20", "/dev/zero").replace("astm-a229", "./flap.yaml"));
    const { stderr, status } = run(["sweep", "flap.yaml"], folder);
    expect(stderr).toMatch(/^\/dev\/zero file: is over 16 MB/m);
    expect(status).toBe(2);
  });
});
