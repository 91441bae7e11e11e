import type { Load } from "../model.ts";
import { checkPoints, readPoints } from "./points.ts";
import { exactQuantity, requirement } from "./quantities.ts";
import type { Section } from "./section.ts";

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
