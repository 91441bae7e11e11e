import { springRate } from "../../mechanics/rate.ts";
import type { EndStyle, Material, PointTolerance, ToleranceFigures, ToleranceGrade } from "../../model.ts";
import type { TolerancedSpring } from "../../practice/choices.ts";
import type { LoadWindow } from "../requirements/load.ts";
import type { Requirements } from "../requirements/requirements.ts";
import { wireTolerance } from "./wire-properties.ts";

/** What the tolerances of a candidate depend on; SI. */
interface Toleranced extends Omit<TolerancedSpring, "ends"> {
  readonly requirements: Requirements;
  readonly ends: EndStyle | null;
  readonly insideDiameter: number;
  readonly outsideDiameterAtSolid: number;
  readonly shearModulus: number;
  /** Plus-minus on the wire diameter; NaN where neither the material nor the practice has it. */
  readonly wireDeviation: number;
}

/** Stands for a deviation that no table gives: twice the window, so that the limit says no. */
const NOT_KNOWN = 2;

/** A share of a window that still holds. */
const HOLDS = 1 + 1e-9;

/**
 * How much of the load windows a maker of a grade needs at worst: for each window, how far the force is off its middle and the
 * grade's deviation, over half the window.
 *
 * @param candidate  placed
 * @param grade      of the practice
 * @returns pure number, at most 1 where every window holds; 2 where the practice's tables do not reach; 0 without windows
 */
export function worstWindowFraction(candidate: Toleranced, grade: ToleranceGrade): number {
  let worst = 0;
  for (const window of candidate.requirements.loadWindows)
    worst = Math.max(worst, windowFraction(candidate, grade, window) ?? NOT_KNOWN);
  return worst;
}

/** The same for one window; null where the practice's tables do not reach. */
function windowFraction(candidate: Toleranced, grade: ToleranceGrade, window: LoadWindow): number | null {
  const deflection = deflectionAt(candidate, window);
  const force = candidate.rate * deflection;
  const deviation = candidate.requirements.practice.tolerance.force(grade, tolerancedOf(candidate), force, deflection);
  if (deviation === null) return null;
  return (Math.abs(force - (window.max + window.min) / 2) + deviation) / ((window.max - window.min) / 2);
}

/**
 * What the maker of a spring may miss by, at the grade asked or the practice's usual one.
 *
 * @param candidate  placed
 * @param material   of its wire
 * @param points     the load points, each with its deflection, m
 * @returns plus-minus figures and worst cases, null where the tables do not reach; does not throw
 */
export function toleranceFigures(
  candidate: Toleranced,
  material: Material,
  points: readonly { readonly name: string; readonly deflection: number; readonly force: number }[],
): ToleranceFigures {
  const { requirements } = candidate;
  const { tolerance } = requirements.practice;
  const grade = requirements.loadTolerance ?? tolerance.usual;
  const spring = tolerancedOf(candidate);
  const { wireDiameter, coilDiameter, freeLength } = dimensionTolerances(candidate, grade);
  return {
    grade,
    wireDiameter,
    wireSource: wireSource(candidate, material),
    coilDiameter,
    freeLength,
    points: points.map(({ name, deflection, force }): PointTolerance => {
      const corner = (sign: -1 | 1) => worstForce(candidate, deflection, sign, { wireDiameter, coilDiameter, freeLength });
      return { name, force: tolerance.force(grade, spring, force, deflection), leastForce: corner(-1), greatestForce: corner(1) };
    }),
    ...(requirements.loadWindows.length > 0 ? { coarsestGrade: coarsestGrade(candidate) } : {}),
    ...(requirements.bore < Number.POSITIVE_INFINITY
      ? { boreRoom: coilDiameter === null ? null : requirements.bore - candidate.outsideDiameterAtSolid - coilDiameter }
      : {}),
    ...(requirements.rod > 0
      ? { rodRoom: coilDiameter === null ? null : candidate.insideDiameter - coilDiameter - requirements.rod }
      : {}),
  };
}

/**
 * What the dimensions of a spring may miss by.
 *
 * @param candidate  placed
 * @param grade      of the practice
 * @returns plus-minus, m; null where neither the material nor the practice's tables have it
 */
export function dimensionTolerances(
  candidate: Toleranced,
  grade: ToleranceGrade,
): Pick<ToleranceFigures, "wireDiameter" | "coilDiameter" | "freeLength"> {
  const { tolerance } = candidate.requirements.practice;
  const spring = tolerancedOf(candidate);
  return {
    wireDiameter: Number.isNaN(candidate.wireDeviation) ? null : candidate.wireDeviation,
    coilDiameter: tolerance.coilDiameter(grade, spring),
    freeLength: tolerance.freeLength(grade, spring),
  };
}

function coarsestGrade(candidate: Toleranced): ToleranceGrade | "notKnown" | null {
  const { requirements } = candidate;
  const { grades } = requirements.practice.tolerance;
  const holding = grades.findLast((grade) => worstWindowFraction(candidate, grade) <= HOLDS);
  if (holding !== undefined) return holding;
  // A window that even the finest grade breaks is broken, whatever is not known of the others.
  const [finest] = grades as readonly [ToleranceGrade];
  const fractions = requirements.loadWindows.map((window) => windowFraction(candidate, finest, window));
  return fractions.includes(null) && fractions.every((fraction) => fraction === null || fraction <= HOLDS) ? "notKnown" : null;
}

/**
 * The force at one length with every dimension and the modulus at the end that makes it least (-1) or greatest (+1); null where a
 * tolerance is not known, or is as large as its dimension.
 */
function worstForce(
  candidate: Toleranced,
  deflection: number,
  sign: -1 | 1,
  deviations: Pick<ToleranceFigures, "wireDiameter" | "coilDiameter" | "freeLength">,
): number | null {
  const { wireDiameter, coilDiameter, freeLength } = deviations;
  if (wireDiameter === null || coilDiameter === null || freeLength === null) return null;
  const { turns, shearModulus } = candidate.requirements.practice.tolerance;
  const wire = candidate.wireDiameter + sign * wireDiameter;
  const coil = candidate.meanDiameter - sign * coilDiameter;
  const active = candidate.activeTurns - sign * turns.value;
  // A deviation as large as what deviates leaves no spring to press.
  if (!(wire > 0 && coil > 0 && active > 0)) return null;
  const rate = springRate(candidate.shearModulus * (1 + sign * shearModulus.value), wire, coil, active);
  return Math.max(0, rate * (deflection + sign * freeLength));
}

/** Whose tolerance on the wire is used. */
function wireSource(candidate: Toleranced, material: Material): string | null {
  if (wireTolerance(material, candidate.wireDiameter) !== null) return material.source;
  return candidate.requirements.practice.wireDeviation?.source ?? null;
}

function tolerancedOf(candidate: Toleranced): TolerancedSpring {
  return candidate as Toleranced & TolerancedSpring;
}

function deflectionAt(candidate: Toleranced, window: LoadWindow): number {
  return "deflection" in window ? window.deflection : candidate.freeLength - window.length;
}
