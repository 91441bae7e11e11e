import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { fits, fitsNothing, newFolder, run } from "./run.ts";

const order = "order: { hand: left, quantity: 500 }\n";
const files = ["--sheet", "sheet.html", "--drawing", "spring.svg"];

function folderWith(text: string): string {
  const folder = newFolder();
  writeFileSync(join(folder, "flap.yaml"), text);
  return folder;
}

const read = (folder: string, name: string) => readFileSync(join(folder, name), "utf8");

/** The best design of the brief as a brief for check, at a load that it bears or not. */
function quoted(force: string): string {
  const folder = folderWith(fits);
  return run(["sweep", "flap.yaml", "--pin", "1"], folder).stdout.replace("force: 20 N", `force: ${force}`);
}

describe("the data sheet and the drawing", () => {
  it("of a sweep show rank 1, beside the table on stdout", () => {
    const folder = folderWith(fits + order);
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", ...files, "--json", "all.json"], folder);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toMatch(/^flap\n/);
    const [best] = JSON.parse(read(folder, "all.json")).designs as [{ freeLength: number; wire: string; series: string }];
    const free = `free ${Number((1000 * best.freeLength).toPrecision(4))} mm`;
    expect(read(folder, "sheet.html")).toContain(`${best.wire} of ${best.series}`);
    expect(read(folder, "sheet.html")).toContain(free);
    expect(read(folder, "spring.svg")).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(read(folder, "spring.svg")).toContain(free);
  });

  it("show the hand that the order asks", () => {
    const folders = [fits, fits + order].map(folderWith);
    for (const folder of folders) run(["sweep", "flap.yaml", ...files], folder);
    expect(folders.map((folder) => read(folder, "spring.svg").includes("matrix(1 0 0 -1"))).toEqual([false, true]);
    expect(folders.map((folder) => read(folder, "sheet.html").includes("left-hand."))).toEqual([false, true]);
  });

  it("show the drawing at the length that --at names, with its force", () => {
    const folder = folderWith(fits);
    const at = (name: string) => {
      expect(run(["sweep", "flap.yaml", "--drawing", "spring.svg", "--at", name], folder).status).toBe(0);
      return read(folder, "spring.svg");
    };
    expect(at("free")).toContain("no force");
    expect(at("loaded")).toContain("10 mm pressed");
    expect(at("solid")).toMatch(/<title>Spring drawn to scale, solid: length /);
  });

  it.each([
    [["--drawing", "spring.svg", "--at", "lodaed"], /^--at: the load has no point lodaed; name one of free, loaded, solid\n$/],
    [["--at", "loaded"], /^--at: no file is asked that shows one length; add --drawing, --step or --glb with a file\n$/],
  ])("are refused with 2 where --at cannot be drawn: %s", (args, message) => {
    const folder = folderWith(fits);
    const { stdout, stderr, status } = run(["sweep", "flap.yaml", ...args], folder);
    expect(stderr).toMatch(message);
    expect([stdout, status, readdirSync(folder)]).toEqual(["", 2, ["flap.yaml"]]);
  });

  it("of a check show the design that passes", () => {
    const folder = folderWith(quoted("20 N"));
    expect(run(["check", "flap.yaml", ...files], folder).status).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(["flap.yaml", "sheet.html", "spring.svg"]);
  });

  it("are not written, and that is said, where nothing fits or the design does not pass", () => {
    for (const [command, text] of [
      ["sweep", fitsNothing],
      ["check", quoted("25 N")],
    ] as const) {
      const folder = folderWith(text);
      const { stderr, status } = run([command, "flap.yaml", ...files], folder);
      expect(stderr).toMatch(/--sheet, --drawing: (nothing fits|the design does not pass)/);
      expect(status).toBe(1);
      expect(readdirSync(folder)).toEqual(["flap.yaml"]);
    }
  });

  it.each([
    ["on stdout", ["flap.yaml", "--drawing", "-"], /^--drawing: .*such as spring\.svg/],
    ["in a folder that is not there", ["flap.yaml", "--sheet", "no/sheet.html"], /^--sheet: there is no folder no/],
    ["of several briefs at once", ["flap.yaml", "flap.yaml", "--sheet", "sheet.html"], /^--sheet: 2 briefs and one file/],
  ])("%s are refused with 2 before anything is written", (_title, args, message) => {
    const folder = folderWith(fits);
    const { stderr, stdout, status } = run(["sweep", ...args], folder);
    expect(stderr).toMatch(message);
    expect([stdout, status, existsSync(join(folder, "sheet.html"))]).toEqual(["", 2, false]);
  });

  it("of nested springs are refused, for a sheet holds one spring", () => {
    const points = "points: [{ length: 50 mm, force: 40 N }, { length: 40 mm, force: 80 N }]";
    const folder = folderWith(`${fits.replace(/load:.*/, `load: { ${points} }`)}nested: 2\nenvelope: { bore: 30 mm }\n`);
    const { stderr, status } = run(["sweep", "flap.yaml", ...files], folder);
    expect(stderr).toMatch(/--sheet: .*one spring/);
    expect(status).toBe(2);
  });
});
