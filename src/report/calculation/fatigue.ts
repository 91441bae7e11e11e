import type { FatigueRequirement } from "../../constrain/requirements/requirements.ts";
import type { FatigueLine, MaterialClass } from "../../model.ts";
import { joined, lengthSymbols } from "./lengths.ts";
import type { Steps } from "./steps.ts";
import { briefSource, STRESS_SOURCE, stressEquation, type WorkedSpring } from "./worked-spring.ts";

/** Cyclic duty: the stresses between the least and the greatest load, and the safety by the line or diagram asked. */
export function fatigueSteps(steps: Steps, worked: WorkedSpring): void {
  const { design, requirements } = worked;
  const { cyclic } = design;
  if (cyclic === null) return;
  steps.chapter("Cyclic duty");
  leastForce(steps, worked, cyclic.leastForce);
  const lower = stressEquation("Fl", requirements.pointFactor);
  const upper = stressEquation("Fw", requirements.pointFactor);
  steps.derived(["τl", "lowerStress", "lower stress"], "stress", lower, STRESS_SOURCE);
  steps.derived(["τu", "upperStress", "upper stress"], "stress", upper, STRESS_SOURCE);
  steps.derived(["τa", "stressAmplitude", "amplitude"], "stress", "(τu - τl) / 2", "half the range", cyclic.stressAmplitude);
  steps.derived(["τm", "meanStress", "mean stress"], "stress", "(τu + τl) / 2", "middle of the range", cyclic.meanStress);
  if (requirements.fatigue === null) {
    steps.note("Fatigue was not judged.");
    return;
  }
  if (requirements.fatigue.kind === "endured") byLine(steps, worked, requirements.fatigue);
  else if (requirements.fatigue.kind === "life") byLife(steps, worked);
  else byDiagram(steps, worked);
}

function leastForce(steps: Steps, { requirements, brief }: WorkedSpring, engine: number): void {
  const called = ["Fl", "leastForce", "least force of the duty"] as const;
  if (Number.isNaN(requirements.longestLength)) {
    steps.given(called, "force", 0, "the load goes back to nothing");
    return;
  }
  const longest = joined("max", lengthSymbols({ brief }));
  steps.derived(
    ["Lmax", "longestLength", "longest length asked"],
    "length",
    longest,
    "the load points",
    requirements.longestLength,
  );
  steps.derived(called, "force", "max(0, k * (L0 - Lmax))", "rate", engine);
}

const LINES: Readonly<
  Record<Exclude<FatigueLine, "life">, { readonly endurance: string | null; readonly safety: string; readonly source: string }>
> = {
  goodman: {
    endurance: "Ssa / (1 - Ssm / Ssu)",
    safety: "1 / (τa / Sse + τm / Ssu)",
    source: "Goodman line, Shigley section 10-9 and Table 6-6",
  },
  gerber: {
    endurance: "Ssa / (1 - (Ssm / Ssu)^2)",
    safety: "1 / 2 * (Ssu / τm)^2 * τa / Sse * (sqrt(1 + (2 * τm * Sse / (Ssu * τa))^2) - 1)",
    source: "Gerber parabola, Shigley section 10-9 and Table 6-7",
  },
  sines: { endurance: null, safety: "Ssa / τa", source: "Sines, as quoted in Shigley section 10-9" },
};

function byLine(
  steps: Steps,
  { requirements, brief, design }: WorkedSpring,
  ask: FatigueRequirement & { readonly kind: "endured" },
): void {
  const { fatigue } = requirements.practice;
  if (fatigue.kind !== "endured") return;
  const { endurance, safety, source } = LINES[ask.line];
  const endured = `${fatigue.strengths.source}; ${brief.service.surface}`;
  steps.given(["Ssa", "enduredAmplitude", "amplitude that springs endured"], "stress", ask.amplitude, endured);
  if (endurance !== null) {
    steps.given(["Ssm", "enduredMean", "mean stress at which they did"], "stress", ask.mean, endured);
    steps.given(
      ["h", "ultimateShearShare", "shear strength over tensile strength"],
      "number",
      ask.ultimateShear,
      fatigue.ultimateShear.source,
    );
    steps.derived(["Ssu", "ultimateShear", "shear strength"], "stress", "h * Rm", fatigue.ultimateShear.source);
    steps.derived(["Sse", "endurance", "endurance with no mean stress"], "stress", endurance, source);
  }
  steps.derived(["nf", "fatigueSafety", "fatigue safety"], "number", safety, source, design.fatigueSafety as number);
}

/** The share of strength endured for the cycles asked, between two published lives, and the Goodman line through it. */
function byLife(steps: Steps, { requirements, brief, design, material }: WorkedSpring): void {
  const { fatigue } = requirements.practice;
  if (fatigue.kind !== "endured") return;
  const { cycles: lives, shares } = fatigue.life.value;
  const { source } = fatigue.life;
  const endured = shares[material.class as MaterialClass][brief.service.surface];
  const cycles = brief.service.cycles as number;
  const found = lives.findIndex((life) => life >= cycles);
  const above = found < 0 ? lives.length - 1 : Math.max(1, found);
  const { surface } = brief.service;
  steps.given(["N", "cycles", "cycles asked"], "number", cycles, briefSource(brief, "service.cycles"));
  steps.given(["N1", "lifeBefore", "published life before"], "number", lives[above - 1] as number, source);
  steps.given(
    ["B1", "shareBefore", `share of strength endured from nothing, ${surface}`],
    "number",
    endured[above - 1] as number,
    source,
  );
  steps.given(["N2", "lifeAfter", "published life after"], "number", lives[above] as number, source);
  steps.given(["B2", "shareAfter", "the same there"], "number", endured[above] as number, source);
  const expression = "B1 + (B2 - B1) * log(min(max(N, N1), N2) / N1) / log(N2 / N1)";
  steps.derived(
    ["B", "lifeShare", "share endured for the cycles asked"],
    "number",
    expression,
    "on the logarithm of cycles: common practice",
  );
  steps.given(
    ["h", "ultimateShearShare", "shear strength over tensile strength"],
    "number",
    fatigue.ultimateShear.value,
    fatigue.ultimateShear.source,
  );
  steps.derived(["Ssu", "ultimateShear", "shear strength"], "stress", "h * Rm", fatigue.ultimateShear.source);
  const half = "from nothing to the stress endured, amplitude and mean are each half of it";
  steps.derived(["Ssa", "enduredAmplitude", "amplitude endured, and mean"], "stress", "B * Rm / 2", half);
  const goodman = LINES.goodman;
  steps.derived(["Sse", "endurance", "endurance with no mean stress"], "stress", "Ssa / (1 - Ssa / Ssu)", goodman.source);
  steps.derived(
    ["nf", "fatigueSafety", "fatigue safety"],
    "number",
    goodman.safety,
    goodman.source,
    design.fatigueSafety as number,
  );
}

/** The two points of the material's diagram that enclose the lower stress; beyond its ends the diagram runs level. */
function byDiagram(steps: Steps, { candidate, material, design }: WorkedSpring): void {
  const source = material.fatigue?.source ?? material.source;
  const { diagramLowers: lowers, diagramUppers: uppers } = candidate;
  const called = ["τO", "allowedUpperStress", "upper stress that the diagram allows"] as const;
  const clause = "EN 13906-1 clause 10.3";
  if (lowers.length === 1) steps.given(called, "stress", uppers[0] as number, source);
  else {
    const heads = [
      ["lower stress", "stress"],
      ["upper stress", "stress"],
    ] as const;
    steps.table(
      "fatigueDiagram",
      heads,
      lowers.map((lower, i) => [lower, uppers[i] as number]),
    );
    const lower = candidate.stress(candidate.leastForce, candidate.requirements.pointFactor);
    const found = lowers.findIndex((point) => point >= lower);
    const above = found < 0 ? lowers.length - 1 : Math.max(1, found);
    const at = (column: number, row: "lower" | "upper") => ({ table: "fatigueDiagram", column, by: "τl", row }) as const;
    steps.given(
      ["x1", "diagramLower1", "lower stress of the point before"],
      "stress",
      lowers[above - 1] as number,
      source,
      at(0, "lower"),
    );
    steps.given(["y1", "diagramUpper1", "its upper stress"], "stress", uppers[above - 1] as number, source, at(1, "lower"));
    steps.given(
      ["x2", "diagramLower2", "lower stress of the point after"],
      "stress",
      lowers[above] as number,
      source,
      at(0, "upper"),
    );
    steps.given(["y2", "diagramUpper2", "its upper stress"], "stress", uppers[above] as number, source, at(1, "upper"));
    steps.derived(called, "stress", "y1 + (y2 - y1) * (min(max(τl, x1), x2) - x1) / (x2 - x1)", clause);
  }
  const engine = design.fatigueSafety as number;
  steps.derived(["nf", "fatigueSafety", "fatigue safety"], "number", "(τO - τl) / (τu - τl)", clause, engine);
}
