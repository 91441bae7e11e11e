import type { Brief, Design, OperationCosts } from "../model.ts";
import { show } from "../units/show.ts";
import { currencyOf } from "./cost-words.ts";
import type { Facts } from "./facts.ts";

const OPERATIONS: Readonly<Record<keyof OperationCosts, string>> = {
  grind: "grinding the ends",
  set: "removing set",
  peen: "shot peening",
  relieve: "relieving stress",
};

/** The parts of a spring's cost proxy; null where no operation weighs anything, for then it is that of the wire. */
export function costFacts(brief: Brief, { costParts, relativeCost }: Design): Facts | null {
  const number = (value: number) => show(value, "number", brief.units);
  const currency = currencyOf(brief);
  const operations = (Object.keys(OPERATIONS) as (keyof OperationCosts)[]).filter((name) => costParts[name] > 0);
  if (operations.length === 0) return null;
  return {
    heading: currency === null ? "Parts of the relative cost" : `Parts of the cost${currency && `, ${currency}`}`,
    entries: [
      ["wire", number(costParts.wire)],
      ...operations.map((name) => [OPERATIONS[name], number(costParts[name])] as const),
      ["together", number(relativeCost)],
    ],
    notes: [
      currency === null
        ? "A proxy to compare springs by, in kilograms of hard-drawn wire: no quotation."
        : "At the price of the wire and the weights stated for operations: no quotation.",
    ],
  };
}
