import { minimumGap } from "../mechanics/ends.ts";
import type { ClashAllowance } from "../model.ts";

/** A clash allowance in a form that costs nothing to tell apart. */
export interface ClashRule {
  readonly kind: "deflection" | "solid" | "length" | "gap";
  /** A share, a length in m, or a multiple of the gap. */
  readonly amount: number;
}

/** What the rules are applied to; SI. */
interface Sprung {
  readonly workingDeflection: number;
  readonly solidLength: number;
  readonly activeTurns: number;
  readonly meanDiameter: number;
  readonly wireDiameter: number;
}

/** The allowance of a brief as a rule; null: the brief lifts it, so nothing is left beyond not being solid. */
export function clashRuleOf(allowance: ClashAllowance | null): ClashRule {
  if (allowance === null) return { kind: "length", amount: 0 };
  if ("ofDeflection" in allowance) return { kind: "deflection", amount: allowance.ofDeflection };
  if ("ofSolidLength" in allowance) return { kind: "solid", amount: allowance.ofSolidLength };
  if ("length" in allowance) return { kind: "length", amount: allowance.length };
  return { kind: "gap", amount: allowance.minimumGap };
}

/** An allowance of the same kind, so many times as large. */
export function scaledAllowance(allowance: ClashAllowance, factor: number): ClashAllowance {
  if ("ofDeflection" in allowance) return { ofDeflection: factor * allowance.ofDeflection };
  if ("ofSolidLength" in allowance) return { ofSolidLength: factor * allowance.ofSolidLength };
  if ("length" in allowance) return { length: factor * allowance.length };
  return { minimumGap: factor * allowance.minimumGap };
}

/** Room that must be left before solid at the largest working deflection, m. */
export function clashAllowance(spring: Sprung, { kind, amount }: ClashRule): number {
  switch (kind) {
    case "deflection":
      return amount * spring.workingDeflection;
    case "solid":
      return amount * spring.solidLength;
    case "length":
      return amount;
    case "gap":
      return amount * minimumGap(spring.activeTurns, spring.meanDiameter, spring.wireDiameter);
  }
}
