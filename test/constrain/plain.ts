import { Candidate } from "../../src/constrain/candidate/candidate.ts";
import { wirePropertiesAt } from "../../src/constrain/candidate/wire-properties.ts";
import { resolveRequirements } from "../../src/constrain/requirements/requirements.ts";
import type { Brief, EndStyle, Limits, Material, Service, Wire } from "../../src/model.ts";

/** A brief as it is once read, of one material, wire and end style; all invented, SI. */

export const GROUND: EndStyle = {
  name: "squared-ground",
  deadTurns: 2,
  solidExtra: 0,
  pitchTurns: 0,
  pitchWires: 2,
  closed: true,
  ground: true,
};

export const STEEL: Material = {
  name: "steel",
  source: "invented",
  class: "cold drawn",
  density: 7850,
  moduli: [{ youngsModulus: 206e9, shearModulus: 80e9 }],
  modulusLoss: { perKelvin: 3.6e-4, source: "invented" },
  strength: { constant: { value: 2000e6, diameter: { min: 0.5e-3, max: 5e-3 } } },
  temperature: { max: 400 },
  relativeCost: 2,
  notes: [],
};

export const WIRE: Wire = { label: "2 mm", diameter: 2e-3, series: "invented" };

export const OFF: Limits = {
  index: "off",
  turns: "off",
  clash: "off",
  workingStress: "off",
  solidStress: "off",
  buckling: "off",
  surge: "off",
  fatigue: "off",
  loadTolerance: "off",
  lifted: [],
};

/** What of the brief is other than plain. */
export interface Change extends Partial<Pick<Brief, "load" | "envelope" | "practice" | "cost">> {
  readonly limits?: Partial<Limits>;
  readonly service?: Partial<Service>;
  readonly turns?: Brief["sweep"]["turns"];
  readonly material?: Partial<Material>;
  readonly ends?: Partial<EndStyle>;
  readonly wire?: Partial<Wire>;
}

/** Force windows at two lengths, 10 mm apart. */
const POINTS: Brief["load"] = {
  kind: "points",
  points: [
    { name: "open", length: 0.05, force: { min: 20, max: 60 } },
    { name: "shut", length: 0.04, force: { min: 60, max: 100 } },
  ],
};

export function plainBrief({ limits, service, turns = "whole", material, ends, wire, ...change }: Change = {}): Brief {
  return {
    title: "plain",
    practice: "handbook",
    load: POINTS,
    envelope: {},
    sweep: {
      wires: [{ name: "invented", source: "invented", wires: [{ ...WIRE, ...wire }] }],
      materials: [{ ...STEEL, ...material }],
      ends: [{ ...GROUND, ...ends }],
      turns,
      meanDiameter: { step: 1e-4 },
    },
    service: { seats: "parallel plates", set: "as wound", surface: "unpeened", strength: "minimum", ...service },
    limits: { ...OFF, ...limits },
    cost: {},
    rank: ["mass"],
    units: { length: "mm", force: "N" },
    asked: [],
    defaults: [],
    ...change,
  };
}

/** A spring of a brief: 10 turns unless said otherwise, its mean diameter in m. */
export function placed(change: Change = {}, meanDiameter = 0.02, totalTurns = 10): Candidate {
  const brief = plainBrief(change);
  const [material] = brief.sweep.materials as readonly [Material];
  const [wire] = (brief.sweep.wires[0]?.wires ?? []) as readonly [Wire];
  const wireProperties = wirePropertiesAt(material, wire.diameter, brief.service.strength);
  if (wireProperties === null) throw new Error("not made in this size");
  const candidate = new Candidate(resolveRequirements(brief));
  candidate.setWire(material, 0, wire, wireProperties);
  candidate.setEnds(brief.sweep.ends[0] as EndStyle, 0, totalTurns);
  candidate.setMeanDiameter(meanDiameter);
  return candidate;
}
