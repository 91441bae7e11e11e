import { describe, expect, it } from "vitest";
import { findNamed, lookupOn } from "../../src/catalog/find.ts";
import { ProblemError } from "../../src/problem.ts";
import { shelf, shipped } from "./shipped.ts";

const open = "{ name: open, deadTurns: 0, solidExtra: 1, pitchTurns: 0, pitchWires: 1, closed: false, ground: false }";

function problemOf(act: () => unknown) {
  try {
    act();
  } catch (error) {
    if (error instanceof ProblemError) return error.problems[0];
    throw error;
  }
  return undefined;
}

describe("a thing by its name", () => {
  it("is found by the whole name only", () => {
    const things = new Map([
      ["astm-a228", 1],
      ["astm-a229", 2],
      ["iso-r10", 3],
    ]);
    expect(findNamed("materials", "astm-a228", things)).toEqual({ found: 1 });
    expect(findNamed("materials", "astm-a288", things)).toEqual({
      code: "unknownName",
      key: "materials",
      got: 'no material "astm-a288"',
      want: "nearest are astm-a228, astm-a229 (`coilsieve catalog materials` lists all)",
    });
    expect(findNamed("wires", "something else", things)).toMatchObject({ want: "`coilsieve catalog wires` lists all" });
    expect(findNamed("wires", "__proto__", things)).toMatchObject({ code: "unknownName" });
  });

  it("is a shipped one where it is no path", () => {
    expect(shipped.series("us-music", "").name).toBe("us-music");
    expect(shipped.material("en-sh", "").name).toBe("en-sh");
    expect(shipped.ends("squared-ground", "")).toMatchObject({ closed: true, ground: true });
  });

  it("that is not shipped is a problem without a file, for the caller to place", () => {
    for (const act of [
      () => shipped.series("us-musik", ""),
      () => shipped.material("a228", ""),
      () => shipped.ends("ground", ""),
    ]) {
      expect(problemOf(act)).toMatchObject({ code: "unknownName" });
      expect(problemOf(act)?.file).toBeUndefined();
    }
  });

  it.each(["./stock.csv", "lists/stock.csv", "stock.csv"])("with a slash or an ending is a file beside the brief: %s", (path) => {
    const opened: string[] = [];
    const lookup = lookupOn(shelf, (name, from) => {
      opened.push(`${name} from ${from}`);
      return { file: name, text: "label,diameter\nA,1 mm\n" };
    });
    expect(lookup.series(path, "flap.yaml").name).toBe("stock");
    expect(opened).toEqual([`${path} from flap.yaml`]);
  });

  it("in a file of end styles must be the only one", () => {
    const lookup = (text: string) => lookupOn(shelf, (file) => ({ file, text }));
    expect(lookup(`- ${open}`).ends("./ends.yaml", "flap.yaml").name).toBe("open");
    const several = () => lookup(`- ${open}\n- ${open.replace("open", "other")}`).ends("./ends.yaml", "flap.yaml");
    expect(problemOf(several)).toMatchObject({ code: "severalEnds", file: "./ends.yaml", got: "2 end styles came" });
  });
});
