import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { Design, SweepResult } from "../../src/model.ts";
import { fits, newFolder, run } from "./run.ts";

const root = new URL("../../", import.meta.url);
const demo = readFileSync(new URL("reports/gauge-plunger.yaml", root), "utf8");

function folderWith(text: string): string {
  const folder = newFolder();
  writeFileSync(join(folder, "gauge.yaml"), text);
  return folder;
}

/** Runs a command on a brief; JSON where that is asked for. */
function sweepOf(text: string, ...args: string[]) {
  return run(["sweep", "gauge.yaml", ...args], folderWith(text));
}
function resultOf(text: string, ...args: string[]): SweepResult {
  return JSON.parse(sweepOf(text, "--json", "-", ...args).stdout) as SweepResult;
}

const shares = ({ designs }: SweepResult) => designs.map(({ scatter }) => scatter?.share as number);

describe("a sweep that draws springs", () => {
  it("prints the yield of each design within 80 columns, how it was drawn, and among how many it ranks", () => {
    const { stdout, stderr, status } = sweepOf(demo);
    expect([stderr, status]).toEqual(["", 0]);
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    expect(stdout).toMatch(/yield\n.*%\n/);
    expect(stdout.replace(/\s+/g, " ")).toMatch(/Ranked by yield among 200 springs, the best by mass; one of the others may/);
    expect(stdout.replace(/\s+/g, " ")).toMatch(/Yield: [\d.]+ % of 2,000 drawn.* Drawn within wire ± .*seed 1\./);
  });

  it("ranks by yield, the largest first, and by the figures typed instead", () => {
    const byYield = shares(resultOf(demo));
    expect(byYield).toEqual([...byYield].sort((a, b) => b - a));
    const { designs, ranksAgain } = resultOf(demo, "--rank", "outsideDiameter");
    expect(ranksAgain).toBeUndefined();
    const widths = designs.map(({ outsideDiameter }) => outsideDiameter);
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
  });

  it("gives the same bytes again, others for another seed, and none of it unasked", () => {
    const first = sweepOf(demo, "--json", "-").stdout;
    expect(sweepOf(demo, "--json", "-").stdout).toBe(first);
    expect(shares(resultOf(demo.replace("draws: 2000", "draws: 2000, seed: 2")))).not.toEqual(shares(JSON.parse(first)));
    const unasked = demo.replace(/^ {2}scatter: .*\n/m, "").replace("[yield, mass]", "mass");
    expect(sweepOf(unasked, "--json", "-").stdout).not.toMatch(/scatter|yield/i);
    expect(sweepOf(unasked).stdout).not.toMatch(/yield|drawn/i);
    expect(sweepOf(unasked, "--csv", "-").stdout).not.toMatch(/yield/);
  });

  it("writes yield and its standard error as CSV", () => {
    const [head = "", row = ""] = sweepOf(demo, "--csv", "-", "--top", "1").stdout.split("\r\n");
    const place = head.split(",").indexOf("yield (%)");
    const [{ scatter }] = resultOf(demo, "--top", "1").designs as [Design];
    expect(head.split(",")[place + 1]).toBe("yieldStandardError (%)");
    expect(
      row
        .split(",")
        .slice(place, place + 2)
        .map(Number),
    ).toEqual([expect.closeTo(100 * (scatter?.share as number), 9), expect.closeTo(100 * (scatter?.standardError as number), 7)]);
  });

  it.each([
    [
      "a rank by yield of springs that are not drawn",
      fits,
      ["--rank", "yield,mass"],
      /^--rank: yield, where no springs are drawn; write/,
    ],
    ["a rank by yield alone", demo, ["--rank", "yield"], /^--rank: yield alone.* write \[yield, mass\]/],
    ["a front of yields", demo, ["--front", "yield,mass"], /It takes mass, outsideDiameter/],
    [
      "more than can be drawn",
      demo.replace("2000", "100000"),
      ["--top", "900"],
      /service.scatter.draws: 100,000 springs for each of 900/,
    ],
    ["a tolerance that leaves no spring", demo.replace("0.3 mm", "300 mm"), [], /service.scatter.freeLength: is so wide/],
  ] as const)("refuses %s in one line, with 2", (_title, text, args, message) => {
    const { stdout, stderr, status } = sweepOf(text, ...args);
    expect([stdout, status]).toEqual(["", 2]);
    expect(stderr.trimEnd().split("\n")).toHaveLength(1);
    expect(stderr).toMatch(message);
  });

  it("warns where tables do not reach a tolerance, and prints a dash there", () => {
    const slender = demo
      .replace("bore: 12 mm", "bore: 40 mm")
      .replace("rank: [yield, mass]", "limits: { index: { min: 20.2, max: 25 } }");
    const { stdout, stderr, status } = sweepOf(slender, "--top", "1");
    expect(status).toBe(0);
    expect(stderr).toMatch(/^warning: The tables of tolerances do not reach some/);
    expect(stdout).toMatch(/–\n/);
    expect(stdout).toMatch(/Yield: not drawn/);
  });

  it("prices limits by figures, whatever ranks first", () => {
    const { stdout, status } = run(["relax", "gauge.yaml"], folderWith(demo));
    expect(status).toBe(0);
    expect(stdout.replace(/\s+/g, " ")).toMatch(/As asked the best design has a mass of 0\.5862 g/);
  });
});

describe("a check that draws springs", () => {
  it("gives a ranked design the share that the sweep gave it", () => {
    const folder = folderWith(demo);
    writeFileSync(join(folder, "pinned.yaml"), run(["sweep", "gauge.yaml", "--pin", "1"], folder).stdout);
    const { stdout, status } = run(["check", "pinned.yaml", "--json", "-"], folder);
    expect(status).toBe(0);
    const { design } = JSON.parse(stdout) as { readonly design: Design };
    expect(design.scatter?.share).toBe(shares(resultOf(demo, "--top", "1"))[0]);
    expect(run(["check", "pinned.yaml"], folder).stdout.replace(/\s+/g, " ")).toMatch(/Yield: [\d.]+ % of 2,000 drawn/);
  });
});
