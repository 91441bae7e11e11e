import type { Dimension } from "../model.ts";

/** A part of a JSON Schema, draft 07, as far as it is used here. */
export interface SchemaNode {
  readonly $schema?: string;
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly enum?: readonly (string | number | boolean)[];
  readonly pattern?: string;
  readonly minLength?: number;
  readonly exclusiveMinimum?: number;
  readonly minimum?: number;
  readonly examples?: readonly string[];
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: false;
  readonly minProperties?: number;
  readonly items?: SchemaNode | readonly SchemaNode[];
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly uniqueItems?: true;
  readonly anyOf?: readonly SchemaNode[];
}

/** A whole schema as it is published. */
export function schemaText(title: string, description: string, node: SchemaNode): string {
  return `${JSON.stringify({ $schema: "http://json-schema.org/draft-07/schema#", title, description, ...node }, null, 2)}\n`;
}

/** A text, which YAML may take for a number or a truth where it is not quoted. */
export const textNode: SchemaNode = { type: ["string", "number", "boolean"] };

/** One of several words, also as the number or truth that YAML takes such a word for. */
export function wordNode(words: readonly string[]): SchemaNode {
  return { enum: words.flatMap((word) => [word, ...typed(word)]) };
}

function typed(word: string): readonly (number | boolean)[] {
  if (/^\d+$/.test(word)) return [Number(word)];
  return word === "true" || word === "false" ? [word === "true"] : [];
}

/** A section: known keys only, of which some must be there. */
export function sectionNode(properties: Readonly<Record<string, SchemaNode>>, required: readonly string[]): SchemaNode {
  return { type: "object", properties, ...(required.length > 0 ? { required } : {}), additionalProperties: false };
}

/** One of several forms, or the only one. */
export function anyNode(forms: readonly SchemaNode[]): SchemaNode {
  const [first = {}, ...more] = forms;
  return more.length === 0 ? first : { anyOf: forms };
}

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
