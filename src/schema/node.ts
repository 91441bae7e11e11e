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
