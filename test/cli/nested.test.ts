import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { fits, newFolder, run } from "./run.ts";

const nested = `practice: handbook
nested: 2
load: { points: [{ length: 60 mm, force: 200 N }, { length: 50 mm, force: 500 N }] }
envelope: { bore: 30 mm, clearance: 4 % }
sweep: { wires: [iso-r20], materials: [en-sh], ends: [squared-ground], turns: half }
`;

const folder = newFolder();
writeFileSync(join(folder, "pair.yaml"), nested);
writeFileSync(join(folder, "narrow.yaml"), nested.replace("30 mm", "12 mm"));
writeFileSync(join(folder, "single.yaml"), fits);
writeFileSync(join(folder, "open.yaml"), fits.replace("practice", "nested: 2\npractice"));

describe("sweep of a nested brief", () => {
  it("prints the pairs on stdout within 80 columns, nothing on stderr, and exits with 0", () => {
    const { stdout, stderr, status } = run(["sweep", "pair.yaml"], folder);
    expect([stderr, status]).toEqual(["", 0]);
    expect(stdout).toMatch(/^pair\n[\s\S]*\nRank 1\n/);
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it("exits with 1 where no pair fits, and still prints where springs fell", () => {
    const { stdout, status } = run(["sweep", "narrow.yaml"], folder);
    expect(status).toBe(1);
    expect(stdout).toMatch(/no pair fits|No pair fits/);
    expect(stdout).toMatch(/solidStress|outsideDiameter/);
  });

  it("stands beside a brief of single springs, in the order in which they are named", () => {
    const { stdout, status } = run(["sweep", "pair.yaml", "single.yaml"], folder);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^pair\n[\s\S]*\n\nsingle\n/);
  });

  it("keeps as many pairs as --top says, ranked by what --rank says", () => {
    const { stdout } = run(["sweep", "pair.yaml", "--json", "-", "--top", "4", "--rank", "outsideDiameter,mass"], folder);
    const { pairs } = JSON.parse(stdout) as { pairs: { outer: { outsideDiameter: number } }[] };
    const diameters = pairs.map(({ outer }) => outer.outsideDiameter);
    expect(diameters).toHaveLength(4);
    expect(diameters).toEqual([...diameters].sort((a, b) => a - b));
  });

  it("writes JSON and CSV to files, and either to stdout alone", () => {
    expect(run(["sweep", "pair.yaml", "--json", "pair.json", "--csv", "pair.csv"], folder).status).toBe(0);
    expect(run(["sweep", "pair.yaml", "--json", "-"], folder).stdout).toBe(readFileSync(join(folder, "pair.json"), "utf8"));
    expect(run(["sweep", "pair.yaml", "--csv", "-"], folder).stdout).toBe(readFileSync(join(folder, "pair.csv"), "utf8"));
  });

  it("writes a page that carries the pairs that were ranked", () => {
    const { stderr, status } = run(["sweep", "pair.yaml", "--html", "pair.html", "--top", "3"], folder);
    expect([stderr, status]).toEqual(["", 0]);
    const data = /id="page-pairs">([\s\S]*?)<\/script>/.exec(readFileSync(join(folder, "pair.html"), "utf8"))?.[1] ?? "";
    expect((JSON.parse(data) as { pairs: { rank: number }[] }).pairs.map(({ rank }) => rank)).toEqual([1, 2, 3]);
  });

  it.each([
    ["the best of each", ["--each", "wire"], /^--each: .*leave it out/],
    ["a front", ["--front", "mass,outsideDiameter"], /^--front: /],
    ["nearest misses", ["--nearest"], /^--nearest: /],
  ])("has no %s: that is an error which says so, with 2", (_title, args, message) => {
    const { stdout, stderr, status } = run(["sweep", "pair.yaml", ...args], folder);
    expect(stderr).toMatch(message);
    expect([stdout, status]).toEqual(["", 2]);
  });

  it("refuses a load that fixes no free length, with what would be right", () => {
    const { stderr, status } = run(["sweep", "open.yaml"], folder);
    expect(stderr).toMatch(/^open\.yaml:3 load: .*fixes no free length; .*two points/);
    expect(status).toBe(2);
  });
});
