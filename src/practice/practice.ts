import type { ClashAllowance, EndStyle, MaterialClass, PracticeName, Seats, StressFactorName, Window } from "../model.ts";
import { en13906 } from "./en13906.ts";
import { handbook } from "./handbook.ts";

/** A value of the practice with what it rests on. */
export interface Sourced<T> {
  readonly value: T;
  readonly source: string;
}

/** The published choices among the mechanics that one practice makes, each with its clause. */
export interface Practice {
  readonly name: PracticeName;
  /** In words, for pages. */
  readonly title: string;
  /** End styles it knows; null: all. */
  readonly ends: readonly string[] | null;
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
  /** Share of tensile strength allowed in torsion at solid, by class of material. */
  readonly allowable: {
    readonly asWound: Readonly<Record<MaterialClass, number>>;
    readonly setRemoved: Readonly<Record<MaterialClass, number>>;
    readonly source: string;
  };
  /** Fixity by seats, pure number; guided springs are never asked. */
  readonly fixity: Sourced<Readonly<Record<Seats, number>>>;
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
}

/** The two practices by name; a brief says which, for there is no default. */
export const practices: Readonly<Record<PracticeName, Practice>> = { handbook, en13906 };
