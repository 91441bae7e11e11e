import { describe, expect, it } from "vitest";
import { textOf } from "./tree.ts";
import { blocksOf, holdsWhatIsTyped } from "./typed.ts";

describe("what the tour types", () => {
  holdsWhatIsTyped("reports/tour.md", 7);
});

describe("what the tour shows of its brief", () => {
  it("stands in the brief so", () => {
    const [shown = ""] = blocksOf("reports/tour.md", "yaml");
    expect(textOf("reports/tour/pedal.yaml")).toContain(shown);
  });

  it("is all that the other briefs of the tour share with it, but what they change", () => {
    const linesOf = (name: string) =>
      textOf(`reports/tour/${name}.yaml`)
        .split("\n")
        .filter((line) => !/^#|^title:/.test(line));
    const pedal = linesOf("pedal");
    expect(linesOf("pedal-reamed").filter((line) => !pedal.includes(line))).toEqual(["  bore: 17.5 mm"]);
    expect(linesOf("pedal-set").filter((line) => !pedal.includes(line) && !line.startsWith("  "))).toEqual([
      "service: { seats: parallel plates, set: removed }",
      "limits: { loadTolerance: { grade: commercial } }",
      "order:",
    ]);
  });
});
