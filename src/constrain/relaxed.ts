import type { LimitName, Span } from "../model.ts";
import type { Candidate } from "./candidate/candidate.ts";
import { clashRuleOf, scaledAllowance } from "./candidate/free-length.ts";
import { atLengths } from "./limits/bound.ts";
import { LIMIT_ORDER, type Limit, limitsFor, limitWithin } from "./limits/limits.ts";
import type { LoadWindow } from "./requirements/load.ts";
import { type Requirements, WOUND_INDEX } from "./requirements/requirements.ts";

/** Requirements and limits of a search in which some limits are relaxed. */
export interface Relaxed {
  readonly requirements: Requirements;
  readonly limits: readonly Limit[];
}

/** The fraction that removes a limit. */
export const REMOVED = Number.POSITIVE_INFINITY;

/**
 * Whether the shortest free length follows from a limit, so that what it costs shows only in springs that are shorter: a clash
 * allowance under a load at a deflection or to a force, a least free length, forces at temperature.
 */
export function isConstructed(requirements: Requirements, name: LimitName): boolean {
  if (name === "clash") return clashRuleOf(requirements.clash).amount > 0 && !atLengths(requirements);
  if (name === "hotForce") return requirements.windowsAtTemperature.length > 0 && atLengths(requirements);
  return name === "freeLength" && requirements.freeLength.min > 0;
}

/**
 * The limits of a brief that may give by a share, in the order of the limits: all that it asks but an allowance of
 * nothing.
 */
export function relaxableLimits(requirements: Requirements): LimitName[] {
  const asked = limitsFor(requirements).filter(({ name, reported }) => reported && name !== "clash");
  const names = new Set(asked.map(({ name }) => name));
  if (clashRuleOf(requirements.clash).amount > 0) names.add("clash");
  return LIMIT_ORDER.filter((name) => names.has(name));
}

/**
 * The requirements of a brief with every bound of one limit moved outward by a fraction of itself.
 *
 * Where the limit only judges, its margin passes from minus the share. Where the shortest free length follows from the limit, or
 * springs are counted by it, they are by the relaxed one. The index stays between 2 and 25, and no spring is solid in work.
 *
 * @param requirements  what the brief asks
 * @param name          a limit that it asks
 * @param fraction      of each bound; `GONE` leaves the limit out
 * @returns null where it cannot be relaxed so: the wire, a temperature by a share, the rate and counted turns altogether
 */
export function relaxed(requirements: Requirements, name: LimitName, fraction: number): Relaxed | null {
  const isRemoved = fraction === REMOVED;
  const made = (changed: Partial<Requirements>): Relaxed => {
    const lifted = isRemoved ? new Set([...requirements.lifted, name]) : requirements.lifted;
    const changedRequirements = { ...requirements, ...changed, lifted };
    return { requirements: changedRequirements, limits: limitsFor(changedRequirements) };
  };
  switch (name) {
    case "wire":
      return null;
    case "temperature":
      return isRemoved ? made({ temperature: null }) : null;
    case "index":
      return made({ index: wound(widened(requirements.index, fraction)) });
    case "clash":
      return made({ clash: isRemoved || requirements.clash === null ? null : scaledAllowance(requirements.clash, 1 - fraction) });
    case "rate":
      if (isRemoved) return null;
      break;
    case "freeLength":
      if (isConstructed(requirements, name)) return made({ freeLength: widened(requirements.freeLength, fraction) });
      break;
    case "hotForce":
      if (isConstructed(requirements, name))
        return made({ windowsAtTemperature: isRemoved ? [] : requirements.windowsAtTemperature.map(widenedBy(fraction)) });
      break;
    case "turns":
      if (!requirements.turnsAny) return isRemoved ? null : made({ turns: widened(requirements.turns, fraction) });
  }
  const limits = limitsFor(requirements);
  return {
    requirements,
    limits: isRemoved
      ? limits.filter((limit) => limit.name !== name)
      : limits.map((limit) => (limit.name === name ? limit.relaxedBy(fraction) : limit)),
  };
}

function widened({ min, max }: Span, fraction: number): Span {
  return fraction === REMOVED ? { min: 0, max: REMOVED } : { min: Math.max(0, min * (1 - fraction)), max: max * (1 + fraction) };
}

/** A window with both its ends moved outwards. */
const widenedBy =
  (fraction: number) =>
  (window: LoadWindow): LoadWindow => ({ ...window, ...widened(window, fraction) });

function wound({ min, max }: Span): Span {
  return { min: Math.max(min, WOUND_INDEX.min), max: Math.min(max, WOUND_INDEX.max) };
}

/** Requirements and limits of a search for the least relaxation of some limits. */
export interface Relaxable extends Relaxed {
  /** Those limits, which are among the others: they give by any share until the search lowers it. */
  readonly relaxable: readonly Limit[];
}

/**
 * What a brief asks with some limits free to give by any share: the clash allowance down to nothing, the index between 2 and 25,
 * counted turns up to twice as many. The monotonicity that rest on the clash allowance are not claimed where that may give.
 *
 * @param requirements  what the brief asks
 * @param names         limits that it asks, none of them constructed
 */
export function withRelaxable(requirements: Requirements, names: readonly LimitName[]): Relaxable {
  const counted = names.includes("turns") && !requirements.turnsAny;
  const open: Requirements = {
    ...requirements,
    turns: counted ? { min: 0, max: 2 * requirements.turns.max } : requirements.turns,
    lifted: names.includes("clash") ? new Set([...requirements.lifted, "clash"]) : requirements.lifted,
  };
  const limits = limitsFor(open).map((limit) => {
    if (!names.includes(limit.name)) return limit;
    const judging = counted && limit.name === "turns" ? limitWithin("turns", open, requirements.turns) : limit;
    return judging.relaxedBy(limit.name === "clash" ? 1 : REMOVED);
  });
  const bounds = names.includes("index") ? [limitWithin("index", requirements, WOUND_INDEX)] : [];
  return { requirements: open, limits: [...limits, ...bounds], relaxable: limits.filter(({ name }) => names.includes(name)) };
}

/** The largest violation of some limits by a candidate, as a fraction of the bound; 0 where it passes them. */
export function violationOf(limits: readonly Limit[], candidate: Candidate): number {
  let violation = 0;
  for (const limit of limits) violation = Math.max(violation, -limit.margin(candidate));
  return violation;
}
