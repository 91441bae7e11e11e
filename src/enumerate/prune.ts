import type { Wire } from "../model.ts";
import type { FamilyVisitor } from "./combinations.ts";
import { type Judge, Range } from "./domain.ts";

/** One side of a limit as the walk cuts by it. */
export interface WalkedSide extends Judge {
  /** What its verdict depends on besides the mean diameter. */
  readonly scope: "wire" | "turns" | "family";
  /** Where the tally counts what it cuts. */
  readonly slot: number;
}

/** What the walk needs of the place where candidates are made, judged and counted. */
export interface Ground {
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
  /** The range passes what came before; the first of these sides has no shape, so it and those after it are visited. */
  visit(range: Range, sides: readonly WalkedSide[]): void;
}

/** Cut counts of a run of sides, kept so that families which share the cut can all be told of it. */
interface Stage {
  readonly sides: readonly WalkedSide[];
  readonly cut: Float64Array;
  readonly range: Range;
  /** Families that shared the cut and are not told of it yet. */
  families: number;
}

/**
 * The walk that cuts instead of visiting: for each family the range of mean diameters starts whole and each side of each limit,
 * in the order in which a candidate falls, cuts what it rejects. What depends on the wire alone is cut once for a wire, what
 * depends on turns once for a count of turns; families share the result, and the tally is that of a visit to every candidate.
 *
 * Sides that are constant and stand first are judged before any cut, since a candidate falls at them first.
 */
export class Walk implements FamilyVisitor {
  private readonly ground: Ground;
  private readonly diameters: Diameters;
  private readonly harvest: Harvest;
  private readonly leadingOfTurns: readonly WalkedSide[];
  private readonly leadingOfFamily: readonly WalkedSide[];
  private readonly ofWire: Stage;
  private readonly ofTurns: Stage;
  private readonly ofFamily: readonly WalkedSide[];
  private readonly range: Range;
  private readonly left: Range;
  /** Candidates in a family of this wire before any limit. */
  private candidates = Number.NaN;
  private fallsAtTurns: WalkedSide | undefined;

  constructor(ground: Ground, diameters: Diameters, sides: readonly WalkedSide[], harvest: Harvest) {
    this.ground = ground;
    this.diameters = diameters;
    this.harvest = harvest;
    const leading = runWhile(sides, ({ shape }) => shape === "constant");
    this.leadingOfTurns = runWhile(leading, ({ scope }) => scope !== "family");
    this.leadingOfFamily = leading.slice(this.leadingOfTurns.length);
    let rest = sides.slice(leading.length);
    const stage = (fits: (side: WalkedSide) => boolean): Stage => {
      const run = runWhile(rest, (side) => side.shape !== "none" && fits(side));
      rest = rest.slice(run.length);
      return { sides: run, cut: new Float64Array(run.length), range: new Range(diameters.whole), families: 0 };
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
    const refusal = this.ground.enter(material, wire);
    if (refusal !== null) {
      this.ground.reject(refusal, families);
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
    this.ground.setActiveTurns(activeTurns);
    this.fallsAtTurns = firstBroken(this.leadingOfTurns, this.range.low);
    cutStage(this.ofTurns, this.ofWire.range);
  }

  family(ends: number, totalTurns: number): void {
    const { ground, left } = this;
    const nothingLeft = this.ofTurns.range.empty && this.leadingOfFamily.length === 0;
    if (!nothingLeft) ground.setEnds(ends, totalTurns);
    const falls = this.fallsAtTurns ?? firstBroken(this.leadingOfFamily, this.range.low);
    if (falls !== undefined) {
      ground.reject(falls.slot, this.candidates);
      return;
    }
    this.ofWire.families++;
    this.ofTurns.families++;
    if (nothingLeft) return;
    left.copy(this.ofTurns.range);
    for (let i = 0; i < this.ofFamily.length && !left.empty; i++) {
      const side = this.ofFamily[i] as WalkedSide;
      if (side.shape === "none") {
        this.harvest.visit(left, this.ofFamily.slice(i));
        return;
      }
      ground.reject(side.slot, left.cut(side));
    }
    if (!left.empty) this.harvest.gather(left);
  }

  finish(): void {
    this.tell(this.ofTurns);
    this.tell(this.ofWire);
  }

  /** Count what a stage cut, once for each family that shared it. */
  private tell(stage: Stage): void {
    const { sides, cut, families } = stage;
    for (let i = 0; i < sides.length; i++) this.ground.reject((sides[i] as WalkedSide).slot, families * (cut[i] as number));
    stage.families = 0;
  }
}

/** Cut a copy of a range by the sides of a stage, keeping what each cut. */
function cutStage({ sides, cut, range }: Stage, from: Range): void {
  range.copy(from);
  for (let i = 0; i < sides.length; i++) cut[i] = range.cut(sides[i] as WalkedSide);
}

/** The first side that a position breaks. */
export function firstBroken(sides: readonly WalkedSide[], position: number): WalkedSide | undefined {
  for (const side of sides) if (side.marginAt(position) < side.passes) return side;
  return undefined;
}

function runWhile<T>(items: readonly T[], holds: (item: T) => boolean): T[] {
  const end = items.findIndex((item) => !holds(item));
  return items.slice(0, end < 0 ? items.length : end);
}

/**
 * The walk of a load that pins the rate, with counted turns: one candidate for a family, its mean diameter solved for the rate,
 * judged by each side in turn.
 */
export class SolvedWalk implements FamilyVisitor {
  private readonly ground: Ground;
  private readonly sides: readonly WalkedSide[];
  private readonly solve: () => number;
  private readonly survive: (meanDiameter: number) => void;

  /**
   * @param solve    the mean diameter, m, that gives the pinned rate with the turns as set
   * @param survive  is handed each mean diameter that passes
   */
  constructor(ground: Ground, sides: readonly WalkedSide[], solve: () => number, survive: (meanDiameter: number) => void) {
    this.ground = ground;
    this.sides = sides;
    this.solve = solve;
    this.survive = survive;
  }

  enter(material: number, wire: Wire, families: number): boolean {
    const refusal = this.ground.enter(material, wire);
    if (refusal !== null) this.ground.reject(refusal, families);
    return refusal === null;
  }

  turns(activeTurns: number): void {
    this.ground.setActiveTurns(activeTurns);
  }

  family(ends: number, totalTurns: number): void {
    this.ground.setEnds(ends, totalTurns);
    const meanDiameter = this.solve();
    const broken = firstBroken(this.sides, meanDiameter);
    if (broken) this.ground.reject(broken.slot, 1);
    else this.survive(meanDiameter);
  }

  finish(): void {}
}
