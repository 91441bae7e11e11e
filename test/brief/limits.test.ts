import { describeProblems } from "./problem-cases.ts";

describeProblems("limits", [
  [
    "two clash allowances",
    { limits: "limits: { clash: { ofDeflection: 0.1, length: 2 mm } }" },
    "oneOf",
    "limits.clash",
    /exactly one of ofDeflection, ofSolidLength, length/,
  ],
  [
    "a working stress without a threshold",
    { limits: "limits: { workingStress: { factor: wahl } }" },
    "oneOf",
    "limits.workingStress",
    /exactly one of max, safety/,
  ],
  [
    "a solid stress with two",
    { limits: "limits: { solidStress: { max: 9 MPa, safety: 1 } }" },
    "oneOf",
    "limits.solidStress",
    /max and safety/,
  ],
  ["no for off", { limits: "limits: { solidStress: no }" }, "wrongKind", "limits.solidStress", /write off/],
  ["false for off", { limits: "limits: { index: false }" }, "wrongKind", "limits.index", /write off/],
  ["a surge without its multiple", { limits: "limits: { surge: {} }" }, "missing", "limits.surge.multiple", /multiple: …/],
  ["an index turned round", { limits: "limits: { index: { min: 12, max: 4 } }" }, "contradiction", "limits.index", /swapped/],
  [
    "a half of a window beyond the practice's other half",
    { limits: "limits: { index: { min: 14 } }" },
    "contradiction",
    "limits.index",
    /give both ends/,
  ],
  ["turns off where turns are counted", { limits: "limits: { turns: off }" }, "contradiction", "limits.turns", /max/],
  [
    "a threshold where only off is taken",
    { limits: "limits: { freeLength: { max: 9 mm } }" },
    "onlyOff",
    "limits.freeLength",
    /envelope\.freeLength/,
  ],
  [
    "a fatigue line where the material's own diagram judges",
    {
      practice: "practice: en13906",
      sweep: "sweep: { wires: [en-10270], materials: [en-sm], ends: [squared] }",
      limits: "limits: { fatigue: { line: gerber } }",
    },
    "lineOfDiagram",
    "limits.fatigue.line",
    /leave it out/,
  ],
  [
    "a tolerance grade that the practice does not have",
    { limits: "limits: { loadTolerance: { grade: 2 } }" },
    "gradeOfPractice",
    "limits.loadTolerance.grade",
    /write commercial/,
  ],
]);
