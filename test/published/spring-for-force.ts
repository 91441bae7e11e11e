import type { Design } from "../../src/model.ts";
import { stockOf, sweepBrief } from "./run.ts";

/** What a book asks of a spring and chooses for it. */
export interface ForceExample {
  /** The text of a material file. */
  readonly material: string;
  readonly wire: string;
  /** The book's mean diameter; or `exact`, the largest at which the limit of working stress holds. */
  readonly meanDiameter: string;
  readonly force: string;
  readonly deflection: string;
  /** Room left before solid, as a brief's `clash`. */
  readonly clash: string;
  /** A brief's `workingStress`. */
  readonly workingStress?: string;
}

/** The squared and ground spring whose turns give a force at a deflection, by the built program. */
export function springForForce(example: ForceExample): Design {
  const { material, wire, meanDiameter, force, deflection, clash, workingStress = "off" } = example;
  const isExact = meanDiameter === "exact";
  // At a given rate free length falls as the mean diameter grows; a grid of multiples begins with the book's.
  const brief = `
practice: handbook
load: { force: ${force}, deflection: ${deflection} }
sweep:
  wires: [./stock.csv]
  materials: [./material.yaml]
  ends: [squared-ground]
  turns: any
  meanDiameter: ${isExact ? "exact" : `{ step: ${meanDiameter} }`}
service: { seats: guided, set: as wound, strength: fit }
limits: { index: off, turns: off, clash: ${clash}, solidStress: off, workingStress: ${workingStress} }
rank: ${isExact ? "freeLength" : "outsideDiameter"}
`;
  const [spring] = sweepBrief(brief, { "stock.csv": stockOf([wire]), "material.yaml": material }, { top: 1 }).designs;
  if (spring === undefined) throw new Error("the program found no spring");
  return spring;
}
