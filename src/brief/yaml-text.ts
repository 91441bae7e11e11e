import type { Brief, Dimension, Quantity, Units } from "../model.ts";
import { jsonText } from "../problem.ts";
import { inUnits, unitLabel } from "../units/show.ts";

/** What stands at a key of a brief: text as it is to be read back, a list, or a set of keys; what is undefined is left out. */
export type Written = string | readonly Written[] | { readonly [key: string]: Written | undefined };

/** Text that needs no quotes wherever it stands. */
const plain = /^[\p{L}\p{N}.+/][\p{L}\p{N} ./+±%()°²³·_-]*$/u;
/** Longest line on which a set of keys is written in braces. */
const longestLine = 110;

/**
 * A set of keys -> YAML that a brief's reader reads back to the same text, key by key in their order.
 *
 * @param top  sections by name; a section of texts stands on one line where it is short
 * @returns ended by a line break; does not throw
 */
export function yamlText(top: { readonly [key: string]: Written | undefined }): string {
  return `${entries(top)
    .flatMap(([key, value]) => lines(key, value, ""))
    .join("\n")}\n`;
}

function lines(key: string, value: Written, indent: string): string[] {
  const short = `${indent}${key}: ${inBraces(value)}`;
  const isDeep = typeof value === "object" && Object.values(value).some(isSet);
  if (typeof value === "string" || (!isDeep && short.length <= longestLine)) return [short];
  if (isList(value)) return [`${indent}${key}:`, ...value.map((item) => `${indent}  - ${inBraces(item)}`)];
  return [`${indent}${key}:`, ...entries(value).flatMap(([name, inner]) => lines(name, inner, `${indent}  `))];
}

function inBraces(value: Written): string {
  if (typeof value === "string") return plain.test(value) && value === value.trim() ? value : jsonText(value);
  if (isList(value)) return `[${value.map(inBraces).join(", ")}]`;
  return `{ ${entries(value)
    .map(([key, inner]) => `${key}: ${inBraces(inner)}`)
    .join(", ")} }`;
}

function entries(set: { readonly [key: string]: Written | undefined }): [string, Written][] {
  return Object.entries(set).filter((entry): entry is [string, Written] => entry[1] !== undefined);
}

function isList(value: Written): value is readonly Written[] {
  return Array.isArray(value);
}

function isSet(value: Written | undefined): boolean {
  return typeof value === "object" && (!isList(value) || value.some(isSet));
}

/** Writes the quantities of one brief: in their author's own words where there are any, else exactly, in the brief's units. */
export class QuantityPen {
  private readonly texts: ReadonlyMap<string, string>;
  private readonly taken: ReadonlySet<string>;
  private readonly units: Units;

  constructor({ asked, defaults, units }: Brief) {
    this.texts = new Map(asked.map(({ key, text }) => [key, text]));
    this.taken = new Set(defaults.map(({ key }) => key));
    this.units = units;
  }

  /** What the practice, not the author, supplied is not written, so that it is supplied again. */
  isTaken(key: string): boolean {
    return this.taken.has(key);
  }

  /** The author's own text at a key. */
  text(key: string): string | undefined {
    return this.texts.get(key);
  }

  /** The author's own texts under a key, by the name of the key. */
  textsUnder(key: string): Readonly<Record<string, string>> {
    const prefix = `${key}.`;
    const found = [...this.texts].filter(([path]) => path.startsWith(prefix));
    return Object.fromEntries(found.map(([path, text]) => [path.slice(prefix.length), text]));
  }

  /** An exact quantity, SI. */
  exact(key: string, value: number | undefined, dimension: Dimension): string | undefined {
    return this.texts.get(key) ?? (value === undefined ? undefined : exactText(value, dimension, this.units));
  }

  /** A quantity that is exact, has a tolerance or is a window, SI. */
  requirement(key: string, quantity: Quantity | undefined, dimension: Dimension): Written | undefined {
    if (quantity === undefined) return undefined;
    const { nominal, min, max } = quantity;
    const whole = this.texts.get(key);
    if (whole !== undefined) return whole;
    if (nominal === undefined)
      return { min: this.exact(`${key}.min`, min, dimension), max: this.exact(`${key}.max`, max, dimension) };
    const text = exactText(nominal, dimension, this.units);
    return min === max ? text : `${text} ± ${withUnit((max ?? nominal) - nominal, dimension, this.units, 12)}`;
  }
}

/**
 * A number with its unit that reads back to the same number.
 *
 * @param value      SI unit of the dimension
 * @param dimension  what it measures
 * @param units      the units to write it in
 * @returns the fewest digits that give the value back, or 17 where rounding lets none
 */
export function exactText(value: number, dimension: Dimension, units: Units): string {
  const shown = inUnits(value, dimension, units);
  const size = 1 / (inUnits(1, dimension, units) - inUnits(0, dimension, units));
  const zero = -inUnits(0, dimension, units);
  const digits = [12, 13, 14, 15, 16, 17].find((count) => (Number(shown.toPrecision(count)) + zero) * size === value) ?? 17;
  return withUnit(value, dimension, units, digits);
}

function withUnit(value: number, dimension: Dimension, units: Units, digits: number): string {
  const label = unitLabel(dimension, units);
  return `${Number(inUnits(value, dimension, units).toPrecision(digits))}${label === "" ? "" : ` ${label}`}`;
}
