import type { Brief, Design, EndStyle } from "../model.ts";
import { practices } from "../practice/practice.ts";

/** A spring pressed to one length, SI. */
export interface SpringState {
  /** `free`, the name of a load point, or `solid`. */
  readonly name: string;
  readonly kind: "free" | "point" | "solid";
  readonly length: number;
  readonly force: number;
  /** Grown from that of the free spring, by the practice's formula. */
  readonly outsideDiameter: number;
}

/**
 * The lengths at which a spring is looked at: free, each load point in the brief's order, solid.
 *
 * @param brief   the brief that it answers
 * @param design  the spring
 * @returns at least free, one point and solid; does not throw
 */
export function springStates({ practice, sweep }: Brief, design: Design): SpringState[] {
  const ends = sweep.ends.find(({ name }) => name === design.ends) as EndStyle;
  const { meanDiameter, wireDiameter, activeTurns, freeLength, solidLength, outsideDiameter, outsideDiameterAtSolid } = design;
  const outsideAt = (length: number) =>
    practices[practice].outsideDiameterAt(length, meanDiameter, wireDiameter, activeTurns, freeLength, ends);
  return [
    { name: "free", kind: "free", length: freeLength, force: 0, outsideDiameter },
    ...design.points.map(
      ({ name, length, force }): SpringState => ({ name, kind: "point", length, force, outsideDiameter: outsideAt(length) }),
    ),
    { name: "solid", kind: "solid", length: solidLength, force: design.forceAtSolid, outsideDiameter: outsideDiameterAtSolid },
  ];
}
