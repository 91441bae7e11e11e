import type { Wire } from "../model.ts";
import type { FamilyVisitor } from "./families.ts";
import { firstBroken, type Ground, type WalkedSide } from "./walk.ts";

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
