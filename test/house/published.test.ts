import { describe, expect, it } from "vitest";
import { filesBelow, quoted, textOf, underHeading } from "./tree.ts";

const paper = textOf("test/published/README.md");
const sources = [...underHeading(paper, "## Sources").matchAll(/^\d+\. .*(?:\n {3}.*)*/gm)].map(([source]) => source);
const files = filesBelow()
  .filter((file) => /^test\/published\/.*\.test\.ts$/.test(file))
  .map((file) => file.replace(/^.*\/|\.test\.ts$/g, ""));

describe("the sources that the program is held to", () => {
  it("are at least 25, each with files that are there", () => {
    expect(sources.length).toBeGreaterThanOrEqual(25);
    for (const source of sources) {
      const named = quoted(source);
      expect(named.length, source).toBeGreaterThan(0);
      for (const file of named) expect(files, source).toContain(file);
    }
  });

  it("name every file of published figures", () => {
    expect([...new Set(sources.flatMap(quoted))].sort()).toEqual([...files].sort());
  });

  it("have each disagreement that a test holds in the table, by example or table", () => {
    const table = underHeading(paper, "## Where print and program disagree");
    for (const name of ["Bhandari, example 10.14", "Jiang, Table 14.3", "Kannan & Kramer 1994", "Wentzell, example 8.2"]) {
      expect(table).toContain(name);
    }
  });
});
