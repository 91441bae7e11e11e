import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { readBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf, readText, readTextBeside } from "../../src/files.ts";
import type { Brief } from "../../src/model.ts";
import { sweep } from "../../src/sweep.ts";

/*
 * Figures of one run on one machine, as ratios: quote no single time of a machine that others use too. Prints, asserts nothing.
 *   npm run bench
 */

const WALK = "test/bench/walk";
const scratch = mkdtempSync(path.join(tmpdir(), "coilsieve-bench-"));
const lookup = lookupOn(readShelf(), readTextBeside);
const read = (file: string): Brief => readBrief(readText(file), file, lookup);

const say = (label: string, figure: string) => console.log(`${label.padEnd(66)} ${figure}`);
const ratio = (a: number, b: number) => (a / b).toFixed(2);
const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;

/** Median time of a warm run, ms. */
function warm(act: () => unknown, runs = 15): number {
  for (let i = 0; i < 6; i++) act();
  return median(
    Array.from({ length: runs }, () => {
      const start = performance.now();
      act();
      return performance.now() - start;
    }),
  );
}

/** Median wall time of a whole process, ms, and its peak memory, MiB. */
function whole(words: readonly string[], runs = 7): { readonly ms: number; readonly mib: number } {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    spawnSync(process.execPath, [...words], { stdio: "ignore" });
    return performance.now() - start;
  });
  return { ms: median(times), mib: peakOf(words) };
}

/** Peak resident memory of a process, MiB, as it tells itself when it ends; NaN where it does not. */
function peakOf(words: readonly string[]): number {
  const file = path.join(scratch, "peak");
  const hook = path.join(scratch, "peak.cjs");
  writeFileSync(
    hook,
    `process.on("exit",()=>require("node:fs").writeFileSync(${JSON.stringify(file)},String(process.resourceUsage().maxRSS)))`,
  );
  spawnSync(process.execPath, ["--require", hook, ...words], { stdio: "ignore" });
  return existsSync(file) ? Number(readText(file)) / 1024 : Number.NaN;
}

/** The JSON that another program prints, or null where the machine has not what it needs. */
function other(command: string, words: readonly string[]): { readonly medianMs: number; readonly feasible: number } | null {
  const { status, stdout } = spawnSync(command, [...words], { encoding: "utf8" });
  return status === 0 ? JSON.parse(stdout) : null;
}

function compiled(): string | null {
  const program = path.join(scratch, "walk");
  const flags = ["-O3", "-march=native", "-ffp-contract=off", "-o", program, `${WALK}/walk.cpp`];
  return spawnSync("g++", flags).status === 0 ? program : null;
}

function timingWalk(): void {
  const brief = read(`${WALK}/brief.yaml`);
  const ours = warm(() => sweep(brief));
  const { walked, feasible } = sweep(brief);
  say("timing walk: candidates, feasible", `${walked}, ${feasible}`);
  const program = compiled();
  for (const how of ["bounded", "every"]) {
    const theirs = program && other(program, [`${WALK}/numbers.txt`, how, how === "every" ? "1" : "15"]);
    say(`timing walk, warm, over C++ ${how}`, theirs ? ratio(ours, theirs.medianMs) : "no g++ here");
  }
  const numpy = other("python3", [`${WALK}/walk_numpy.py`, `${WALK}/numbers.txt`, "1"]);
  say("numpy over timing walk, warm", numpy ? ratio(numpy.medianMs, ours) : "no numpy here");
  const step = (brief.sweep.meanDiameter as { step: number }).step;
  const finer: Brief = { ...brief, sweep: { ...brief.sweep, meanDiameter: { step: step / 10 } } };
  say(
    "timing walk with a step ten times finer, over the timing walk",
    ratio(
      warm(() => sweep(finer), 5),
      ours,
    ),
  );
}

function everyStandard(): void {
  const names = (folder: string, ending: string) =>
    readdirSync(`catalogs/${folder}`)
      .filter((name) => name.endsWith(ending))
      .map((name) => name.slice(0, -ending.length));
  const text = `
practice: handbook
load: { rate: { min: 7.2 N/mm, max: 8.8 N/mm }, points: [{ length: 35 mm, force: 180 N }] }
envelope: { outsideDiameter: { max: 32 mm }, freeLength: { max: 70 mm } }
sweep:
  wires: [${names("wires", ".csv").join(", ")}]
  materials: [${names("materials", ".yaml").join(", ")}]
  ends: [plain, plain-ground, squared, squared-ground]
  turns: quarter
`;
  const brief = readBrief(text, "every.yaml", lookup);
  const once = warm(() => sweep(brief), 5);
  say("every standard wire x material x end: candidates", String(sweep(brief).walked));
  say("every standard wire x material x end, warm, over bare node starting", ratio(once, whole(["-e", "0"]).ms));
}

function benchmarkProblem(): void {
  const brief = read("test/published/briefs/mixed-discrete-spring.yaml");
  say("benchmark problem to its exact optimum and proof, warm, ms", warm(() => sweep(brief), 101).toFixed(2));
}

function wholeProcesses(): void {
  const bare = whole(["-e", "0"]);
  const help = whole(["dist/cli.js", "--help"]);
  const demo = whole(["dist/cli.js", "sweep", "reports/latch-plunger.yaml", "--html", path.join(scratch, "page.html")]);
  say("--help over bare node: time, ms more", `${ratio(help.ms, bare.ms)}, ${(help.ms - bare.ms).toFixed(0)}`);
  say("demo with its page over bare node: time, ms more", `${ratio(demo.ms, bare.ms)}, ${(demo.ms - bare.ms).toFixed(0)}`);
  for (const [label, file] of [
    ["a demo of 1e7", "reports/latch-plunger.yaml"],
    ["the timing walk of 5e8", `${WALK}/brief.yaml`],
  ] as const) {
    const { mib } = whole(["dist/cli.js", "sweep", file, "--top", "1"], 1);
    say(`peak memory of ${label} over bare node, MiB more`, (mib - bare.mib).toFixed(0));
  }
}

console.log(`node ${process.version}, ${execFileSync("uname", ["-sm"], { encoding: "utf8" }).trim()}`);
timingWalk();
everyStandard();
benchmarkProblem();
wholeProcesses();
