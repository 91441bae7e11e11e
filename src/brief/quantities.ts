import type { Dimension, Quantity, Window } from "../model.ts";
import { quoted } from "../problem.ts";
import { readToleranced, type Toleranced } from "../units/read.ts";
import type { BriefKey } from "./key.ts";
import { keyAt } from "./keys.ts";
import { present } from "./present.ts";
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
  return present<Window>({ min, max });
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
