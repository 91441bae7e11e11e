import type { Load, LoadPoint, Quantity } from "../../model.ts";
import { quoted } from "../../problem.ts";
import { asWritten, exactQuantity, requirement } from "../quantities.ts";
import type { Section } from "../section.ts";

const kinds = "give one of: force + deflection; points (two or more); rate + points (one); rate + largestForce";

/** The section `load` -> what is asked of load, SI; undefined where something in it is wrong, with the reading told what. */
export function readLoad(load: Section): Load | undefined {
  // All that is given is read, whatever the kind turns out to be: its own faults come out in the same pass.
  const force = requirement(load, "force");
  const deflection = exactQuantity(load, "deflection");
  const rate = requirement(load, "rate");
  const largestForce = exactQuantity(load, "largestForce");
  const points = readPoints(load);

  const given = ["force", "deflection", "rate", "points", "largestForce"].filter((name) => load.has(name)).join(" + ");
  switch (given) {
    case "force + deflection":
      if (force && (force.min === undefined || force.max === undefined)) {
        return load.problem("force", "openWindow", "has one end only", "a force takes both: { min: …, max: … }");
      }
      return force && deflection !== undefined ? { kind: "forceAtDeflection", force, deflection } : undefined;
    case "points":
      return points && checkPoints(load, points) ? { kind: "points", points } : undefined;
    case "rate + points": {
      const point = points?.[0];
      if (points && points.length !== 1) {
        const want = "a rate takes one point; leave the rate out, or all points but one";
        return load.problem("points", "loadKind", `has ${points.length} points beside a rate`, want);
      }
      return rate && point ? { kind: "rateAndPoint", rate, point } : undefined;
    }
    case "rate + largestForce":
      return rate && largestForce !== undefined ? { kind: "rateAndLargestForce", rate, largestForce } : undefined;
    default:
      return load.problem("", "loadKind", given === "" ? "asks nothing" : `gives ${given}`, kinds);
  }
}

/** Two bounds of the rate that differ by less than this share are one: room for rounding where points lie on a line. */
const rounding = 1e-9;

/** `load.points` -> the points in the author's order, SI; undefined where one of them is wrong or none is given. */
function readPoints(load: Section): readonly LoadPoint[] | undefined {
  const sections = load.items("points");
  if (sections === undefined) return undefined;
  if (sections.length === 0) return load.problem("points", "empty", "is an empty list", "give each length with its force");
  const points = sections.map((section, index) => section && readPoint(section, index));
  if (!points.every((point) => point !== undefined)) return undefined;
  if (points.every(({ force }) => (force.max as number) <= 0)) {
    return load.problem("points", "range", "has no force above zero", "a compression spring pushes at one length at least");
  }
  return points;
}

function readPoint(section: Section, index: number): LoadPoint | undefined {
  const name = section.has("name") ? section.scalar("name") : `point ${index + 1}`;
  const length = section.require("length") ? exactQuantity(section, "length") : undefined;
  const force = section.require("force") ? requirement(section, "force") : undefined;
  if (force && (force.min === undefined || force.max === undefined)) {
    return section.problem("force", "openWindow", "has one end only", "a force takes both: { min: …, max: … }");
  }
  return name !== undefined && length !== undefined && force ? { name, length, force } : undefined;
}

/** Notes what keeps two or more points from lying on one rising line; true where nothing does. */
function checkPoints(load: Section, points: readonly LoadPoint[]): boolean {
  const note = (code: string, got: string, want: string) => load.problem("points", code, got, want) ?? false;
  if (points.length < 2) return note("loadKind", "has one point", "give a second, or a rate beside it");

  let least = { rate: 0, pair: "" };
  let most = { rate: Number.POSITIVE_INFINITY, pair: "" };
  for (const [index, one] of points.entries()) {
    for (const other of points.slice(index + 1)) {
      const pair = `${quoted(one.name)} and ${quoted(other.name)}`;
      if (one.length === other.length)
        return note("contradiction", `${pair} have one length`, "each point has a length of its own");
      const [long, short] = one.length > other.length ? [one, other] : [other, one];
      const travel = long.length - short.length;
      const span = { low: (low(short.force) - high(long.force)) / travel, high: (high(short.force) - low(long.force)) / travel };
      if (span.high <= 0 || greatestNominal(short.force) <= leastNominal(long.force)) {
        const got = `${quoted(short.name)} is shorter than ${quoted(long.name)} and its force is not larger`;
        return note("contradiction", got, "a compression spring pushes harder the shorter it is (forces swapped?)");
      }
      if (span.low > least.rate) least = { rate: span.low, pair };
      if (span.high < most.rate) most = { rate: span.high, pair };
    }
  }
  if (least.rate > most.rate * (1 + rounding)) {
    const shown = (rate: number) => asWritten(rate, "rate", load.reading.asked);
    const got = `${least.pair} need a rate of at least ${shown(least.rate)}, ${most.pair} at most ${shown(most.rate)}`;
    return note("contradiction", got, "widen a force so that one straight line passes through all of them");
  }
  return true;
}

const low = (force: Quantity) => force.min as number;
const high = (force: Quantity) => force.max as number;
const greatestNominal = (force: Quantity) => force.nominal ?? high(force);
const leastNominal = (force: Quantity) => force.nominal ?? low(force);
