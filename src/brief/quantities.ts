import { omitUndefined } from "../document/omit-undefined.ts";
import type { Asked, Dimension, Quantity, Units, Window } from "../model.ts";
import { quoted } from "../problem.ts";
import { readQuantity, readToleranced, type Toleranced } from "../units/read.ts";
import { type BriefKey, keyAt } from "./keys.ts";
import { Section } from "./section.ts";

/** The keys of a window. */
const ends = ["min", "max"];

/** What a number must be beside a quantity of its dimension. */
type Rule = Pick<BriefKey, "dimension" | "sign">;

/** An exact quantity at a key, SI; undefined where it is left out or wrong. */
export function exactQuantity(section: Section, name: string, rule: Rule = keyAt(section.pathOf(name))): number | undefined {
  const read = toleranced(section, name, rule);
  if (read === undefined || read.min === read.max) return read?.nominal;
  return section.problem(name, "noTolerance", `${section.scalar(name)} has a tolerance`, "this one is exact; leave the ± out");
}

/** A quantity that is exact, has a tolerance, or is a window `{ min, max }` of which one end may be open. */
export function requirement(section: Section, name: string): Quantity | undefined {
  if (section.holdsText(name)) return toleranced(section, name, keyAt(section.pathOf(name)));
  return openWindow(section, name) as Window | undefined;
}

/** `{ min }`, `{ max }` or both at a key, or the word `off` where the key takes it. */
export function window(section: Section, name: string): Window | "off" | undefined {
  const text = section.holdsText(name) ? section.scalar(name) : undefined;
  if (text === undefined || !/^[-+.]?\d/.test(text)) return openWindow(section, name);
  const want = `write { min: ${quoted(text)} } or { max: ${quoted(text)} }`;
  return section.problem(name, "windowNeeded", `${quoted(text)} alone is neither least nor largest`, want);
}

function openWindow(section: Section, name: string): Window | "off" | undefined {
  if (!section.has(name)) return undefined;
  const rule = keyAt(section.pathOf(name));
  const inner = section.section(name, ends);
  if (!(inner instanceof Section)) return inner as "off" | undefined;
  if (!inner.has("min") && !inner.has("max")) {
    return inner.problem("", "empty", "has neither min nor max", "write { min: … }, { max: … } or both");
  }
  const min = exactQuantity(inner, "min", rule);
  const max = exactQuantity(inner, "max", rule);
  // One value alone is a window of a limit; a load that is one value is written as it is.
  const alone = min === max && rule.kind === "window";
  if (min !== undefined && max !== undefined && min >= max && !alone) {
    const got = `min ${inner.scalar("min")} is not below max ${inner.scalar("max")}`;
    return inner.problem("", "contradiction", got, "a window has min < max (swapped?)");
  }
  if ((inner.has("min") && min === undefined) || (inner.has("max") && max === undefined)) return undefined;
  return omitUndefined<Window>({ min, max });
}

function toleranced(section: Section, name: string, { dimension, sign }: Rule): Toleranced | undefined {
  const text = section.scalar(name);
  if (text === undefined) return undefined;
  const read = readToleranced(text, dimension as Dimension);
  if (!("nominal" in read)) return section.problem(name, read.code, read.got, read.want);
  if (sign === "positive" && !(read.min > 0)) {
    return section.problem(name, "range", `${text} is not above zero`, "write a quantity above zero");
  }
  if (sign === "notNegative" && !(read.min >= 0)) {
    return section.problem(name, "range", `${text} is below zero`, "write zero or more");
  }
  section.reading.asked.push({ key: section.pathOf(name), text, dimension: dimension as Dimension, value: read.nominal });
  return read;
}

const inchUnit = /(?:^|[\d\s])(?:in|inch|inches|ft|foot|feet|mil|mils|yd)\b/;
const poundUnit = /(?:^|[\d\s])(?:lbf|kip|kips|ozf|poundforce)\b/;

/**
 * The units in which the load is written, by its first length and first force; a rate counts for both. mm and N where neither
 * shows.
 */
export function writtenUnits(asked: readonly Asked[]): Units {
  const load = asked.filter(({ key }) => key.startsWith("load."));
  const first = (dimension: "length" | "force", part: 0 | 1) => {
    const found = load.find((one) => one.dimension === dimension || one.dimension === "rate");
    if (found === undefined) return "";
    return found.dimension === "rate" ? (found.text.split(/[±+]/)[0]?.split("/")[part] ?? "") : found.text;
  };
  return {
    length: inchUnit.test(first("length", 1)) ? "in" : "mm",
    force: poundUnit.test(first("force", 0)) ? "lbf" : "N",
  };
}

/** A length or rate in the units in which the load is written, for a message. */
export function asWritten(value: number, dimension: "length" | "rate", asked: readonly Asked[]): string {
  const units = writtenUnits(asked);
  const unit = dimension === "length" ? units.length : `${units.force}/${units.length}`;
  const one = readQuantity(`1 ${unit}`, dimension);
  return "value" in one ? `${Number((value / one.value).toPrecision(6))} ${unit}` : "";
}
