import type { Dimension } from "../model.ts";
import type { SchemaNode } from "./node.ts";

/** What a number must be at least; nothing where it may be negative. */
export type Sign = "positive" | "notNegative";

const digits = "(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?";
/** How a unit begins, which is as far as a schema looks at it. */
const unit = "(?![eE][+-]?\\d)[A-Za-z°µμ]";

/**
 * A quantity as text, with its unit; also as the number that YAML takes it for, where it needs none. Whether the unit is one of
 * the dimension is left to the reader, which says what would be right.
 */
export function quantityNode(dimension: Dimension, sign?: Sign): SchemaNode {
  // A temperature above absolute zero may be below that of its own scale.
  const signs = sign === undefined || dimension === "temperature" ? "[+-]?" : "\\+?";
  const start = `^\\s*${signs}${digits}\\s*`;
  const text = (rest: string): SchemaNode => ({ type: "string", pattern: `${start}${rest}` });
  if (dimension === "price") return text("/");
  if (dimension !== "number" && dimension !== "share") return text(unit);
  const least = { positive: { exclusiveMinimum: 0 }, notNegative: { minimum: 0 } };
  const bare: SchemaNode = { type: "number", ...(sign === undefined ? {} : least[sign]) };
  // A tolerance may follow, which the reader judges.
  return { anyOf: [bare, text(dimension === "share" ? "(%|±|\\+|$)" : "(±|\\+|$)")] };
}
