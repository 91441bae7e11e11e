import type { Candidate } from "../../constrain/candidate/candidate.ts";
import { madeSizes, temperatureMargin } from "../../constrain/candidate/wire-properties.ts";
import type { Bound } from "../../constrain/limits/bound.ts";
import { limitsFor } from "../../constrain/limits/limits.ts";
import type { Dimension, LimitName } from "../../model.ts";
import { thresholdSource } from "../../studies/bound-source.ts";
import { limitWords } from "../text/labels.ts";
import type { Steps } from "./steps.ts";
import { briefSource, STRESS_SOURCE, stressEquation, type WorkedSpring } from "./worked-spring.ts";

const MARGIN = "share of the limit that is left; below zero it fails";

/** Every limit asked: its figure, its bound, its margin. */
export function marginSteps(steps: Steps, worked: WorkedSpring): void {
  const { requirements, candidate, design, brief, material } = worked;
  // Sources are told of one material.
  const ofMaterial = { ...brief, sweep: { ...brief.sweep, materials: [material] } };
  steps.chapter("Margins");
  materialMargins(steps, worked);
  for (const { name, bounds, reported } of limitsFor(requirements)) {
    if (!reported) continue;
    for (const bound of bounds) {
      const number = marginCount(steps) + 1;
      const { text, from } = thresholdSource(ofMaterial, requirements, name, bound, bound.terms(candidate).limitValue);
      const { value, bound: boundTerm } = judgedBy(steps, worked, name, bound, from === "brief" ? `brief: ${text}` : text);
      marginStep(steps, number, name, expressionOf(bound, candidate, value, boundTerm), bound.shownMargin(candidate));
    }
  }
  for (const name of ["rate", "clash"] as const) {
    if (design.margins[name] === 0 && !limitsFor(requirements).some((limit) => limit.name === name)) {
      steps.note(`The ${limitWords[name].label} is met by construction.`);
    }
  }
}

/** A safety is the bound of its stress over that stress, over the safety asked. */
function expressionOf(bound: Bound, candidate: Candidate, value: string, boundTerm: string): string {
  const { sense, senseInBrief } = bound;
  if (senseInBrief !== sense) return bound.value(candidate) > 0 ? `min(1, ${boundTerm} / ${value} - 1)` : "1";
  return `min(1, ${sense === "most" ? `1 - ${value} / ${boundTerm}` : `${value} / ${boundTerm} - 1`})`;
}

function materialMargins(steps: Steps, { material, brief, design, requirements }: WorkedSpring): void {
  const { min, max } = madeSizes(material, brief.service.strength);
  steps.given(["dm1", "smallestMade", "smallest size that the strength holds for"], "length", min, material.source);
  steps.given(["dm2", "largestMade", "largest size that the strength holds for"], "length", max, material.source);
  const wire = Math.min(1, design.wireDiameter / min - 1, 1 - design.wireDiameter / max);
  marginStep(steps, 1, "wire", "min(1, d / dm1 - 1, 1 - d / dm2)", wire);
  if (requirements.temperature === null) return;
  const hottest = ["tmax", "highestTemperature", "highest temperature of the material"] as const;
  steps.given(hottest, "temperature", material.temperature.max, material.source);
  const room = steps.units.length === "mm" ? 20 : 68;
  const expression = `min(1, 1 - (t - ${room}) / (tmax - ${room}))`;
  marginStep(steps, 2, "temperature", expression, temperatureMargin(material, requirements.temperature));
}

function marginStep(steps: Steps, number: number, limit: LimitName, expression: string, engine: number): void {
  steps.derived([`M${number}`, `marginOf${number}`, `margin: ${limitWords[limit].label}`], "number", expression, MARGIN, engine);
}

function marginCount(steps: Steps): number {
  return (steps.chapters.at(-1)?.steps ?? []).filter(({ symbol }) => /^M\d+$/.test(symbol)).length;
}

/** The symbols of a figure that a limit judges, and of the bound that it is held against. */
export interface Judged {
  readonly value: string;
  readonly bound: string;
}

/** Figures that are held against a bound as it stands: symbol, and name of the bound's cell. */
const PLAIN: Readonly<Partial<Record<LimitName, readonly [symbol: string, name: string]>>> = {
  turns: ["Na", "Turns"],
  solidLength: ["Ls", "SolidLength"],
  index: ["C", "Index"],
  outsideDiameter: ["De", "OutsideDiameter"],
  insideDiameter: ["Di", "InsideDiameter"],
  rate: ["k", "Rate"],
  freeLength: ["L0", "FreeLengthBound"],
  fatigue: ["nf", "FatigueSafety"],
};

/**
 * Puts in the bound of one side of a limit, and what it takes to judge by it.
 *
 * @param steps   with every figure of the spring
 * @param limit   its name
 * @param bound   the side
 * @param source  who set the bound
 */
function judgedBy(steps: Steps, worked: WorkedSpring, limit: LimitName, bound: Bound, source: string): Judged {
  const { candidate, requirements } = worked;
  const boundTerm = (value: string, name: string, dimension: Dimension): Judged => {
    const end = bound.sense === "most" ? "max" : "min";
    const symbol = `${value}${end}`;
    const words = `${limitWords[limit].label}, at ${bound.sense}`;
    steps.given([symbol, `${bound.sense}${name}Asked`, words], dimension, bound.boundValue(candidate), source);
    return { value, bound: symbol };
  };
  if (bound.figure === "outsideDiameterAtSolid") return { value: "Ds", bound: "Db" };
  if (
    limit === "insideDiameter" &&
    steps.has("Dr") &&
    bound.sense === "least" &&
    bound.boundValue(candidate) === requirements.rod
  ) {
    return { value: "Di", bound: "Dr" };
  }
  if (bound.figure === "stressAtGreatestLoad") return { value: "τw", bound: "τall" };
  if (bound.figure === "wireDiameter") return boundTerm("d", "FatigueWire", "length");
  switch (limit) {
    case "hotForce":
      return hotForce(steps, worked, bound, source);
    case "clash":
      return clash(steps, worked);
    case "workingStress":
      return stress(steps, worked, "workingStress", source);
    case "solidStress":
      return stress(steps, worked, "solidStress", source);
    case "buckling":
      steps.given(
        ["nb", "bucklingSafetyAsked", "safety against buckling, at least"],
        "number",
        requirements.bucklingSafety as number,
        source,
      );
      steps.derived(
        ["ybmin", "leastBucklingDeflection", "deflection that it must not buckle up to"],
        "length",
        "nb * y",
        "safety asked",
        bound.boundValue(candidate),
      );
      return { value: "yb", bound: "ybmin" };
    case "surge":
      return surge(steps, worked, source, bound.boundValue(candidate));
    case "loadTolerance":
      return loadTolerance(steps, worked, bound.value(candidate));
    default: {
      const [symbol, name] = PLAIN[limit] as readonly [string, string];
      return boundTerm(symbol, name, bound.dimension);
    }
  }
}

/** Without an allowance the length at work is held against the solid length itself. */
function clash(steps: Steps, { candidate }: WorkedSpring): Judged {
  if (candidate.clashAllowance !== 0) return { value: "r", bound: "Sa" };
  steps.derived(["Lc", "lengthAtWork", "length at the largest working deflection"], "length", "Ls + r", "geometry");
  return { value: "Lc", bound: "Ls" };
}

/** The force at temperature that is nearest to the end of its window, or furthest beyond it. */
function hotForce(steps: Steps, { requirements, candidate, design }: WorkedSpring, bound: Bound, source: string): Judged {
  const boundTerm = bound.boundValue(candidate);
  const force = bound.value(candidate);
  const apart = (n: number) => Math.abs((design.hot?.forces[n] ?? design.points[n]?.force ?? 0) - force);
  const points = requirements.windowsAtTemperature
    .filter(({ min, max }) => (bound.sense === "least" ? min : max) === boundTerm)
    .map((window) => ("deflection" in window ? 0 : design.points.findIndex(({ length }) => length === window.length)));
  const point = points.reduce((a, b) => (apart(b) < apart(a) ? b : a)) + 1;
  const end = bound.sense === "most" ? "max" : "min";
  const symbol = `H${end}`;
  const words = `force at temperature, point ${point}, at ${bound.sense}`;
  steps.given([symbol, `${bound.sense}HotForce`, words], "force", boundTerm, source);
  return { value: steps.has(`Fh${point}`) ? `Fh${point}` : `F${point}`, bound: symbol };
}

function stress(
  steps: Steps,
  { requirements, candidate }: WorkedSpring,
  limit: "workingStress" | "solidStress",
  source: string,
): Judged {
  const asked = requirements[limit];
  if (asked === null) throw new Error(`${limit} is not asked`);
  const [value, name] = limit === "solidStress" ? ["τs", "Solid"] : ["τj", "Working"];
  if (limit === "workingStress") {
    const equation = stressEquation("Fw", requirements.workingFactor);
    const engine = candidate.stress(candidate.workingForce, requirements.workingFactor);
    steps.derived(
      ["τj", "judgedWorkingStress", "working stress by the factor of its limit"],
      "stress",
      equation,
      STRESS_SOURCE,
      engine,
    );
  }
  const boundTerm = `${value}max`;
  if ("max" in asked)
    steps.given([boundTerm, `most${name}Stress`, `${limitWords[limit].label}, at most`], "stress", asked.max, source);
  else {
    const safety = limit === "solidStress" ? "nsmin" : "nwmin";
    steps.given([safety, `least${name}Safety`, `safety of ${limitWords[limit].label}, at least`], "number", asked.safety, source);
    const called = [boundTerm, `most${name}Stress`, `${limitWords[limit].label}, at most`] as const;
    steps.derived(
      called,
      "stress",
      `τall / ${safety}`,
      "allowable over the safety asked",
      candidate.allowableStress / asked.safety,
    );
  }
  return { value: value as string, bound: boundTerm };
}

function surge(steps: Steps, { brief }: WorkedSpring, source: string, engine: number): Judged {
  const { limits, service } = brief;
  if (limits.surge === "off" || service.frequency === undefined) throw new Error("surge is not asked");
  steps.given(
    ["fo", "workFrequency", "frequency of work"],
    "frequency",
    service.frequency,
    briefSource(brief, "service.frequency"),
  );
  steps.given(["nm", "surgeMultiple", "multiple of it, at least"], "number", limits.surge.multiple, source);
  steps.derived(["fmin", "leastFrequency", "natural frequency, at least"], "frequency", "nm * fo", "multiple asked", engine);
  return { value: "fn", bound: "fmin" };
}

/** How far each force is off the middle of its window, and the grade's deviation, over half the window; the worst one counts. */
function loadTolerance(steps: Steps, { requirements, design }: WorkedSpring, engine: number): Judged {
  const one = "whole window";
  const worst = ["ψ", "worstLoadShare", "share of the window that the worst point needs"] as const;
  const shares = requirements.loadWindows.map((window, i) => {
    const point = "deflection" in window ? 0 : design.points.findIndex(({ length }) => length === window.length);
    const n = point + 1;
    if (!steps.has(`tF${n}`)) return null;
    steps.given([`Wlo${n}`, `windowLeast${n}`, `least force of the window, ${window.name}`], "force", window.min, "brief, load");
    steps.given(
      [`Whi${n}`, `windowGreatest${n}`, `greatest force of the window, ${window.name}`],
      "force",
      window.max,
      "brief, load",
    );
    const expression = `(abs(F${n} - (Whi${n} + Wlo${n}) / 2) + tF${n}) / ((Whi${n} - Wlo${n}) / 2)`;
    const called = [`ψ${i + 1}`, `loadShare${i + 1}`, `share of its window that ${window.name} needs`] as const;
    steps.derived(called, "number", expression, "off the middle and deviation, over half the window");
    return `ψ${i + 1}`;
  });
  const known = shares.filter((symbol) => symbol !== null);
  if (known.length < shares.length || known.length === 0) {
    const label = shares.length === 0 ? "no force has a window" : "a point is beyond the practice's tables, so the limit says no";
    steps.given(worst, "number", engine, label);
  } else {
    const expression = known.length === 1 ? (known[0] as string) : `max(${known.join(", ")})`;
    steps.derived(worst, "number", expression, "the worst of the points", engine);
  }
  steps.given(["ψmax", "mostLoadShare", "share of the window, at most"], "number", 1, one);
  return { value: "ψ", bound: "ψmax" };
}
