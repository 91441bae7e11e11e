import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { run } from "./run.ts";

function shipped(kind: string): string[] {
  const files = readdirSync(fileURLToPath(new URL(`../../catalogs/${kind}`, import.meta.url)));
  return files.filter((file) => /\.(csv|yaml)$/.test(file)).map((file) => file.replace(/\.\w+$/, ""));
}

describe("catalog", () => {
  it("lists every shipped series, material and end style in short, within 80 columns", () => {
    const { stdout, status } = run(["catalog"]);
    const names = [...shipped("wires"), ...shipped("materials"), "plain", "plain-ground", "squared", "squared-ground"];
    for (const name of names) expect(stdout).toMatch(new RegExp(`^ {2}${name} `, "m"));
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
    expect(status).toBe(0);
  });

  it.each(["wires", "materials", "ends"])("lists %s with their whole sources, within 80 columns", (kind) => {
    const { stdout } = run(["catalog", kind]);
    expect(stdout).not.toContain("…");
    expect(stdout).toMatch(/ASTM|Shigley/);
    expect(stdout.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  it("gives the range of sizes in millimetres and inches", () => {
    expect(run(["catalog", "materials"]).stdout).toMatch(/^ {2}astm-a227 +0\.508 to 15\.88 mm \(0\.02 to 0\.625 in\)/m);
  });

  it("gives the sizes that the default strength covers, not those of a fit that a brief must ask for", () => {
    expect(run(["catalog", "materials"]).stdout).toMatch(/^ {2}astm-a313-302 +0\.2286 to 2\.032 mm \(0\.009 to 0\.08 in\)/m);
  });

  it("tells of each material the least strength at three sizes, and how far that may be trusted", () => {
    const { stdout } = run(["catalog", "materials"]);
    const told = (name: string) => (stdout.split(`\n  ${name} `)[1] ?? "").split("\n\n")[0]?.replace(/\s+/g, " ");
    for (const name of shipped("materials")) {
      expect(` ${stdout.startsWith(`  ${name} `) ? stdout : told(name)}`, name).toMatch(
        / MPa at [\d.]+ mm, [\d.]+ MPa at [\d.]+ mm, [\d.]+ MPa at [\d.]+ mm; confidence (high|medium|low|memory)/,
      );
    }
    expect(told("en-dh")).toContain(
      "2800 MPa at 0.2 mm, 1890 MPa at 2.6 mm, 1160 MPa at 20 mm; confidence high, 24 rows inferred",
    );
    expect(told("astm-a232")).toContain("confidence medium, all rows inferred; power law memory");
    expect(told("astm-a401")).toContain("confidence memory");
  });

  it("suggests the nearest kind and exits with 2", () => {
    const { stderr, status } = run(["catalog", "wire"]);
    expect(stderr).toBe('catalog: no catalog "wire"; did you mean wires?\n');
    expect(status).toBe(2);
  });
});
