import { modulusAtTemperature, ROOM_TEMPERATURE } from "../mechanics/expansion.ts";
import { strengthInterpolated, strengthNextRow, strengthPowerLaw } from "../mechanics/strength.ts";
import type { Material, Moduli, Service, TableEnd, Wire } from "../model.ts";

/** Two sizes closer than this, as a fraction, are the same size. */
const SAME_SIZE = 1e-9;

/** What one material is like drawn to one wire diameter. */
export interface Stock extends Moduli {
  /** Pa */
  readonly tensileStrength: number;
  /** `minimum`, `fit` or `stated`, with `, from memory` added where the rows are. */
  readonly strengthBasis: string;
  /** Plus-minus on the wire diameter, m; null where the material's data give none. */
  readonly wireDeviation: number | null;
}

/** The law that gives a material's strength and the sizes it holds for. */
interface StrengthLaw {
  readonly kind: "rows" | "fit" | "stated";
  readonly basis: string;
  readonly min: number;
  readonly max: number;
  readonly at: (wireDiameter: number) => number;
}

/**
 * A material at a wire size.
 *
 * @param material      the material
 * @param wireDiameter  d, m
 * @param basis         which strength is asked: the guaranteed minimum, or the textbook fit
 * @returns the figures, or null where the material is not made in this size: a law is never extrapolated
 */
export function stockAt(material: Material, wireDiameter: number, basis: Service["strength"]): Stock | null {
  const law = strengthLaw(material, basis);
  const moduli = material.moduli.find((row) => row.upTo === undefined || wireDiameter <= row.upTo * (1 + SAME_SIZE));
  if (!moduli || !isMade(law, wireDiameter)) return null;
  return {
    tensileStrength: law.at(wireDiameter),
    strengthBasis: law.basis,
    youngsModulus: moduli.youngsModulus,
    shearModulus: moduli.shearModulus,
    wireDeviation: wireTolerance(material, wireDiameter),
  };
}

/**
 * The moduli of a material at a temperature.
 *
 * @param material     whose loss for each kelvin is taken
 * @param moduli       its E and G at 20 °C, Pa
 * @param temperature  K
 * @returns E and G there, Pa; null where the material states no loss
 */
export function moduliAt({ modulusLoss }: Material, { youngsModulus, shearModulus }: Moduli, temperature: number): Moduli | null {
  if (modulusLoss === undefined) return null;
  const at = (modulus: number) => modulusAtTemperature(modulus, temperature, modulusLoss.perKelvin);
  return { youngsModulus: at(youngsModulus), shearModulus: at(shearModulus) };
}

/**
 * How far a service temperature is inside the highest that a material bears, both counted from 20 °C, at which springs are tested.
 *
 * @param material     of which the highest temperature is above 20 °C
 * @param temperature  K
 * @returns share of that rise which is left; at most 1
 */
export function temperatureMargin({ temperature: { max } }: Material, temperature: number): number {
  return Math.min(1, 1 - (temperature - ROOM_TEMPERATURE) / (max - ROOM_TEMPERATURE));
}

/** Plus-minus on a wire diameter by the material's own data, m; null where they give none. */
export function wireTolerance(material: Material, wireDiameter: number): number | null {
  return material.wireTolerance?.find(({ upTo }) => wireDiameter <= upTo * (1 + SAME_SIZE))?.plusMinus ?? null;
}

/** The smallest and largest wire diameter in which a material is made under the law in use, m: what its tables cover. */
export function madeSizes(material: Material, basis: Service["strength"]): { min: number; max: number } {
  const law = strengthLaw(material, basis);
  return { min: law.min, max: Math.min(law.max, material.moduli.at(-1)?.upTo ?? law.max) };
}

/** What ends a material's sizes at either end: the law of its strength, or rows of moduli that end before it. */
export function endOfSizes(
  material: Material,
  basis: Service["strength"],
  end: "thinnest" | "thickest",
): Exclude<TableEnd["because"], "soldIn"> {
  const { kind, max } = strengthLaw(material, basis);
  return end === "thickest" && madeSizes(material, basis).max < max ? "moduli" : kind;
}

/** True where the wire is sold in this material: its series names the material, or names none. */
export function isSold(wire: Wire, material: Material): boolean {
  return wire.soldIn === undefined || wire.soldIn.includes(material.name);
}

function isMade(law: StrengthLaw, wireDiameter: number): boolean {
  return wireDiameter >= law.min * (1 - SAME_SIZE) && wireDiameter <= law.max * (1 + SAME_SIZE);
}

/** The law a brief asks for; where a material has no rows its fit or its one stated strength serves. */
function strengthLaw(material: Material, basis: Service["strength"]): StrengthLaw {
  const { minimum, fit, constant } = material.strength;
  if (basis === "minimum" && minimum) {
    const diameters = minimum.rows.map((row) => row.diameter);
    const strengths = minimum.rows.map((row) => row.strength);
    const read = minimum.between === "interpolate" ? strengthInterpolated : strengthNextRow;
    return {
      kind: "rows",
      basis: withMemory("minimum", minimum.fromMemory),
      min: diameters[0] as number,
      max: diameters.at(-1) as number,
      at: (wireDiameter) => read(diameters, strengths, wireDiameter),
    };
  }
  if (fit) {
    const { pieces } = fit;
    return {
      kind: "fit",
      basis: withMemory("fit", fit.fromMemory),
      min: (pieces[0] as (typeof pieces)[number]).diameter.min,
      max: (pieces.at(-1) as (typeof pieces)[number]).diameter.max,
      at: (wireDiameter) => {
        const piece = pieces.find(({ diameter }) => wireDiameter <= diameter.max * (1 + SAME_SIZE)) ?? pieces.at(-1);
        const { value, at, exponent } = piece as (typeof pieces)[number];
        return strengthPowerLaw(value, at, exponent, wireDiameter);
      },
    };
  }
  if (constant) return { kind: "stated", basis: "stated", ...constant.diameter, at: () => constant.value };
  throw new Error(`material ${material.name} has no strength for basis ${basis}: the brief's reader lets none through`);
}

function withMemory(basis: string, fromMemory: boolean): string {
  return fromMemory ? `${basis}, from memory` : basis;
}
