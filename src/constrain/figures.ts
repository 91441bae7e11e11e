import type { Brief, Choice, EndStyle, Material } from "../model.ts";
import { Candidate } from "./candidate/candidate.ts";
import { type WireProperties, wirePropertiesAt } from "./candidate/wire-properties.ts";
import { FreeLengthRange } from "./free-length-range.ts";
import { limitsFor } from "./limits/limits.ts";
import { resolveRequirements } from "./requirements/requirements.ts";

/** The figures of a spring by which it is ranked and drawn among thousands, SI; those of its design, without the rest. */
export interface SpringFigures {
  readonly wireDiameter: number;
  readonly totalTurns: number;
  readonly outsideDiameter: number;
  readonly freeLength: number;
  readonly rate: number;
  readonly solidSafety: number;
  readonly mass: number;
  readonly relativeCost: number;
}

/**
 * The figures of choices that come wire by wire: one record is set to each, as the search does, at a tenth of what it costs to
 * describe a design.
 *
 * @param brief         a resolved brief
 * @param requirements  its requirements
 * @returns a function from a choice (its material must be made in its size) to its figures
 */
export function figuresReader(brief: Brief, requirements = resolveRequirements(brief)): (choice: Choice) => SpringFigures {
  const c = new Candidate(requirements);
  const lengths = new FreeLengthRange(c, limitsFor(requirements));
  let [material, wire]: readonly [number, Choice["wire"] | null] = [-1, null];
  return (choice) => {
    if (choice.material !== material || choice.wire !== wire) {
      ({ material, wire } = choice);
      const entry = brief.sweep.materials[material] as Material;
      c.setWire(entry, material, wire, wirePropertiesAt(entry, wire.diameter, brief.service.strength) as WireProperties);
    }
    c.setEnds(brief.sweep.ends[choice.ends] as EndStyle, choice.ends, choice.totalTurns);
    c.setMeanDiameter(choice.meanDiameter);
    if (choice.freeLength === undefined) lengths.settle();
    else c.freeLength = choice.freeLength;
    const { wireDiameter, totalTurns, outsideDiameter, freeLength, rate, solidSafety, mass, relativeCost } = c;
    return { wireDiameter, totalTurns, outsideDiameter, freeLength, rate, solidSafety, mass, relativeCost };
  };
}

/** What a spring is, beside its figures. */
export interface NamedFigures extends SpringFigures {
  readonly material: string;
  /** Label of the wire in its series. */
  readonly wire: string;
  readonly ends: string;
}

/** The same with the names of material, wire and ends. */
export function namedFiguresReader(brief: Brief): (choice: Choice) => NamedFigures {
  const { materials, ends } = brief.sweep;
  const figuresOf = figuresReader(brief);
  return (choice) => ({
    ...figuresOf(choice),
    material: (materials[choice.material] as Material).name,
    wire: choice.wire.label,
    ends: (ends[choice.ends] as EndStyle).name,
  });
}
