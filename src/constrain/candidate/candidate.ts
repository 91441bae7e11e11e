import { bucklingDeflection } from "../../mechanics/buckling.ts";
import { costProxy } from "../../mechanics/cost.ts";
import { activeTurns } from "../../mechanics/ends.ts";
import { pitch, springIndex } from "../../mechanics/geometry.ts";
import { wireLength, wireMass } from "../../mechanics/mass.ts";
import { activeTurnsForRate, meanDiameterForRate, springRate } from "../../mechanics/rate.ts";
import { shearStress } from "../../mechanics/stress.ts";
import { surgeFrequency, surgeFrequencyEndFree } from "../../mechanics/surge.ts";
import type {
  Choice,
  EndStyle,
  Material,
  MaterialClass,
  OperationCosts,
  StressFactorName,
  ToleranceGrade,
  Wire,
} from "../../model.ts";
import type { Practice } from "../../practice/choices.ts";
import type { FreeLengthRule } from "../requirements/load.ts";
import type { FatigueRequirement, Requirements } from "../requirements/requirements.ts";
import { fatigueSafety } from "./fatigue.ts";
import { type ClashRule, clashAllowance, clashRuleOf, shortestFreeLength } from "./free-length.ts";
import { stressFactorNamed } from "./stress-factor.ts";
import { worstWindowFraction } from "./tolerances.ts";
import { modulusRatioAt, type WireProperties } from "./wire-properties.ts";

const NO_OPERATIONS: OperationCosts = { grind: 0, set: 0, peen: 0, relieve: 0 };

/**
 * The one reused record that limits and merits read. Material, wire, turns and ends are set where the search changes them;
 * `setMeanDiameter` sets the diameter and what everything needs; the other figures are computed when asked for. SI.
 *
 * All number fields begin as NaN and are doubles from then on, so that the record keeps one shape in the engine.
 */
export class Candidate {
  readonly requirements: Requirements;
  private readonly practice: Practice;
  private readonly rule: FreeLengthRule;
  private readonly clash: ClashRule;

  wire: Wire | null = null;
  ends: EndStyle | null = null;
  /** Places in the brief's lists, which break ties. */
  materialOrder = Number.NaN;
  endsOrder = Number.NaN;

  wireDiameter = Number.NaN;
  /** Plus-minus on the wire diameter; NaN where neither the material nor the practice gives one. */
  wireDeviation = Number.NaN;
  youngsModulus = Number.NaN;
  shearModulus = Number.NaN;
  tensileStrength = Number.NaN;
  density = Number.NaN;
  /** Cost per kg: the wire's price, else the material's relative cost. */
  costPerMass = Number.NaN;
  /** Share of tensile strength allowed in torsion. */
  allowableFraction = Number.NaN;
  /** Weights of operations for this material. */
  private weights: OperationCosts = NO_OPERATIONS;
  /** Points of the material's fatigue diagram, Pa; empty where it has none. */
  diagramLowers: readonly number[] = [];
  diagramUppers: readonly number[] = [];
  /** Largest stress from nothing that the wire endures for the life asked, as a share of its strength; NaN where none is asked. */
  lifeFraction = Number.NaN;
  activeTurns = Number.NaN;
  totalTurns = Number.NaN;
  solidLength = Number.NaN;
  meanDiameter = Number.NaN;
  rate = Number.NaN;
  /** Shear modulus at the service temperature over that at room temperature; 1 where none is given or nothing is published. */
  modulusRatio = Number.NaN;
  /** NaN until it is asked for: much of a search looks at diameters and rates only. */
  private freeLengthHere = Number.NaN;

  constructor(requirements: Requirements) {
    this.requirements = requirements;
    this.practice = requirements.practice;
    this.rule = requirements.freeLengthRule;
    this.clash = clashRuleOf(requirements.clash);
  }

  setWire(material: Material, order: number, wire: Wire, wireProperties: WireProperties): void {
    this.materialOrder = order;
    this.wire = wire;
    this.wireDiameter = wire.diameter;
    this.wireDeviation = wireProperties.wireDeviation ?? this.practice.wireDeviation?.value(wire.diameter) ?? Number.NaN;
    this.youngsModulus = wireProperties.youngsModulus;
    this.shearModulus = wireProperties.shearModulus;
    this.tensileStrength = wireProperties.tensileStrength;
    this.modulusRatio = modulusRatioAt(material, wireProperties, this.requirements.temperatureOfWindows);
    this.density = material.density;
    this.costPerMass = wire.price ?? material.relativeCost;
    const { fatigue, cost, setRemoved } = this.requirements;
    const state = setRemoved ? "setRemoved" : "asWound";
    this.allowableFraction = material.allowable?.[state] ?? this.practice.allowable[state][material.class as MaterialClass];
    this.weights = { ...NO_OPERATIONS, ...material.operations, ...cost };
    const diagram = fatigue?.kind === "diagram" ? (material.fatigue?.[fatigue.surface] ?? []) : [];
    this.diagramLowers = diagram.map(([lower]) => lower);
    this.diagramUppers = diagram.map(([, upper]) => upper);
    this.lifeFraction = fatigue?.kind === "life" ? fatigue.fractions[material.class as MaterialClass] : Number.NaN;
  }

  /** Set the end style, and with counted turns the total and the solid length. */
  setEnds(ends: EndStyle, order: number, totalTurns: number): void {
    this.ends = ends;
    this.endsOrder = order;
    this.totalTurns = totalTurns;
    if (!this.requirements.turnsAny) {
      this.activeTurns = activeTurns(totalTurns, ends.deadTurns);
      this.solidLength = this.solidLengthOf(totalTurns, ends);
    }
  }

  /** Set the mean diameter that gives the pinned rate with the turns as counted. */
  setMeanDiameterForRate(): void {
    const rate = this.requirements.pinnedRate as number;
    this.setMeanDiameter(meanDiameterForRate(this.shearModulus, this.wireDiameter, rate, this.activeTurns));
  }

  /** Set the mean diameter, and with it rate, turns where they follow, and free length. */
  setMeanDiameter(meanDiameter: number): void {
    this.meanDiameter = meanDiameter;
    const { pinnedRate } = this.requirements;
    if (this.requirements.turnsAny) {
      this.rate = pinnedRate as number;
      this.activeTurns = activeTurnsForRate(this.shearModulus, this.wireDiameter, meanDiameter, this.rate);
      if (this.ends) {
        this.totalTurns = this.activeTurns + this.ends.deadTurns;
        this.solidLength = this.solidLengthOf(this.totalTurns, this.ends);
      }
    } else {
      this.rate = springRate(this.shearModulus, this.wireDiameter, meanDiameter, this.activeTurns);
    }
    this.freeLengthHere = Number.NaN;
  }

  /**
   * Free length, m. Where nothing has set another one it is the shortest that the load, the brief's window and closed coils leave:
   * every other limit passes there if it passes at any.
   */
  get freeLength(): number {
    if (Number.isNaN(this.freeLengthHere)) this.freeLengthHere = shortestFreeLength(this);
    return this.freeLengthHere;
  }

  set freeLength(freeLength: number) {
    this.freeLengthHere = freeLength;
  }

  /** Set the mean diameter and free length of a given spring, whose turns are set. */
  setDimensions(meanDiameter: number, freeLength: number): void {
    this.setMeanDiameter(meanDiameter);
    this.freeLengthHere = freeLength;
  }

  get index(): number {
    return springIndex(this.meanDiameter, this.wireDiameter);
  }

  get outsideDiameter(): number {
    return this.meanDiameter + this.wireDiameter;
  }

  get insideDiameter(): number {
    return this.meanDiameter - this.wireDiameter;
  }

  get outsideDiameterAtSolid(): number {
    return this.practice.outsideDiameterAtSolid(
      this.meanDiameter,
      this.wireDiameter,
      this.activeTurns,
      this.freeLength,
      this.ends as EndStyle,
    );
  }

  /** Deflection at the shortest length asked of the spring, m. */
  get workingDeflection(): number {
    switch (this.rule.kind) {
      case "clearsAtDeflection":
        return this.rule.deflection;
      case "clearsAtForce":
        return this.rule.force / this.rate;
      default:
        // A given spring may be shorter than that length: then nothing presses it.
        return Math.max(0, this.freeLength - this.requirements.shortestLength);
    }
  }

  get workingForce(): number {
    return this.rate * this.workingDeflection;
  }

  /** Length left between the largest working deflection and solid, m. */
  get clashRoom(): number {
    return this.freeLength - this.workingDeflection - this.solidLength;
  }

  /** Room that must be left before solid, m; 0 where the brief lifts the allowance. */
  get clashAllowance(): number {
    return clashAllowance(this, this.clash);
  }

  get forceAtSolid(): number {
    return this.rate * (this.freeLength - this.solidLength);
  }

  stressFactor(name: StressFactorName): number {
    return stressFactorNamed(name, this.index);
  }

  stress(force: number, factor: StressFactorName): number {
    return shearStress(force, this.meanDiameter, this.wireDiameter, this.stressFactor(factor));
  }

  get stressAtSolid(): number {
    return this.stress(this.forceAtSolid, this.requirements.stressFactor);
  }

  /** Stress that the material's share of strength allows, Pa. */
  get allowableStress(): number {
    return this.allowableFraction * this.tensileStrength;
  }

  get solidSafety(): number {
    return this.allowableStress / this.stressAtSolid;
  }

  /** Least force of the duty, N: at the longest length asked, or nothing where only one is. */
  get leastForce(): number {
    const { longestLength } = this.requirements;
    // A given spring may be shorter than that length: then nothing presses it there.
    return Number.isNaN(longestLength) ? 0 : Math.max(0, this.rate * (this.freeLength - longestLength));
  }

  /** Safety in cyclic duty by the line or diagram that is asked. */
  get fatigueSafety(): number {
    return fatigueSafety(this, this.requirements.fatigue as FatigueRequirement);
  }

  /** The worst load point's deviation by the grade asked, with how far its force is off the middle, over half its window. */
  get worstWindowFraction(): number {
    return worstWindowFraction(this, this.requirements.loadTolerance as ToleranceGrade);
  }

  get bucklingDeflection(): number {
    const { fixity } = this.requirements;
    return bucklingDeflection(this.freeLength, this.meanDiameter, fixity, this.youngsModulus, this.shearModulus);
  }

  get surgeFrequency(): number {
    const frequency = this.requirements.endFree ? surgeFrequencyEndFree : surgeFrequency;
    return frequency(this.rate, this.massOf(this.activeTurns));
  }

  get mass(): number {
    return this.massOf(this.totalTurns);
  }

  /** Weights of the operations that this spring gets. */
  get operations(): OperationCosts {
    const { grind, set, peen, relieve } = this.weights;
    return {
      grind: this.ends?.ground ? grind : 0,
      set: this.requirements.setRemoved ? set : 0,
      peen: this.requirements.peened ? peen : 0,
      relieve,
    };
  }

  get relativeCost(): number {
    return costProxy(this.mass, this.costPerMass, this.operations);
  }

  /** What singles this candidate out, to keep. */
  get choice(): Choice {
    return {
      material: this.materialOrder,
      wire: this.wire as Wire,
      ends: this.endsOrder,
      totalTurns: this.totalTurns,
      meanDiameter: this.meanDiameter,
    };
  }

  private massOf(turns: number): number {
    return wireMass(this.density, this.wireDiameter, wireLength(this.meanDiameter, turns));
  }

  private solidLengthOf(totalTurns: number, ends: EndStyle): number {
    return this.practice.solidLength(totalTurns, ends, this.wireDiameter, this.wireDiameter + this.wireDeviation);
  }

  get pitch(): number {
    const { pitchTurns, pitchWires } = this.ends as EndStyle;
    return pitch(this.freeLength, this.wireDiameter, this.activeTurns, pitchTurns, pitchWires);
  }
}
