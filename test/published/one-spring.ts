import type { Design } from "../../src/model.ts";
import { shipped } from "../catalog/shipped.ts";
import { stockOf, sweepBrief } from "./run.ts";

/** A spring that a book gives by its dimensions. */
export interface BookSpring {
  /** A shipped material, or the text of a material file. */
  readonly material: string;
  readonly wire: string;
  readonly meanDiameter: string;
  readonly ends: string;
  readonly totalTurns: number;
  /** What settles its free length: itself, or the largest force with the room left before solid then. */
  readonly length: { readonly free: string } | { readonly largestForce: string; readonly room: string };
}

/**
 * Every figure of a spring as a book gives it, by the built program: a brief whose smallest spring is this one, for its grid of mean
 * diameters begins with the book's. Strength is the textbook's power law.
 */
export function oneSpring({ material, wire, meanDiameter, ends, totalTurns, length }: BookSpring): Design {
  const isFile = material.includes("\n");
  const active = totalTurns - shipped.ends(ends, "").deadTurns;
  // Any rate serves, since the dimensions settle it; and near its free length a spring bears next to no force.
  const rate = "rate: { min: 1e-6 N/mm, max: 1e6 N/mm }";
  const [load, clash] =
    "free" in length
      ? [`{ ${rate}, points: [{ length: ${length.free}, force: 1e-9 N }] }`, "off"]
      : [`{ ${rate}, largestForce: ${length.largestForce} }`, `{ length: ${length.room} }`];
  const brief = `
practice: handbook
load: ${load}
sweep:
  wires: [./stock.csv]
  materials: [${isFile ? "./material.yaml" : material}]
  ends: [${ends}]
  turns: quarter
  meanDiameter: { step: ${meanDiameter} }
service: { seats: guided, set: as wound, strength: fit }
limits: { index: off, turns: { min: ${active - 0.1}, max: ${active + 0.1} }, clash: ${clash}, solidStress: off }
rank: outsideDiameter
`;
  const beside = { "stock.csv": stockOf([wire]), ...(isFile ? { "material.yaml": material } : {}) };
  const [spring] = sweepBrief(brief, beside, { top: 1 }).designs;
  if (spring === undefined) throw new Error("the program found no spring");
  return spring;
}
