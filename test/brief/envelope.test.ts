import { describeProblems, points } from "./problem-cases.ts";

describeProblems("envelope", [
  [
    "a bare number where a window is due",
    { envelope: "envelope: { freeLength: 60 mm }" },
    "windowNeeded",
    "envelope.freeLength",
    /\{ min: 60 mm \} or \{ max: 60 mm \}/,
  ],
  [
    "a rod not below the bore",
    { envelope: "envelope: { bore: 12 mm, rod: 14 mm }" },
    "contradiction",
    "envelope.rod",
    /rod \(14 mm\) is not below the bore \(12 mm\)/,
  ],
  [
    "a rod that only its clearance brings to the bore",
    { envelope: "envelope: { bore: 12 mm, rod: 11 mm, clearance: 5 % }" },
    "contradiction",
    "envelope.rod",
    /plus clearance \(11\.55 mm\)/,
  ],
  [
    "a free length below the solid length",
    { envelope: "envelope: { freeLength: { max: 20 mm }, solidLength: { min: 30 mm } }" },
    "contradiction",
    "envelope.freeLength",
    /solidLength\.min \(30 mm\)/,
  ],
  [
    "a free length not longer than the longest point",
    {
      load: points("{ name: long, length: 60 mm, force: 5 N }", "{ length: 50 mm, force: 10 N }"),
      envelope: "envelope: { freeLength: { max: 60 mm } }",
    },
    "contradiction",
    "envelope.freeLength",
    /length at long \(60 mm\)/,
  ],
  [
    "an outside diameter over the bore",
    { envelope: "envelope: { bore: 12 mm, outsideDiameter: { min: 13 mm } }" },
    "contradiction",
    "envelope.outsideDiameter",
    /bore/,
  ],
  [
    "an inside diameter not below the outside",
    { envelope: "envelope: { insideDiameter: { min: 13 mm }, outsideDiameter: { max: 13 mm } }" },
    "contradiction",
    "envelope.insideDiameter",
    /outsideDiameter\.max \(13 mm\)/,
  ],
  [
    "a bore without its least",
    { envelope: "envelope: { bore: { max: 12 mm } }" },
    "openWindow",
    "envelope.bore",
    /write \{ min: … \}/,
  ],
  [
    "a clearance from nothing",
    { envelope: "envelope: { clearance: 5 % }" },
    "contradiction",
    "envelope.clearance",
    /bore or rod/,
  ],
  [
    "a clearance without a unit",
    { envelope: "envelope: { bore: 12 mm, clearance: 0.05 }" },
    "noUnit",
    "envelope.clearance",
    /0\.05 mm/,
  ],
]);
