import { pitchAngle } from "../mechanics/geometry.ts";
import { wireLength } from "../mechanics/mass.ts";
import type {
  Brief,
  CautionName,
  Choice,
  CyclicDuty,
  Design,
  DesignPoint,
  EndStyle,
  LimitName,
  Load,
  Material,
  ToleranceFigures,
} from "../model.ts";
import { figuresAtTemperature, isRelaxationToAsk } from "./candidate/at-temperature.ts";
import { Candidate } from "./candidate/candidate.ts";
import { toleranceFigures } from "./candidate/tolerances.ts";
import { madeSizes, temperatureMargin, type WireProperties, wirePropertiesAt } from "./candidate/wire-properties.ts";
import { FreeLengthRange } from "./free-length-range.ts";
import { PASSES } from "./limits/bound.ts";
import { LIMIT_ORDER, type Limit, limitsFor } from "./limits/limits.ts";
import { type Requirements, resolveRequirements } from "./requirements/requirements.ts";

/** Pitch angle beyond which the formulas, which neglect it, mislead; common practice, no source. */
const STEEP_PITCH = (12 * Math.PI) / 180;
/** Wire below this is hardly ever ground; DIN 2095. */
const THIN_FOR_GRINDING = 0.5e-3;

/**
 * Every figure of any spring that a brief walks.
 *
 * @param brief         a resolved brief
 * @param requirements  its requirements
 * @returns a function from a choice (its material must be made in its size) to the design, of rank 0 until it is given one;
 *   margins within the pass tolerance of 0 are reported as 0
 */
export function describer(brief: Brief, requirements = resolveRequirements(brief)): (choice: Choice) => Design {
  const limits = limitsFor(requirements);
  return (choice) => describe(brief, requirements, limits, choice);
}

/** The record set to one choice, to be judged or described, at its own free length or at the one that is reported. */
export function candidateAt(
  brief: Brief,
  requirements: Requirements,
  choice: Choice,
  limits: readonly Limit[] = limitsFor(requirements),
): Candidate {
  const candidate = woundTo(brief, requirements, choice);
  if (choice.freeLength === undefined) new FreeLengthRange(candidate, limits).settle();
  else candidate.freeLength = choice.freeLength;
  return candidate;
}

/** The record set to the material, wire, ends, turns and mean diameter of a choice. */
function woundTo(brief: Brief, requirements: Requirements, choice: Choice): Candidate {
  const material = brief.sweep.materials[choice.material] as Material;
  const candidate = new Candidate(requirements);
  candidate.setWire(material, choice.material, choice.wire, wirePropertiesOf(brief, choice));
  candidate.setEnds(brief.sweep.ends[choice.ends] as EndStyle, choice.ends, choice.totalTurns);
  candidate.setMeanDiameter(choice.meanDiameter);
  return candidate;
}

/** Room that a spring of a brief must leave before solid at its largest working deflection, m; 0 where the brief lifts it. */
export function clashAllowanceOf(brief: Brief, choice: Choice): number {
  return candidateAt(brief, resolveRequirements(brief, choice.freeLength !== undefined), choice).clashAllowance;
}

function wirePropertiesOf(brief: Brief, choice: Choice): WireProperties {
  return wirePropertiesAt(
    brief.sweep.materials[choice.material] as Material,
    choice.wire.diameter,
    brief.service.strength,
  ) as WireProperties;
}

function describe(brief: Brief, requirements: Requirements, limits: readonly Limit[], choice: Choice): Design {
  const material = brief.sweep.materials[choice.material] as Material;
  const ends = brief.sweep.ends[choice.ends] as EndStyle;
  const wireProperties = wirePropertiesOf(brief, choice);
  const c = woundTo(brief, requirements, choice);
  const lengths = new FreeLengthRange(c, limits);
  const freeLengthRange = lengths.settle() ? { min: lengths.domain.low, max: lengths.domain.high } : null;
  if (choice.freeLength !== undefined) c.freeLength = choice.freeLength;
  const pitchOfCoils = c.pitch;
  const points = designPoints(brief.load, c);
  const tolerance = toleranceFigures(c, material, points);
  const buckling = c.bucklingDeflection;
  const { temperature } = brief.service;
  const atTemperature = temperature === undefined ? null : figuresAtTemperature(c, material, points, temperature);
  const warnsOfRelaxation = atTemperature !== null && isRelaxationToAsk(atTemperature, material, points, c.allowableStress);
  return {
    rank: 0,
    material: material.name,
    wire: choice.wire.label,
    series: choice.wire.series,
    wireDiameter: c.wireDiameter,
    ends: ends.name,
    totalTurns: c.totalTurns,
    activeTurns: c.activeTurns,
    meanDiameter: c.meanDiameter,
    outsideDiameter: c.outsideDiameter,
    insideDiameter: c.insideDiameter,
    index: c.index,
    rate: c.rate,
    freeLength: c.freeLength,
    freeLengthRange,
    solidLength: c.solidLength,
    pitch: pitchOfCoils,
    pitchAngle: pitchAngle(pitchOfCoils, c.meanDiameter),
    coilGap: pitchOfCoils - c.wireDiameter,
    wireLength: wireLength(c.meanDiameter, c.totalTurns),
    mass: c.mass,
    relativeCost: c.relativeCost,
    costParts: { wire: c.mass * c.costPerMass, ...c.operations },
    points,
    forceAtSolid: c.forceAtSolid,
    stressFactor: c.stressFactor(requirements.stressFactor),
    stressAtSolid: c.stressAtSolid,
    solidSafety: c.solidSafety,
    workingSafety: c.allowableStress / c.stress(c.workingForce, requirements.stressFactor),
    bucklingDeflection: Number.isFinite(buckling) ? buckling : null,
    surgeFrequency: c.surgeFrequency,
    outsideDiameterAtSolid: c.outsideDiameterAtSolid,
    fatigueSafety: requirements.fatigue === null ? null : c.fatigueSafety,
    cyclic: brief.service.cycles === undefined ? null : cyclicDuty(c),
    hot: atTemperature,
    tolerance,
    shearModulus: c.shearModulus,
    youngsModulus: c.youngsModulus,
    tensileStrength: c.tensileStrength,
    strengthBasis: wireProperties.strengthBasis,
    density: c.density,
    margins: marginsOf(brief, requirements, limits, material, c),
    cautions: [
      ...cautionsOf(brief, c, ends, pitchAngle(pitchOfCoils, c.meanDiameter), wireProperties, tolerance),
      ...(warnsOfRelaxation ? (["askRelaxation"] as const) : []),
    ],
  };
}

/** The load points of a brief at this candidate; kinds without a point have the one at the largest working deflection. */
export function designPoints(load: Load, c: Candidate): DesignPoint[] {
  const at = (name: string, length: number): DesignPoint => {
    const deflection = c.freeLength - length;
    // A given spring may be shorter than the point's length: then it does not push there.
    const force = Math.max(0, c.rate * deflection);
    return {
      name,
      length,
      deflection,
      force,
      stress: c.stress(force, c.requirements.pointFactor),
      shareOfDeflection: deflection / (c.freeLength - c.solidLength),
    };
  };
  switch (load.kind) {
    case "points":
      return load.points.map(({ name, length }) => at(name, length));
    case "rateAndPoint":
      return [at(load.point.name, load.point.length)];
    case "forceAtDeflection":
    case "rateAndLargestForce":
      return pointNames(load).map((name) => at(name, c.freeLength - c.workingDeflection));
  }
}

/** What the load points of a spring are called; kinds of load without points have one at the largest working deflection. */
export function pointNames(load: Load): readonly string[] {
  switch (load.kind) {
    case "points":
      return load.points.map(({ name }) => name);
    case "rateAndPoint":
      return [load.point.name];
    case "forceAtDeflection":
      return ["loaded"];
    case "rateAndLargestForce":
      return ["largest force"];
  }
}

/** Margins of every limit that is asked or that the construction satisfies, in the order of the limits. */
function marginsOf(
  brief: Brief,
  requirements: Requirements,
  limits: readonly Limit[],
  material: Material,
  c: Candidate,
): Partial<Record<LimitName, number>> {
  const { min, max } = madeSizes(material, brief.service.strength);
  const margins: Partial<Record<LimitName, number>> = {
    wire: settled(Math.min(1, c.wireDiameter / min - 1, 1 - c.wireDiameter / max)),
  };
  if (requirements.temperature !== null) margins.temperature = settled(temperatureMargin(material, requirements.temperature));
  const judged = new Map(limits.map((limit) => [limit.name, limit]));
  for (const name of LIMIT_ORDER) {
    const limit = judged.get(name);
    if (limit?.reported) margins[name] = settled(limit.shownMargin(c));
    else if (name === "rate" && requirements.pinnedRate !== null) margins.rate = 0;
    else if (name === "clash" && limit === undefined && requirements.clash !== null) margins.clash = settled(clearedMargin(c));
  }
  return margins;
}

/** Room before solid where the free length is the shortest that clears: none to spare, unless the brief's window made it longer. */
function clearedMargin({ clashRoom, clashAllowance }: Candidate): number {
  return clashAllowance > 0 ? Math.min(1, clashRoom / clashAllowance - 1) : 0;
}

/** A margin within the pass tolerance of the boundary is the boundary. */
function settled(margin: number): number {
  return Math.abs(margin) <= -PASSES ? 0 : margin;
}

/** The stresses between the least and the greatest load, by the practice's factor for cyclic duty. */
function cyclicDuty(c: Candidate): CyclicDuty {
  const leastForce = c.leastForce;
  const greatestForce = c.workingForce;
  const lower = c.stress(leastForce, c.requirements.pointFactor);
  const upper = c.stress(greatestForce, c.requirements.pointFactor);
  return { leastForce, greatestForce, stressAmplitude: (upper - lower) / 2, meanStress: (upper + lower) / 2 };
}

/** Whether it buckles in work, or else before it is solid, by the figure itself: a limit on it may be off. */
function bucklingCautions({ bucklingDeflection, workingDeflection, freeLength, solidLength }: Candidate): CautionName[] {
  if (bucklingDeflection < workingDeflection * (1 + PASSES)) return ["bucklesInWork"];
  return bucklingDeflection < freeLength - solidLength ? ["bucklesBeforeSolid"] : [];
}

function cautionsOf(
  brief: Brief,
  c: Candidate,
  ends: EndStyle,
  angle: number,
  wireProperties: WireProperties,
  { boreRoom, rodRoom, coarsestGrade }: ToleranceFigures,
): CautionName[] {
  const cautions: CautionName[] = [];
  if (angle > STEEP_PITCH) cautions.push("steepPitch");
  if (ends.ground && c.wireDiameter < THIN_FOR_GRINDING) cautions.push("thinGround");
  if (brief.service.seats !== "guided") cautions.push(...bucklingCautions(c));
  if (wireProperties.strengthFlag === "from memory") cautions.push("strengthFromMemory");
  if (wireProperties.strengthFlag === "inferred") cautions.push("strengthInferred");
  if (c.requirements.fatigue?.kind === "life") cautions.push("lifeFromMemory");
  if ((boreRoom ?? 0) < 0) cautions.push("mayTouchBore");
  if ((rodRoom ?? 0) < 0) cautions.push("mayTouchRod");
  if (coarsestGrade === null) cautions.push("noGradeHolds");
  if (coarsestGrade === "notKnown") cautions.push("tolerancesNotKnown");
  return cautions;
}
