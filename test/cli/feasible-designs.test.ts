import { spawn } from "node:child_process";
import { mkdirSync, readdirSync, readFileSync, watch, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Design, SweepResult } from "../../src/model.ts";
import { arrowTable, rowsOf } from "../report/files/arrow-table.ts";
import { fits, fitsNothing, newFolder, program, run, runWithClosingReader } from "./run.ts";

/** A brief of which thousands fit. */
const loose = `practice: handbook
load: { rate: { min: 2 N/mm, max: 3 N/mm }, largestForce: 60 N }
sweep: { wires: [iso-r20], materials: [astm-a228, astm-a229], ends: [squared-ground, squared], turns: whole, meanDiameter: { step: 0.2 mm } }
envelope: { freeLength: { max: 60 mm } }
`;

function folderWith(text: string): string {
  const folder = newFolder();
  writeFileSync(join(folder, "flap.yaml"), text);
  return folder;
}

const linesOf = (text: string) =>
  text
    .trimEnd()
    .split("\n")
    .map((line) => JSON.parse(line) as Omit<Design, "rank">);

describe("every spring that fits", () => {
  const folder = folderWith(loose);
  const args = ["sweep", "flap.yaml", "--ndjson", "all.ndjson", "--parquet", "all.parquet", "--json", "all.json"];
  const { stdout, status } = run([...args, "--top", "100000"], folder);
  const result = JSON.parse(readFileSync(join(folder, "all.json"), "utf8")) as SweepResult;
  const lines = linesOf(readFileSync(join(folder, "all.ndjson"), "utf8"));
  const rows = rowsOf(arrowTable(readFileSync(join(folder, "all.parquet"))));
  /** Designs by what singles one out. */
  const byName = (designs: readonly Omit<Design, "rank">[]) => [...designs].sort((a, b) => (nameOf(a) < nameOf(b) ? -1 : 1));
  const nameOf = ({ material, wireDiameter, wire, ends, totalTurns, meanDiameter }: Omit<Design, "rank">) =>
    [material, wireDiameter, wire, ends, totalTurns, meanDiameter].join();

  it("is a line of NDJSON with the figures that the sweep ranks, beside the table on stdout", () => {
    expect(status).toBe(0);
    expect(stdout).toMatch(/candidates walked/);
    expect(lines.length).toBe(result.feasible);
    expect(lines.length).toBeGreaterThan(1000);
    expect(byName(lines)).toEqual(byName(result.designs.map(({ rank, ...figures }) => figures)));
  });

  it("is a row of the Parquet file, in the same order, with the same values", () => {
    expect(rows.length).toBe(lines.length);
    /** What NDJSON has where the table has a column. */
    const inLine = (line: Omit<Design, "rank">, name: string) => {
      const [, figure, point] = /^(length|deflection|force|stress|shareOfDeflection)At(LargestForce)$/.exec(name) ?? [];
      const [, limit] = /^marginOf(\w+)$/.exec(name) ?? [];
      if (point) return line.points[0]?.[figure as "force"];
      const [, end] = /^freeLength(Min|Max)$/.exec(name) ?? [];
      if (end) return line.freeLengthRange?.[end === "Min" ? "min" : "max"] ?? null;
      if (limit) return line.margins[`${limit[0]?.toLowerCase()}${limit.slice(1)}` as "index"] ?? null;
      return name === "cautions" ? line.cautions.join(" ") : line[name as keyof typeof line];
    };
    const differing = lines.flatMap((line, i) =>
      Object.entries(rows[i] ?? {}).filter(([name, value]) => !Object.is(value, inLine(line, name))),
    );
    expect(differing).toEqual([]);
    expect(Object.keys(rows[0] ?? {}).filter((name) => name.startsWith("marginOf")).length).toBe(
      Object.keys(lines[0]?.margins ?? {}).length,
    );
  });

  it("is printed alone by --ndjson -, with the bytes that a file holds", () => {
    const { stdout, stderr } = run(["sweep", "flap.yaml", "--ndjson", "-"], folder);
    expect(stderr).toBe("");
    expect(stdout).toBe(readFileSync(join(folder, "all.ndjson"), "utf8"));
  });

  it("is the same bytes run after run", () => {
    run(["sweep", "flap.yaml", "--parquet", "again.parquet"], folder);
    expect(readFileSync(join(folder, "again.parquet")).equals(readFileSync(join(folder, "all.parquet")))).toBe(true);
  });

  it("ends without a message, and 0, for a reader that closes the pipe; a file beside it is whole", async () => {
    const ended = await runWithClosingReader(["sweep", "flap.yaml", "--ndjson", "-", "--parquet", "beside.parquet"], folder);
    expect(ended).toEqual({ stderr: "", status: 0 });
    expect(readFileSync(join(folder, "beside.parquet")).equals(readFileSync(join(folder, "all.parquet")))).toBe(true);
    expect(await runWithClosingReader(["sweep", "flap.yaml", "--ndjson", "-"], folder)).toEqual({ stderr: "", status: 0 });
  });
});

describe("where nothing fits", () => {
  it("the files are there, with no line and no row, and the status is 1", () => {
    const folder = folderWith(fitsNothing);
    expect(run(["sweep", "flap.yaml", "--ndjson", "a.ndjson", "--parquet", "a.parquet"], folder).status).toBe(1);
    expect(readFileSync(join(folder, "a.ndjson"), "utf8")).toBe("");
    expect(arrowTable(readFileSync(join(folder, "a.parquet"))).numRows).toBe(0);
  });
});

describe("what cannot be written is refused with 2 before the sweep, and nothing is left behind", () => {
  it.each([
    [["--parquet", "-"], "--parquet: a table of bytes is not printed; name a file, such as springs.parquet\n"],
    [["--ndjson", "-", "--json", "-"], "--json, --ndjson: both are -; print one, write the other\n"],
    [["--ndjson", "-", "--pin", "1"], "--pin: stdout is to hold something else too; write that to a file\n"],
    [["--ndjson", "no/a.ndjson"], "--ndjson: there is no folder no; make it, or name another\n"],
    [["--parquet", "made", "--ndjson", "a.ndjson"], "--parquet: made is a folder; name a file in it\n"],
  ])("%j", (options, message) => {
    const folder = folderWith(fits);
    mkdirSync(join(folder, "made"));
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", ...options], folder);
    expect({ stdout, stderr, status }).toEqual({ stdout: "", stderr: message, status: 2 });
    expect(readdirSync(folder).sort()).toEqual(["flap.yaml", "made"]);
  });

  it("of nested springs", () => {
    const nested = fits.replace(
      "{ force: 20 N, deflection: 10 mm }",
      "{ rate: 2 N/mm, points: [{ length: 40 mm, force: 20 N }] }",
    );
    const { stderr, status } = run(["sweep", "flap.yaml", "--ndjson", "a.ndjson"], folderWith(`${nested}nested: 2\n`));
    expect(stderr).toMatch(/^--ndjson: the brief asks for nested springs; /);
    expect(status).toBe(2);
  });
});

describe("a file that cannot be finished", () => {
  it("leaves what was there before, and says so", () => {
    const folder = folderWith(fits);
    const { stderr, status } = run(["sweep", "flap.yaml", "--ndjson", "/dev/full"], folder);
    expect(stderr).toMatch(/^--ndjson: \/dev\/full could not be written \(ENOSPC\); nothing of it was kept\n$/);
    expect(status).toBe(2);
  });
});

describe("writing them, stopped by Ctrl-C,", () => {
  it("leaves no file, says how far it got, and exits with 130", async () => {
    const folder = folderWith(loose.replace("step: 0.2 mm", "step: 0.0005 mm"));
    const args = ["sweep", "flap.yaml", "--ndjson", "all.ndjson", "--parquet", "all.parquet"];
    const child = spawn(process.execPath, [program, ...args], { cwd: folder });
    let said = "";
    child.stderr.on("data", (chunk) => {
      said += chunk;
    });
    // Once both are begun, and only once, for a second signal ends the program at once.
    const begun = watch(folder, () => {
      if (readdirSync(folder).length < 3) return;
      begun.close();
      child.kill("SIGINT");
    });
    const status = await new Promise((resolve) => child.on("close", resolve));
    expect(said).toMatch(/^stopped: flap, writing every spring that fits, .* done after .* s, .*; no file of them was kept\n$/);
    expect(status).toBe(130);
    expect(readdirSync(folder)).toEqual(["flap.yaml"]);
  });
});
