import type { FreeLengthRule } from "../../constrain/requirements/load.ts";
import type { ClashAllowance } from "../../model.ts";
import type { Steps } from "./steps.ts";
import { briefSource, type WorkedSpring } from "./worked-spring.ts";

/** Largest working deflection, room before solid, free length by the rule of its load, pitch and angle. */
export function lengthSteps(steps: Steps, worked: WorkedSpring): void {
  const { candidate, given, requirements } = worked;
  steps.chapter("Free length and pitch");
  if (given?.freeLength !== undefined) {
    steps.given(["L0", "freeLength", "free length"], "length", given.freeLength, "brief, design.freeLength");
  } else if (requirements.freeLengthRule.kind === "points") {
    betweenPoints(steps, worked);
  }
  workingDeflection(steps, worked);
  allowance(steps, worked);
  if (!steps.has("L0")) shortestThatClears(steps, worked);
  steps.derived(["r", "clashRoom", "room left before solid"], "length", "L0 - y - Ls", "geometry", candidate.clashRoom);
  pitchSteps(steps, worked);
}

function workingDeflection(steps: Steps, { brief, candidate, requirements }: WorkedSpring): void {
  const { load } = brief;
  const called = ["y", "workingDeflection", "largest working deflection"] as const;
  switch (load.kind) {
    case "forceAtDeflection":
      steps.given(called, "length", load.deflection, briefSource(brief, "load.deflection"));
      return;
    case "rateAndLargestForce":
      steps.given(
        ["Fmax", "largestForce", "largest force in work"],
        "force",
        load.largestForce,
        briefSource(brief, "load.largestForce"),
      );
      steps.derived(called, "length", "Fmax / k", "rate", candidate.workingDeflection);
      return;
    default: {
      pointLengths(steps, { brief });
      const shortest = joined("min", lengthSymbols({ brief }));
      steps.derived(
        ["Lw", "shortestLength", "shortest length asked"],
        "length",
        shortest,
        "the load points",
        requirements.shortestLength,
      );
      steps.derived(called, "length", "max(0, L0 - Lw)", "geometry", candidate.workingDeflection);
      return;
    }
  }
}

/** Symbols of the lengths that the load asks. */
export function lengthSymbols({ brief: { load } }: Pick<WorkedSpring, "brief">): string[] {
  return load.kind === "points" ? load.points.map((_, i) => `L${i + 1}`) : ["L1"];
}

/** The lengths of load points as the brief asks them. */
function pointLengths(steps: Steps, { brief }: Pick<WorkedSpring, "brief">): void {
  const { load } = brief;
  const points = load.kind === "points" ? load.points : load.kind === "rateAndPoint" ? [load.point] : [];
  for (const [i, { name, length }] of points.entries()) {
    const source = briefSource(brief, `load.points[${i + 1}].length`);
    steps.given([`L${i + 1}`, `lengthAtPoint${i + 1}`, `length, ${name}`], "length", length, source);
  }
}

/** The free lengths that points leave, the shortest and longest of them that pass every limit, and the one that is reported. */
function betweenPoints(steps: Steps, worked: WorkedSpring): void {
  const { requirements, brief } = worked;
  const rule = requirements.freeLengthRule;
  if (rule.kind !== "points") return;
  pointLengths(steps, worked);
  for (const i of rule.lengths.keys()) {
    const source = briefSource(brief, `load.points[${i + 1}].force`);
    const [low, high] = [rule.low[i] as number, rule.high[i] as number];
    if (low === high) steps.given([`Fo${i + 1}`, `askedForce${i + 1}`, `force asked, point ${i + 1}`], "force", low, source);
    else {
      steps.given([`Flo${i + 1}`, `leastForce${i + 1}`, `least force, point ${i + 1}`], "force", low, source);
      steps.given([`Fhi${i + 1}`, `greatestForce${i + 1}`, `greatest force, point ${i + 1}`], "force", high, source);
    }
  }
  const bounds = (end: "lo" | "hi") =>
    [...rule.lengths.keys()].map((i) => `L${i + 1} + F${rule.low[i] === rule.high[i] ? "o" : end}${i + 1} / k`);
  const law = "every point within its force";
  steps.derived(["b1", "leastFreeLength", "least free length"], "length", joined("max", bounds("lo")), law);
  steps.derived(["b2", "greatestFreeLength", "greatest free length"], "length", joined("min", bounds("hi")), law);
  reported(steps, worked);
}

/**
 * The free length of the reported spring by the range in which every limit holds. Its ends are worked out where points or the
 * brief's window set them; where another limit does, they are figures found on the margin of that limit.
 */
function reported(steps: Steps, worked: WorkedSpring): void {
  const { design, requirements, brief, candidate } = worked;
  const called = ["L0", "freeLength", "free length"] as const;
  const { freeLengthRange: range, freeLength } = design;
  const { freeLengthAim: aim, freeLengthStep: step, freeLengthRule: rule } = requirements;
  if (range === null) {
    steps.given(called, "length", freeLength, "as reported: no free length passes every limit");
    return;
  }
  if (aim.kind === "nominal" && step === null && rule.kind === "points") {
    const point = rule.lengths.indexOf(aim.length) + 1;
    if (isSame(aim.length + aim.force / candidate.rate, freeLength)) {
      const source = briefSource(brief, `load.points[${point}].force`);
      steps.given(["Fn", "nominalForce", `nominal force, point ${point}`], "force", aim.force, source);
      steps.derived(called, "length", `L${point} + Fn / k`, "the nominal force at its length", freeLength);
      return;
    }
  }
  const lower = endOfRange(steps, worked, "least");
  const upper = endOfRange(steps, worked, "most");
  const words = { shortest: "the shortest that passes", middle: "the middle of what passes", nominal: "the nearest that passes" };
  if (step === null && isSame(range.min, freeLength)) {
    steps.derived(called, "length", lower, words.shortest, freeLength);
  } else if (step === null && isSame((range.min + range.max) / 2, freeLength)) {
    steps.derived(called, "length", `max(${lower}, (${lower} + ${upper}) / 2)`, words.middle, freeLength);
  } else {
    const source = step === null ? words[aim.kind] : "the multiple of sweep.freeLength.step nearest to the aim";
    steps.given(called, "length", freeLength, source);
  }
}

/** The symbol of one end of the range: of the points, of the brief's window, or of what a limit leaves. */
function endOfRange(steps: Steps, { design, requirements, brief, candidate }: WorkedSpring, side: "least" | "most"): string {
  const isLeast = side === "least";
  const rule = requirements.freeLengthRule as Extract<FreeLengthRule, { readonly kind: "points" }>;
  const end = (isLeast ? design.freeLengthRange?.min : design.freeLengthRange?.max) as number;
  const lengths = rule.lengths.map((length, i) => length + ((isLeast ? rule.low : rule.high)[i] as number) / candidate.rate);
  const ofPoints = isLeast ? "b1" : "b2";
  if (isSame(isLeast ? Math.max(...lengths) : Math.min(...lengths), end)) return ofPoints;
  if (isSame(isLeast ? requirements.freeLength.min : requirements.freeLength.max, end)) {
    const called = isLeast
      ? (["L0min", "freeLengthLeast", "least free length asked"] as const)
      : (["L0max", "freeLengthMost", "greatest free length asked"] as const);
    steps.given(called, "length", end, briefSource(brief, "envelope.freeLength"));
    return isLeast ? "max(b1, min(L0min, b2))" : "min(b2, L0max)";
  }
  const called = isLeast
    ? (["b3", "shortestThatPasses", "shortest that passes every limit"] as const)
    : (["b4", "longestThatPasses", "longest that passes every limit"] as const);
  steps.given(called, "length", end, "found on the margins of the limits below");
  return called[0];
}

/** Two lengths that differ by rounding only. */
function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) <= 1e-9 * b;
}

/** The largest or the smallest of several. */
export function joined(name: "max" | "min", bounds: readonly string[]): string {
  return bounds.length === 1 ? (bounds[0] as string) : `${name}(${bounds.join(", ")})`;
}

const GAP_SOURCE = "EN 13906-1 clause 9.9, from memory";

function allowance(steps: Steps, { requirements, candidate, brief }: WorkedSpring): void {
  const { clash } = requirements;
  const called = ["Sa", "clashAllowance", "room that must be left before solid"] as const;
  const source = briefSource(brief, "limits.clash");
  if (clash === null) {
    steps.given(called, "length", 0, "brief, limits.clash: off");
    return;
  }
  const factor = (label: string, value: number) => steps.given(["q", "clashShare", label], "number", value, source);
  if ("ofDeflection" in clash) factor("allowance as a share of the deflection", clash.ofDeflection);
  else if ("ofSolidLength" in clash) factor("allowance as a share of the solid length", clash.ofSolidLength);
  else if ("minimumGap" in clash) factor("factor on the minimum gap", clash.minimumGap);
  else {
    steps.given(called, "length", clash.length, source);
    return;
  }
  const isGap = "minimumGap" in clash;
  steps.derived(called, "length", allowanceEquation(clash), isGap ? GAP_SOURCE : source, candidate.clashAllowance);
}

function allowanceEquation(clash: ClashAllowance): string {
  if ("ofDeflection" in clash) return "q * y";
  return "ofSolidLength" in clash ? "q * Ls" : "q * Na * (0.0015 * D^2 / d + 0.1 * d)";
}

function shortestThatClears(steps: Steps, { requirements, brief, design }: WorkedSpring): void {
  const { min } = requirements.freeLength;
  const windowed = min > 0;
  if (windowed) {
    steps.given(
      ["L0min", "freeLengthLeast", "least free length asked"],
      "length",
      min,
      briefSource(brief, "envelope.freeLength"),
    );
  }
  const called = ["L0", "freeLength", "free length"] as const;
  if (requirements.freeLengthStep !== null || requirements.coilsMayOverlap) {
    steps.given(called, "length", design.freeLength, "the shortest that clears the allowance, as reported");
    return;
  }
  const expression = windowed ? "max(L0min, Ls + y + Sa)" : "Ls + y + Sa";
  steps.derived(called, "length", expression, "the shortest that clears the allowance", design.freeLength);
}

function pitchSteps(steps: Steps, { ends, design }: WorkedSpring): void {
  const table = "Shigley Table 10-1; Machinery's Handbook, 31st ed., springs, Table 3";
  steps.given(["pt", "pitchTurns", "turns beyond the active ones that take pitch"], "number", ends.pitchTurns, table);
  steps.given(["pw", "pitchWires", "wires in the free length that take none"], "number", ends.pitchWires, table);
  steps.derived(["p", "pitch", "pitch"], "length", "(L0 - pw * d) / (Na + pt)", table, design.pitch);
  steps.derived(
    ["α", "pitchAngle", "pitch angle"],
    "angle",
    "atan(p / (pi * D)) * 180 / pi",
    "geometry of the helix",
    design.pitchAngle,
  );
  steps.derived(["g", "coilGap", "gap between coils"], "length", "p - d", "geometry", design.coilGap);
}
