import { describeProblems } from "./problem-cases.ts";

describeProblems("the whole", [
  [
    "a practice is required, for it is a person's choice",
    { practice: "" },
    "missing",
    "practice",
    /handbook or practice: en13906/,
  ],
  ["an unknown practice", { practice: "practice: handbok" }, "unknownWord", "practice", /did you mean handbook\?/],
  ["an empty value", { practice: "practice:" }, "empty", "practice", /handbook/],
  ["a load is required", { load: "" }, "missing", "load", /force \+ deflection/],
  ["a load that is no section", { load: "load: 45 N" }, "wrongKind", "load", /set of keys/],
  ["a sweep is required", { sweep: "" }, "missing", "sweep", /coilsieve catalog/],
  ["an unknown key close to a known one", { rank: "rnk: mass" }, "unknownKey", "rnk", /did you mean rank\?/],
  ["an unknown key close to none", { rank: "colour: red" }, "unknownKey", "colour", /title, practice, load/],
  ["a prototype's key is unknown like any other", { rank: "__proto__: 1" }, "unknownKey", "__proto__", /title, practice/],
  ["a key that stands twice", { rank: "practice: en13906" }, "duplicateKey", "practice", /once/],
  ["a list where a section is due", { envelope: "envelope: [26 mm]" }, "wrongKind", "envelope", /set of keys: bore, rod/],
  ["a design without a sweep", { sweep: "", rank: "design: {}" }, "missing", "sweep", /coilsieve check/],
  ["an unknown merit figure", { rank: "rank: [mass, freelenght]" }, "unknownWord", "rank", /did you mean freeLength\?/],
  ["a merit figure twice", { rank: "rank: [mass, mass]" }, "twice", "rank", /once/],
]);
