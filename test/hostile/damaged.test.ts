import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readBrief, readCheckBrief } from "../../src/brief/read.ts";
import { readEnds } from "../../src/catalog/ends.ts";
import { readMaterial } from "../../src/catalog/materials.ts";
import { readWireSeries } from "../../src/catalog/wires.ts";
import { readText } from "../../src/disk/files.ts";
import { problemLine } from "../../src/problem.ts";
import { lookup, notFinite, problemsOf, random, shelf } from "./answer.ts";
import { damaged } from "./damage.ts";

const folder = mkdtempSync(join(tmpdir(), "coilsieve-"));
const path = join(folder, "damaged");

/** What every reader owes to a file of any bytes: a value without NaN, or problems of one line each that name it. */
function owes(bytes: Buffer, read: (text: string) => unknown): void {
  writeFileSync(path, bytes);
  let value: unknown;
  const act = () => {
    value = read(readText(path));
  };
  const problems = problemsOf(act);
  expect(new Set(problems.map(problemLine)).size).toBe(problems.length);
  if (problems.length === 0) expect(notFinite(value)).toEqual([]);
  for (const problem of problems) {
    const line = problemLine(problem);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
    expect(line).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]|undefined|\[object/);
    // What came may say so itself, and is then quoted.
    if (!bytes.includes("NaN")) expect(line).not.toContain("NaN");
    expect(line.length).toBeLessThan(700);
    expect(line).toMatch(/damaged|catalogs\/|reports\//);
  }
}

const reports = readdirSync("reports").filter((file) => file.endsWith(".yaml"));
const briefs = reports.filter((file) => /^load:/m.test(readFileSync(`reports/${file}`, "utf8")));

describe("a damaged brief reads, or says what is wrong", () => {
  it.each(briefs)("%s", (file) => {
    const text = readFileSync(`reports/${file}`, "utf8");
    const read = (changed: string) =>
      /^design:/m.test(text) ? readCheckBrief(changed, path, lookup) : readBrief(changed, path, lookup);
    fc.assert(
      fc.property(damaged(text.replaceAll("./", `${process.cwd()}/reports/`)), (bytes) => owes(bytes, read)),
      random(),
    );
  });
});

describe("a damaged catalog file reads, or says what is wrong", () => {
  it.each([...shelf.wires.keys()])("wires of %s", (name) => {
    const { text } = shelf.wires.get(name) ?? { text: "" };
    const read = (changed: string) => readWireSeries({ file: path, text: changed }, name);
    fc.assert(
      fc.property(damaged(text), (bytes) => owes(bytes, read)),
      random(),
    );
  });

  it.each([...shelf.materials.keys()])("material %s", (name) => {
    const { text } = shelf.materials.get(name) ?? { text: "" };
    const read = (changed: string) => readMaterial({ file: path, text: changed });
    fc.assert(
      fc.property(damaged(text), (bytes) => owes(bytes, read)),
      random(0.2),
    );
  });

  it("ends", () => {
    const read = (changed: string) => readEnds({ file: path, text: changed });
    fc.assert(
      fc.property(damaged(shelf.ends.text), (bytes) => owes(bytes, read)),
      random(),
    );
  });
});

it("a file of any bytes is text or a problem", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => owes(Buffer.from(bytes), (text) => readBrief(text, path, lookup))),
    random(),
  );
});
