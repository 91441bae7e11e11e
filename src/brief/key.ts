import type { Dimension } from "../model.ts";

/**
 * What may stand at a key. `requirement`: exact, with ± or `{ min, max }`; `window`: `{ min }`, `{ max }` or both;
 * `names`: a list of catalog names or paths; `words`: one or several of the words; `list`: a list of sections.
 */
export type KeyKind = "section" | "list" | "text" | "word" | "words" | "names" | "quantity" | "requirement" | "window";

/** One key of a brief. */
export interface BriefKey {
  /** From the top, such as `load.points[].force`. */
  readonly path: string;
  readonly kind: KeyKind;
  readonly dimension?: Dimension;
  /** Words allowed: all of them for `word` and `words`, beside what the kind allows for the others. */
  readonly words?: readonly string[];
  /** Its numbers are above zero, or zero or above. */
  readonly sign?: "positive" | "notNegative";
  /** What may stand in place of a quantity of its dimension: a share of something, or a size in a series of wires. */
  readonly or?: "share" | "size";
  /** A section that is there must have it. */
  readonly required?: true;
  /** The catalog that its names are looked up in, where they are no paths. */
  readonly catalog?: "wires" | "materials" | "ends";
  /** What it means, without its unit. */
  readonly sentence: string;
  /** A value as it would be written; a section that has one is shown whole. */
  readonly example?: string;
  /** True where the starter brief gives it; others stand there as comments. */
  readonly started?: true;
}
