import type { Brief, Design, EndStyle } from "../../model.ts";
import { practices } from "../../practice/practices.ts";

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
 * @param least   the length at which it can be pressed no further, m: its own solid length, or that of the spring about it
 * @returns at least free, one point and solid; does not throw
 */
export function springStates({ practice, sweep }: Brief, design: Design, least = design.solidLength): SpringState[] {
  const ends = sweep.ends.find(({ name }) => name === design.ends) as EndStyle;
  const { meanDiameter, wireDiameter, activeTurns, freeLength, solidLength, outsideDiameter } = design;
  const outsideAt = (length: number) =>
    practices[practice].outsideDiameterAt(length, meanDiameter, wireDiameter, activeTurns, freeLength, ends);
  return [
    { name: "free", kind: "free", length: freeLength, force: 0, outsideDiameter },
    ...design.points.map(
      ({ name, length, force }): SpringState => ({ name, kind: "point", length, force, outsideDiameter: outsideAt(length) }),
    ),
    least > solidLength
      ? {
          name: "solid",
          kind: "solid",
          length: least,
          force: design.rate * (freeLength - least),
          outsideDiameter: outsideAt(least),
        }
      : {
          name: "solid",
          kind: "solid",
          length: solidLength,
          force: design.forceAtSolid,
          outsideDiameter: design.outsideDiameterAtSolid,
        },
  ];
}
