import type { Brief, Design } from "../model.ts";
import { costFacts } from "./cost-facts.ts";
import { cyclicFacts } from "./cyclic-facts.ts";
import { freeLengthFacts } from "./free-length-words.ts";
import { heatFacts } from "./heat-facts.ts";
import { scatterFacts } from "./scatter-facts.ts";
import { toleranceFacts } from "./tolerance-facts.ts";

/** Figures of one spring that belong together, in the reader's units and ready to show. */
export interface Facts {
  readonly heading: string;
  readonly entries: readonly (readonly [label: string, text: string])[];
  /** Heads without the one above the labels, and rows that each begin with a label. */
  readonly table?: { readonly heads: readonly string[]; readonly rows: readonly (readonly string[])[] };
  /** An SVG element as text. */
  readonly picture?: string;
  readonly notes: readonly string[];
}

/**
 * How far its free length may move, what one spring does in cyclic duty and at its service temperature, what its maker may miss by, and the parts of its cost.
 *
 * @param brief   the brief that it answers
 * @param design  the spring
 * @returns only what applies; does not throw
 */
export function springFacts(brief: Brief, design: Design): Facts[] {
  return [freeLengthFacts, cyclicFacts, heatFacts, toleranceFacts, scatterFacts, costFacts]
    .map((factsOf) => factsOf(brief, design))
    .filter((facts) => facts !== null);
}
