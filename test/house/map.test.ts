import path from "node:path";
import { describe, expect, it } from "vitest";
import { filesBelow, sources, textOf, underHeading } from "./tree.ts";

/** The map of DEVELOPERS.md: each room and each file of `src` itself, such as `report/text/` and `cli.ts`, with its purpose. */
function mapped(): ReadonlyMap<string, string> {
  const [, tree = ""] = underHeading(textOf("DEVELOPERS.md"), "## The map of the house").split("```");
  const above: string[] = [];
  const entries = new Map<string, string>();
  for (const line of tree.split("\n")) {
    const found = /^( *)([\w.-]+\/?)(?: {2,}(.*))?$/.exec(line);
    if (found === null || line === "src/") continue;
    const [, indent = "", name = "", purpose = ""] = found;
    above.length = indent.length / 2 - 1;
    entries.set([...above, name].join(""), purpose);
    if (name.endsWith("/")) above.push(name);
  }
  return entries;
}

/** The files that the README of a room lists, with the purpose of each. */
function listed(room: string): ReadonlyMap<string, string> {
  const lines = textOf(`src/${room}README.md`).matchAll(/^- `([\w.-]+)`: (.*(?:\n {2}.*)*)$/gm);
  return new Map([...lines].map(([, file = "", purpose = ""]) => [file, purpose]));
}

const roomOf = (file: string) => file.slice(0, file.lastIndexOf("/") + 1);
const rooms = [...new Set(sources.map(roomOf))].filter((room) => room !== "");
const inRoom = (room: string) => sources.filter((file) => roomOf(file) === room).map((file) => path.posix.basename(file));

const ONE_LINE = 130;
const MOST_FILES = 15;
/** A chapter of the calculation each, and a form that it takes each. */
const FULL = ["report/calculation/"];
const MOST_LINES = 300;
/** Long on purpose: one vocabulary, and one list of keys that reader, starter brief and documents read. */
const LONG = ["model.ts", "brief/keys.ts"];

describe("the map of the house", () => {
  const map = mapped();

  it("holds every room and every file of src itself, and nothing that is not there", () => {
    const folders = new Set(rooms.flatMap((room) => [...room.matchAll(/\//g)].map(({ index }) => room.slice(0, index + 1))));
    expect([...map.keys()].sort()).toEqual([...folders, ...inRoom("")].sort());
  });

  it("says the purpose of each in one line", () => {
    expect([...map].filter(([name, purpose]) => purpose.length < 10 || name.length + purpose.length > ONE_LINE)).toEqual([]);
  });

  it("fits one screen", () => {
    expect(map.size).toBeLessThanOrEqual(50);
  });
});

describe.each(rooms)("the room %s", (room) => {
  it("lists each of its files with its purpose, and no file that is not there", () => {
    const files = listed(room);
    expect([...files.keys()].sort()).toEqual(inRoom(room).sort());
    expect([...files].filter(([file, purpose]) => purpose.length < 7 || file.length + purpose.length > ONE_LINE)).toEqual([]);
  });

  it("holds no more files than a reader takes in", () => {
    if (!FULL.includes(room)) expect(inRoom(room).length).toBeLessThanOrEqual(MOST_FILES);
    else expect(inRoom(room).length).toBeLessThanOrEqual(MOST_FILES + 2);
  });
});

describe("the sources", () => {
  const lines = (file: string) => textOf(`src/${file}`).split("\n").length - 1;

  it("are none above 300 lines, but for the vocabulary and the keys of a brief", () => {
    expect(sources.filter((file) => lines(file) > MOST_LINES && !LONG.includes(file))).toEqual([]);
  });

  it("are under 120 lines for the most part", () => {
    const sorted = sources.map(lines).sort((a, b) => a - b);
    expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThan(120);
  });

  it("stand alone in their folders, beside the room's list and the compiler's settings", () => {
    const others = filesBelow("src").filter((file) => !/\.ts$|\/README\.md$|^src\/tsconfig\.json$/.test(file));
    expect(others).toEqual([]);
  });
});
