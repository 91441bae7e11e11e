import type { Candidate } from "../../constrain/candidate/candidate.ts";
import { candidateAt } from "../../constrain/design.ts";
import { type Requirements, resolveRequirements } from "../../constrain/requirements/requirements.ts";
import type { Brief, CheckBrief, Choice, Design, EndStyle, GivenDesign, Material, StressFactorName, Wire } from "../../model.ts";
import type { Steps } from "./steps.ts";

/** The spring that a sheet works through, with all that its figures come from. */
export interface WorkedSpring {
  readonly brief: Brief;
  readonly design: Design;
  readonly requirements: Requirements;
  readonly candidate: Candidate;
  readonly material: Material;
  readonly wire: Wire;
  readonly ends: EndStyle;
  /** The data of a given spring; undefined for one that the walk made. */
  readonly given: GivenDesign | undefined;
}

/**
 * Find a design's wire, material and ends again, and set the record that the engine's figures are read from to it.
 *
 * @param brief   the brief that it answers, or that judges it
 * @param design  a design of that brief
 * @throws Error where the design is none of the brief's
 */
export function workedSpringOf(brief: Brief | CheckBrief, design: Design): WorkedSpring {
  const { sweep } = brief;
  const given = "design" in brief ? brief.design : undefined;
  const material = sweep.materials.findIndex(({ name }) => name === design.material);
  const ends = sweep.ends.findIndex(({ name }) => name === design.ends);
  const wire =
    given?.wire ??
    sweep.wires.flatMap(({ wires }) => wires).find(({ series, label }) => series === design.series && label === design.wire);
  if (material < 0 || ends < 0 || wire === undefined) throw new Error("the design is not of this brief");
  const requirements = resolveRequirements(brief, given !== undefined);
  const choice: Choice = {
    material,
    wire,
    ends,
    totalTurns: design.totalTurns,
    meanDiameter: design.meanDiameter,
    freeLength: design.freeLength,
  };
  return {
    brief,
    design,
    requirements,
    candidate: candidateAt(brief, requirements, choice),
    material: sweep.materials[material] as Material,
    wire,
    ends: sweep.ends[ends] as EndStyle,
    given,
  };
}

/**
 * Where a figure of the brief stands, or who stood in for it.
 *
 * @param brief  a resolved brief
 * @param key    key of the figure, or of the section that holds it
 */
export function briefSource({ asked, defaults }: Brief, key: string): string {
  const matches = (one: { readonly key: string }) => one.key.startsWith(key);
  if (asked.some(matches)) return `brief, ${key}`;
  return defaults.find(matches)?.source ?? `brief, ${key}`;
}

/** A stress factor as an equation; none for the uncorrected stress. */
interface FactorEquation {
  readonly called: readonly [string, string, string];
  readonly expression: string;
  readonly source: string;
}

const FACTORS: Readonly<Record<StressFactorName, FactorEquation | null>> = {
  none: null,
  direct: {
    called: ["Ks", "directShearFactor", "direct-shear factor"],
    expression: "(2 * C + 1) / (2 * C)",
    source: "Shigley eq. 10-3",
  },
  bergstrasser: {
    called: ["KB", "bergstrasserFactor", "Bergsträsser factor"],
    expression: "(4 * C + 2) / (4 * C - 3)",
    source: "Shigley eq. 10-5; EN 13906-1 clause 7",
  },
  wahl: {
    called: ["Kw", "wahlFactor", "Wahl factor"],
    expression: "(4 * C - 1) / (4 * C - 4) + 0.615 / C",
    source: "Shigley eq. 10-4",
  },
};

/** The factors that this brief's stresses take, each once. */
export function factorSteps(steps: Steps, { candidate, requirements }: WorkedSpring): void {
  const names = new Set<StressFactorName>([requirements.stressFactor, requirements.pointFactor]);
  if (requirements.workingStress !== null) names.add(requirements.workingFactor);
  if (requirements.fatigue !== null) names.add(requirements.fatigue.factor);
  for (const name of names) {
    const factor = FACTORS[name];
    if (factor !== null) steps.derived(factor.called, "number", factor.expression, factor.source, candidate.stressFactor(name));
    else steps.note(`Stress without a factor: ${requirements.practice.stressFactor.asWound.source}.`);
  }
}

/** The equation of shear stress under a force, by its symbol. */
export function stressEquation(force: string, factor: StressFactorName): string {
  const symbol = FACTORS[factor]?.called[0];
  return `${symbol === undefined ? "" : `${symbol} * `}8 * ${force} * D / (pi * d^3)`;
}

/** Where the equation of shear stress stands. */
export const STRESS_SOURCE = "Shigley eq. 10-7; EN 13906-1";
