import { spawn, spawnSync } from "node:child_process";
import {
  chmodSync,
  chownSync,
  constants,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { Socket } from "node:net";
import { join } from "node:path";
import { text } from "node:stream/consumers";
import { describe, expect, it } from "vitest";
import { fits, newFolder, program, run } from "./run.ts";

/** A brief of which so much fits that writing it takes a while. */
const loose = `practice: handbook
load: { rate: { min: 2 N/mm, max: 3 N/mm }, largestForce: 60 N }
sweep: { wires: [iso-r20], materials: [astm-a228, astm-a229], ends: [squared-ground, squared], turns: whole, meanDiameter: { step: 0.0005 mm } }
envelope: { freeLength: { max: 60 mm } }
`;

function folderWith(text = fits): string {
  const folder = newFolder();
  writeFileSync(join(folder, "flap.yaml"), text);
  return folder;
}

describe("an output that is a link", () => {
  it("to a file that another output is to make is refused, and nothing is written", () => {
    const folder = folderWith();
    symlinkSync("t.csv", join(folder, "l.json"));
    const { stderr, status } = run(["sweep", "flap.yaml", "--csv", "t.csv", "--json", "l.json"], folder);
    expect(stderr).toBe("--json: l.json is what --csv writes too; name another file\n");
    expect(status).toBe(2);
    expect(readdirSync(folder).sort()).toEqual(["flap.yaml", "l.json"]);
  });

  it("to a file that is not there yet is followed, through every further link", () => {
    const folder = folderWith();
    mkdirSync(join(folder, "sub"));
    symlinkSync("second", join(folder, "first"));
    symlinkSync("sub/made.json", join(folder, "second"));
    const args = ["sweep", "flap.yaml", "--json", "first"];
    expect(run(args, folder)).toMatchObject({ stderr: "", status: 0 });
    expect(JSON.parse(readFileSync(join(folder, "sub/made.json"), "utf8"))).toMatchObject({ practice: "handbook" });
    expect([readlinkSync(join(folder, "first")), readlinkSync(join(folder, "second"))]).toEqual(["second", "sub/made.json"]);
  });

  it.each([
    ["to itself", "round", "ELOOP"],
    ["into a folder that is not there", "no/out", "ENOENT"],
  ])("%s is told before the sweep", (_title, target, code) => {
    const folder = folderWith();
    symlinkSync(target, join(folder, "round"));
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", "--json", "round"], folder);
    expect(stderr).toBe(`--json: round cannot be written (${code}); name a file that you may write\n`);
    expect([stdout, status]).toEqual(["", 2]);
  });
});

describe("a file that is written over", () => {
  it.each(["--json", "--ndjson"])("keeps its mode (%s)", (option) => {
    const folder = folderWith();
    for (const mode of [0o600, 0o664]) {
      writeFileSync(join(folder, "out"), "before");
      chmodSync(join(folder, "out"), mode);
      expect(run(["sweep", "flap.yaml", option, "out"], folder).status).toBe(0);
      expect(readFileSync(join(folder, "out"), "utf8")).toMatch(/^\{/);
      expect(statSync(join(folder, "out")).mode & 0o777).toBe(mode);
    }
  });

  it.skipIf(process.getuid?.() !== 0)("keeps its owner, where the system lets us give it", () => {
    const folder = folderWith();
    writeFileSync(join(folder, "out"), "before");
    chownSync(join(folder, "out"), 4242, 4343);
    expect(run(["sweep", "flap.yaml", "--csv", "out"], folder).status).toBe(0);
    expect(lstatSync(join(folder, "out"))).toMatchObject({ uid: 4242, gid: 4343 });
  });
});

describe("an output that is a named pipe", () => {
  const pipe = (folder: string) => {
    expect(spawnSync("mkfifo", [join(folder, "pipe")]).status).toBe(0);
  };

  it("which nobody reads is told before the sweep, without waiting for one", () => {
    const folder = folderWith();
    pipe(folder);
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", "--json", "pipe"], folder);
    expect(stderr).toBe("--json: pipe is a pipe that nobody reads; start its reader first\n");
    expect([stdout, status]).toEqual(["", 2]);
  });

  it.each(["--json", "--ndjson"])("hands its reader the whole (%s)", async (option) => {
    const folder = folderWith();
    pipe(folder);
    // Opened without waiting for a writer, so that the reader is there before the program looks.
    const reader = new Socket({ fd: openSync(join(folder, "pipe"), constants.O_RDONLY | constants.O_NONBLOCK) });
    const read = text(reader);
    const args = ["sweep", "flap.yaml", "--top", "5000", option];
    const child = spawn(process.execPath, [program, ...args, "pipe"], { cwd: folder, stdio: "ignore" });
    expect(await new Promise((resolve) => child.on("close", resolve))).toBe(0);
    run([...args, "file"], folder);
    expect(await read).toBe(readFileSync(join(folder, "file"), "utf8"));
  });
});

describe("a signal that ends the program", () => {
  it.each(["SIGTERM", "SIGHUP"] as const)("leaves no file that is not whole: %s", { timeout: 120_000 }, async (signal) => {
    const folder = folderWith(loose);
    const args = ["sweep", "flap.yaml", "--ndjson", "all.ndjson", "--parquet", "all.parquet"];
    const child = spawn(process.execPath, [program, ...args], { cwd: folder, stdio: "ignore" });
    const timer = setInterval(() => {
      if (readdirSync(folder).length > 2) child.kill(signal);
    }, 5);
    const ended = await new Promise((resolve) => child.on("close", (_status, by) => resolve(by)));
    clearInterval(timer);
    expect(ended).toBe(signal);
    expect(readdirSync(folder)).toEqual(["flap.yaml"]);
  });
});
