import type { Dimension, Units } from "../../model.ts";
import { inUnits, showNumber, unitLabel } from "../../units/show.ts";
import type { Session } from "../session/session.ts";
import type { Bound } from "./bounds.ts";

/** Digits of a value that was written in other units than those shown. */
const DIGITS = 5;

/** A number of a reader's units as a brief would hold it, such as `17 mm`, `15 %` or `1.2`. */
export function quantityText(number: number, dimension: Dimension, units: Units): string {
  return `${number}${unitOf(dimension, units)}`;
}

/**
 * What stands in the field of a bound.
 *
 * @param bound    as the last good run has it
 * @param written  the text of the brief, where it has one
 * @param units    the reader's units
 * @returns the text itself where it is in the unit that is shown, else its value in that unit; empty where nothing is set
 */
export function fieldText({ value, dimension }: Bound, written: string | undefined, units: Units): string {
  if (written !== undefined && (written.trim().endsWith(unitLabel(dimension, units)) || value === undefined)) return written;
  return value === undefined ? "" : `${showNumber(value, dimension, units, DIGITS)}${unitOf(dimension, units)}`;
}

/** The text at a key with which the run that is shown was made. */
export function settledText(key: string, { shown }: Pick<Session, "shown">): string | undefined {
  return shown.brief.asked.find((one) => one.key === key)?.text;
}

/** Whether the run that is shown was made with the text that now stands at a key. */
export function isSettled(key: string, session: Pick<Session, "shown" | "textAt">): boolean {
  return settledText(key, session) === session.textAt(key);
}

/** The number that a text begins with; undefined where it begins with none. */
export function leadingNumber(text: string): number | undefined {
  const number = Number.parseFloat(text);
  return Number.isFinite(number) ? number : undefined;
}

/** Where a slider begins and ends, and its round step, in the reader's units. */
export interface Travel {
  readonly low: number;
  readonly high: number;
  readonly step: number;
}

/**
 * The travel of a slider about a value: half of it to one and a half of it, or from nothing where it may be nothing.
 *
 * @param bound  a bound that has a value
 * @param units  the reader's units
 */
export function travelOf({ value = 0, dimension, mayBeZero }: Bound, units: Units): Travel {
  const about = inUnits(value, dimension, units) || inUnits(inUnitsOfOne(dimension), dimension, units);
  const step = roundStep(mayBeZero ? 2 * about : about);
  const [low, high] = roundSpan([mayBeZero ? 0 : about / 2, mayBeZero ? 2 * about : 1.5 * about], step);
  return { low: Math.max(low, mayBeZero ? 0 : step), high, step };
}

/** What a slider that stands at nothing reaches about: a tenth as a share, 1 mm as a length. */
function inUnitsOfOne(dimension: Dimension): number {
  return dimension === "share" ? 0.1 : 0.001;
}

function unitOf(dimension: Dimension, units: Units): string {
  const label = unitLabel(dimension, units);
  return label === "" ? "" : ` ${label}`;
}
/** Steps across a span: enough to aim, few enough to land on round numbers. */
const MOST_STEPS = 100;

/**
 * The round step, 1, 2 or 5 times a power of ten, that takes between 40 and 100 steps across a span.
 *
 * @param span  above zero, in the unit that a reader sees
 */
export function roundStep(span: number): number {
  const power = 10 ** Math.floor(Math.log10(span / MOST_STEPS));
  const step = [1, 2, 5, 10].find((many) => span / (many * power) <= MOST_STEPS * (1 + 1e-9)) ?? 10;
  return withoutNoise(step * power, power);
}

/** The whole multiple of a step that is nearest to a number. */
export function nearestStep(value: number, step: number): number {
  return withoutNoise(Math.round(value / step) * step, step);
}

/**
 * A number moved by whole steps. One that lies between two multiples goes to a multiple first, so that what follows is round.
 *
 * @param value  in the unit that a reader sees
 * @param steps  how many, a negative count down
 * @param step   the round step
 */
export function movedBy(value: number, steps: number, step: number): number {
  const place = value / step;
  const from = steps > 0 ? Math.floor(place + 1e-9) : Math.ceil(place - 1e-9);
  return withoutNoise((from + steps) * step, step);
}

/** A span widened to whole multiples of a step. */
export function roundSpan([low, high]: readonly [number, number], step: number): readonly [number, number] {
  return [withoutNoise(Math.floor(low / step + 1e-9) * step, step), withoutNoise(Math.ceil(high / step - 1e-9) * step, step)];
}

/** A multiple of a step without the binary digits beyond those of the step. */
function withoutNoise(value: number, step: number): number {
  return Number(value.toFixed(Math.max(0, Math.ceil(-Math.log10(step) - 1e-9))));
}
