import { describe, expect, it } from "vitest";
import { type Import, importsOf, quoted, sources, tableOf, textOf, underHeading } from "./tree.ts";

/** One row of the import table: a room, which is a folder or a file, and what its files may import. */
interface Rule {
  readonly rooms: readonly string[];
  readonly ours: readonly string[] | "anything";
  readonly outside: readonly string[];
}

const [, ...rows] = tableOf(underHeading(textOf("DEVELOPERS.md"), "## Who may import whom"));
const rules: readonly Rule[] = rows.map(([rooms = "", ours = "", outside = ""]) => ({
  rooms: quoted(rooms),
  ours: ours === "anything" ? "anything" : quoted(ours),
  outside: quoted(outside),
}));

const isIn = (file: string, room: string) => (room.endsWith("/") ? file.startsWith(room) : file === `${room}.ts`);

/** The rule for a file, that of the file itself before that of its folder. */
function ruleFor(file: string): Rule | undefined {
  const fitting = rules.filter(({ rooms }) => rooms.some((room) => isIn(file, room)));
  return fitting.find(({ rooms }) => rooms.includes(file.replace(/\.ts$/, ""))) ?? fitting[0];
}

/** Imports of a file that its rule does not allow, in words. */
function forbidden(file: string): readonly string[] {
  const rule = ruleFor(file);
  if (rule === undefined) return [`${file} is in no room of the table`];
  const sameRoom = rule.rooms.filter((room) => isIn(file, room) && room.endsWith("/"));
  const allowed = ({ target, ours, typeOnly }: Import) => {
    if (!ours)
      return rule.outside.some((name) => target === name || (name.endsWith("*") && target.startsWith(name.slice(0, -1))));
    if (rule.ours === "anything" || (target === "model.ts" && typeOnly && rule.ours.includes("model"))) return true;
    return [...sameRoom, ...rule.ours].some((room) => isIn(target, room));
  };
  return importsOf(file)
    .filter((one) => !allowed(one))
    .map(({ target }) => `${file} imports ${target}`);
}

describe("who may import whom", () => {
  it("every source keeps to the table of DEVELOPERS.md", () => {
    expect(sources.flatMap(forbidden)).toEqual([]);
  });

  it("no source imports from a row below its own: the rows stand in the order of the flow", () => {
    const rowOf = (file: string) => rules.indexOf(ruleFor(file) as Rule);
    const against = sources.flatMap((file) =>
      importsOf(file)
        .filter(({ target, ours }) => ours && rowOf(target) > rowOf(file))
        .map(({ target }) => `${file} imports ${target}`),
    );
    expect(against).toEqual([]);
  });

  it("no source reaches itself, by types neither", () => {
    const oursOf = new Map(sources.map((file) => [file, importsOf(file).flatMap(({ target, ours }) => (ours ? [target] : []))]));
    const reached = (from: string) => {
      const seen = new Set(oursOf.get(from));
      for (const file of seen) for (const next of oursOf.get(file) ?? []) seen.add(next);
      return seen;
    };
    expect(sources.filter((file) => reached(file).has(file))).toEqual([]);
  });

  it("every room of the table has a source", () => {
    const empty = rules.flatMap(({ rooms }) => rooms).filter((room) => !sources.some((file) => isIn(file, room)));
    expect(empty).toEqual([]);
  });

  it("every import of ours is a file that is there", () => {
    const lost = sources.flatMap((file) =>
      importsOf(file)
        .filter(({ target, ours }) => ours && !sources.includes(target))
        .map(({ target }) => `${file} imports ${target}`),
    );
    expect(lost).toEqual([]);
  });

  it("nothing that the page's script reaches needs vega-lite, commander or Node", () => {
    const reached = new Set(sources.filter((file) => file.startsWith("explorer/")));
    const outside = new Set<string>();
    for (const file of reached) {
      for (const { target, ours, typeOnly } of importsOf(file)) {
        if (typeOnly) continue;
        if (ours) reached.add(target);
        else outside.add(target);
      }
    }
    expect(reached.size).toBeGreaterThan(20);
    const carried = [
      "d3-array",
      "d3-random",
      "pure-rand/distribution/uniformFloat64",
      "pure-rand/generator/mersenne",
      "vega",
      "vega-interpreter",
      "mathjs",
      "mathjs/number",
      "yaml",
    ];
    expect([...outside].filter((name) => !carried.includes(name))).toEqual([]);
  });
});
