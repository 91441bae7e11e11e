import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { quotedText } from "../studies/check/quoted.ts";
import { fits, fitsNothing, newFolder, run } from "./run.ts";

function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = newFolder();
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

const passing = quotedText({});
const failing = quotedText({ envelope: "envelope: { bore: 18.05 mm }" });
const contradictory = passing.replace("freeLength: 44 mm }", "freeLength: 44 mm, rate: 5.5 N/mm }");

describe("check", () => {
  it("prints the verdict within 80 columns, nothing on stderr, and exits with 0 where every limit holds", () => {
    const { stdout, stderr, status } = run(["check", "quoted.yaml"], folderWith({ "quoted.yaml": passing }));
    expect(stderr).toBe("");
    expect(status).toBe(0);
    expect(stdout).toMatch(/^quoted\nJudged: wire 2 mm of astm-a228/);
    expect(stdout).toMatch(/^Passes: every limit holds\.$/m);
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    expect(stdout).not.toContain("fails");
  });

  it("exits with 1 where a limit fails, and marks it with a word", () => {
    const { stdout, status } = run(["check", "quoted.yaml"], folderWith({ "quoted.yaml": failing }));
    expect(status).toBe(1);
    expect(stdout).toMatch(/^outside diameter +18\.07 mm +at most 18\.05 mm +-0\.1 % +fails +brief$/m);
    expect(stdout).toMatch(/^Fails: outside diameter at solid\.$/m);
  });

  it("exits with 1, not 2, where the data contradict each other", () => {
    const { stdout, stderr, status } = run(["check", "quoted.yaml"], folderWith({ "quoted.yaml": contradictory }));
    expect(status).toBe(1);
    expect(stderr).toBe("");
    expect(stdout).toMatch(/Quoted rate 11\.2 % above/);
  });

  it("keeps within 80 columns for the longest names", () => {
    const text = failing.replace("name: open", `name: ${"the longest resting place ".repeat(3)}`);
    const { stdout } = run(["check", "quoted.yaml"], folderWith({ "quoted.yaml": text }));
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it("writes JSON in SI, alone on stdout for -, with the bytes that a file holds", () => {
    const folder = folderWith({ "quoted.yaml": contradictory });
    const { stdout, status } = run(["check", "quoted.yaml", "--json", "-"], folder);
    expect(status).toBe(1);
    const json = JSON.parse(stdout);
    expect(json).toMatchObject({ passes: false, practice: "handbook", disagreements: [{ figure: "rate", given: 5500 }] });
    expect(json.brief).toMatchObject({ design: { material: "astm-a228", ends: "squared-ground", totalTurns: 10 } });
    expect(json.brief).not.toHaveProperty("sweep");
    expect(run(["check", "quoted.yaml", "--json", "a.json"], folder).stdout).toMatch(/^quoted\n/);
    expect(readFileSync(join(folder, "a.json"), "utf8")).toBe(stdout);
  });

  it.each([
    ["a brief without a design", fits, /quoted\.yaml:1 design: is missing/],
    [
      "a design that is not settled",
      passing.replace("totalTurns: 10, ", ""),
      /quoted\.yaml:6 design: gives neither turns nor rate/,
    ],
    [
      "a wire that the material is not made in",
      passing.replace("wire: 2 mm", "wire: 9 mm"),
      /quoted\.yaml design\.wire: 9 mm is outside/,
    ],
  ])("%s exits with 2 and says what is right, with nothing on stdout", (_title, text, message) => {
    const { stdout, stderr, status } = run(["check", "quoted.yaml"], folderWith({ "quoted.yaml": text }));
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/fault of coilsieve/);
    expect(stdout).toBe("");
    expect(status).toBe(2);
  });

  it("sweep on a brief with a design and no sweep says to use it", () => {
    const { stderr, status } = run(["sweep", "quoted.yaml"], folderWith({ "quoted.yaml": passing }));
    expect(stderr).toMatch(/sweep: is missing; .*coilsieve check/);
    expect(status).toBe(2);
  });

  it("judges the demo, whose quotation contradicts itself", () => {
    const { stdout, status } = run(["check", fileURLToPath(new URL("../../reports/latch-plunger-check.yaml", import.meta.url))]);
    expect(status).toBe(1);
    expect(stdout).toMatch(/^Latch plunger spring as quoted \(invented example\)/);
  });
});

describe("sweep --pin", () => {
  it("prints a brief of the design of that rank, which check passes with the same figures", () => {
    const folder = folderWith({ "flap.yaml": fits });
    const swept = JSON.parse(run(["sweep", "flap.yaml", "--json", "-"], folder).stdout).designs[2];
    const pinned = run(["sweep", "flap.yaml", "--pin", "3"], folder);
    expect(pinned).toMatchObject({ status: 0, stderr: "" });
    writeFileSync(join(folder, "pinned.yaml"), pinned.stdout);
    const judged = run(["check", "pinned.yaml", "--json", "-"], folder);
    expect(judged.status).toBe(0);
    const { design } = JSON.parse(judged.stdout);
    expect(design).toMatchObject({ wire: swept.wire, series: swept.series, material: swept.material, ends: swept.ends });
    for (const figure of ["rate", "freeLength", "mass", "solidSafety", "meanDiameter"]) {
      expect(Math.abs(design[figure] / swept[figure] - 1), figure).toBeLessThan(1e-12);
    }
  });

  it.each([
    ["a rank beyond those kept", ["--pin", "99"], /--pin: rank 99 is not among the 20 designs kept; .*--top/],
    ["no whole number", ["--pin", "first"], /whole number/],
    ["stdout asked for twice", ["--pin", "1", "--json", "-"], /--pin: stdout/],
  ])("%s is refused with 2", (_title, args, message) => {
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", ...args], folderWith({ "flap.yaml": fits }));
    expect(stderr).toMatch(message);
    expect(stdout).toBe("");
    expect(status).toBe(2);
  });

  it("has nothing to print where nothing fits, and exits with 1", () => {
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", "--pin", "1"], folderWith({ "flap.yaml": fitsNothing }));
    expect([stdout, status]).toEqual(["", 1]);
    expect(stderr).toMatch(/nothing fits/);
  });
});
