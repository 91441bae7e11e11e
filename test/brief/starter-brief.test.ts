import { describe, expect, it } from "vitest";
import { briefKeys } from "../../src/brief/keys.ts";
import { starterBrief } from "../../src/brief/starter-brief.ts";
import { problemsOf, read } from "./reading.ts";

describe("the starter brief", () => {
  it("reads as it stands, with a clearance", () => {
    expect(problemsOf(starterBrief())).toEqual([]);
    expect(read(starterBrief()).envelope.clearance).toEqual({ share: 0.05 });
  });

  it("says in its first line that it is invented, and keeps every line within 130 columns", () => {
    const lines = starterBrief().split("\n");
    expect(lines[0]).toMatch(/^# .*invented/);
    expect(lines.filter((line) => line.length > 130)).toEqual([]);
  });

  it("shows every key that a brief may have", () => {
    const shown = briefKeys.filter(({ path }) => !/\[\]|meanDiameter\.|freeLength\.|limits\.\w+\.|cost\.|scatter\./.test(path));
    for (const { path } of shown) expect(starterBrief()).toMatch(new RegExp(`^ *(# )?${path.split(".").at(-1)}:`, "m"));
  });

  it("gives examples that read where they stand as comments", () => {
    const commented = starterBrief()
      .replace("# limits:", "limits:")
      .split("\n")
      .map((line) =>
        /^ {2}# (index|turns|clash|workingStress|solidStress|buckling|surge|fatigue|frequency|cycles|scatter):/.test(line)
          ? line.replace("# ", "")
          : line,
      )
      .join("\n");
    expect(problemsOf(commented)).toEqual([]);
    expect(read(commented).limits.workingStress).toEqual({ max: 7e8, factor: "wahl" });
  });
});
