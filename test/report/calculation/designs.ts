import { describer } from "../../../src/constrain/design.ts";
import type { Brief, Choice, Design, Limits, Load, Material, PracticeName, Service } from "../../../src/model.ts";
import { OFF } from "../../constrain/plain.ts";
import { ends, brief as latch, otherMaterial, material as steel } from "../fixture.ts";

/** A design with the brief that it answers, by a name that says what is particular. */
export interface Case {
  readonly name: string;
  readonly brief: Brief;
  readonly choice: Choice;
}

const points = (force: "window" | "nominal", count = 2): Load => {
  const all = [
    { name: "closed", length: 0.05, low: 36, high: 54 },
    { name: "open", length: 0.038, low: 95, high: 125 },
    { name: "between", length: 0.044, low: 60, high: 95 },
  ].slice(0, count);
  return {
    kind: "points",
    points: all.map(({ name, length, low, high }) => ({
      name,
      length,
      force: { min: low, max: high, ...(force === "nominal" ? { nominal: (low + high) / 2 } : {}) },
    })),
  };
};

const loads = {
  "force at deflection": { kind: "forceAtDeflection", force: { nominal: 80, min: 72, max: 88 }, deflection: 0.02 },
  "force window at deflection": { kind: "forceAtDeflection", force: { min: 60, max: 120 }, deflection: 0.02 },
  "two nominal points": points("nominal"),
  "two force windows": points("window"),
  "three force windows": points("window", 3),
  "rate and point": {
    kind: "rateAndPoint",
    rate: { min: 3000, max: 7000 },
    point: { name: "shut", length: 0.04, force: { nominal: 60, min: 54, max: 66 } },
  },
  "rate and largest force": { kind: "rateAndLargestForce", rate: { nominal: 5000, min: 4750, max: 5250 }, largestForce: 90 },
} satisfies Record<string, Load>;

/** Limits of which every one is asked. */
const allLimits: Limits = {
  ...latch.limits,
  workingStress: { safety: 1.1, factor: "wahl" },
  solidStress: { max: 800e6 },
  surge: { multiple: 13 },
  fatigue: { safety: 1.3, line: "goodman" },
  loadTolerance: { grade: "commercial" },
};

const cyclic: Partial<Service> = { cycles: 1e6, frequency: 5, temperature: 350 };

/** Invented rows, so that a diagram and bands of moduli and wire tolerance are read. */
const banded: Material = {
  ...steel,
  name: "shop-steel-banded",
  moduli: [
    { upTo: 0.0019, youngsModulus: 207e9, shearModulus: 82e9 },
    { upTo: 0.0023, youngsModulus: 206e9, shearModulus: 81e9 },
    { youngsModulus: 204e9, shearModulus: 80e9 },
  ],
  strength: {
    minimum: {
      between: "next-row",
      confidence: "memory",
      rows: [
        { diameter: 0.0016, strength: 1900e6 },
        { diameter: 0.0019, strength: 1850e6 },
        { diameter: 0.0021, strength: 1800e6 },
        { diameter: 0.0026, strength: 1700e6 },
      ],
    },
  },
  wireTolerance: [
    { upTo: 0.002, plusMinus: 15e-6 },
    { upTo: 0.003, plusMinus: 20e-6 },
  ],
  fatigue: {
    source: "invented, for tests",
    cycles: 1e7,
    unpeened: [
      [0, 500e6],
      [300e6, 700e6],
      [800e6, 900e6],
    ],
  },
  operations: { grind: 0.002, relieve: 0.001 },
};

const constant: Material = {
  ...steel,
  name: "shop-constant",
  strength: { constant: { value: 1600e6, diameter: { min: 0.001, max: 0.004 } } },
};

const materials = [steel, otherMaterial, banded, constant];

interface Shape {
  readonly name: string;
  readonly load: Load;
  readonly practice?: PracticeName;
  readonly ends?: number;
  readonly material?: number;
  readonly inches?: boolean;
  readonly turnsAny?: boolean;
  readonly service?: Partial<Service>;
  readonly limits?: Partial<Limits>;
  readonly envelope?: Brief["envelope"];
}

function caseOf(shape: Shape): Case {
  const { practice = "handbook", ends: end = 3, material = 0, inches = false, turnsAny = false } = shape;
  const european = practice === "en13906";
  const brief: Brief = {
    ...latch,
    practice,
    load: shape.load,
    envelope: shape.envelope ?? latch.envelope,
    units: inches ? { length: "in", force: "lbf" } : { length: "mm", force: "N" },
    sweep: { ...latch.sweep, materials, ends, turns: turnsAny ? "any" : "quarter" },
    service: { ...latch.service, strength: material === 1 ? "fit" : "minimum", ...shape.service },
    limits: {
      ...allLimits,
      ...(european ? { clash: { minimumGap: 1.5 }, loadTolerance: { grade: 2 } } : {}),
      ...shape.limits,
    },
  };
  const wire = latch.sweep.wires[0]?.wires[2];
  if (wire === undefined) throw new Error("the series has no such wire");
  return { name: shape.name, brief, choice: { material, wire, ends: end, totalTurns: 9.25, meanDiameter: 0.0163 } };
}

/** A spread over loads, practices, ends, materials, units, duties and limits. */
export const cases: readonly Case[] = [
  ...Object.entries(loads).flatMap(([name, load]) =>
    (["handbook", "en13906"] as const).map((practice) => caseOf({ name: `${name}, ${practice}`, load, practice })),
  ),
  ...ends.map(({ name }, i) => caseOf({ name: `${name} ends`, load: loads["two force windows"], ends: i })),
  ...materials.map(({ name }, i) => caseOf({ name: `strength of ${name}`, load: loads["rate and largest force"], material: i })),
  ...(["force at deflection", "two nominal points", "rate and largest force"] as const).map((name) =>
    caseOf({ name: `${name}, turns that follow`, load: loads[name], turnsAny: true }),
  ),
  ...(["goodman", "gerber", "sines", "life"] as const).flatMap((line) =>
    [false, true].map((inches) =>
      caseOf({
        name: `cyclic by ${line}${inches ? ", inches" : ""}`,
        load: loads["two force windows"],
        service: cyclic,
        limits: { fatigue: { safety: 1.3, line } },
        inches,
      }),
    ),
  ),
  ...[false, true].map((inches) =>
    caseOf({
      name: `cyclic by a diagram${inches ? ", inches" : ""}`,
      load: loads["two force windows"],
      practice: "en13906",
      material: 2,
      service: cyclic,
      inches,
    }),
  ),
  caseOf({
    name: "cyclic from nothing",
    load: loads["force at deflection"],
    service: { ...cyclic, surface: "peened" },
    inches: true,
  }),
  caseOf({ name: "guided, set removed", load: loads["two force windows"], service: { seats: "guided", set: "removed" } }),
  caseOf({
    name: "clamped, the far end free to swing",
    load: loads["force at deflection"],
    service: { seats: "clamped and free", farEnd: "free", frequency: 3 },
  }),
  caseOf({ name: "clamped and free", load: loads["force at deflection"], service: { seats: "clamped and free" }, inches: true }),
  caseOf({ name: "allowance of solid length", load: loads["force at deflection"], limits: { clash: { ofSolidLength: 0.2 } } }),
  caseOf({ name: "allowance as a length", load: loads["two force windows"], limits: { clash: { length: 0.003 } }, inches: true }),
  caseOf({
    name: "every limit off",
    load: loads["two force windows"],
    limits: OFF,
  }),
  caseOf({
    name: "windows of every size",
    load: loads["two force windows"],
    envelope: {
      outsideDiameter: { min: 0.01, max: 0.03 },
      insideDiameter: { min: 0.01, max: 0.02 },
      freeLength: { min: 0.055, max: 0.058 },
      solidLength: { min: 0.01, max: 0.03 },
      bore: 0.024,
      rod: 0.011,
      clearance: { length: 0.0005 },
    },
    inches: true,
  }),
];

/** The design of a case. */
export function designOf({ brief, choice }: Case): Design {
  return describer(brief)(choice);
}
