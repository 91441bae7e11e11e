import { describe, expect, it } from "vitest";
import { sources, textOf, underHeading } from "./tree.ts";

/** The files of the map, from the indented tree in DEVELOPERS.md, with the purpose of each. */
function mapped(): ReadonlyMap<string, string> {
  const [, tree = ""] = underHeading(textOf("DEVELOPERS.md"), "## The map of the house").split("```");
  const folders: string[] = [];
  const files = new Map<string, string>();
  for (const line of tree.split("\n")) {
    const found = /^( *)([\w.-]+\/?)(?: {2,}(.*))?$/.exec(line);
    if (found === null) continue;
    const [, indent = "", name = "", purpose = ""] = found;
    folders.length = indent.length / 2;
    if (name.endsWith("/")) folders.push(name);
    else files.set([...folders, name].join("").replace(/^src\//, ""), purpose);
  }
  return files;
}

const ONE_LINE = 130;
/** Long on purpose: one vocabulary, and one list of keys that reader, starter brief and documents read. */
const LONG = ["model.ts", "brief/keys.ts"];

describe("the map of the house", () => {
  const files = mapped();

  it("holds every source, and no file that is not there", () => {
    expect([...files.keys()].sort()).toEqual([...sources].sort());
  });

  it("says the purpose of each in one line", () => {
    const unsaid = [...files].filter(([file, purpose]) => purpose.length < 12 || file.length + purpose.length > ONE_LINE);
    expect(unsaid).toEqual([]);
  });
});

describe("the sources", () => {
  const lines = (file: string) => textOf(`src/${file}`).split("\n").length - 1;

  it("are none above 300 lines, but for the vocabulary and the keys of a brief", () => {
    expect(sources.filter((file) => lines(file) > 300 && !LONG.includes(file))).toEqual([]);
  });

  it("are under 120 lines for the most part", () => {
    const sorted = sources.map(lines).sort((a, b) => a - b);
    expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThan(120);
  });
});
