import { springRate } from "../mechanics/rate.ts";
import type { DesignPoint, HotFigures, Material } from "../model.ts";
import type { Candidate } from "./candidate.ts";
import { moduliAt } from "./stock.ts";

/**
 * A spring at its service temperature: moduli, rate and forces as they fall with heat, and the load it loses in time.
 *
 * @param candidate    placed
 * @param material     of its wire
 * @param points       the load points at room temperature
 * @param temperature  K
 * @returns figures; null where nothing is published for this material
 */
export function hotFigures(
  candidate: Candidate,
  material: Material,
  points: readonly DesignPoint[],
  temperature: number,
): HotFigures {
  const moduli = moduliAt(material, candidate, temperature);
  const rate =
    moduli === null
      ? null
      : springRate(moduli.shearModulus, candidate.wireDiameter, candidate.meanDiameter, candidate.activeTurns);
  return {
    temperature,
    shearModulus: moduli?.shearModulus ?? null,
    youngsModulus: moduli?.youngsModulus ?? null,
    modulusSource: material.modulusLoss?.source ?? null,
    rate,
    forces: points.map(({ deflection }) => (rate === null ? null : rate * deflection)),
    relaxation: relaxation(material, temperature, Math.max(...points.map(({ stress }) => stress))),
  };
}

/** The least loss among the published points at least as hot and as stressed: an estimate on the safe side, or none. */
function relaxation({ relaxation: published }: Material, temperature: number, stress: number): number | null {
  const losses = (published?.points ?? [])
    .filter((point) => point.temperature >= temperature && point.stress >= stress)
    .map(({ loss }) => loss);
  return losses.length === 0 ? null : Math.min(...losses);
}
