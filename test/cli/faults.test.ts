import { spawn, spawnSync } from "node:child_process";
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { fits, newFolder, type Run, run } from "./run.ts";

const program = fileURLToPath(new URL("../../dist/cli.js", import.meta.url));

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
  it("at any moment leaves the old file or the new one, whole, and the next run goes on as ever", async () => {
    const folder = folderWithBrief();
    const out = join(folder, "out.json");
    const args = ["sweep", "flap.yaml", "--top", "5000", "--json", "out.json"];
    run(args, folder);
    const whole = readFileSync(out, "utf8");
    for (let delay = 40; delay <= 600; delay += 80) {
      writeFileSync(out, "before");
      await killedAfter(delay, args, folder);
      expect(["before", whole]).toContain(readFileSync(out, "utf8"));
    }
    expect(run(args, folder).status).toBe(0);
    expect(readFileSync(out, "utf8")).toBe(whole);
  });

  it("while it writes leaves a file beside that does not stop the next", async () => {
    const folder = folderWithBrief();
    const args = ["sweep", "flap.yaml", "--top", "5000", "--json", "out.json"];
    writeFileSync(join(folder, "out.json"), "before");
    const left = await killedWhileWriting(args, folder);
    if (left) expect(readFileSync(join(folder, "out.json"), "utf8")).toBe("before");
    expect(run(args, folder)).toMatchObject({ stderr: "", status: 0 });
    expect(JSON.parse(readFileSync(join(folder, "out.json"), "utf8"))).toMatchObject({ practice: "handbook" });
  });
});

/** Runs the program and kills it after some milliseconds, if it still runs. */
function killedAfter(delay: number, args: readonly string[], cwd: string): Promise<void> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, ...args], { cwd, stdio: "ignore" });
    const timer = setTimeout(() => child.kill("SIGKILL"), delay);
    child.on("close", () => {
      clearTimeout(timer);
      resolve();
    });
  });
}

/** Runs the program and kills it once its temporary file has bytes; whether that file is left. */
function killedWhileWriting(args: readonly string[], cwd: string): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(process.execPath, [program, ...args], { cwd, stdio: "ignore" });
    const left = () => readdirSync(cwd).some((file) => file.startsWith(`out.json.${child.pid}.`));
    const timer = setInterval(() => {
      if (left()) child.kill("SIGKILL");
    }, 1);
    child.on("close", () => {
      clearInterval(timer);
      resolve(left());
    });
  });
}

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
