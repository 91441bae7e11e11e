import { describeProblems } from "./problem-cases.ts";

describeProblems("service", [
  ["unknown seats", { service: "service: { seats: guide }" }, "unknownWord", "service.seats", /did you mean guided\?/],
  [
    "a fit where none is in print",
    { sweep: "sweep: { wires: [en-10270], materials: [en-sm], ends: [plain] }", service: "service: { strength: fit }" },
    "noFit",
    "service.strength",
    /en-sm has no fit.*strength: minimum/,
  ],
  [
    "cycles, which are not judged yet",
    { service: "service: { cycles: 1e6 }" },
    "notJudged",
    "service.cycles",
    /limits: \{ fatigue: off \}/,
  ],
  ["a unit on a pure number", { service: "service: { cycles: 1e6 Hz }" }, "hasUnit", "service.cycles", /1e6, a pure number/],
  ["a reserved scatter", { service: "service: { scatter: {} }" }, "reserved", "service.scatter", /leave it out/],
]);
