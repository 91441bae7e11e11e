import type { Asks } from "../constrain/asks.ts";
import type { Candidate } from "../constrain/candidate.ts";
import { type Limit, limitsFor } from "../constrain/limits.ts";
import type { LoadWindow } from "../constrain/load.ts";
import { PASSES } from "../constrain/side.ts";
import type { Brief, DesignPoint, LimitName, Load } from "../model.ts";

/** Rules by which a design is chosen, and the combined figure of what scatter works out from dimensions: no made spring breaks them. */
const RULES_OF_DESIGN: readonly LimitName[] = ["turns", "index", "loadTolerance"];

/** The limits that a drawn spring is held to, in the order in which it falls. */
export function limitsOfMade({ load }: Brief, asks: Asks): Limit[] {
  const limits = limitsFor(asks).filter(({ name }) => !RULES_OF_DESIGN.includes(name));
  return hasRateWindow(load) ? limits : limits.filter(({ name }) => name !== "rate");
}

/** A rate that only follows from forces is held by their windows, and one that is asked exactly holds no made spring. */
function hasRateWindow(load: Load): boolean {
  return "rate" in load && load.rate.min !== load.rate.max;
}

/** The window of a load point; undefined where its force is asked exactly, or not at all. */
export function windowAt({ name, length }: DesignPoint, { loadWindows }: Asks): LoadWindow | undefined {
  return loadWindows.find((window) => window.name === name && ("deflection" in window || window.length === length));
}

/** Below zero where a force lies below a window, above zero where it lies above; with the slack that every limit has. */
export function sideOf(force: number, { min, max }: LoadWindow): -1 | 0 | 1 {
  if (force < min * (1 + PASSES)) return -1;
  return force > max * (1 - PASSES) ? 1 : 0;
}

/** The first limit that a drawn spring breaks; undefined where it meets all. */
export function firstBroken(limits: readonly Limit[], candidate: Candidate): LimitName | undefined {
  return limits.find((limit) => !limit.passes(candidate))?.name;
}
