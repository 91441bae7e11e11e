import { describeProblems } from "./problem-cases.ts";

describeProblems("service", [
  ["unknown seats", { service: "service: { seats: guide }" }, "unknownWord", "service.seats", /did you mean guided\?/],
  [
    "a free end of seats that hold both",
    { service: "service: { seats: pivots, farEnd: free }" },
    "bothEndsHeld",
    "service.farEnd",
    /seats pivots hold both ends.*leave it out, or write seats: clamped and free/,
  ],
  [
    "a fit where none is in print",
    { sweep: "sweep: { wires: [en-10270], materials: [en-sm], ends: [plain] }", service: "service: { strength: fit }" },
    "noFit",
    "service.strength",
    /en-sm has no fit.*strength: minimum/,
  ],
  [
    "cycles where the practice reads a diagram that the material does not have",
    {
      practice: "practice: en13906",
      sweep: "sweep: { wires: [en-10270], materials: [en-sm], ends: [squared] }",
      service: "service: { cycles: 1e6 }",
    },
    "noFatigueData",
    "service.cycles",
    /unpeened wire.*en-sm.*limits: \{ fatigue: off \}/,
  ],
  [
    "cycles for a class of material that the practice's fatigue strengths are not for",
    { sweep: "sweep: { wires: [awg], materials: [astm-b159], ends: [squared] }", service: "service: { cycles: 1e6 }" },
    "noFatigueData",
    "service.cycles",
    /astm-b159.*cold drawn/,
  ],
  ["a unit on a pure number", { service: "service: { cycles: 1e6 Hz }" }, "hasUnit", "service.cycles", /1e6, a pure number/],
]);
