import type { Wire } from "../model.ts";
import type { FamilyVisitor } from "./combinations.ts";
import { Domain, type MarginBound } from "./domain.ts";

/** One bound of a limit as the walk cuts by it. */
export interface PruningBound extends MarginBound {
  /** What its verdict depends on besides the mean diameter. */
  readonly scope: "wire" | "turns" | "family";
  /** Where the tally counts what it cuts. */
  readonly slot: number;
}

/** What the walk needs of the place where candidates are made, judged and counted. */
export interface CandidateEvaluator {
  /** Take a material and wire; the slot of the limit that refuses the pair, or null. */
  enter(material: number, wire: Wire): number | null;
  setActiveTurns(activeTurns: number): void;
  setEnds(ends: number, totalTurns: number): void;
  reject(slot: number, candidates: number): void;
}

/** The range of mean diameters of one wire before any limit, in positions. */
export interface Diameters {
  /** True where positions are whole multiples of a step. */
  readonly whole: boolean;
  domain(wireDiameter: number): { readonly low: number; readonly high: number };
}

/** What becomes of the range that a family has left. */
export interface Collector {
  /** Every position of the range passes every limit. */
  collect(domain: Domain): void;
  /**
   * The range passes what came before; the first of these bounds has unknown monotonicity, so it and those after it are visited.
   */
  collectVisited(domain: Domain, bounds: readonly PruningBound[]): void;
}

/** Cut counts of a run of bounds, kept so that families which share the cut can all be told of it. */
interface Stage {
  readonly bounds: readonly PruningBound[];
  readonly pruned: Float64Array;
  readonly domain: Domain;
  /** Families that shared the cut and are not told of it yet. */
  families: number;
}

/**
 * The walk that cuts instead of visiting: for each family the range of mean diameters starts whole and each bound of each limit,
 * in the order in which a candidate falls, cuts what it rejects. What depends on the wire alone is cut once for a wire, what
 * depends on turns once for a count of turns; families share the result, and the tally is that of a visit to every candidate.
 *
 * Sides that are constant and stand first are judged before any cut, since a candidate falls at them first.
 */
export class PruningSearch implements FamilyVisitor {
  private readonly evaluator: CandidateEvaluator;
  private readonly diameters: Diameters;
  private readonly collector: Collector;
  private readonly leadingOfTurns: readonly PruningBound[];
  private readonly leadingOfFamily: readonly PruningBound[];
  private readonly ofWire: Stage;
  private readonly ofTurns: Stage;
  private readonly ofFamily: readonly PruningBound[];
  private readonly domain: Domain;
  private readonly remaining: Domain;
  /** Candidates in a family of this wire before any limit. */
  private candidates = Number.NaN;
  private violatedByTurns: PruningBound | undefined;

  constructor(evaluator: CandidateEvaluator, diameters: Diameters, bounds: readonly PruningBound[], collector: Collector) {
    this.evaluator = evaluator;
    this.diameters = diameters;
    this.collector = collector;
    const leading = runWhile(bounds, ({ monotonicity }) => monotonicity === "constant");
    this.leadingOfTurns = runWhile(leading, ({ scope }) => scope !== "family");
    this.leadingOfFamily = leading.slice(this.leadingOfTurns.length);
    let rest = bounds.slice(leading.length);
    const stage = (fits: (bound: PruningBound) => boolean): Stage => {
      const run = runWhile(rest, (bound) => bound.monotonicity !== "unknown" && fits(bound));
      rest = rest.slice(run.length);
      return { bounds: run, pruned: new Float64Array(run.length), domain: new Domain(diameters.whole), families: 0 };
    };
    this.ofWire = stage(({ scope }) => scope === "wire");
    this.ofTurns = stage(({ scope }) => scope !== "family");
    this.ofFamily = rest;
    this.domain = new Domain(diameters.whole);
    this.remaining = new Domain(diameters.whole);
  }

  enter(material: number, wire: Wire, families: number): boolean {
    this.countRejections(this.ofTurns);
    this.countRejections(this.ofWire);
    const refusal = this.evaluator.enter(material, wire);
    if (refusal !== null) {
      this.evaluator.reject(refusal, families);
      return false;
    }
    const { low, high } = this.diameters.domain(wire.diameter);
    this.domain.set(low, high);
    this.candidates = this.domain.candidates;
    pruneStage(this.ofWire, this.domain);
    return true;
  }

  turns(activeTurns: number): void {
    this.countRejections(this.ofTurns);
    this.evaluator.setActiveTurns(activeTurns);
    this.violatedByTurns = firstViolated(this.leadingOfTurns, this.domain.low);
    pruneStage(this.ofTurns, this.ofWire.domain);
  }

  family(ends: number, totalTurns: number): void {
    const { evaluator, remaining } = this;
    const nothingLeft = this.ofTurns.domain.empty && this.leadingOfFamily.length === 0;
    if (!nothingLeft) evaluator.setEnds(ends, totalTurns);
    const violated = this.violatedByTurns ?? firstViolated(this.leadingOfFamily, this.domain.low);
    if (violated !== undefined) {
      evaluator.reject(violated.slot, this.candidates);
      return;
    }
    this.ofWire.families++;
    this.ofTurns.families++;
    if (nothingLeft) return;
    remaining.copy(this.ofTurns.domain);
    for (let i = 0; i < this.ofFamily.length && !remaining.empty; i++) {
      const bound = this.ofFamily[i] as PruningBound;
      if (bound.monotonicity === "unknown") {
        this.collector.collectVisited(remaining, this.ofFamily.slice(i));
        return;
      }
      evaluator.reject(bound.slot, remaining.prune(bound));
    }
    if (!remaining.empty) this.collector.collect(remaining);
  }

  finish(): void {
    this.countRejections(this.ofTurns);
    this.countRejections(this.ofWire);
  }

  /** Count what a stage cut, once for each family that shared it. */
  private countRejections(stage: Stage): void {
    const { bounds, pruned, families } = stage;
    for (let i = 0; i < bounds.length; i++)
      this.evaluator.reject((bounds[i] as PruningBound).slot, families * (pruned[i] as number));
    stage.families = 0;
  }
}

/** Cut a copy of a range by the bounds of a stage, keeping what each cut. */
function pruneStage({ bounds, pruned, domain }: Stage, from: Domain): void {
  domain.copy(from);
  for (let i = 0; i < bounds.length; i++) pruned[i] = domain.prune(bounds[i] as PruningBound);
}

/** The first bound that a position breaks. */
export function firstViolated(bounds: readonly PruningBound[], position: number): PruningBound | undefined {
  for (const bound of bounds) if (bound.marginAt(position) < bound.passMargin) return bound;
  return undefined;
}

function runWhile<T>(items: readonly T[], holds: (item: T) => boolean): T[] {
  const end = items.findIndex((item) => !holds(item));
  return items.slice(0, end < 0 ? items.length : end);
}

/**
 * The walk of a load that pins the rate, with counted turns: one candidate for a family, its mean diameter solved for the rate,
 * judged by each bound in turn.
 */
export class SolvedSearch implements FamilyVisitor {
  private readonly evaluator: CandidateEvaluator;
  private readonly bounds: readonly PruningBound[];
  private readonly solve: () => number;
  private readonly onFeasible: (meanDiameter: number) => void;

  /**
   * @param solve       the mean diameter, m, that gives the pinned rate with the turns as set
   * @param onFeasible  is handed each mean diameter that passes
   */
  constructor(
    evaluator: CandidateEvaluator,
    bounds: readonly PruningBound[],
    solve: () => number,
    onFeasible: (meanDiameter: number) => void,
  ) {
    this.evaluator = evaluator;
    this.bounds = bounds;
    this.solve = solve;
    this.onFeasible = onFeasible;
  }

  enter(material: number, wire: Wire, families: number): boolean {
    const refusal = this.evaluator.enter(material, wire);
    if (refusal !== null) this.evaluator.reject(refusal, families);
    return refusal === null;
  }

  turns(activeTurns: number): void {
    this.evaluator.setActiveTurns(activeTurns);
  }

  family(ends: number, totalTurns: number): void {
    this.evaluator.setEnds(ends, totalTurns);
    const meanDiameter = this.solve();
    const violated = firstViolated(this.bounds, meanDiameter);
    if (violated) this.evaluator.reject(violated.slot, 1);
    else this.onFeasible(meanDiameter);
  }

  finish(): void {}
}
