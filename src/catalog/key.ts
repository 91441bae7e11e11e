import type { Dimension } from "../model.ts";

/**
 * What may stand at a key. `sections`: one section or a list of them; `list`: a list of sections; `pairs`: a list of two
 * quantities each; `texts`: a list of texts.
 */
export type CatalogKeyKind = "section" | "sections" | "list" | "pairs" | "text" | "texts" | "word" | "quantity";

/** What a quantity must be at least. */
export type Least = "above zero" | "zero or more";

/** Where a number may lie, SI, far beyond what is made or sold: outside is a slip of the pen. */
export interface Plausible {
  readonly least: number;
  readonly greatest: number;
  /** The same as a message says it. */
  readonly words: string;
}

/** What a quantity measures, what it must be at least (above zero where nothing is said), and where it may lie. */
export interface QuantityRule {
  readonly dimension: Dimension;
  readonly least?: Least;
  readonly plausible: Plausible;
}

/** What is wrong with a value that lies where none can be; undefined where it does not. */
export function implausible(
  text: string,
  value: number,
  { least, greatest, words }: Plausible,
): { readonly code: string; readonly got: string; readonly want: string } | undefined {
  if (value >= least && value <= greatest) return undefined;
  return { code: "implausible", got: `${text} is not plausible`, want: `it lies from ${words} (a slip in its digits or unit?)` };
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
