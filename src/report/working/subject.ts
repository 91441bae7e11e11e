import { type Asks, asksOf } from "../../constrain/asks.ts";
import type { Candidate } from "../../constrain/candidate.ts";
import { candidateAt } from "../../constrain/design.ts";
import type { Brief, CheckBrief, Choice, Design, EndStyle, GivenDesign, Material, Wire } from "../../model.ts";

/** The spring that a sheet works through, with all that its figures come from. */
export interface Subject {
  readonly brief: Brief;
  readonly design: Design;
  readonly asks: Asks;
  readonly candidate: Candidate;
  readonly material: Material;
  readonly wire: Wire;
  readonly ends: EndStyle;
  /** The data of a given spring; undefined for one that the walk made. */
  readonly given: GivenDesign | undefined;
}

/**
 * Find a design's wire, material and ends again, and set the record that the engine's figures are read from to it.
 *
 * @param brief   the brief that it answers, or that judges it
 * @param design  a design of that brief
 * @throws Error where the design is none of the brief's
 */
export function subjectOf(brief: Brief | CheckBrief, design: Design): Subject {
  const { sweep } = brief;
  const given = "design" in brief ? brief.design : undefined;
  const material = sweep.materials.findIndex(({ name }) => name === design.material);
  const ends = sweep.ends.findIndex(({ name }) => name === design.ends);
  const wire =
    given?.wire ??
    sweep.wires.flatMap(({ wires }) => wires).find(({ series, label }) => series === design.series && label === design.wire);
  if (material < 0 || ends < 0 || wire === undefined) throw new Error("the design is not of this brief");
  const asks = asksOf(brief, given !== undefined);
  const choice: Choice = {
    material,
    wire,
    ends,
    totalTurns: design.totalTurns,
    meanDiameter: design.meanDiameter,
    freeLength: design.freeLength,
  };
  return {
    brief,
    design,
    asks,
    candidate: candidateAt(brief, asks, choice),
    material: sweep.materials[material] as Material,
    wire,
    ends: sweep.ends[ends] as EndStyle,
    given,
  };
}

/**
 * Where a figure of the brief stands, or who stood in for it.
 *
 * @param brief  a resolved brief
 * @param key    key of the figure, or of the section that holds it
 */
export function briefSource({ asked, defaults }: Brief, key: string): string {
  const matches = (one: { readonly key: string }) => one.key.startsWith(key);
  if (asked.some(matches)) return `brief, ${key}`;
  return defaults.find(matches)?.source ?? `brief, ${key}`;
}
