import type { Brief, CheckBrief, Clearance, Dimension, Limits, Load, Order, Scatter, Service, Sweep } from "../model.ts";
import { practices } from "../practice/practices.ts";
import { QuantityPen, type Written, yamlText } from "./yaml-text.ts";

/**
 * A brief -> YAML that reads back to an equal brief. What `asked` holds is written in its author's own words; a dimension or a
 * force without such words is written from its value, in the brief's units; what `defaults` holds is left out. A threshold is
 * written only from `asked`.
 *
 * @param brief  a resolved brief; one to be checked is written with its design and without a sweep
 * @returns ended by a line break; does not throw
 */
export function writeBrief(brief: Brief | CheckBrief): string {
  const pen = new QuantityPen(brief);
  return yamlText({
    title: brief.title,
    practice: brief.practice,
    nested: brief.nested === undefined ? undefined : String(brief.nested),
    load: loadOf(brief.load, pen),
    envelope: filled(envelopeOf(brief, pen)),
    ...("design" in brief ? { design: designOf(brief, pen) } : { sweep: sweepOf(brief.sweep, pen) }),
    service: filled(serviceOf(brief.service, pen)),
    limits: filled(limitsOf(brief.limits, brief, pen)),
    cost: filled(pen.textsUnder("cost")),
    rank: "design" in brief || pen.isTaken("rank") ? undefined : [...(brief.yieldFirst ? ["yield"] : []), ...brief.rank],
    order: brief.order && filled(orderOf(brief.order, pen)),
  });
}

type Keys = { readonly [key: string]: Written | undefined };

/** A section with a key in it, or nothing. */
function filled(section: Keys): Keys | undefined {
  return Object.values(section).some((value) => value !== undefined) ? section : undefined;
}

function loadOf(load: Load, pen: QuantityPen): Keys {
  const points = (list: Extract<Load, { kind: "points" }>["points"]) =>
    list.map(({ name, length, force }, i) => ({
      name,
      length: pen.exact(`load.points[${i + 1}].length`, length, "length"),
      force: pen.requirement(`load.points[${i + 1}].force`, force, "force"),
    }));
  switch (load.kind) {
    case "forceAtDeflection":
      return {
        force: pen.requirement("load.force", load.force, "force"),
        deflection: pen.exact("load.deflection", load.deflection, "length"),
      };
    case "points":
      return { points: points(load.points) };
    case "rateAndPoint":
      return { rate: pen.requirement("load.rate", load.rate, "rate"), points: points([load.point]) };
    case "rateAndLargestForce":
      return {
        rate: pen.requirement("load.rate", load.rate, "rate"),
        largestForce: pen.exact("load.largestForce", load.largestForce, "force"),
      };
  }
}

function envelopeOf({ envelope }: Brief, pen: QuantityPen): Keys {
  const window = (name: "outsideDiameter" | "insideDiameter" | "freeLength" | "solidLength") =>
    pen.requirement(`envelope.${name}`, envelope[name], "length");
  // A bore or rod may have been given as a window, of which the brief keeps the end that counts.
  const hole = (name: "bore" | "rod") =>
    filled(pen.textsUnder(`envelope.${name}`)) ?? pen.exact(`envelope.${name}`, envelope[name], "length");
  return {
    bore: hole("bore"),
    rod: hole("rod"),
    clearance: clearanceOf(envelope.clearance, pen),
    outsideDiameter: window("outsideDiameter"),
    insideDiameter: window("insideDiameter"),
    freeLength: window("freeLength"),
    solidLength: window("solidLength"),
  };
}

function clearanceOf(clearance: Clearance | undefined, pen: QuantityPen): string | undefined {
  if (clearance === undefined) return undefined;
  if ("share" in clearance) return pen.exact("envelope.clearance", clearance.share, "share");
  return pen.exact("envelope.clearance", clearance.length, "length");
}

/** Names of entries, or the paths of files that hold them. */
const nameOf = ({ name, path }: { readonly name: string; readonly path?: string }) => path ?? name;

function sweepOf({ wires, materials, ends, turns, meanDiameter, freeLength }: Sweep, pen: QuantityPen): Keys {
  const step = meanDiameter === "exact" ? "exact" : { step: pen.exact("sweep.meanDiameter.step", meanDiameter.step, "length") };
  return {
    wires: wires.map(nameOf),
    materials: materials.map(nameOf),
    ends: ends.map(nameOf),
    turns: pen.isTaken("sweep.turns") ? undefined : turns,
    meanDiameter: pen.isTaken("sweep.meanDiameter") ? undefined : step,
    freeLength: freeLength && { step: pen.exact("sweep.freeLength.step", freeLength.step, "length") },
  };
}

function designOf({ design }: CheckBrief, pen: QuantityPen): Keys {
  const { wire, material, ends } = design;
  const length = (name: "outsideDiameter" | "insideDiameter" | "meanDiameter" | "freeLength") =>
    pen.exact(`design.${name}`, design[name], "length");
  return {
    wire: pen.text("design.wire") ?? `${wire.series} ${wire.label}`,
    material: nameOf(material),
    ends: nameOf(ends),
    outsideDiameter: length("outsideDiameter"),
    insideDiameter: length("insideDiameter"),
    meanDiameter: length("meanDiameter"),
    totalTurns: pen.exact("design.totalTurns", design.totalTurns, "number"),
    activeTurns: pen.exact("design.activeTurns", design.activeTurns, "number"),
    freeLength: length("freeLength"),
    rate: pen.exact("design.rate", design.rate, "rate"),
  };
}

function serviceOf(service: Service, pen: QuantityPen): Keys {
  const word = (name: "seats" | "farEnd" | "set" | "surface" | "strength") =>
    pen.isTaken(`service.${name}`) ? undefined : service[name];
  return {
    seats: word("seats"),
    farEnd: word("farEnd"),
    set: word("set"),
    surface: word("surface"),
    strength: word("strength"),
    cycles: pen.exact("service.cycles", service.cycles, "number"),
    frequency: pen.exact("service.frequency", service.frequency, "frequency"),
    temperature: pen.exact("service.temperature", service.temperature, "temperature"),
    scatter: service.scatter && scatterOf(service.scatter, pen),
  };
}

function scatterOf({ shape, grade, ...numbers }: Scatter, pen: QuantityPen): Keys {
  const word = (name: "shape" | "grade", text: string) => (pen.isTaken(`service.scatter.${name}`) ? undefined : text);
  const number = (name: keyof typeof numbers, dimension: Dimension) =>
    pen.isTaken(`service.scatter.${name}`) ? undefined : pen.exact(`service.scatter.${name}`, numbers[name], dimension);
  return {
    draws: number("draws", "number"),
    shape: word("shape", shape),
    seed: number("seed", "number"),
    grade: word("grade", String(grade)),
    wireDiameter: number("wireDiameter", "length"),
    coilDiameter: number("coilDiameter", "length"),
    turns: number("turns", "number"),
    freeLength: number("freeLength", "length"),
    modulus: number("modulus", "share"),
  };
}

function orderOf({ hand, governing, free, finish, drawing, notes, quantity }: Order, pen: QuantityPen): Keys {
  return { hand, governing, free, quantity: pen.exact("order.quantity", quantity, "number"), finish, drawing, notes };
}

/** Limits that are off unless a brief asks them. */
const offAnyway: readonly string[] = ["workingStress", "loadTolerance"];

function limitsOf({ lifted, ...limits }: Limits, brief: Brief, pen: QuantityPen): Keys {
  const written = Object.entries(limits).map(([name, limit]): [string, Written | undefined] => {
    if (limit === "off") return [name, offAnyway.includes(name) ? undefined : "off"];
    return [name, filled({ ...pen.textsUnder(`limits.${name}`), ...wordsOf(name, limit, brief, pen) })];
  });
  return { ...Object.fromEntries(written), ...Object.fromEntries(lifted.map((name) => [name, "off"])) };
}

/** What a limit takes besides numbers. */
function wordsOf(name: string, limit: object, { practice, service }: Brief, pen: QuantityPen): Keys {
  if ("factor" in limit) return { factor: pen.isTaken(`limits.${name}.factor`) ? undefined : String(limit.factor) };
  if ("grade" in limit) return { grade: String(limit.grade) };
  // Where no line is asked the usual one stands there without having been taken as a default.
  const isAsked = service.cycles !== undefined && practices[practice].fatigue.kind === "endured";
  const isUsual = pen.isTaken(`limits.${name}.line`) || !isAsked;
  if ("line" in limit) return { line: isUsual && limit.line === "goodman" ? undefined : String(limit.line) };
  return {};
}
