import { activeTurns } from "../mechanics/ends.ts";
import { activeTurnsForRate, springRate } from "../mechanics/rate.ts";
import type { Disagreement, GivenDesign } from "../model.ts";

/** Diameters that differ by less than this share say the same; common practice, no source. */
const SAME_DIAMETER = 0.005;
/** Turns that differ by less than this say the same. */
const SAME_TURNS = 0.01;
/** A measured rate may be off by this share: about what a maker may miss by; common practice, no source. */
const SAME_RATE = 0.05;
/** Room for rounding at these borders. */
const ROUNDING = 1e-9;

/** What settles a given spring. */
export interface Settled {
  readonly meanDiameter: number;
  readonly totalTurns: number;
  /** Rate as wire, diameter and turns give it, N/m. */
  readonly rate: number;
  /** True where no turns are given, so that they follow from the rate. */
  readonly turnsFromRate: boolean;
  readonly disagreements: readonly Disagreement[];
}

/**
 * The dimensions of a spring from data that may say one thing twice: the mean diameter wins over the outside one and that over
 * the inside one, total turns win over active ones, and turns over the rate.
 *
 * @param given         with one diameter at least, and turns or a rate
 * @param shearModulus  of its wire, Pa
 * @returns what settles it, and the data that contradict that; does not throw
 */
export function settle(given: GivenDesign, shearModulus: number): Settled {
  const { diameter } = given.wire;
  const { deadTurns } = given.ends;
  const meanDiameter =
    given.meanDiameter ??
    (given.outsideDiameter === undefined ? (given.insideDiameter as number) + diameter : given.outsideDiameter - diameter);
  const active =
    given.totalTurns === undefined
      ? (given.activeTurns ?? activeTurnsForRate(shearModulus, diameter, meanDiameter, given.rate as number))
      : activeTurns(given.totalTurns, deadTurns);
  const rate = springRate(shearModulus, diameter, meanDiameter, active);

  const share = (quantity: number, follows: number) => Math.abs(quantity / follows - 1);
  const compared = [
    { figure: "outsideDiameter", follows: meanDiameter + diameter, off: share, same: SAME_DIAMETER },
    { figure: "insideDiameter", follows: meanDiameter - diameter, off: share, same: SAME_DIAMETER },
    { figure: "activeTurns", follows: active, off: (a: number, b: number) => Math.abs(a - b), same: SAME_TURNS },
    { figure: "rate", follows: rate, off: share, same: SAME_RATE },
  ] as const;
  const disagreements = compared.flatMap(({ figure, follows, off, same }): Disagreement[] => {
    const quantity = given[figure];
    if (quantity === undefined || off(quantity, follows) <= same + ROUNDING) return [];
    return [{ figure, given: quantity, follows }];
  });
  return {
    meanDiameter,
    totalTurns: given.totalTurns ?? active + deadTurns,
    rate,
    turnsFromRate: given.totalTurns === undefined && given.activeTurns === undefined,
    disagreements,
  };
}
