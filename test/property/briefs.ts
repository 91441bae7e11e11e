import fc from "fast-check";
import type { Brief, EndStyle, FatigueLine, Limits, Load, Material, PracticeName, Service, Wire } from "../../src/model.ts";

/** Random briefs drawn round a spring that exists, so that every limit has something to bite on. SI; all invented. */

const ENDS: readonly EndStyle[] = [
  { name: "plain", deadTurns: 0, solidExtra: 1, pitchTurns: 0, pitchWires: 1, closed: false, ground: false },
  { name: "plain-ground", deadTurns: 1, solidExtra: 0, pitchTurns: 1, pitchWires: 0, closed: false, ground: true },
  { name: "squared", deadTurns: 2, solidExtra: 1, pitchTurns: 0, pitchWires: 3, closed: true, ground: false },
  { name: "squared-ground", deadTurns: 2, solidExtra: 0, pitchTurns: 0, pitchWires: 2, closed: true, ground: true },
  // Its coils touch before the spring is solid.
  { name: "crowded", deadTurns: 2, solidExtra: 0, pitchTurns: 1, pitchWires: 4, closed: true, ground: true },
];

export type LoadCase =
  | "deflection"
  | "deflectionWindow"
  | "points"
  | "pointsNominal"
  | "pointsTolerance"
  | "ratePoint"
  | "ratePointNominal"
  | "rateForce"
  | "rateForceNominal";

export const LOAD_CASES: readonly LoadCase[] = [
  "deflection",
  "deflectionWindow",
  "points",
  "pointsNominal",
  "pointsTolerance",
  "ratePoint",
  "ratePointNominal",
  "rateForce",
  "rateForceNominal",
];

const PINNED: readonly LoadCase[] = ["deflection", "pointsNominal", "pointsTolerance", "ratePointNominal", "rateForceNominal"];

/** A number between 0 and 1 for each thing that may vary or be absent. */
const share = fc.integer({ min: 0, max: 1000 }).map((thousandths) => thousandths / 1000);
const coin = fc.boolean();
const dice = fc.record({
  wire: share,
  index: share,
  turns: share,
  gap: share,
  first: share,
  second: share,
  slack: share,
  strength: share,
  step: share,
  tight: fc.array(share, { minLength: 12, maxLength: 12 }),
  asked: fc.array(share, { minLength: 16, maxLength: 16 }),
  ends: fc.subarray([0, 1, 2, 3, 4], { minLength: 1 }),
  turnsStep: fc.constantFrom("quarter", "half", "whole"),
  clash: fc.constantFrom("ofDeflection", "ofSolidLength", "length", "minimumGap", "off"),
  seats: fc.constantFrom("parallel plates", "plate and pivot", "pivots", "clamped and free"),
  practice: fc.constantFrom("handbook", "en13906"),
  thirdPoint: coin,
  heat: fc.constantFrom(0.2e-3, 2e-3),
  cold: coin,
  hotForce: coin,
  line: fc.constantFrom("goodman", "gerber", "sines", "life"),
});

type Dice = typeof dice extends fc.Arbitrary<infer T> ? T : never;

/**
 * Briefs of one kind of load.
 *
 * @param turnsAny  let turns follow from the diameter; only for loads that pin the rate
 * @param exact     the mean diameter over the reals
 */
export function briefs(load: LoadCase, turnsAny: boolean, exact = false): fc.Arbitrary<Brief> {
  if (turnsAny && !PINNED.includes(load)) throw new Error("turns follow only from a pinned rate");
  return dice.map((thrown) => briefOf(thrown, load, turnsAny, exact));
}

/** Every kind of load with counted turns, and with turns that follow where the rate is pinned. */
export const CASES = LOAD_CASES.flatMap((load) =>
  (PINNED.includes(load) ? [true, false] : [false]).map((turnsAny) => ({ load, turnsAny })),
);

/** Runs are the same every time; SEED and RUNS in the environment make a longer search of them, as `npm run test:long` does. */
export const RANDOM = {
  seed: Number(process.env.SEED ?? 20261125),
  numRuns: Number(process.env.RUNS ?? 12),
  // A smaller case costs more sweeps than the whole search; seed and path name the case that was met.
  endOnFailure: true,
};

/** What a search of 40 runs and more must at least have met; the short one of every change may meet less. */
export const met = <T>(least: readonly T[]): readonly T[] => (RANDOM.numRuns < 40 ? [] : least);

/** The same of a count, which must be above this one after 80 runs and above its half after 40; after fewer it may be zero. */
export const above = (count: number): number =>
  RANDOM.numRuns < 40 ? -1 : Math.floor((count * Math.min(RANDOM.numRuns, 80)) / 80);

const between = (share: number, low: number, high: number): number => low + share * (high - low);

function briefOf(thrown: Dice, load: LoadCase, turnsAny: boolean, exact: boolean): Brief {
  const shearModulus = 80e9;
  const d = between(thrown.wire, 0.5e-3, 4e-3);
  const meanDiameter = d * between(thrown.index, 3.5, 13);
  const activeTurns = between(thrown.turns, 2.5, 9);
  const rate = (shearModulus * d ** 4) / (8 * meanDiameter ** 3 * activeTurns);
  const solidLength = (activeTurns + 2) * d;
  const travel = activeTurns * d * between(thrown.gap, 0.3, 4);
  const freeLength = solidLength + travel;
  const force = rate * travel * between(thrown.second, 0.5, 0.9);
  const tight = (i: number, low = 0.92, high = 1.4) => between(thrown.tight[i] as number, low, high);
  // The earlier limits are asked less often, so that something is left for the later ones to bite on.
  const asked = (i: number) => (thrown.asked[i] as number) < (i < 7 ? 0.5 : 0.25);
  const stress = (8 * rate * travel * meanDiameter) / (Math.PI * d ** 3);

  const limits: Limits = {
    index: asked(0) ? { min: 4 / tight(0), max: 11 * tight(1) } : asked(1) ? { min: 2, max: 25 } : "off",
    turns: asked(1) || !turnsAny ? { min: activeTurns / tight(2, 1, 2), max: activeTurns * tight(3, 1, 1.8) } : "off",
    clash: clashOf(thrown, d),
    workingStress: asked(2) ? { max: stress * tight(4, 0.6, 1.2), factor: "wahl" } : "off",
    solidStress: asked(3) ? { safety: tight(4, 0.9, 1.4) } : "off",
    buckling: asked(4) ? { safety: tight(5, 0.8, 2.5) } : "off",
    surge: asked(5) ? { multiple: 12 } : "off",
    fatigue: asked(2) ? { safety: tight(5, 0.8, 2.5), line: thrown.line as FatigueLine } : "off",
    loadTolerance: asked(4) ? { grade: thrown.practice === "handbook" ? "commercial" : 2 } : "off",
    lifted: thrown.hotForce ? [] : ["hotForce"],
  };
  const outside = meanDiameter + d;
  const inside = meanDiameter - d;
  const service: Service = {
    seats: thrown.seats as Service["seats"],
    set: "as wound",
    surface: "unpeened",
    strength: "fit",
    ...(asked(5) ? { frequency: ((0.5 * d) / (activeTurns * meanDiameter ** 2)) * 55 * tight(6, 0.5, 1.4) } : {}),
    ...(asked(2) ? { cycles: 1e6 } : {}),
    ...(asked(6) ? { temperature: between(thrown.tight[7] as number, thrown.cold ? 240 : 320, 420) } : {}),
  };
  return {
    title: "random",
    practice: thrown.practice as PracticeName,
    load: loadOf(thrown, load, { rate, freeLength, travel, force }),
    envelope: {
      ...(asked(7)
        ? { outsideDiameter: { max: outside * tight(8), ...(asked(8) ? { min: outside / tight(9, 1, 1.5) } : {}) } }
        : {}),
      ...(asked(9) ? { bore: outside * tight(10, 1, 1.4) } : {}),
      ...(asked(10)
        ? { insideDiameter: { min: inside / tight(9), ...(asked(11) ? { max: inside * tight(8, 1, 1.5) } : {}) } }
        : {}),
      ...(asked(12)
        ? { freeLength: { max: freeLength * tight(11), ...(asked(13) ? { min: freeLength / tight(0, 1, 1.3) } : {}) } }
        : {}),
      ...(asked(14)
        ? { solidLength: { max: solidLength * tight(1), ...(asked(15) ? { min: solidLength / tight(2, 1, 1.5) } : {}) } }
        : {}),
    },
    sweep: {
      wires: [{ name: "invented", source: "invented", wires: [0.8, 1, 1.25].map((share) => wireOf(d * share)) }],
      materials: materialsOf(d, shearModulus, stress, between(thrown.strength, 0.8, 1.6), thrown.heat),
      ends: (exact ? outermost(thrown.ends) : thrown.ends).map((i) => ENDS[i] as EndStyle),
      turns: turnsAny ? "any" : exact ? "whole" : (thrown.turnsStep as "quarter" | "half" | "whole"),
      meanDiameter: exact ? "exact" : { step: d / between(thrown.step, 3, 20) },
    },
    service,
    limits,
    cost: {},
    rank: ["mass"],
    units: { length: "mm", force: "N" },
    asked: [],
    defaults: [],
  };
}

/** A search over the reals takes as long for one family as the grid for hundreds, and each is searched alone: fewer do. */
function outermost<T>(items: readonly T[]): T[] {
  return [...new Set([items[0], items.at(-1)] as T[])];
}

function loadOf(
  { first, slack, thirdPoint }: Dice,
  load: LoadCase,
  { rate, freeLength, travel, force }: { rate: number; freeLength: number; travel: number; force: number },
): Load {
  const width = between(slack, 0.05, 0.6);
  const window = (value: number) => ({ min: value * (1 - width), max: value * (1 + width) });
  const exactly = (value: number) => ({ nominal: value, min: value, max: value });
  const deflection = force / rate;
  const less = deflection * between(first, 0.2, 0.8);
  const point = (name: string, y: number, force: { nominal?: number; min: number; max: number }) => ({
    name,
    length: freeLength - y,
    force,
  });
  switch (load) {
    case "deflection":
      return { kind: "forceAtDeflection", force: exactly(force), deflection };
    case "deflectionWindow":
      return { kind: "forceAtDeflection", force: window(force), deflection };
    case "points":
      return {
        kind: "points",
        points: [
          point("light", less, window(rate * less)),
          point("loaded", deflection, window(force)),
          ...(thirdPoint ? [point("between", (less + deflection) / 2, window((rate * (less + deflection)) / 2))] : []),
        ],
      };
    case "pointsNominal":
      return {
        kind: "points",
        points: [point("light", less, exactly(rate * less)), point("loaded", deflection, exactly(force))],
      };
    case "pointsTolerance":
      return {
        kind: "points",
        points: [
          point("light", less, { nominal: rate * less, ...window(rate * less) }),
          point("loaded", deflection, { nominal: force, ...window(force) }),
        ],
      };
    case "ratePoint":
      return {
        kind: "rateAndPoint",
        rate: window(rate),
        point: point("loaded", deflection, thirdPoint ? window(force) : exactly(force)),
      };
    case "ratePointNominal":
      return {
        kind: "rateAndPoint",
        rate: { nominal: rate, ...window(rate) },
        point: point("loaded", deflection, exactly(force)),
      };
    case "rateForce":
      return { kind: "rateAndLargestForce", rate: window(rate), largestForce: force };
    case "rateForceNominal":
      return {
        kind: "rateAndLargestForce",
        rate: { nominal: rate, ...window(rate) },
        largestForce: Math.min(force, rate * travel),
      };
  }
}

function clashOf({ clash, tight }: Dice, d: number): Limits["clash"] {
  const amount = tight[6] as number;
  switch (clash) {
    case "ofDeflection":
      return { ofDeflection: between(amount, 0.05, 0.4) };
    case "ofSolidLength":
      return { ofSolidLength: between(amount, 0.01, 0.2) };
    case "length":
      return { length: d * between(amount, 0.1, 2) };
    case "minimumGap":
      return { minimumGap: between(amount, 0.5, 2) };
    default:
      return "off";
  }
}

function wireOf(diameter: number): Wire {
  return { label: `${diameter}`, diameter, series: "invented", ...(diameter > 3.5e-3 ? { soldIn: ["soft"] } : {}) };
}

/** One strong and one soft material; the soft one stands no heat and is not made in thick wire. */
function materialsOf(d: number, shearModulus: number, stress: number, share: number, heat: number): Material[] {
  const material = (name: string, factor: number, thickest: number, hottest: number): Material => ({
    name,
    source: "invented",
    class: "cold drawn",
    density: 7850,
    moduli: [{ youngsModulus: 2.6 * shearModulus * factor ** 0.2, shearModulus: shearModulus * factor ** 0.2 }],
    modulusLoss: { perKelvin: heat * factor, source: "invented" },
    strength: {
      fit: [{ at: d, value: (factor * share * stress * 1.4) / 0.5, exponent: 0.15, diameter: { min: d / 3, max: thickest } }],
    },
    temperature: { max: hottest },
    fatigue: {
      source: "invented",
      cycles: 1e7,
      unpeened: [
        [0, 0.6 * stress],
        [0.5 * stress, 0.9 * stress],
        [stress, 1.2 * stress],
      ],
    },
    relativeCost: factor,
    notes: [],
  });
  return [material("strong", 1, 3 * d, 500), material("soft", 0.8, 1.1 * d, 380)];
}
