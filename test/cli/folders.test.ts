import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { openedFiles } from "./hooks.ts";
import { fits, fitsNothing, newFolder, run, runProcess } from "./run.ts";

function folderWith(...names: readonly string[]): string {
  const folder = newFolder();
  for (const name of names) {
    mkdirSync(join(folder, name, ".."), { recursive: true });
    writeFileSync(join(folder, name), fits);
  }
  return folder;
}

describe("an output that is a folder", () => {
  it("gets a file for each brief, named after it, and is made where it is not there", () => {
    const folder = folderWith("flap.yaml", "latch.yaml");
    const outputs = ["--json", "out/", "--csv", "out/", "--html", "pages/", "--sheet", "pages/", "--drawing", "out/"];
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", "latch.yaml", ...outputs], folder);
    expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
    expect(stdout).toMatch(/^flap\n[\s\S]*\nlatch\n/);
    expect(readdirSync(join(folder, "out")).sort()).toEqual([
      "flap.csv",
      "flap.drawing.svg",
      "flap.json",
      "latch.csv",
      "latch.drawing.svg",
      "latch.json",
    ]);
    expect(readdirSync(join(folder, "pages")).sort()).toEqual(["flap.html", "flap.sheet.html", "latch.html", "latch.sheet.html"]);
    const alone = run(["sweep", "latch.yaml", "--json", "-"], folder).stdout;
    expect(readFileSync(join(folder, "out", "latch.json"), "utf8")).toBe(alone);
  });

  it("needs no slash where it is there and several briefs are swept, and takes one brief with a slash", () => {
    const folder = folderWith("flap.yaml", "latch.yaml", "out/before.txt");
    expect(run(["sweep", "flap.yaml", "latch.yaml", "--json", "out"], folder).status).toBe(0);
    expect(run(["sweep", "flap.yaml", "--csv", "out/"], folder).status).toBe(0);
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["before.txt", "flap.csv", "flap.json", "latch.json"]);
  });

  it("holds what was swept where nothing fits one of the briefs, and the status is 1", () => {
    const folder = folderWith("flap.yaml");
    writeFileSync(join(folder, "none.yaml"), fitsNothing);
    expect(run(["sweep", "none.yaml", "flap.yaml", "--json", "out/"], folder).status).toBe(1);
    expect(readdirSync(join(folder, "out")).sort()).toEqual(["flap.json", "none.json"]);
  });
});

describe("what is wrong is said before anything is swept, with 2, and nothing is left behind", () => {
  it.each([
    ["a file for several briefs", ["--json", "out.json"], /^--json: 2 briefs and one file; name a folder/],
    ["stdout for several briefs", ["--csv", "-"], /^--csv: 2 briefs and one file; name a folder/],
    ["a folder in a folder that is not there", ["--json", "no/out/"], /^--json: there is no folder no to make no\/out\/ in/],
    ["a file as a folder", ["--json", "flap.yaml/"], /^--json: flap\.yaml\/ is a file, no folder; name a folder/],
    ["a second folder that cannot be", ["--csv", "good/", "--json", "no/out/"], /^--json: there is no folder/],
    ["one sheet of the working", ["--worked", "a.html"], /^--worked: 2 briefs and one file/],
  ])("%s", (_title, outputs, message) => {
    const folder = folderWith("flap.yaml", "latch.yaml");
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", "latch.yaml", ...outputs], folder);
    expect(stderr).toMatch(message);
    expect({ stdout, status }).toEqual({ stdout: "", status: 2 });
    expect(readdirSync(folder).sort()).toEqual(["flap.yaml", "latch.yaml"]);
  });

  it("two briefs of one name", () => {
    const folder = folderWith("left/flap.yaml", "right/flap.yaml");
    const { stdout, stderr, status } = run(["sweep", "left/flap.yaml", "right/flap.yaml", "--json", "out/"], folder);
    expect(stderr).toBe(
      "--json: left/flap.yaml and right/flap.yaml would both write out/flap.json; give the briefs different names\n",
    );
    expect({ stdout, status }).toEqual({ stdout: "", status: 2 });
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  it("a bad brief beside a good one", () => {
    const folder = folderWith("flap.yaml");
    writeFileSync(join(folder, "bad.yaml"), "practice: handbook\n");
    const { stdout, status } = run(["sweep", "flap.yaml", "bad.yaml", "--json", "out/"], folder);
    expect({ stdout, status }).toEqual({ stdout: "", status: 2 });
    expect(readdirSync(folder).sort()).toEqual(["bad.yaml", "flap.yaml"]);
  });
});

describe("several briefs", () => {
  it("share catalogs: each file is read once", () => {
    const folder = newFolder();
    mkdirSync(join(folder, "briefs"));
    writeFileSync(join(folder, "stock.csv"), "# Invented stock\nlabel,diameter\n1.0,1.0 mm\n1.2,1.2 mm\n");
    const own = fits.replace("[iso-r20]", "[iso-r20, ../stock.csv]");
    for (const name of ["a", "b", "c"]) writeFileSync(join(folder, "briefs", `${name}.yaml`), own);
    const list = join(folder, "opened");
    const briefs = ["briefs/a.yaml", "briefs/b.yaml", join(folder, "briefs", "c.yaml")];
    const { stderr, status } = runProcess(["sweep", ...briefs], folder, openedFiles(folder, list));
    expect({ stderr, status }).toEqual({ stderr: "", status: 0 });
    const opened = readFileSync(list, "utf8").split("\n");
    const catalogs = opened.filter((path) => /stock\.csv$|catalogs\//.test(path));
    expect(catalogs.filter((path) => path.endsWith("stock.csv"))).toHaveLength(1);
    expect(catalogs.length).toBeGreaterThan(5);
    expect(new Set(catalogs).size).toBe(catalogs.length);
  });
});
