import type { Dimension } from "../model.ts";
import { nearestNames, quoted } from "../problem.ts";
import { math } from "./units.ts";

/** Why a text is not the quantity that was wanted; the caller adds file, line and key. */
export interface Misread {
  readonly code:
    | "empty"
    | "tooLong"
    | "comma"
    | "notANumber"
    | "outOfReach"
    | "noUnit"
    | "hasUnit"
    | "notAUnit"
    | "unknownUnit"
    | "wrongDimension"
    | "belowAbsoluteZero"
    | "notATolerance";
  /** What came. */
  readonly got: string;
  /** What would be right. */
  readonly want: string;
}

/**
 * Least and greatest size that is computed with, SI, zero aside: far beyond any spring, and so far within what a double holds that
 * no power or product in a formula leaves it, and no deflection is lost in the digits of a length.
 */
export function reachOf(dimension: Dimension): { readonly least: number; readonly greatest: number } {
  if (dimension === "length") return { least: 1e-15, greatest: 1e4 };
  if (dimension === "force") return { least: 1e-9, greatest: 1e12 };
  return { least: 1e-15, greatest: 1e15 };
}

/** Longest text that is looked at, characters; no quantity needs more. */
export const longestQuantity = 80;

interface Wanted {
  readonly noun: string;
  /** The unit of the SI value, in mathjs's spelling; absent where the text has no unit that mathjs reads. */
  readonly si?: string;
  readonly example: string;
  /** The units that a message shows, the commonest first. */
  readonly units: readonly string[];
}

const wanted: Readonly<Record<Dimension, Wanted>> = {
  length: { noun: "a length", si: "m", example: "12 mm", units: ["mm", "in", "cm", "m", "ft"] },
  force: { noun: "a force", si: "N", example: "45 N", units: ["N", "lbf", "kN", "kgf"] },
  rate: { noun: "a spring rate", si: "N/m", example: "3.2 N/mm", units: ["N/mm", "lbf/in", "N/m", "kgf/mm"] },
  stress: { noun: "a stress", si: "Pa", example: "800 MPa", units: ["MPa", "ksi", "psi", "GPa", "Mpsi", "kpsi", "Pa", "N/mm^2"] },
  mass: { noun: "a mass", si: "kg", example: "20 g", units: ["g", "lb", "kg", "oz"] },
  density: { noun: "a density", si: "kg/m^3", example: "7850 kg/m^3", units: ["kg/m^3", "lb/in^3", "g/cm^3"] },
  frequency: { noun: "a frequency", si: "Hz", example: "3 Hz", units: ["Hz", "kHz"] },
  temperature: { noun: "a temperature", si: "K", example: "120 degC", units: ["degC", "degF", "K"] },
  time: { noun: "a time", si: "s", example: "48 h", units: ["h", "s", "min", "day"] },
  angle: { noun: "an angle", si: "rad", example: "12 deg", units: ["deg", "rad"] },
  share: { noun: "a share", example: "15 %", units: ["%"] },
  number: { noun: "a pure number", example: "12", units: [] },
  price: { noun: "a price for a mass", example: "4.2 / kg", units: ["/ kg", "/ lb"] },
};

/** Kinds that nothing here asks for, so that a message can name what came. */
const otherKinds = [
  ["m^2", "an area"],
  ["m^3", "a volume"],
  ["s", "a time"],
  ["m/s", "a speed"],
  ["N*m", "a torque"],
  ["W", "a power"],
] as const;

const number = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*)$/s;
const unitName = /[A-Za-z]+/g;
const unitText = /^[A-Za-z]+(?:\^-?\d)?(?:\s*[*/ ]\s*[A-Za-z]+(?:\^-?\d)?)*$/;

/**
 * Quantity text -> its value in SI, or what is wrong with it. Temperatures are absolute.
 *
 * @param text       such as `45 N`, `0.5 in`, `250 degF`, `15 %`, `4.2 / kg`; at most 80 characters
 * @param dimension  what is wanted
 * @returns value in the SI unit of the dimension (m, N, N/m, Pa, kg, kg/m³, Hz, K, rad, share or pure number as a fraction of 1,
 *   price for a kg), zero or within `reachOf` the dimension; or a `Misread`. Does not throw.
 * @source 1 lbf = 4.4482216152605 N, 1 in = 25.4 mm, 1 lb = 0.45359237 kg, all exact by definition; the rest from mathjs
 */
export function readQuantity(text: string, dimension: Dimension): { readonly value: number } | Misread {
  const { noun, example, units } = wanted[dimension];
  const such = `${noun} is wanted, such as ${example}`;
  const typed = text.trim();
  if (typed === "") return { code: "empty", got: "nothing came", want: such };
  if (text.length > longestQuantity) {
    return { code: "tooLong", got: `${text.length} characters came`, want: `${such}, in at most ${longestQuantity}` };
  }
  if (/\d,\d/.test(typed)) return misreadComma(typed);

  const shown = quoted(typed);
  const [, digits, rest] = number.exec(typed) ?? [];
  if (digits === undefined || rest === undefined) {
    return { code: "notANumber", got: `"${shown}" does not begin with a number`, want: such };
  }
  const amount = Number(digits);
  // Digits that the number's own form lets vanish, such as 1e-400, are not nothing.
  if (amount === 0 && /[1-9]/.test(digits.replace(/e.*/i, ""))) return tooSmall(shown, such);

  if (dimension === "number") {
    return rest === ""
      ? withinReach(shown, amount, dimension)
      : { code: "hasUnit", got: `${shown} has a unit`, want: `write ${digits}, a pure number` };
  }
  if (dimension === "share" && (rest === "%" || rest === "")) {
    return withinReach(shown, rest === "%" ? amount / 100 : amount, dimension);
  }
  if (rest === "") {
    const [first, second] = units;
    return { code: "noUnit", got: `${digits} has no unit`, want: `write ${digits} ${first} (or ${second})` };
  }
  if (rest === "%") return { code: "wrongDimension", got: `${shown} is a share`, want: such };
  if (dimension === "price") return readPrice(shown, amount, rest);
  return readUnit(shown, amount, rest, dimension);
}

/** A value in SI, or what is wrong with its size. */
function withinReach(shown: string, value: number, dimension: Dimension): { readonly value: number } | Misread {
  const { noun, example } = wanted[dimension];
  const such = `${noun} is wanted, such as ${example}`;
  const { least, greatest } = reachOf(dimension);
  if (!(Math.abs(value) <= greatest)) return tooLarge(shown, such);
  if (value !== 0 && Math.abs(value) < least) return tooSmall(shown, such);
  // A negative zero is zero.
  return { value: value + 0 };
}

function tooLarge(shown: string, such: string): Misread {
  return { code: "outOfReach", got: `${shown} is too large to compute with`, want: such };
}

function tooSmall(shown: string, such: string): Misread {
  return { code: "outOfReach", got: `${shown} is too small to compute with`, want: such };
}

/** The value of `amount` in a unit, or what is wrong with the unit. */
function readUnit(shown: string, amount: number, rest: string, dimension: Dimension): { readonly value: number } | Misread {
  const { noun, example, si, units } = wanted[dimension];
  const such = `${noun} is wanted, such as ${example}`;
  const spelled = spellUnit(rest);
  if (!unitText.test(spelled)) return { code: "notAUnit", got: `"${quoted(rest)}" in "${shown}" is not a unit`, want: such };

  const unknown = spelled.match(unitName)?.find((name) => !math.Unit.isValuelessUnit(name));
  if (unknown !== undefined) {
    const nearest = nearestUnit(unknown, units);
    const want = nearest === undefined ? such : `nearest is ${nearest}; ${such}`;
    return { code: "unknownUnit", got: `no unit "${quoted(unknown)}" in ${shown}`, want };
  }

  const quantity = math.unit(amount, spelled);
  if (si === undefined || !quantity.equalBase(math.unit(si))) {
    return { code: "wrongDimension", got: `${shown} is ${kindOf(spelled)}`, want: meant(amount, spelled, dimension) ?? such };
  }
  const value = quantity.toNumber(si);
  if (dimension === "temperature" && value < 0) {
    return { code: "belowAbsoluteZero", got: `${shown} is below absolute zero`, want: such };
  }
  return withinReach(shown, value, dimension);
}

/** A price as its author's own currency for a mass: `4.2 / kg`, `1.9 / lb`. */
function readPrice(shown: string, amount: number, rest: string): { readonly value: number } | Misread {
  const mass = rest.startsWith("/") ? readUnit(shown, 1, rest.slice(1).trim(), "mass") : undefined;
  if (mass !== undefined && "value" in mass) {
    return withinReach(shown, amount / mass.value, "price");
  }
  return { code: "wrongDimension", got: `${shown} is not a price for a mass`, want: `such as ${amount} / kg, or ${amount} / lb` };
}

/** A nominal with the range that its tolerance leaves, SI; exact where the text has none. */
export interface Toleranced {
  readonly nominal: number;
  readonly min: number;
  readonly max: number;
}

/**
 * Quantity with an optional tolerance -> nominal, least and largest value in SI, or what is wrong with it.
 *
 * @param text       such as `45 N`, `45 N ± 10 %`, `45 N ± 2 N`, `45 N +/- 10 %`; at most 80 characters
 * @param dimension  what is wanted; not a temperature, for a difference of temperatures is none
 * @returns nominal, min and max in the SI unit of the dimension; or a `Misread`. Does not throw.
 */
export function readToleranced(text: string, dimension: Dimension): Toleranced | Misread {
  const [before = "", after, ...more] = text.split(/±|\+\/-|\+-/);
  // The whole is judged where it is too long to be looked at, not its halves.
  const read = readQuantity(text.length > longestQuantity ? text : before, dimension);
  if (!("value" in read)) return read;
  const nominal = read.value;
  if (after === undefined) return { nominal, min: nominal, max: nominal };

  const bad = { code: "notATolerance", want: `write ${before.trim()} ± 10 %, or a plus-minus in the same unit` } as const;
  if (more.length > 0) return { ...bad, got: `${quoted(text.trim())} has more than one tolerance` };
  const isShare = after.trim().endsWith("%");
  const tolerance = readQuantity(after, isShare ? "share" : dimension);
  if (!("value" in tolerance)) return tolerance;
  if (tolerance.value < 0) return { ...bad, got: `a tolerance of ${quoted(after.trim())} is negative` };
  const half = isShare ? Math.abs(nominal) * tolerance.value : tolerance.value;
  if (!(Math.abs(nominal) + half <= reachOf(dimension).greatest)) return tooLarge(quoted(text.trim()), bad.want);
  return { nominal, min: nominal - half, max: nominal + half };
}

/** The marks that people type for a unit, as mathjs spells them. */
function spellUnit(rest: string): string {
  const marks: readonly (readonly [string, string])[] = [
    ["°C", "degC"],
    ["°F", "degF"],
    ["°", "deg"],
    ["²", "^2"],
    ["³", "^3"],
    ["·", "*"],
    ["µ", "u"],
    ["μ", "u"],
  ];
  return marks.reduce((spelled, [mark, word]) => spelled.replaceAll(mark, word), rest);
}

/**
 * Whether two texts are the halves of one number that was parted at its comma: `30` and `5 N` of `30,5 N`.
 *
 * @param first   what stands before the comma
 * @param second  what stands after it
 */
export function partedAtComma(first: string, second: string): boolean {
  return /^[-+]?[\d,]+$/.test(first) && /^\d/.test(second);
}

function misreadComma(shown: string): Misread {
  const point = shown.replaceAll(",", ".");
  // One comma before three digits is a thousand to some readers and one to others.
  const thousands = /^[+-]?\d{1,3}(?:,\d{3})+(?![\d,])/.test(shown);
  const want = thousands ? `write ${shown.replaceAll(",", "")} or, if a decimal is meant, ${point}` : `write ${point}`;
  return { code: "comma", got: `${quoted(shown)} has a comma in its number`, want };
}

/** What a person meant who wrote pounds or kilograms for a force, with its size in the commonest unit. */
function meant(amount: number, spelled: string, dimension: Dimension): string | undefined {
  const { si, units } = wanted[dimension];
  const first = units[0];
  const fixes: Readonly<Record<string, string>> =
    dimension === "temperature" ? { C: "degC", F: "degF" } : { lb: "lbf", lbs: "lbf", lbm: "lbf", kg: "kgf" };
  const fixed = spelled.replace(unitName, (name) => fixes[name] ?? name);
  if (fixed === spelled || si === undefined || first === undefined) return undefined;
  const quantity = math.unit(amount, fixed);
  if (!quantity.equalBase(math.unit(si))) return undefined;
  const inFirst = fixed === first ? "" : ` (${Number(quantity.toNumber(first).toPrecision(5))} ${first})`;
  return `write ${amount} ${fixed}${inFirst}`;
}

/** What a known unit measures, in words. */
function kindOf(spelled: string): string {
  const unit = math.unit(spelled);
  const kinds = [...Object.values(wanted).map(({ si, noun }) => [si, noun] as const), ...otherKinds];
  return kinds.find(([si]) => si !== undefined && unit.equalBase(math.unit(si)))?.[1] ?? "a quantity of another kind";
}

/** The nearest unit name, those of the wanted dimension first; one that shares no letter with what was typed is no help. */
function nearestUnit(typed: string, units: readonly string[]): string | undefined {
  const namesOf = (texts: readonly string[]) => texts.flatMap((text) => text.match(unitName) ?? []);
  const alike = (names: readonly string[]) =>
    nearestNames(typed, names).find((name) => [...name.toLowerCase()].some((letter) => typed.toLowerCase().includes(letter)));
  return alike(namesOf(units)) ?? alike(Object.values(wanted).flatMap((kind) => namesOf(kind.units)));
}
