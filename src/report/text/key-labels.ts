import type { Brief, LimitName } from "../../model.ts";
import { limitWords } from "./labels.ts";

/** Keys of a brief in the words of a reader who never saw one; those of points, windows and limits are made from their parts. */
const WORDS: Readonly<Record<string, string>> = {
  practice: "practice",
  rank: "order of ranking",
  "load.force": "force",
  "load.deflection": "deflection under that force",
  "load.rate": "rate",
  "load.largestForce": "largest working force",
  "envelope.bore": "bore",
  "envelope.rod": "rod",
  "envelope.clearance": "clearance on the diameter",
  "envelope.outsideDiameter": "outside diameter as wound",
  "envelope.insideDiameter": "inside diameter as wound",
  "envelope.freeLength": "free length",
  "envelope.solidLength": "solid length",
  "sweep.wires": "wires",
  "sweep.materials": "materials",
  "sweep.ends": "end styles",
  "sweep.turns": "steps of turns",
  "sweep.meanDiameter": "mean diameter",
  "sweep.meanDiameter.step": "step of mean diameter",
  "sweep.freeLength.step": "step of free length",
  "service.seats": "seats",
  "service.farEnd": "far end",
  "service.set": "set",
  "service.surface": "surface",
  "service.strength": "strength read as",
  "service.cycles": "load cycles",
  "service.frequency": "frequency of work",
  "service.temperature": "service temperature",
  "service.scatter.draws": "springs drawn about each design",
  "service.scatter.shape": "how drawn springs are spread",
  "service.scatter.seed": "seed of the drawing",
  "service.scatter.grade": "tolerance grade of drawn springs",
  "service.scatter.wireDiameter": "wire diameter of drawn springs, plus-minus",
  "service.scatter.coilDiameter": "mean diameter of drawn springs, plus-minus",
  "service.scatter.turns": "turns of drawn springs, plus-minus",
  "service.scatter.freeLength": "free length of drawn springs, plus-minus",
  "service.scatter.modulus": "shear modulus of drawn springs, plus-minus",
  "limits.turns": "active turns",
  "limits.clash.ofDeflection": "clash allowance, share of deflection",
  "limits.clash.ofSolidLength": "clash allowance, share of solid length",
  "limits.workingStress.factor": "working stress, its stress factor",
  "limits.surge.multiple": "surge, multiple of the frequency of work",
  "limits.fatigue.line": "fatigue, its line",
  "limits.loadTolerance.grade": "load tolerance, grade",
  "cost.grind": "cost of grinding the ends",
  "cost.set": "cost of removing set",
  "cost.peen": "cost of shot peening",
  "cost.relieve": "cost of relieving stress",
  "order.quantity": "springs ordered",
};

/** Last parts of a key that narrow what stands before them. */
const ENDS: Readonly<Record<string, string>> = {
  min: "least",
  max: "largest",
  safety: "safety",
  length: "as a length",
};

/**
 * A key of a brief in words.
 *
 * @param key    from the top, such as `load.points[2].force.min`
 * @param brief  where the key stands, for the names of its load points
 * @returns such as "force at latched, least"; the key itself where no words are known for it
 */
export function keyWords(key: string, brief: Brief): string {
  const known = WORDS[key] ?? pointWords(key, brief) ?? limitWords[key.replace("limits.", "") as LimitName]?.label;
  if (known !== undefined) return known;
  const dot = key.lastIndexOf(".");
  const end = ENDS[key.slice(dot + 1)];
  if (dot < 0 || end === undefined) return key;
  const whole = keyWords(key.slice(0, dot), brief);
  return whole === key.slice(0, dot) ? key : `${whole}, ${end}`;
}

function pointWords(key: string, { load }: Brief): string | undefined {
  const [, number, what] = /^load\.points\[(\d+)\]\.(length|force)$/.exec(key) ?? [];
  const points = load.kind === "points" ? load.points : load.kind === "rateAndPoint" ? [load.point] : [];
  const name = points[Number(number) - 1]?.name;
  return name === undefined || what === undefined ? undefined : `${what} at ${name}`;
}

/** Thresholds as a brief would write them, each with how a reader would say it. */
const TAKEN: readonly (readonly [RegExp, (...found: string[]) => string])[] = [
  [/^\{ min: (\S+), max: (\S+) \}$/, (min, max) => `${min} to ${max}`],
  [/^\{ safety: (\S+) \}$/, (safety) => `safety ${safety}`],
  [/^\{ multiple: (\S+) \}$/, (multiple) => `${multiple} times the frequency of work`],
  [/^\{ ofDeflection: (\S+) \}$/, (fraction) => `${percent(fraction)} % of the largest working deflection`],
  [/^\{ ofSolidLength: (\S+) \}$/, (fraction) => `${percent(fraction)} % of the solid length`],
  [/^\{ step: (.+) \}$/, (step) => `steps of ${step}`],
];

/**
 * A default in words.
 *
 * @param text  as it would be written in a brief
 * @returns such as "4 to 12" for `{ min: 4, max: 12 }`; the text itself where it is words already
 */
export function takenWords(text: string): string {
  for (const [written, said] of TAKEN) {
    const found = written.exec(text);
    if (found) return said(...found.slice(1));
  }
  return text;
}

function percent(fraction = "0"): string {
  return String(Number((100 * Number(fraction)).toPrecision(6)));
}
