import { describe, expect, it } from "vitest";
import { readEnds } from "../../src/catalog/ends.ts";

const open = "{ name: open, deadTurns: 0, solidExtra: 1, pitchTurns: 0, pitchWires: 1, closed: false, ground: false }";

describe("end styles", () => {
  it("come in the order of their file with every constant", () => {
    expect(
      readEnds({
        file: "ends.yaml",
        text: `- ${open}\n- ${open.replace("open", "half").replace("deadTurns: 0", "deadTurns: 1.5")}`,
      }),
    ).toEqual([
      { name: "open", deadTurns: 0, solidExtra: 1, pitchTurns: 0, pitchWires: 1, closed: false, ground: false },
      { name: "half", deadTurns: 1.5, solidExtra: 1, pitchTurns: 0, pitchWires: 1, closed: false, ground: false },
    ]);
  });

  it.each([
    [`- ${open}\n- ${open}`, 'ends.yaml:2 [2]: "open" comes twice; give each its own'],
    [`- ${open.replace("deadTurns: 0", "deadTurns: -1")}`, "ends.yaml:1 [1].deadTurns: -1 is negative; write zero or more"],
    [`- ${open.replace("closed: false", "closed: no")}`, 'ends.yaml:1 [1].closed: "no" came; one of false | true'],
    [`- ${open.replace(", pitchWires: 1", "")}`, "ends.yaml:1 [1]: pitchWires is missing; write it; it has no default"],
    [
      open,
      "ends.yaml:1 file: a map came; write a list of end styles, each with name, deadTurns, solidExtra, pitchTurns, pitchWires, closed, ground",
    ],
  ])("that are wrong are reported: %j", (text, sentence) => {
    expect(() => readEnds({ file: "ends.yaml", text })).toThrow(sentence);
  });
});
