import { stressFactorBergstrasser, stressFactorDirect, stressFactorWahl } from "../../mechanics/stress.ts";
import type { StressFactorName } from "../../model.ts";

/**
 * A stress factor by the name that a brief gives it.
 *
 * @param name   which; `none` is the uncorrected stress
 * @param index  C, pure number
 * @returns pure number
 */
export function stressFactorNamed(name: StressFactorName, index: number): number {
  switch (name) {
    case "none":
      return 1;
    case "direct":
      return stressFactorDirect(index);
    case "bergstrasser":
      return stressFactorBergstrasser(index);
    case "wahl":
      return stressFactorWahl(index);
  }
}
