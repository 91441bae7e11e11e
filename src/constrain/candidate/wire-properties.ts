import { modulusAtTemperature, ROOM_TEMPERATURE } from "../../mechanics/expansion.ts";
import { strengthInterpolated, strengthNextRow, strengthPowerLaw } from "../../mechanics/strength.ts";
import type { Confidence, Material, Moduli, Service, StrengthFit, StrengthRows, TableEnd, Wire } from "../../model.ts";

/** Two sizes closer than this, as a fraction, are the same size. */
const SAME_SIZE = 1e-9;

/** What one material is like drawn to one wire diameter. */
export interface WireProperties extends Moduli {
  /** Pa */
  readonly tensileStrength: number;
  /** `minimum`, `fit` or `stated`, with the flag added where there is one. */
  readonly strengthBasis: string;
  readonly strengthFlag?: StrengthFlag;
  /** Plus-minus on the wire diameter, m; null where the material's data give none. */
  readonly wireDeviation: number | null;
}

/** What a strength that was not read in print rests on. */
export type StrengthFlag = "from memory" | "inferred";

/** The law that gives a material's strength and the sizes it holds for. */
interface StrengthLaw {
  readonly kind: "rows" | "fit" | "stated";
  readonly basis: string;
  readonly min: number;
  readonly max: number;
  readonly at: (wireDiameter: number) => number;
  readonly flagAt: (wireDiameter: number) => StrengthFlag | undefined;
}

/**
 * A material at a wire size.
 *
 * @param material      the material
 * @param wireDiameter  d, m
 * @param basis         which strength is asked: the guaranteed minimum, or the textbook fit
 * @returns the figures, or null where the material is not made in this size: a law is never extrapolated
 */
export function wirePropertiesAt(material: Material, wireDiameter: number, basis: Service["strength"]): WireProperties | null {
  const law = strengthLaw(material, basis);
  const moduli = material.moduli.find((row) => row.upTo === undefined || wireDiameter <= row.upTo * (1 + SAME_SIZE));
  if (!moduli || !isMade(law, wireDiameter)) return null;
  const flag = law.flagAt(wireDiameter);
  return {
    tensileStrength: law.at(wireDiameter),
    strengthBasis: flag === undefined ? law.basis : `${law.basis}, ${flag}`,
    ...(flag && { strengthFlag: flag }),
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

/** Shear modulus at a temperature, K, over that at room temperature; 1 where no temperature is asked or the fall is not known. */
export function modulusRatioAt(material: Material, wireProperties: Moduli, temperature: number | null): number {
  const atTemperature = temperature === null ? null : moduliAt(material, wireProperties, temperature);
  return (atTemperature ?? wireProperties).shearModulus / wireProperties.shearModulus;
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
      basis: "minimum",
      min: diameters[0] as number,
      max: diameters.at(-1) as number,
      at: (wireDiameter) => read(diameters, strengths, wireDiameter),
      flagAt: (wireDiameter) => rowsFlag(minimum, wireDiameter),
    };
  }
  if (fit) {
    const pieceAt = (wireDiameter: number) =>
      (fit.find(({ diameter }) => wireDiameter <= diameter.max * (1 + SAME_SIZE)) ?? fit.at(-1)) as StrengthFit;
    return {
      kind: "fit",
      basis: "fit",
      min: (fit[0] as StrengthFit).diameter.min,
      max: (fit.at(-1) as StrengthFit).diameter.max,
      at: (wireDiameter) => {
        const { value, at, exponent } = pieceAt(wireDiameter);
        return strengthPowerLaw(value, at, exponent, wireDiameter);
      },
      flagAt: (wireDiameter) => memoryFlag(pieceAt(wireDiameter)),
    };
  }
  if (constant)
    return {
      kind: "stated",
      basis: "stated",
      ...constant.diameter,
      at: () => constant.value,
      flagAt: () => memoryFlag(constant),
    };
  throw new Error(`material ${material.name} has no strength for basis ${basis}: the brief's reader lets none through`);
}

/** Of the row that gives a size its strength, or of either of the two that it is read between. */
function rowsFlag(minimum: StrengthRows, wireDiameter: number): StrengthFlag | undefined {
  const { rows, between } = minimum;
  const above = rows.findIndex(({ diameter }) => wireDiameter <= diameter * (1 + SAME_SIZE));
  const isRow = wireDiameter >= (rows[above]?.diameter ?? 0) * (1 - SAME_SIZE);
  const read = between === "interpolate" && !isRow ? [rows[above - 1], rows[above]] : [rows[above]];
  return memoryFlag(minimum) ?? (read.some((row) => row?.inferred) ? "inferred" : undefined);
}

function memoryFlag({ confidence }: { readonly confidence?: Confidence }): StrengthFlag | undefined {
  return confidence === "memory" ? "from memory" : undefined;
}
