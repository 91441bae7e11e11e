import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { recalculated } from "../report/calculation/recalculated.ts";
import { fits, fitsNothing, newFolder, run } from "./run.ts";

const given = `practice: handbook
load: { force: 20 N, deflection: 10 mm }
design: { wire: 1 mm, material: astm-a228, ends: squared-ground, meanDiameter: 8 mm, totalTurns: 12, freeLength: 40 mm }
`;

function folderWith(briefs: Readonly<Record<string, string>>): string {
  const folder = newFolder();
  for (const [name, text] of Object.entries(briefs)) writeFileSync(join(folder, name), text);
  return folder;
}

interface Figures {
  readonly designs: readonly { readonly rate: number; readonly wireDiameter: number }[];
}

describe("coilsieve sweep --worked", () => {
  it.each([["--worked"], ["--worked", "-"]])("prints the working of rank 1 below the table with %s %s", (...option) => {
    const folder = folderWith({ "a.yaml": fits });
    const { stdout, stderr, status } = run(["sweep", "a.yaml", ...option.filter(Boolean)], folder);
    expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
    expect(stdout).toMatch(/Screening only[\s\S]*\n\nWorking: [\s\S]*\nRank 1: /);
    const table = run(["sweep", "a.yaml"], folder).stdout;
    expect(stdout.startsWith(table)).toBe(true);
  });

  it("writes a spreadsheet whose figures are the design's, and prints the table alone", async () => {
    const folder = folderWith({ "a.yaml": fits });
    const { stdout, status } = run(["sweep", "a.yaml", "--worked", "a.xlsx", "--json", "a.json"], folder);
    expect(status).toBe(0);
    expect(stdout).not.toContain("Working:");
    const [best] = (JSON.parse(readFileSync(join(folder, "a.json"), "utf8")) as Figures).designs;
    const book = await recalculated(readFileSync(join(folder, "a.xlsx")));
    expect(book.valueOf("springRate")).toBeCloseTo((best?.rate ?? Number.NaN) / 1000, 9);
    expect(book.valueOf("wireDiameter")).toBeCloseTo(1000 * (best?.wireDiameter ?? Number.NaN), 9);
  });

  it.each([
    ["a.html", /^<!doctype html>[\s\S]*<\/html>\n$/],
    ["a.txt", /^Working: [\s\S]*Screening only/],
  ])("writes %s in the form of its ending", (file, form) => {
    const folder = folderWith({ "a.yaml": fits });
    expect(run(["sweep", "a.yaml", "--worked", file], folder).status).toBe(0);
    expect(readFileSync(join(folder, file), "utf8")).toMatch(form);
  });

  it("refuses another ending before it sweeps", () => {
    const folder = folderWith({ "a.yaml": fits });
    const { stdout, stderr, status } = run(["sweep", "a.yaml", "--worked", "a.pdf"], folder);
    expect({ stdout, status }).toEqual({ stdout: "", status: 2 });
    expect(stderr).toMatch(/^--worked: a\.pdf is no \.xlsx, \.html or \.txt; /);
    expect(existsSync(join(folder, "a.pdf"))).toBe(false);
  });

  it("refuses a folder that is not there before it sweeps", () => {
    const { stderr, status } = run(["sweep", "a.yaml", "--worked", "no/a.xlsx"], folderWith({ "a.yaml": fits }));
    expect({ stderr, status }).toEqual({ stderr: "--worked: there is no folder no; make it, or name another\n", status: 2 });
  });

  it("is not printed beside what is to stand on stdout alone", () => {
    const folder = folderWith({ "a.yaml": fits });
    for (const alone of [
      ["--json", "-"],
      ["--csv", "-"],
      ["--pin", "1"],
    ]) {
      const { stdout, stderr, status } = run(["sweep", "a.yaml", "--worked", "-", ...alone], folder);
      expect({ stdout, status }).toEqual({ stdout: "", status: 2 });
      expect(stderr).toContain("--worked: stdout is to hold");
    }
  });

  it("takes one brief for one file", () => {
    const folder = folderWith({ "a.yaml": fits, "b.yaml": fits });
    const { stderr, status } = run(["sweep", "a.yaml", "b.yaml", "--worked", "a.xlsx"], folder);
    expect(status).toBe(2);
    expect(stderr).toContain("--worked: 2 briefs and one file");
    expect(run(["sweep", "a.yaml", "b.yaml", "--worked"], folder).stdout.match(/^Working: /gm)).toHaveLength(2);
  });

  it("says so where nothing fits, and writes nothing", () => {
    const folder = folderWith({ "a.yaml": fitsNothing });
    const { stderr, status } = run(["sweep", "a.yaml", "--worked", "a.xlsx"], folder);
    expect(status).toBe(1);
    expect(stderr).toContain("--worked: nothing fits, so there is no design to work through\n");
    expect(existsSync(join(folder, "a.xlsx"))).toBe(false);
  });
});

describe("coilsieve check --worked", () => {
  it("prints the working of the given spring below the verdict, whatever the verdict", () => {
    const folder = folderWith({ "a.yaml": given });
    const { stdout, status } = run(["check", "a.yaml", "--worked"], folder);
    const verdict = run(["check", "a.yaml"], folder);
    expect(status).toBe(verdict.status);
    expect(stdout.startsWith(verdict.stdout)).toBe(true);
    expect(stdout).toMatch(/\nThe given spring: wire 1 mm/);
    expect(stdout).toMatch(/L0 +free length = 40 mm +\[brief, design\.freeLength\]|L0 +free length = 40 mm \[brief/);
  });

  it("works as far as a spring goes that is solid before it is pressed", () => {
    const folder = folderWith({ "a.yaml": given.replace("freeLength: 40 mm", "freeLength: 9 mm") });
    const { stdout, status } = run(["check", "a.yaml", "--worked"], folder);
    expect(status).toBe(1);
    expect(stdout).toContain("leaves no room to the solid length");
    expect(stdout).not.toMatch(/NaN/);
  });

  it("writes a spreadsheet", async () => {
    const folder = folderWith({ "a.yaml": given });
    run(["check", "a.yaml", "--worked", "a.xlsx"], folder);
    const book = await recalculated(readFileSync(join(folder, "a.xlsx")));
    expect(book.valueOf("freeLength")).toBe(40);
  });
});
