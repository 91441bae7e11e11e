import type { Dimension } from "../model.ts";

/**
 * What may stand at a key. `sections`: one section or a list of them; `list`: a list of sections; `pairs`: a list of two
 * quantities each; `texts`: a list of texts.
 */
export type CatalogKeyKind = "section" | "sections" | "list" | "pairs" | "text" | "texts" | "word" | "quantity";

/** What a quantity must be at least. */
export type Least = "above zero" | "zero or more";

/** What a quantity measures and what it must be at least: above zero where nothing is said. */
export interface QuantityRule {
  readonly dimension: Dimension;
  readonly least?: Least;
}

/** One key of a catalog file. */
export interface CatalogKey {
  /** From the top of an entry, without the places in lists, such as `moduli.youngsModulus`. */
  readonly path: string;
  readonly kind: CatalogKeyKind;
  /** A section that is there must have it. */
  readonly required?: true;
  /** Of a quantity. */
  readonly quantity?: QuantityRule;
  /** Of a list of pairs: first and second. */
  readonly pair?: readonly [QuantityRule, QuantityRule];
  /** Words allowed; the first stands where the key is left out. */
  readonly words?: readonly string[];
  /** What it means. */
  readonly sentence: string;
}
