import { describe, expect, it } from "vitest";
import { points, sweepOf } from "./problem-cases.ts";
import { briefText, type Parts, problemsOf } from "./reading.ts";

describe("what is accepted", () => {
  const accepted: readonly (readonly [string, Parts])[] = [
    ["an open rate window", { load: "load: { rate: { min: 1 N/mm }, largestForce: 9 N }" }],
    [
      "points that lie on a line but for rounding",
      {
        load: points(
          "{ length: 0.3 in, force: 0.1 lbf }",
          "{ length: 0.2 in, force: 0.2 lbf }",
          "{ length: 0.1 in, force: 0.3 lbf }",
        ),
      },
    ],
    [
      "a free length that is the unloaded point's",
      {
        load: points("{ length: 60 mm, force: 0 N }", "{ length: 50 mm, force: 10 N }"),
        envelope: "envelope: { freeLength: { max: 60 mm } }",
      },
    ],
    ["cycles with fatigue off", { service: "service: { cycles: 1e6 }", limits: "limits: { fatigue: off }" }],
    [
      "every limit off where turns are solved",
      {
        sweep: sweepOf("turns: any"),
        limits: `limits: { ${["index", "turns", "clash", "workingStress", "solidStress", "buckling", "surge", "fatigue", "loadTolerance", "outsideDiameter", "insideDiameter", "freeLength", "solidLength", "temperature", "wire"].map((name) => `${name}: off`).join(", ")} }`,
      },
    ],
    ["minimum strength of a material without rows", { sweep: "sweep: { wires: [awg], materials: [astm-b159], ends: [plain] }" }],
    ["a wire that its material is not made in", { sweep: "sweep: { wires: [awg], materials: [astm-a228], ends: [plain] }" }],
  ];
  it.each(accepted)("%s", (_title, parts) => {
    expect(problemsOf(briefText(parts))).toEqual([]);
  });
});
