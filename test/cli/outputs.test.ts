import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { fits, fitsNothing, newFolder, run, runWithClosingReader } from "./run.ts";

function folderWithBrief(text = fits): string {
  const folder = newFolder();
  writeFileSync(join(folder, "flap.yaml"), text);
  return folder;
}

describe("output files", () => {
  it("hold the page, the CSV and the JSON, beside the table on stdout", () => {
    const folder = folderWithBrief();
    const { stdout, status } = run(["sweep", "flap.yaml", "--html", "a.html", "--csv", "a.csv", "--json", "a.json"], folder);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^flap\n/);
    expect(readFileSync(join(folder, "a.html"), "utf8")).toMatch(/^<!doctype html>/i);
    expect(JSON.parse(readFileSync(join(folder, "a.json"), "utf8"))).toMatchObject({ practice: "handbook" });
    expect(readFileSync(join(folder, "a.csv"), "utf8").split("\n").length).toBeGreaterThan(2);
    expect(readdirSync(folder).sort()).toEqual(["a.csv", "a.html", "a.json", "flap.yaml"]);
  });

  it("named - are printed alone, with the bytes that a file would hold", () => {
    const folder = folderWithBrief();
    for (const kind of ["csv", "json"]) {
      const { stdout, stderr } = run(["sweep", "flap.yaml", `--${kind}`, "-"], folder);
      run(["sweep", "flap.yaml", `--${kind}`, "a.out"], folder);
      expect(stderr).toBe("");
      expect(stdout).toBe(readFileSync(join(folder, "a.out"), "utf8"));
    }
  });

  it("are the same bytes run after run", () => {
    const folder = folderWithBrief();
    const [first, second] = [0, 1].map(() => run(["sweep", "flap.yaml", "--json", "-"], folder).stdout);
    expect(first).toBe(second);
  });

  it("are written also when nothing fits", () => {
    const folder = folderWithBrief(fitsNothing);
    expect(run(["sweep", "flap.yaml", "--json", "a.json"], folder).status).toBe(1);
    expect(JSON.parse(readFileSync(join(folder, "a.json"), "utf8")).feasible).toBe(0);
  });

  it.each([
    ["in a folder that is not there", "no/a.csv", /there is no folder no; make it/],
    ["that are a folder", "made", /made is a folder/],
  ])("%s are refused with 2, and nothing is left behind", (_title, path, message) => {
    const folder = folderWithBrief();
    mkdirSync(join(folder, "made"));
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", "--json", "good.json", "--csv", path], folder);
    expect(stderr).toMatch(message);
    expect(stderr).toMatch(/^--csv: /);
    expect(stdout).toBe("");
    expect(status).toBe(2);
    expect(readdirSync(folder).sort()).toEqual(["flap.yaml", "made"]);
  });

  it("stay as they were when the brief is bad", () => {
    const folder = folderWithBrief("practice: handbook\n");
    writeFileSync(join(folder, "a.csv"), "before");
    expect(run(["sweep", "flap.yaml", "--csv", "a.csv", "--json", "b.json"], folder).status).toBe(2);
    expect(readFileSync(join(folder, "a.csv"), "utf8")).toBe("before");
    expect(existsSync(join(folder, "b.json"))).toBe(false);
  });

  it("that are links are written where they lead, and devices are not replaced", () => {
    const folder = folderWithBrief();
    writeFileSync(join(folder, "real.csv"), "");
    symlinkSync("real.csv", join(folder, "link.csv"));
    run(["sweep", "flap.yaml", "--csv", "link.csv", "--json", "/dev/null"], folder);
    expect(readFileSync(join(folder, "real.csv"), "utf8")).not.toBe("");
    expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
  });
});

describe("a reader that closes the pipe", () => {
  it("has what it wanted: no message, and 0", async () => {
    const args = ["sweep", "flap.yaml", "--json", "-", "--top", "100000"];
    expect(await runWithClosingReader(args, folderWithBrief())).toEqual({ stderr: "", status: 0 });
  });
});
