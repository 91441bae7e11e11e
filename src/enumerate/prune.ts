import type { Wire } from "../model.ts";
import type { FamilyVisitor } from "./combinations.ts";
import { type MarginBound, Range } from "./domain.ts";

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
  range(wireDiameter: number): { readonly low: number; readonly high: number };
}

/** What becomes of the range that a family has left. */
export interface Harvest {
  /** Every position of the range passes every limit. */
  gather(range: Range): void;
  /**
   * The range passes what came before; the first of these bounds has unknown monotonicity, so it and those after it are visited.
   */
  visit(range: Range, bounds: readonly PruningBound[]): void;
}

/** Cut counts of a run of bounds, kept so that families which share the cut can all be told of it. */
interface Stage {
  readonly bounds: readonly PruningBound[];
  readonly cut: Float64Array;
  readonly range: Range;
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
export class Walk implements FamilyVisitor {
  private readonly evaluator: CandidateEvaluator;
  private readonly diameters: Diameters;
  private readonly harvest: Harvest;
  private readonly leadingOfTurns: readonly PruningBound[];
  private readonly leadingOfFamily: readonly PruningBound[];
  private readonly ofWire: Stage;
  private readonly ofTurns: Stage;
  private readonly ofFamily: readonly PruningBound[];
  private readonly range: Range;
  private readonly left: Range;
  /** Candidates in a family of this wire before any limit. */
  private candidates = Number.NaN;
  private violatedByTurns: PruningBound | undefined;

  constructor(evaluator: CandidateEvaluator, diameters: Diameters, bounds: readonly PruningBound[], harvest: Harvest) {
    this.evaluator = evaluator;
    this.diameters = diameters;
    this.harvest = harvest;
    const leading = runWhile(bounds, ({ monotonicity }) => monotonicity === "constant");
    this.leadingOfTurns = runWhile(leading, ({ scope }) => scope !== "family");
    this.leadingOfFamily = leading.slice(this.leadingOfTurns.length);
    let rest = bounds.slice(leading.length);
    const stage = (fits: (bound: PruningBound) => boolean): Stage => {
      const run = runWhile(rest, (bound) => bound.monotonicity !== "unknown" && fits(bound));
      rest = rest.slice(run.length);
      return { bounds: run, cut: new Float64Array(run.length), range: new Range(diameters.whole), families: 0 };
    };
    this.ofWire = stage(({ scope }) => scope === "wire");
    this.ofTurns = stage(({ scope }) => scope !== "family");
    this.ofFamily = rest;
    this.range = new Range(diameters.whole);
    this.left = new Range(diameters.whole);
  }

  enter(material: number, wire: Wire, families: number): boolean {
    this.tell(this.ofTurns);
    this.tell(this.ofWire);
    const refusal = this.evaluator.enter(material, wire);
    if (refusal !== null) {
      this.evaluator.reject(refusal, families);
      return false;
    }
    const { low, high } = this.diameters.range(wire.diameter);
    this.range.set(low, high);
    this.candidates = this.range.candidates;
    cutStage(this.ofWire, this.range);
    return true;
  }

  turns(activeTurns: number): void {
    this.tell(this.ofTurns);
    this.evaluator.setActiveTurns(activeTurns);
    this.violatedByTurns = firstViolated(this.leadingOfTurns, this.range.low);
    cutStage(this.ofTurns, this.ofWire.range);
  }

  family(ends: number, totalTurns: number): void {
    const { evaluator, left } = this;
    const nothingLeft = this.ofTurns.range.empty && this.leadingOfFamily.length === 0;
    if (!nothingLeft) evaluator.setEnds(ends, totalTurns);
    const violated = this.violatedByTurns ?? firstViolated(this.leadingOfFamily, this.range.low);
    if (violated !== undefined) {
      evaluator.reject(violated.slot, this.candidates);
      return;
    }
    this.ofWire.families++;
    this.ofTurns.families++;
    if (nothingLeft) return;
    left.copy(this.ofTurns.range);
    for (let i = 0; i < this.ofFamily.length && !left.empty; i++) {
      const bound = this.ofFamily[i] as PruningBound;
      if (bound.monotonicity === "unknown") {
        this.harvest.visit(left, this.ofFamily.slice(i));
        return;
      }
      evaluator.reject(bound.slot, left.cut(bound));
    }
    if (!left.empty) this.harvest.gather(left);
  }

  finish(): void {
    this.tell(this.ofTurns);
    this.tell(this.ofWire);
  }

  /** Count what a stage cut, once for each family that shared it. */
  private tell(stage: Stage): void {
    const { bounds, cut, families } = stage;
    for (let i = 0; i < bounds.length; i++)
      this.evaluator.reject((bounds[i] as PruningBound).slot, families * (cut[i] as number));
    stage.families = 0;
  }
}

/** Cut a copy of a range by the bounds of a stage, keeping what each cut. */
function cutStage({ bounds, cut, range }: Stage, from: Range): void {
  range.copy(from);
  for (let i = 0; i < bounds.length; i++) cut[i] = range.cut(bounds[i] as PruningBound);
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
export class SolvedWalk implements FamilyVisitor {
  private readonly evaluator: CandidateEvaluator;
  private readonly bounds: readonly PruningBound[];
  private readonly solve: () => number;
  private readonly survive: (meanDiameter: number) => void;

  /**
   * @param solve    the mean diameter, m, that gives the pinned rate with the turns as set
   * @param survive  is handed each mean diameter that passes
   */
  constructor(
    evaluator: CandidateEvaluator,
    bounds: readonly PruningBound[],
    solve: () => number,
    survive: (meanDiameter: number) => void,
  ) {
    this.evaluator = evaluator;
    this.bounds = bounds;
    this.solve = solve;
    this.survive = survive;
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
    else this.survive(meanDiameter);
  }

  finish(): void {}
}
