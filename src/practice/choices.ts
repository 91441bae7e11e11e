import { shareAtLife } from "../mechanics/fatigue.ts";
import type {
  Brief,
  ClashAllowance,
  EndStyle,
  MaterialClass,
  PracticeName,
  Seats,
  Service,
  StressFactorName,
  ToleranceGrade,
  Window,
} from "../model.ts";

/** A value of the practice with what it rests on. */
export interface Sourced<T> {
  readonly value: T;
  readonly source: string;
}

/** A part of a practice of which no copy was read. */
export interface Remembered {
  readonly source: string;
  readonly what: string;
  /** Whether the figures of a brief rest on it; absent: of every brief. */
  readonly appliesTo?: (brief: Brief) => boolean;
}

/** The published choices among the mechanics that one practice makes, each with its clause. */
export interface Practice {
  readonly name: PracticeName;
  /** In words, for pages. */
  readonly title: string;
  /** End styles it knows; null: all. */
  readonly ends: readonly string[] | null;
  readonly fromMemory: readonly Remembered[];
  readonly index: Sourced<Required<Window>>;
  readonly turns: Sourced<Required<Window>>;
  readonly clash: Sourced<ClashAllowance>;
  readonly clashCyclic: Sourced<ClashAllowance>;
  /** Design factor at solid. */
  readonly solidSafety: Sourced<number>;
  readonly bucklingSafety: Sourced<number>;
  readonly surgeMultiple: Sourced<number>;
  /** Stress factor in static duty, as wound and once set is removed. */
  readonly stressFactor: { readonly asWound: Sourced<StressFactorName>; readonly setRemoved: Sourced<StressFactorName> };
  readonly fatigue: EnduredFatigue | DiagramFatigue;
  readonly tolerance: TolerancePractice;
  /** Share of tensile strength allowed in torsion at solid, by class of material. */
  readonly allowable: {
    readonly asWound: Readonly<Record<MaterialClass, number>>;
    readonly setRemoved: Readonly<Record<MaterialClass, number>>;
    readonly source: string;
  };
  /** Fixity by seats, pure number; guided springs are never asked. */
  readonly fixity: Sourced<Readonly<Record<Seats, number>>>;
  /** Plus-minus on the wire diameter, m, where a material's data give none; null: the practice has no use for one. */
  readonly wireDeviation: Sourced<(wireDiameter: number) => number> | null;
  /** Solid length, m, from total turns, the end style, the wire diameter and its largest, m. */
  readonly solidLength: (totalTurns: number, ends: EndStyle, wireDiameter: number, largestWireDiameter: number) => number;
  /** Outside diameter pressed solid, m. */
  readonly outsideDiameterAtSolid: (
    meanDiameter: number,
    wireDiameter: number,
    activeTurns: number,
    freeLength: number,
    ends: EndStyle,
  ) => number;
  /** Outside diameter pressed to a length between free and solid, m. */
  readonly outsideDiameterAt: (
    length: number,
    meanDiameter: number,
    wireDiameter: number,
    activeTurns: number,
    freeLength: number,
    ends: EndStyle,
  ) => number;
}

interface FatigueRule {
  /** Stress factor in cyclic duty. */
  readonly factor: Sourced<StressFactorName>;
  readonly safety: Sourced<number>;
}

/** One amplitude and mean stress that springs of every kind endured, whatever their strength. */
export interface EnduredFatigue extends FatigueRule {
  readonly kind: "endured";
  readonly strengths: Sourced<Readonly<Record<Service["surface"], { readonly amplitude: number; readonly mean: number }>>>;
  /** What they endure from nothing for a life, as a share of tensile strength: lives, rising, and the share at each. */
  readonly life: Sourced<{
    readonly cycles: readonly number[];
    readonly shares: Readonly<Record<MaterialClass, Readonly<Record<Service["surface"], readonly number[]>>>>;
  }>;
  /** Ssu as a share of the tensile strength. */
  readonly ultimateShear: Sourced<number>;
  /** The thickest wire of the data, m. */
  readonly largestWire: number;
  /** The classes of material of the data. */
  readonly classes: readonly MaterialClass[];
}

/** Largest stress from nothing that springs of each class endure for the cycles asked, as a share of tensile strength. */
export function lifeFractions({ life }: EnduredFatigue, service: Service): Readonly<Record<MaterialClass, number>> {
  const { cycles, shares: fractions } = life.value;
  const fraction = (kind: MaterialClass) => shareAtLife(service.cycles ?? Number.NaN, cycles, fractions[kind][service.surface]);
  return {
    "cold drawn": fraction("cold drawn"),
    "hardened and tempered": fraction("hardened and tempered"),
    austenitic: fraction("austenitic"),
    "non-ferrous": fraction("non-ferrous"),
  };
}

/** The diagram that the material's own data carry. */
export interface DiagramFatigue extends FatigueRule {
  readonly kind: "diagram";
}

/** What tolerances are read for; SI. */
export interface TolerancedSpring {
  readonly wireDiameter: number;
  readonly meanDiameter: number;
  readonly activeTurns: number;
  readonly freeLength: number;
  readonly rate: number;
  readonly ends: EndStyle;
}

/** Published tolerances, plus-minus; null where the tables do not reach. */
export interface TolerancePractice {
  readonly source: string;
  /** Finest first. */
  readonly grades: readonly ToleranceGrade[];
  readonly usual: ToleranceGrade;
  readonly coilDiameter: (grade: ToleranceGrade, spring: TolerancedSpring) => number | null;
  readonly freeLength: (grade: ToleranceGrade, spring: TolerancedSpring) => number | null;
  /** Whether it has a tolerance on the free length of springs with these ends. */
  readonly lengthOf: (ends: EndStyle) => boolean;
  readonly force: (grade: ToleranceGrade, spring: TolerancedSpring, force: number, deflection: number) => number | null;
  /** Free lengths at which a deviation jumps, shortest first, m. */
  readonly freeLengthSteps: (spring: TolerancedSpring) => readonly number[];
  /** Plus-minus on turns and, as a share, on the shear modulus, for the worst case. */
  readonly turns: Sourced<number>;
  readonly shearModulus: Sourced<number>;
}
