import { execFileSync, spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, writeFileSync } from "node:fs";
import { availableParallelism, tmpdir } from "node:os";
import path from "node:path";
import { readBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf, readText, readTextBeside } from "../../src/disk/files.ts";
import type { Brief } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";

/*
 * Figures of one run on one machine, as ratios: quote no single time of a machine that others use too. Prints, asserts nothing.
 *   npm run bench
 */

const WALK = "test/bench/walk";
const NO_SCIPY = "no scipy here";
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
function other(command: string, words: readonly string[]): Told | null {
  const { status, stdout } = spawnSync(command, [...words], { encoding: "utf8" });
  return status === 0 ? JSON.parse(stdout) : null;
}

/** What other programs tell of themselves. */
interface Told {
  readonly medianMs: number;
  readonly seeds?: number;
  readonly right?: number;
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
  const file = "test/published/briefs/mixed-discrete-spring.yaml";
  const brief = read(file);
  const ours = warm(() => sweep(brief), 101);
  const bare = whole(["-e", "0"]).ms;
  say("bare node starting over the benchmark problem to its optimum and proof, warm", ratio(bare, ours));
  const evolved = other("python3", ["test/bench/differential_evolution.py", "20"]);
  say(
    "scipy's differential evolution: seeds that end at the optimum",
    evolved ? `${evolved.right} of ${evolved.seeds}` : NO_SCIPY,
  );
  say("one such run over ours with its proof, warm", evolved ? ratio(evolved.medianMs, ours) : NO_SCIPY);
  const cold = whole(["dist/cli.js", "sweep", file]).ms;
  say("one such run, scipy loaded, over our whole process from its start", evolved ? ratio(evolved.medianMs, cold) : NO_SCIPY);
}

/** The timing walk cut down to about so many candidates, as a brief of its own. */
function smaller(name: string, changes: readonly (readonly [RegExp, string])[]): string {
  const text = readText(`${WALK}/brief.yaml`).replace(/\.\//g, `${path.resolve(WALK)}/`);
  const file = path.join(scratch, `${name}.yaml`);
  writeFileSync(
    file,
    changes.reduce((changed, [from, to]) => changed.replace(from, to), text),
  );
  return file;
}

function memory(): void {
  const bare = peakOf(["-e", "0"]);
  const coarser = [/step: 0.05 mm/, "step: 0.265 mm"] as const;
  for (const file of [
    smaller("1e6", [
      coarser,
      [/turns: quarter/, "turns: whole"],
      [/(m01\.yaml),[\s\S]*?\]/, "$1 ]"],
      [/max: 30 \}/, "max: 15 }"],
    ]),
    smaller("1e8", [coarser]),
    `${WALK}/brief.yaml`,
  ]) {
    const { walked } = sweep(read(file));
    const more = peakOf(["dist/cli.js", "sweep", file, "--top", "1"]) - bare;
    say(`peak memory of a walk of ${walked.toLocaleString("en")} candidates over bare node, MiB more`, more.toFixed(0));
  }
}

/** A walk that takes seconds, for so much of it survives, by one thread and by two. */
function threads(): void {
  const file = smaller("long", [
    [/step: 0.05 mm/, "step: 0.0005 mm"],
    [/rate: \{.*\}/, "rate: { min: 2 N/mm, max: 20 N/mm }"],
  ]);
  const by = (workers: string) => whole(["dist/cli.js", "sweep", file, "--top", "1", "--workers", workers], 3);
  const [one, two] = [by("1"), by("2")];
  const { walked, feasible } = sweep(read(file));
  say("long walk: candidates, feasible", `${walked}, ${feasible}`);
  say(`long walk by one thread over two, whole processes, ${availableParallelism()} cores`, ratio(one.ms, two.ms));
  say("long walk by two threads over one: peak memory, MiB more", (two.mib - one.mib).toFixed(0));
}

function wholeProcesses(): void {
  const bare = whole(["-e", "0"]);
  const help = whole(["dist/cli.js", "--help"]);
  const demo = whole(["dist/cli.js", "sweep", "reports/latch-plunger.yaml", "--html", path.join(scratch, "page.html")]);
  say("--help over bare node", ratio(help.ms, bare.ms));
  say("demo with its page over bare node", ratio(demo.ms, bare.ms));
}

console.log(`node ${process.version}, ${execFileSync("uname", ["-sm"], { encoding: "utf8" }).trim()}`);
timingWalk();
everyStandard();
benchmarkProblem();
memory();
threads();
wholeProcesses();
