import type { Units } from "../../model.ts";

interface Line {
  /** As a person writes it: `k`, `Na`, `τ1`; one in a sheet. */
  readonly symbol: string;
  /** As a spreadsheet names its cell: `springRate`; one in a sheet. */
  readonly name: string;
  /** In words: `rate`. */
  readonly label: string;
  /** In the unit beside it; infinite where there is no end to the figure. */
  readonly value: number;
  /** A unit of the sheet; empty for a pure number. */
  readonly unit: string;
  /** Book or standard with its place, the brief's key, or the catalog entry's source. */
  readonly source: string;
}

/** A figure that is put in: asked by the brief, chosen by the walk, or read from a catalog or a table. */
export interface Given extends Line {
  readonly kind: "given";
  /** Where in a table of the sheet it was read. */
  readonly reading?: Reading;
}

/** A figure that follows from those above it. */
export interface Derived extends Line {
  readonly kind: "derived";
  /** In symbols of the sheet: + - * / ^, parentheses, sqrt atan log abs min max, pi. */
  readonly expression: string;
  /** The figure has no end where this symbol is below zero. */
  readonly endlessBelow?: string;
}

export type Step = Given | Derived;

/** A cell of a table: of the first row whose head is not below a figure, or of one of the two rows that enclose it. */
export interface Reading {
  readonly table: string;
  readonly column: number;
  /** Symbol of the figure that the first column is held against. */
  readonly by: string;
  readonly row: "atOrAbove" | "lower" | "upper";
}

/** Rows that figures of the sheet were read from, rising in the first column, in the sheet's units. */
export interface Table {
  readonly name: string;
  readonly heads: readonly string[];
  /** An infinite head stands for "and beyond". */
  readonly rows: readonly (readonly number[])[];
}

export interface Chapter {
  readonly title: string;
  readonly steps: readonly Step[];
  /** What a person should know who follows the steps. */
  readonly notes: readonly string[];
}

/** The calculation sheet of one design, step by step in the order in which a person would work. */
export interface Working {
  readonly title: string;
  /** Which spring it is. */
  readonly subject: string;
  readonly units: Units;
  readonly chapters: readonly Chapter[];
  readonly tables: readonly Table[];
  readonly cautions: readonly string[];
}
