import { spawn } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { largeWords, progressWords } from "../../src/cli/threads/progress.ts";
import { Threads } from "../../src/cli/threads/threads.ts";
import { ProblemError } from "../../src/problem.ts";
import { resultJson } from "../../src/report/files/json.ts";
import { sweep, sweepSteps } from "../../src/studies/sweep.ts";
import { shelf } from "../catalog/shipped.ts";
import { asTerminal, deadThreads, markedThreads, pieceTakes, together } from "./hooks.ts";
import { newFolder, program, run, runProcess } from "./run.ts";

/** A brief of a thousand pieces, in which much survives: the smaller the step, the longer its walk. */
const long = (step: string) => `practice: handbook
load: { rate: { min: 1 N/mm, max: 30 N/mm }, points: [{ length: 35 mm, force: 60 N }] }
envelope: { outsideDiameter: { max: 42 mm } }
sweep:
  wires: [iso-r20, iso-r40]
  materials: [astm-a228, astm-a229, astm-a227]
  ends: [squared-ground, squared, plain]
  turns: quarter
  meanDiameter: { step: ${step} }
`;

function folderWith(step: string): string {
  const folder = newFolder();
  writeFileSync(join(folder, "long.yaml"), long(step));
  return folder;
}

describe("a long walk", () => {
  it("is the same bytes for any number of threads, and says nothing where stderr is no terminal", () => {
    const folder = folderWith("0.05 mm");
    const mark = join(folder, "mark");
    const outputs = ["--html", "a.html", "--json", "-"];
    const [one, ...more] = [1, 2, 3].map((workers) => {
      const { stdout, stderr, status } = runProcess(
        ["sweep", "long.yaml", "--workers", `${workers}`, ...outputs],
        folder,
        together(pieceTakes(folder, 1), markedThreads(folder, mark)),
      );
      expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
      expect(existsSync(mark)).toBe(workers > 1);
      return [stdout, readFileSync(join(folder, "a.html"), "utf8")];
    });
    expect(more).toEqual([one, one]);
  });

  it("ends with 2, one line and no file where a thread dies", () => {
    const folder = folderWith("0.05 mm");
    const { stdout, stderr, status } = runProcess(
      ["sweep", "long.yaml", "--workers", "2", "--json", "a.json"],
      folder,
      together(pieceTakes(folder, 1), deadThreads(folder)),
    );
    expect(stderr).toBe("--workers: a thread ended before its part of the walk was done (exit 7); try --workers 1\n");
    expect({ stdout, status }).toEqual({ stdout: "", status: 2 });
    expect(readdirSync(folder).sort()).toEqual(["clock.cjs", "dead.cjs", "long.yaml"]);
  });

  it.each(["1", "2"])("shows on a terminal how far it is, and stops at Ctrl-C with 130: %s threads", async (workers) => {
    const folder = folderWith("0.0001 mm");
    const child = spawn(process.execPath, [program, "sweep", "long.yaml", "--json", "a.json", "--workers", workers], {
      cwd: folder,
      env: { ...process.env, ...asTerminal(folder) },
    });
    let said = "";
    let printed = "";
    child.stdout.on("data", (chunk) => {
      printed += chunk;
    });
    child.stderr.on("data", (chunk) => {
      if (said === "") child.kill("SIGINT");
      said += chunk;
    });
    const status = await new Promise((resolve) => child.on("close", resolve));
    expect(said).toMatch(/long: walking, [<\d.]+ \d*.*% done, .* candidates a second/);
    // What came last stands on a line that was erased before it.
    const [last] = said.split("\u001b[2K").slice(-1);
    expect(last).toMatch(/^stopped: long, walking, .*% done after [\d.]+ s, .* candidates counted; nothing of it was written\n$/);
    expect({ printed, status }).toEqual({ printed: "", status: 130 });
    expect(readdirSync(folder).sort()).toEqual(["long.yaml", "terminal.cjs"]);
  });
});

describe("a short walk", () => {
  it("starts no thread", () => {
    const folder = folderWith("0.05 mm");
    const mark = join(folder, "mark");
    const short = together(pieceTakes(folder, 0.1), markedThreads(folder, mark));
    expect(runProcess(["sweep", "long.yaml", "--workers", "4"], folder, short).status).toBe(0);
    expect(existsSync(mark)).toBe(false);
  });
});

describe("threads that start at once", () => {
  const never = new AbortController().signal;
  const atOnce = { alone: 0, left: 0 };
  const briefOf = (step: string) =>
    readBrief(
      long(step),
      "long.yaml",
      lookupOn(shelf, () => {
        throw new Error("no file is named");
      }),
    );

  it("give the bytes of the library's sweep", async () => {
    const brief = briefOf("0.05 mm");
    const threads = new Threads(3, atOnce);
    try {
      const options = { sample: 100, nearest: true };
      const found = await threads.runPlan(brief, sweepSteps(brief, options), () => () => {}, never);
      expect(resultJson(found)).toBe(resultJson(sweep(brief, options)));
    } finally {
      await threads.close();
    }
  });

  it("throw what a walk in one thread throws", async () => {
    const brief = briefOf("0.5 nm");
    const messageOf = (error: unknown) => (error instanceof ProblemError ? error.message : error);
    const threads = new Threads(3, atOnce);
    try {
      const together = await threads.runPlan(brief, sweepSteps(brief, {}), () => () => {}, never).catch(messageOf);
      expect(together).toMatch(/diameters of one wire and turns to rank/);
      expect(() => sweep(brief)).toThrow(together as string);
    } finally {
      await threads.close();
    }
  });

  it("that die are one clear problem", async () => {
    const folder = newFolder();
    const entry = join(folder, "fails.mjs");
    writeFileSync(entry, "throw new Error('out of order');");
    const brief = briefOf("0.05 mm");
    const threads = new Threads(2, atOnce, entry);
    try {
      await expect(threads.runPlan(brief, sweepSteps(brief, {}), () => () => {}, never)).rejects.toMatchObject({
        problems: [{ code: "threadDied", key: "--workers" }],
      });
    } finally {
      await threads.close();
    }
  });
});

describe("progress", () => {
  it("is said as the share done, the rate, and the time left", () => {
    expect(progressWords({ fraction: 0.25, counted: 12_400_000, seconds: 4 }, "candidates")).toBe(
      "25.0 % done, 3.1 million candidates a second, 12 s left",
    );
    expect(progressWords({ fraction: 0, counted: 0, seconds: 2 }, "springs")).toBe("0.0 % done, 0 springs a second");
    expect(progressWords({ fraction: 0.01, counted: 5e10, seconds: 10 }, "candidates")).toMatch(/5 billion .* 17 min left$/);
    expect(progressWords({ fraction: null, counted: 0, seconds: 12 }, "candidates")).toBe("12 s so far");
  });

  it("counts in round figures", () => {
    expect([7, 950, 48_210, 999_999, 3.14e6, 5.3e8, 1.06e9].map(largeWords)).toEqual([
      "7",
      "950",
      "48 thousand",
      "1000 thousand",
      "3.1 million",
      "530 million",
      "1.1 billion",
    ]);
  });
});

describe("--workers", () => {
  it.each(["0", "257", "two", "1.5"])("refuses %s with 2", (typed) => {
    const { stderr, status } = run(["sweep", "long.yaml", "--workers", typed], folderWith("1 mm"));
    expect(stderr).toMatch(/--workers <n>.*Write a whole number from 1 to \d+/);
    expect(status).toBe(2);
  });
});
