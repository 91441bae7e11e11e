import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { RelaxResult } from "../../src/model.ts";
import { fits, fitsNothing, newFolder, run } from "./run.ts";

/** A folder with a brief in it. */
function folderWith(text: string): string {
  const folder = newFolder();
  writeFileSync(join(folder, "brief.yaml"), text);
  return folder;
}

const relaxed = (text: string, ...options: string[]) => run(["relax", "brief.yaml", ...options], folderWith(text));

describe("coilsieve relax", () => {
  it("prices every limit of a brief that something fits, in 80 columns, and ends with 0", () => {
    const { stdout, stderr, status } = relaxed(fits);
    expect([status, stderr]).toEqual([0, ""]);
    for (const limit of ["turns", "index", "clash", "solidStress", "buckling"]) {
      expect(stdout).toMatch(new RegExp(`^${limit} .*%`, "m"));
    }
    expect(stdout).toMatch(/^\w+ costs most\. /m);
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it("says which limit costs most, and that limits of stress are relaxed last", () => {
    expect(relaxed(fits).stdout).toMatch(/^solidStress costs most\. .*\s.*A limit of stress is the last to relax\.$/m);
    const { stdout } = relaxed(`${fits}rank: [outsideDiameter]\n`);
    expect(stdout).toContain("As asked the best design has an outside diameter of");
    const [, limit] = /^(\w+) costs most/m.exec(stdout) ?? [];
    expect(stdout.includes("the last to relax")).toBe(/Stress|fatigue/.test(`${limit}`));
  });

  it("says what must give where nothing fits, single limits before pairs, and ends with 0", () => {
    const { stdout, status } = relaxed(fitsNothing);
    expect(status).toBe(0);
    const one = stdout.indexOf("One limit that would have to give");
    const two = stdout.indexOf("Two limits that would have to give alike");
    expect(one).toBeGreaterThan(0);
    expect(two).toBeGreaterThan(one);
    expect(stdout).toMatch(/^freeLength by [\d.]+ %: freeLength [\d.]+ mm \(limit 12 mm\)$/m);
  });

  it("names a free length with which a sweep then finds something, and below which it finds nothing", () => {
    const { concessions } = JSON.parse(relaxed(fitsNothing, "--json", "-").stdout) as RelaxResult;
    const needed = concessions.find(({ limits }) => limits.join() === "freeLength")?.terms[0]?.needed as number;
    const swept = (length: number) => {
      const folder = folderWith(`${fits}envelope: { freeLength: { max: ${1000 * length} mm } }\n`);
      return run(["sweep", "brief.yaml"], folder).status;
    };
    expect(swept(needed)).toBe(0);
    expect(swept(needed * (1 - 1e-6))).toBe(1);
  });

  it("ends with 1 where no limit and no two make anything fit", () => {
    const { stdout, status } = relaxed(fits.replace("[astm-a228, astm-a229]", "[astm-a228]").replace("20 N", "2 MN"));
    expect(status).toBe(1);
    expect(stdout).toContain("No limit gives enough alone");
  });

  it("writes the whole result as JSON, alone on stdout with -", () => {
    const folder = folderWith(fits);
    expect(run(["relax", "brief.yaml", "--json", "prices.json"], folder).status).toBe(0);
    const written = readFileSync(join(folder, "prices.json"), "utf8");
    expect(run(["relax", "brief.yaml", "--json", "-"], folder).stdout).toBe(written);
    const { merit, prices, best } = JSON.parse(written) as RelaxResult;
    expect(best?.rank).toBe(1);
    expect(merit).toBe("mass");
    expect(prices.map(({ steps }) => steps.map(({ share }) => share))).toEqual(prices.map(() => [0.05, 0.1, null]));
  });

  it("says that nested springs are not priced, and ends with 2", () => {
    const points = "{ points: [{ name: open, length: 40 mm, force: 50 N }, { name: closed, length: 30 mm, force: 150 N }] }";
    const { stderr, status } = relaxed(`${fits.replace(/load: .*/, `load: ${points}`)}nested: 2\n`);
    expect(status).toBe(2);
    expect(stderr).toBe("brief.yaml nested: asks for two springs; relax prices the limits of single springs; leave nested out\n");
  });
});

describe("coilsieve sweep", () => {
  it("prints and writes what it proves where every diameter is solved", () => {
    const folder = folderWith(fits);
    const { stdout } = run(["sweep", "brief.yaml", "--json", "result.json"], folder);
    expect(stdout.replaceAll("\n", " ")).toMatch(
      /Proof, among the sizes that the tables at hand cover: all [\d,]+ combinations of material, wire, ends and turns were optimised over mean diameter and free length; [\d,]+ have no feasible design\./,
    );
    const { proof, designs } = JSON.parse(readFileSync(join(folder, "result.json"), "utf8"));
    expect([proof.optimum, proof.runnerUp]).toEqual([designs[0].mass, designs[1].mass]);
  });

  it("points to relax where nothing fits", () => {
    expect(run(["sweep", "brief.yaml"], folderWith(fitsNothing)).stdout).toContain("coilsieve relax");
  });
});
