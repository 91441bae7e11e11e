import type { Brief, Dimension, LimitName, MeritName, Window } from "../../model.ts";

/** One number of a brief that holds a limit, and that a reader of the page may move. */
export interface Bound {
  readonly limit: LimitName;
  /** Where it stands in a brief, or would stand. */
  readonly key: string;
  /** What it is called beside its limit. */
  readonly label: string;
  readonly dimension: Dimension;
  /** SI; absent where nothing is set. */
  readonly value?: number;
  /** Zero is a value of it. */
  readonly mayBeZero?: true;
  /** The figure that it bounds, where that is an axis of the chart. */
  readonly merit?: MeritName;
}

type Given = Omit<Bound, "limit" | "value">;

/**
 * Every bound that a brief sets or may set, in the order in which a candidate falls.
 *
 * @param brief  resolved; what it leaves to the practice has the practice's value
 * @returns windows with both ends where both are common; an end that is seldom asked only where the brief has it
 */
export function boundsOf(brief: Brief): Bound[] {
  return [
    ...turnsAndSolid(brief),
    ...diameters(brief),
    ...windowEnds("freeLength", "envelope.freeLength", "length", brief.envelope.freeLength, both, "freeLength"),
    ...clash(brief),
    ...stress(brief),
    ...duty(brief),
  ];
}

const both = ["min", "max"] as const;

function turnsAndSolid({ limits, envelope }: Brief): Bound[] {
  const largest = envelope.solidLength?.min === undefined ? (["max"] as const) : both;
  return [
    ...limitWindow("turns", limits.turns),
    ...windowEnds("solidLength", "envelope.solidLength", "length", envelope.solidLength, largest),
    ...limitWindow("index", limits.index),
  ];
}

function limitWindow(limit: "turns" | "index", window: Window | "off"): Bound[] {
  return windowEnds(limit, `limits.${limit}`, "number", window === "off" ? undefined : window, both);
}

function diameters(brief: Brief): Bound[] {
  const { bore, rod, outsideDiameter, insideDiameter } = brief.envelope;
  const outside = "outsideDiameter";
  return [
    bound(outside, { key: oneEnd(brief, "bore", "min"), label: "bore", dimension: "length", merit: outside }, bore),
    ...(bore === undefined ? [] : clearance(outside, brief)),
    ...windowEnds(outside, "envelope.outsideDiameter", "length", outsideDiameter, seldom(outsideDiameter, "min"), outside),
    bound("insideDiameter", { key: oneEnd(brief, "rod", "max"), label: "rod", dimension: "length" }, rod),
    ...(bore === undefined && rod !== undefined ? clearance("insideDiameter", brief) : []),
    ...windowEnds("insideDiameter", "envelope.insideDiameter", "length", insideDiameter, seldom(insideDiameter, "max")),
  ];
}

/** Both ends of a window of which one is seldom asked, that one only where it is. */
function seldom(window: Window | undefined, end: "min" | "max"): readonly ("min" | "max")[] {
  return both.filter((one) => one !== end || window?.[end] !== undefined);
}

/** A bore or rod stands alone, or as a window of which one end counts. */
function oneEnd({ asked }: Brief, name: "bore" | "rod", end: "min" | "max"): string {
  const inside = `envelope.${name}.${end}`;
  return asked.some(({ key }) => key === inside) ? inside : `envelope.${name}`;
}

function clearance(limit: LimitName, { envelope }: Brief): Bound[] {
  const key = "envelope.clearance";
  const given = envelope.clearance;
  if (given === undefined || "share" in given) {
    return [bound(limit, { key, label: "clearance", dimension: "share", mayBeZero: true }, given?.share ?? 0)];
  }
  return [bound(limit, { key, label: "clearance", dimension: "length", mayBeZero: true }, given.length)];
}

function clash({ limits }: Brief): Bound[] {
  const named = (name: string, label: string, dimension: Dimension, value?: number) =>
    bound("clash", { key: `limits.clash.${name}`, label, dimension, mayBeZero: true }, value);
  const { clash } = limits;
  // Where a formula gives it, only a length of the reader's own can stand in its place.
  if (clash === "off" || "minimumGap" in clash) return [named("length", "length", "length")];
  if ("length" in clash) return [named("length", "length", "length", clash.length)];
  if ("ofSolidLength" in clash) return [named("ofSolidLength", "of solid length", "share", clash.ofSolidLength)];
  return [named("ofDeflection", "of deflection", "share", clash.ofDeflection)];
}

function stress({ limits }: Brief): Bound[] {
  return (["workingStress", "solidStress"] as const).map((limit) => {
    const given = limits[limit];
    const key = `limits.${limit}`;
    if (given !== "off" && "max" in given) {
      return bound(limit, { key: `${key}.max`, label: "largest", dimension: "stress" }, given.max);
    }
    const axis = limit === "solidStress" ? { merit: "solidSafety" as const } : {};
    const safety = given === "off" ? undefined : given.safety;
    return bound(limit, { key: `${key}.safety`, label: "safety", dimension: "number", ...axis }, safety);
  });
}

/** What is asked only of a spring that cycles, shakes or may bow. */
function duty({ limits, service }: Brief): Bound[] {
  const { fatigue, buckling, surge } = limits;
  const found: Bound[] = [];
  const one = (limit: LimitName, name: string, value: number | undefined) =>
    found.push(bound(limit, { key: `limits.${limit}.${name}`, label: name, dimension: "number" }, value));
  if (service.cycles !== undefined) one("fatigue", "safety", fatigue === "off" ? undefined : fatigue.safety);
  if (service.seats !== "guided") one("buckling", "safety", buckling === "off" ? undefined : buckling.safety);
  if (service.frequency !== undefined) one("surge", "multiple", surge === "off" ? undefined : surge.multiple);
  return found;
}

function windowEnds(
  limit: LimitName,
  key: string,
  dimension: Dimension,
  window: Window | undefined,
  ends: readonly ("min" | "max")[],
  merit?: MeritName,
): Bound[] {
  return ends.map((end) => {
    const label = end === "min" ? "least" : "largest";
    return bound(limit, { key: `${key}.${end}`, label, dimension, ...(merit ? { merit } : {}) }, window?.[end]);
  });
}

function bound(limit: LimitName, given: Given, value: number | undefined): Bound {
  return { limit, ...given, ...(value === undefined ? {} : { value }) };
}
