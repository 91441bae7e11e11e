import type { Wire } from "../model.ts";
import type { FamilyVisitor } from "./combinations.ts";
import { Domain, type MarginBound } from "./domain.ts";

/** One bound of a limit, as it prunes a domain. */
export interface PruningBound extends MarginBound {
  /** What its verdict depends on besides the mean diameter. */
  readonly scope: "wire" | "turns" | "family";
  /** Index of its limit in the rejection counts. */
  readonly slot: number;
}

/** Sets, evaluates and counts candidates. */
export interface CandidateEvaluator {
  /** Take a material and wire; the slot of the limit that refuses the pair, or null. */
  enter(material: number, wire: Wire): number | null;
  setActiveTurns(activeTurns: number): void;
  setEnds(ends: number, totalTurns: number): void;
  reject(slot: number, candidates: number): void;
}

/** The domain of mean diameters of one wire before any limit, in positions. */
export interface Diameters {
  /** True where positions are whole multiples of a step. */
  readonly whole: boolean;
  domain(wireDiameter: number): { readonly low: number; readonly high: number };
}

/** Receives the domain that remains of a family. */
export interface Collector {
  /** Every position of the domain passes every limit. */
  collect(domain: Domain): void;
  /**
   * The range passes what came before; the first of these bounds has unknown monotonicity, so it and those after it are visited.
   */
  collectVisited(domain: Domain, bounds: readonly PruningBound[]): void;
}

/** A run of bounds with the number of candidates that each has pruned, counted once for each family that shares them. */
interface Stage {
  readonly bounds: readonly PruningBound[];
  readonly pruned: Float64Array;
  readonly domain: Domain;
  /** Families that share the domain and are not counted yet. */
  families: number;
}

/**
 * Prunes the domain of mean diameters of each family instead of visiting every candidate: each bound of each limit, in order, removes
 * what it rejects. Bounds that depend on the wire alone prune once for a wire, bounds that depend on turns once for a count of turns.
 * Families share the result, and the rejection counts are those of a visit to every candidate.
 *
 * Leading constant bounds are evaluated before any pruning, since they reject a candidate first.
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

  /** Count the candidates that a stage pruned, once for each family that shares it. */
  private countRejections(stage: Stage): void {
    const { bounds, pruned, families } = stage;
    for (let i = 0; i < bounds.length; i++)
      this.evaluator.reject((bounds[i] as PruningBound).slot, families * (pruned[i] as number));
    stage.families = 0;
  }
}

/** Prune a copy of a domain by the bounds of a stage, and record how many candidates each removes. */
function pruneStage({ bounds, pruned, domain }: Stage, from: Domain): void {
  domain.copy(from);
  for (let i = 0; i < bounds.length; i++) pruned[i] = domain.prune(bounds[i] as PruningBound);
}

/** The first bound that a position violates. */
export function firstViolated(bounds: readonly PruningBound[], position: number): PruningBound | undefined {
  for (const bound of bounds) if (bound.marginAt(position) < bound.passMargin) return bound;
  return undefined;
}

function runWhile<T>(items: readonly T[], holds: (item: T) => boolean): T[] {
  const end = items.findIndex((item) => !holds(item));
  return items.slice(0, end < 0 ? items.length : end);
}

/**
 * The search for a load that fixes the rate, with counted turns: each family has one candidate, whose mean diameter is solved for
 * the rate. Each bound is evaluated in turn.
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
