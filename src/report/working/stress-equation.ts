import type { StressFactorName } from "../../model.ts";
import type { Steps } from "./steps.ts";
import type { Subject } from "./subject.ts";

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
export function factorSteps(steps: Steps, { candidate, asks }: Subject): void {
  const names = new Set<StressFactorName>([asks.stressFactor, asks.pointFactor]);
  if (asks.workingStress !== null) names.add(asks.workingFactor);
  if (asks.fatigue !== null) names.add(asks.fatigue.factor);
  for (const name of names) {
    const factor = FACTORS[name];
    if (factor !== null) steps.derived(factor.called, "number", factor.expression, factor.source, candidate.stressFactor(name));
    else steps.note(`Stress without a factor: ${asks.practice.stressFactor.asWound.source}.`);
  }
}

/** The equation of shear stress under a force, by its symbol. */
export function stressEquation(force: string, factor: StressFactorName): string {
  const symbol = FACTORS[factor]?.called[0];
  return `${symbol === undefined ? "" : `${symbol} * `}8 * ${force} * D / (pi * d^3)`;
}

/** Where the equation of shear stress stands. */
export const STRESS_SOURCE = "Shigley eq. 10-7; EN 13906-1";
