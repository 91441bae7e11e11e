import { springRate } from "../../mechanics/rate.ts";
import type { DesignPoint, HotFigures, Material } from "../../model.ts";
import type { Candidate } from "./candidate.ts";
import { moduliAt } from "./wire-properties.ts";

/** Room temperature, K. */
const ROOM_TEMPERATURE = 293.15;

/**
 * A spring at its service temperature: moduli, rate and forces as they fall with heat, and the load it loses in time.
 *
 * @param candidate    placed
 * @param material     of its wire
 * @param points       the load points at room temperature
 * @param temperature  K
 * @returns figures; null where nothing is published for this material
 */
export function figuresAtTemperature(
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
    ...relaxationOf(material, temperature, greatestStress(points)),
  };
}

/** The least loss among the published points at least as hot and as stressed, after the longest time of these: on the safe side. */
function relaxationOf(
  { relaxation: published }: Material,
  temperature: number,
  stress: number,
): Pick<HotFigures, "relaxation" | "relaxationTime"> {
  const points = (published?.points ?? []).filter((point) => point.temperature >= temperature && point.stress >= stress);
  if (points.length === 0) return { relaxation: null };
  const relaxationTime = Math.max(...points.map(({ time }) => time));
  const losses = points.filter(({ time }) => time === relaxationTime).map(({ loss }) => loss);
  return { relaxation: Math.min(...losses), relaxationTime };
}

function greatestStress(points: readonly DesignPoint[]): number {
  return Math.max(...points.map(({ stress }) => stress));
}

/**
 * Shares of the way to the highest temperature and to the allowable stress from which on relaxation matters; common practice, no
 * source.
 */
const MATTERS = { heat: 0.5, stress: 0.5 };

/**
 * Whether a spring loses load in time that its brief should reckon with, and nothing published says how much.
 *
 * @param atTemperature  the spring at its service temperature
 * @param material       of its wire
 * @param points         the load points at room temperature
 * @param allowable      allowable shear stress, Pa
 */
export function isRelaxationToAsk(
  atTemperature: HotFigures,
  material: Material,
  points: readonly DesignPoint[],
  allowable: number,
): boolean {
  const heat = (atTemperature.temperature - ROOM_TEMPERATURE) / (material.temperature.max - ROOM_TEMPERATURE);
  return atTemperature.relaxation === null && heat >= MATTERS.heat && greatestStress(points) >= MATTERS.stress * allowable;
}
