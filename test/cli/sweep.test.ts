import { existsSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { fits, fitsNothing, newFolder, run } from "./run.ts";

function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = newFolder();
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

describe("sweep", () => {
  it("prints a table on stdout within 80 columns, nothing on stderr, and exits with 0", () => {
    const { stdout, stderr, status } = run(["sweep", "flap.yaml"], folderWith({ "flap.yaml": fits }));
    expect(stderr).toBe("");
    expect(status).toBe(0);
    expect(stdout).toMatch(/^flap\n/);
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it("exits with 1 when nothing fits, and still prints the tally", () => {
    const { stdout, status } = run(["sweep", "flap.yaml"], folderWith({ "flap.yaml": fitsNothing }));
    expect(status).toBe(1);
    expect(stdout).toMatch(/free length/);
  });

  it("prints the tables of several briefs in the order in which they are named", () => {
    const folder = folderWith({ "b.yaml": fits, "a.yaml": fitsNothing });
    const { stdout, status } = run(["sweep", "b.yaml", "a.yaml"], folder);
    expect(stdout).toMatch(/^b\n[\s\S]*\n\na\n/);
    expect(status).toBe(1);
  });

  it("ranks by the figures typed instead of the brief's, and by any number of them", () => {
    const folder = folderWith({ "flap.yaml": fits });
    const { stdout } = run(["sweep", "flap.yaml", "--rank", "outsideDiameter,mass", "--json", "-", "--top", "5"], folder);
    const { designs } = JSON.parse(stdout) as { designs: { outsideDiameter: number }[] };
    const diameters = designs.map(({ outsideDiameter }) => outsideDiameter);
    expect(diameters).toHaveLength(5);
    expect(diameters).toEqual([...diameters].sort((a, b) => a - b));
  });

  it("keeps the best of each material with --each", () => {
    const { stdout } = run(["sweep", "flap.yaml", "--each", "material", "--json", "-"], folderWith({ "flap.yaml": fits }));
    const { designs } = JSON.parse(stdout) as { designs: { material: string }[] };
    expect(designs.map(({ material }) => material).sort()).toEqual(["astm-a228", "astm-a229"]);
  });

  it("adds the nearest misses with --nearest", () => {
    const folder = folderWith({ "flap.yaml": fits });
    const nearest = (args: string[]) => JSON.parse(run(["sweep", "flap.yaml", "--json", "-", ...args], folder).stdout).nearest;
    expect(nearest([])).toBeUndefined();
    expect(nearest(["--nearest"]).length).toBeGreaterThan(0);
  });

  it("counts every candidate once: walked is what fits and what each limit rejects", () => {
    const { stdout } = run(["sweep", "flap.yaml", "--json", "-"], folderWith({ "flap.yaml": fits }));
    const { walked, feasible, rejected } = JSON.parse(stdout) as {
      walked: number;
      feasible: number;
      rejected: Record<string, number>;
    };
    expect(walked).toBe(feasible + Object.values(rejected).reduce((sum, count) => sum + count, 0));
  });

  it("warns on stderr where no limit on stress is left", () => {
    const brief = `${fits}limits: { solidStress: off }\n`;
    const { stderr, status } = run(["sweep", "flap.yaml"], folderWith({ "flap.yaml": brief }));
    expect(stderr).toMatch(/^warning: /);
    expect(status).toBe(0);
  });

  it("prints no escape codes where stdout is no terminal", () => {
    expect(run(["sweep", "flap.yaml"], folderWith({ "flap.yaml": fits })).stdout).not.toContain("\u001b");
  });
});

describe("bad input exits with 2 and says on stderr what would be right", () => {
  const folder = folderWith({
    "flap.yaml": fits,
    "typo.yaml": fits.replace("load:", "lode:"),
    "two.yaml": fits.replace("20 N", "20 lb").replace("10 mm", "10"),
    "latin.yaml": "",
    "utf16.yaml": "",
    "rack.yaml": fits.replace("iso-r20", "./rack.csv"),
    "fine.yaml": fits.replace("sweep: {", "sweep: { turns: any, meanDiameter: { step: 1e-8 mm },"),
  });
  writeFileSync(join(folder, "latin.yaml"), Buffer.from([0x74, 0x69, 0x3a, 0x20, 0xb1, 0x0a]));
  writeFileSync(join(folder, "utf16.yaml"), Buffer.from("\uFEFFpractice: handbook", "utf16le"));

  it.each([
    ["an unknown key", ["sweep", "typo.yaml"], /^typo\.yaml:2 lode: is not a key here; did you mean load\?$/m],
    ["all problems of a brief", ["sweep", "two.yaml"], /two\.yaml:2 load\.force: .*lbf.*\ntwo\.yaml:2 load\.deflection: .*mm/],
    ["a missing file", ["sweep", "nope.yaml"], /^nope\.yaml file: there is no such file/],
    ["the problems of all briefs", ["sweep", "nope.yaml", "typo.yaml"], /nope\.yaml[\s\S]*typo\.yaml:2/],
    ["a folder", ["sweep", "."], /^\. file: is a folder/],
    ["a text that is not UTF-8", ["sweep", "latin.yaml"], /save it as UTF-8/],
    ["a UTF-16 text", ["sweep", "utf16.yaml"], /UTF-16.*save it as UTF-8/],
    ["two outputs on stdout", ["sweep", "flap.yaml", "--csv", "-", "--json", "-"], /^--csv, --json: both are -/],
    ["a page on stdout", ["sweep", "flap.yaml", "--html", "-"], /^--html: .*name a file/],
    ["several briefs and one file", ["sweep", "flap.yaml", "flap.yaml", "--csv", "a.csv"], /one at a time/],
    ["an unknown command", ["swep"], /Did you mean sweep\?/],
    ["an unknown option", ["sweep", "flap.yaml", "--tpo", "3"], /Did you mean --top\?/],
    ["no brief", ["sweep"], /missing required argument 'brief'\n\(.*--help.*\)/],
    ["no command", [], /Usage: coilsieve/],
    ["more threads than are started", ["sweep", "flap.yaml", "--workers", "257"], /whole number from 1 to 256/],
    ["what is wrong only once it is swept", ["sweep", "fine.yaml"], /^fine\.yaml sweep\.meanDiameter: leaves .* coarser step/],
    ["a file that the brief names", ["sweep", "rack.yaml"], /^rack\.yaml:3 sweep\.wires: there is no file rack\.csv; name one/],
    ["a count that is none", ["sweep", "flap.yaml", "--top", "0"], /whole number from 1/],
    ["a figure that is none", ["sweep", "flap.yaml", "--rank", "masss"], /Did you mean mass\?/],
    ["a front of one figure", ["sweep", "flap.yaml", "--front", "mass"], /two figures/],
    ["a kind that is none", ["sweep", "flap.yaml", "--each", "turns"], /wire, material, ends/],
  ])("%s", (_title, args, message) => {
    const { stdout, stderr, status } = run(args, folder);
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/\n\s+at /);
    expect(stdout).toBe("");
    expect(status).toBe(2);
  });

  it("a rank that is not kept writes nothing", () => {
    const { stderr, status } = run(["sweep", "flap.yaml", "--pin", "9", "--top", "3", "--json", "pinned.json"], folder);
    expect({ stderr, status }).toMatchObject({ stderr: expect.stringMatching(/^--pin: rank 9 is not among the 3/), status: 2 });
    expect(existsSync(join(folder, "pinned.json"))).toBe(false);
  });

  it("a control character in a brief is shown, not sent to the terminal", () => {
    const hostile = folderWith({ "x.yaml": `${fits}"\\e[31mred": 1\n` });
    const { stderr } = run(["sweep", "x.yaml"], hostile);
    expect(stderr).toContain("\\x1b[31mred");
    expect(stderr).not.toContain("\u001b");
  });
});

describe("help and version", () => {
  it.each(["sweep", "check", "relax", "catalog", "start", "schema", "completion"])(
    "show examples of %s, within 80 columns",
    (command) => {
      const { stdout, status } = run([command, "--help"]);
      expect(status).toBe(0);
      expect(stdout.split("Examples:\n")[1]?.trim().split("\n").length).toBeGreaterThanOrEqual(2);
      expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    },
  );

  it("answer on stdout with 0", () => {
    expect(run(["--version"])).toMatchObject({ stdout: expect.stringMatching(/^\d+\.\d+\.\d+\n$/), stderr: "", status: 0 });
    expect(run(["--help"])).toMatchObject({ stderr: "", status: 0 });
  });
});
