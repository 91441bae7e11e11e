import type { Brief, Design, EndStyle, Material, SweepResult, WireSeries } from "../../src/model.ts";

/** Four end styles with the constants of the end table. */
export const ends: readonly EndStyle[] = [
  { name: "plain", deadTurns: 0, solidExtra: 1, pitchTurns: 0, pitchWires: 1, closed: false, ground: false },
  { name: "plain-ground", deadTurns: 1, solidExtra: 0, pitchTurns: 1, pitchWires: 0, closed: false, ground: true },
  { name: "squared", deadTurns: 2, solidExtra: 1, pitchTurns: 0, pitchWires: 3, closed: true, ground: false },
  { name: "squared-ground", deadTurns: 2, solidExtra: 0, pitchTurns: 0, pitchWires: 2, closed: true, ground: true },
];

/** An invented wire series. */
export const series: WireSeries = {
  name: "shop-wire",
  source: "invented, for tests",
  wires: [1.6, 1.8, 2, 2.2, 2.5].map((millimetres) => ({
    label: `W${10 * millimetres}`,
    diameter: millimetres / 1000,
    series: "shop-wire",
  })),
};

/** An invented material. */
export const material: Material = {
  name: "shop-steel",
  source: "invented, for tests",
  class: "cold drawn",
  density: 7850,
  moduli: [{ youngsModulus: 206e9, shearModulus: 81.5e9 }],
  strength: {
    minimum: {
      between: "interpolate",
      rows: [
        { diameter: 0.001, strength: 1980e6 },
        { diameter: 0.004, strength: 1530e6 },
      ],
    },
  },
  temperature: { max: 393.15 },
  relativeCost: 1.4,
  notes: ["relative cost invented"],
};

/** Another, stronger on paper and read from memory. */
export const otherMaterial: Material = {
  ...material,
  name: "shop-steel-hard",
  strength: {
    fit: [{ at: 0.001, value: 2100e6, exponent: 0.16, diameter: { min: 0.001, max: 0.004 }, confidence: "memory" }],
  },
  relativeCost: 2.2,
};

/** Two points with force windows in a bore over a rod. */
export const brief: Brief = {
  title: "Latch plunger (invented)",
  practice: "handbook",
  load: {
    kind: "points",
    points: [
      { name: "closed", length: 0.05, force: { min: 36, max: 54 } },
      { name: "open", length: 0.038, force: { min: 95, max: 125 } },
    ],
  },
  envelope: { bore: 0.024, rod: 0.011, clearance: { share: 0.05 }, freeLength: { max: 0.07 } },
  sweep: { wires: [series], materials: [material, otherMaterial], ends, turns: "quarter", meanDiameter: { step: 0.0001 } },
  service: { seats: "parallel plates", set: "as wound", surface: "unpeened", strength: "minimum" },
  limits: {
    index: { min: 4, max: 12 },
    turns: { min: 3, max: 15 },
    clash: { ofDeflection: 0.15 },
    workingStress: "off",
    solidStress: { safety: 1.2 },
    buckling: { safety: 1 },
    surge: "off",
    fatigue: "off",
    loadTolerance: "off",
    lifted: [],
  },
  cost: {},
  rank: ["mass"],
  units: { length: "mm", force: "N" },
  asked: [
    { key: "load.points[1].length", text: "50 mm", dimension: "length", value: 0.05 },
    { key: "load.points[1].force", text: "{ min: 36 N, max: 54 N }", dimension: "force", value: 36 },
    { key: "envelope.bore", text: "24 mm", dimension: "length", value: 0.024 },
  ],
  defaults: [
    { key: "limits.index", text: "{ min: 4, max: 12 }", source: "Shigley eq. 10-18" },
    { key: "limits.solidStress", text: "{ safety: 1.2 }", source: "Shigley eq. 10-21" },
  ],
};

/** A design by hand: the lengths agree with one another, the other figures are plausible and round. */
export function spring(changes: Partial<Design> & { readonly endStyle?: EndStyle } = {}): Design {
  const { endStyle = ends[3] as EndStyle, ...given } = changes;
  const wireDiameter = given.wireDiameter ?? 0.002;
  const meanDiameter = given.meanDiameter ?? 0.016;
  const totalTurns = given.totalTurns ?? 9;
  const freeLength = given.freeLength ?? 0.058;
  const activeTurns = totalTurns - endStyle.deadTurns;
  const pitch = (freeLength - endStyle.pitchWires * wireDiameter) / (activeTurns + endStyle.pitchTurns);
  const rate = (81.5e9 * wireDiameter ** 4) / (8 * meanDiameter ** 3 * activeTurns);
  return {
    rank: 1,
    material: "shop-steel",
    wire: `W${(1e4 * wireDiameter).toFixed(0)}`,
    series: "shop-wire",
    wireDiameter,
    ends: endStyle.name,
    totalTurns,
    activeTurns,
    meanDiameter,
    outsideDiameter: meanDiameter + wireDiameter,
    insideDiameter: meanDiameter - wireDiameter,
    index: meanDiameter / wireDiameter,
    rate,
    freeLength,
    freeLengthRange: { min: freeLength - 0.001, max: freeLength + 0.001 },
    solidLength: (totalTurns + endStyle.solidExtra) * wireDiameter,
    pitch,
    pitchAngle: Math.atan(pitch / (Math.PI * meanDiameter)),
    coilGap: pitch - wireDiameter,
    wireLength: Math.PI * meanDiameter * totalTurns,
    mass: 0.0112,
    costParts: { wire: 0, grind: 0, set: 0, peen: 0, relieve: 0 },
    relativeCost: 0.0157,
    points: [
      { name: "closed", length: 0.05, deflection: 0.008, force: rate * 0.008, stress: 210e6, shareOfDeflection: 0.2 },
      { name: "open", length: 0.038, deflection: 0.02, force: rate * 0.02, stress: 520e6, shareOfDeflection: 0.5 },
    ],
    forceAtSolid: 227.7,
    stressFactor: 1.18,
    stressAtSolid: 684e6,
    solidSafety: 1.22,
    workingSafety: 1.6,
    bucklingDeflection: null,
    surgeFrequency: 401.2,
    outsideDiameterAtSolid: 0.0185,
    fatigueSafety: null,
    cyclic: null,
    hot: null,
    tolerance: { grade: "commercial", wireDiameter: null, wireSource: null, coilDiameter: null, freeLength: null, points: [] },
    shearModulus: 81.5e9,
    youngsModulus: 206e9,
    tensileStrength: 1755e6,
    strengthBasis: "minimum",
    density: 7850,
    margins: {
      turns: 0.1,
      index: 0.33,
      outsideDiameter: 0.189,
      insideDiameter: 0.21,
      rate: 0.08,
      freeLength: 0.17,
      clash: 0.4,
      solidStress: 0.017,
    },
    cautions: [],
    ...given,
  };
}

/** Three springs of the brief above, with a tally. */
export const result: SweepResult = {
  brief,
  practice: "handbook",
  walked: 1_234_567,
  rejected: { wire: 1200, index: 400_000, outsideDiameter: 33_000, solidStress: 800_127 },
  feasible: 240,
  designs: [
    spring(),
    spring({ rank: 2, wireDiameter: 0.0022, meanDiameter: 0.0172, mass: 0.01234, endStyle: ends[2] as EndStyle }),
    spring({
      rank: 3,
      wireDiameter: 0.0018,
      meanDiameter: 0.0148,
      material: "shop-steel-hard",
      strengthBasis: "fit, from memory",
      cautions: ["strengthFromMemory"],
    }),
  ],
  front: [spring()],
  frontAxes: ["outsideDiameter", "freeLength"],
  tableEnds: [],
  warnings: ["beyondFatigueLife"],
};

/** The same brief with nothing that fits. */
export const nothing: SweepResult = {
  ...result,
  rejected: { index: 400_000, solidStress: 834_567 },
  feasible: 0,
  designs: [],
  front: [],
  nearest: [
    {
      limit: "freeLength",
      design: spring(),
      needed: 0.068,
      limitValue: 0.06,
      sense: "most",
      dimension: "length",
      breaks: ["freeLength"],
    },
    {
      limit: "clash",
      design: spring(),
      needed: 0.004,
      limitValue: 0.0031,
      sense: "least",
      dimension: "length",
      breaks: ["clash", "solidStress"],
    },
  ],
};
