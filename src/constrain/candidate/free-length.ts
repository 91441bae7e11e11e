import { minimumGap } from "../../mechanics/ends.ts";
import { wireLength } from "../../mechanics/mass.ts";
import type { ClashAllowance, EndStyle } from "../../model.ts";
import type { FreeLengthRule } from "../requirements/load.ts";
import type { Requirements } from "../requirements/requirements.ts";

/** What is made to stand on a bound stands this share beyond it, so that no rounding takes it to the other side. */
const BEYOND = 1 + 1e-12;

/** What the free length of a spring depends on; SI. */
interface Wound {
  readonly requirements: Requirements;
  readonly ends: EndStyle | null;
  readonly wireDiameter: number;
  readonly meanDiameter: number;
  readonly activeTurns: number;
  readonly totalTurns: number;
  readonly solidLength: number;
  readonly rate: number;
  /** Shear modulus at the service temperature over that at room temperature, pure number. */
  readonly modulusRatio: number;
  /** Of a load at a deflection or to a force. */
  readonly workingDeflection: number;
  readonly clashAllowance: number;
}

/**
 * The shortest free length that the load, the brief's window, forces at temperature and closed coils leave. Each other limit passes
 * there if it passes at any free length, but for the load tolerance.
 *
 * @param spring  wound to a mean diameter
 * @returns m; where these ask more than the load points allow, the longest that the points do, so that a limit says by how much
 */
export function shortestFreeLength(spring: Wound): number {
  const { requirements, rate } = spring;
  const rule = requirements.freeLengthRule;
  const least = requirements.coilsMayOverlap
    ? Math.max(requirements.freeLength.min, closedLength(spring))
    : requirements.freeLength.min;
  if (rule.kind !== "points") return Math.max(least, spring.solidLength + spring.workingDeflection + spring.clashAllowance);
  const asked = Math.max(least, shortestAtTemperature(requirements, spring.modulusRatio * rate));
  return Math.max(longestOf(rule, rule.low, rate), Math.min(asked, shortestOf(rule, rule.high, rate)));
}

/** The shortest free length at which each force window at a length holds with the rate at temperature, m. */
function shortestAtTemperature({ windowsAtTemperature }: Requirements, rateAtTemperature: number): number {
  let shortest = 0;
  for (const window of windowsAtTemperature) {
    if ("length" in window) shortest = Math.max(shortest, window.length + (BEYOND * window.min) / rateAtTemperature);
  }
  return shortest;
}

/** The longest free length that load points allow, or that the wire has drawn straight, m. */
export function longestFreeLength({ requirements: { freeLengthRule: rule }, meanDiameter, totalTurns, rate }: Wound): number {
  const straight = wireLength(meanDiameter, totalTurns);
  return rule.kind === "points" ? Math.min(straight, shortestOf(rule, rule.high, rate)) : straight;
}

/** The free length at which the coils touch, m. */
function closedLength({ ends, wireDiameter, activeTurns }: Wound): number {
  const { pitchTurns, pitchWires } = ends as EndStyle;
  return BEYOND * wireDiameter * (activeTurns + pitchTurns + pitchWires);
}

type LoadPoints = Extract<FreeLengthRule, { readonly kind: "points" }>;

/** The longest of the free lengths at which each point has its force, m. */
function longestOf({ lengths }: LoadPoints, forces: readonly number[], rate: number): number {
  let longest = 0;
  for (let i = 0; i < lengths.length; i++) longest = Math.max(longest, (lengths[i] as number) + (forces[i] as number) / rate);
  return longest;
}

/** The shortest of them, m. */
function shortestOf({ lengths }: LoadPoints, forces: readonly number[], rate: number): number {
  let shortest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < lengths.length; i++) shortest = Math.min(shortest, (lengths[i] as number) + (forces[i] as number) / rate);
  return shortest;
}

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
