import type { Candidate } from "../../src/constrain/candidate/candidate.ts";
import { Evaluator } from "../../src/constrain/evaluator.ts";
import { FreeLengthRange } from "../../src/constrain/free-length-range.ts";
import { limitsFor } from "../../src/constrain/limits/limits.ts";
import { REJECTION_ORDER } from "../../src/constrain/rejection-counts.ts";
import { resolveRequirements, WOUND_INDEX } from "../../src/constrain/requirements/requirements.ts";
import type { Brief, Choice, LimitName } from "../../src/model.ts";

export interface NaiveResult {
  readonly walked: number;
  readonly feasible: number;
  readonly rejected: Partial<Record<LimitName, number>>;
  readonly survivors: readonly {
    readonly choice: Choice;
    readonly mass: number;
    readonly outsideDiameter: number;
    readonly freeLength: number;
  }[];
}

/** The oracle: a plain visit to every candidate of a brief, each limit asked in turn, no bounds, no monotonicity, no cut. */
export function naiveSweep(brief: Brief, seen: (candidate: Candidate) => void = () => {}): NaiveResult {
  const requirements = resolveRequirements(brief);
  const limits = limitsFor(requirements);
  const rejected: Partial<Record<LimitName, number>> = {};
  const survivors: { choice: Choice; mass: number; outsideDiameter: number; freeLength: number }[] = [];
  let walked = 0;
  const count = (limit: LimitName) => {
    rejected[limit] = (rejected[limit] ?? 0) + 1;
  };
  for (const [material, entry] of brief.sweep.materials.entries()) {
    for (const wire of brief.sweep.wires.flatMap(({ wires }) => wires)) {
      for (const [ends, style] of brief.sweep.ends.entries()) {
        for (const totalTurns of totals(brief, style.deadTurns)) {
          const { candidate, ...evaluator } = evaluatorAt(brief, material, wire);
          if (evaluator.refusal !== null) {
            walked++;
            count(evaluator.refusal);
            continue;
          }
          evaluator.set(ends, totalTurns);
          const lengths = new FreeLengthRange(candidate, limits);
          for (const meanDiameter of meanDiameters(brief, candidate, wire.diameter)) {
            walked++;
            candidate.setMeanDiameter(meanDiameter);
            // The load tolerance is no limit that the shortest free length passes best, so its best is sought among what the others
            // pass.
            if (
              lengths.hasConcaveBound &&
              limits.every((limit) => limit.name === "loadTolerance" || limit.margin(candidate) >= -1e-9)
            ) {
              lengths.settleForConcaveBounds();
            }
            seen(candidate);
            const violated = limits.find((limit) => limit.margin(candidate) < -1e-9);
            if (violated) count(violated.name);
            else {
              if (candidate.requirements.freeLengthAim.kind === "nominal") lengths.settle();
              const { mass, outsideDiameter, freeLength, choice } = candidate;
              survivors.push({ choice, mass, outsideDiameter, freeLength });
            }
          }
        }
      }
    }
    void entry;
  }
  return { walked, feasible: survivors.length, rejected, survivors };
}

function evaluatorAt(brief: Brief, material: number, wire: Brief["sweep"]["wires"][number]["wires"][number]) {
  const evaluator = new Evaluator(brief, resolveRequirements(brief));
  const slot = evaluator.enter(material, wire);
  return {
    candidate: evaluator.candidate,
    refusal: slot === null ? null : (REJECTION_ORDER[slot] as LimitName),
    set: (ends: number, totalTurns: number) => evaluator.setEnds(ends, totalTurns),
  };
}

function totals({ sweep, limits }: Brief, deadTurns: number): number[] {
  if (sweep.turns === "any") return [Number.NaN];
  const step = { quarter: 0.25, half: 0.5, whole: 1 }[sweep.turns];
  const { min = 0, max = 0 } = limits.turns === "off" ? {} : limits.turns;
  const all = Array.from({ length: 4000 }, (_, i) => i * step);
  const inside = (active: number) => (active - min) / step >= -1e-9 && (max - active) / step >= -1e-9;
  return all.filter((total) => total > deadTurns && inside(total - deadTurns));
}

function meanDiameters({ sweep }: Brief, candidate: Candidate, wireDiameter: number): number[] {
  const { pinnedRate, turnsAny } = candidate.requirements;
  if (pinnedRate !== null && !turnsAny) {
    candidate.setMeanDiameterForRate();
    return [candidate.meanDiameter];
  }
  const { step } = sweep.meanDiameter as { step: number };
  const first = Math.ceil((WOUND_INDEX.min * wireDiameter) / step - 1e-9);
  const last = Math.floor((WOUND_INDEX.max * wireDiameter) / step + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
}
