import { anyNode, quantityNode, type SchemaNode, schemaText, sectionNode, textNode, wordNode } from "../document/json-schema.ts";
import { type BriefKey, briefKeys, keysUnder } from "./keys.ts";

/** The names in the catalogs, which a brief may use. */
export type CatalogNames = Readonly<Record<NonNullable<BriefKey["catalog"]>, readonly string[]>>;

/**
 * The JSON Schema of a brief, from the keys that its reader knows. It holds keys, words, names and the form of quantities; what
 * one section asks and another denies is left to the reader.
 *
 * @param names  what `coilsieve catalog` lists
 */
export function briefSchema(names: CatalogNames): string {
  const brief = sectionAt("", names);
  const described = "What a helical compression spring must do, for coilsieve.";
  return schemaText("Brief", described, { ...brief, anyOf: [{ required: ["sweep"] }, { required: ["design"] }] });
}

function sectionAt(path: string, names: CatalogNames): SchemaNode {
  const keys = keysUnder(path).map((name) => ({
    name,
    key: briefKeys.find((one) => one.path === (path === "" ? name : `${path}.${name}`)) as BriefKey,
  }));
  const properties = Object.fromEntries(keys.map(({ name, key }) => [name, described(key, formOf(key, names))]));
  return sectionNode(
    properties,
    keys.filter(({ key }) => key.required).map(({ name }) => name),
  );
}

function described(key: BriefKey, node: SchemaNode): SchemaNode {
  const plain = ["text", "word", "quantity", "requirement"].includes(key.kind) && key.example !== undefined;
  return { description: key.sentence, ...node, ...(plain ? { examples: [key.example as string] } : {}) };
}

function formOf(key: BriefKey, names: CatalogNames): SchemaNode {
  const { path, kind, words = [] } = key;
  const orWords = words.length === 0 ? [] : [wordNode(words)];
  switch (kind) {
    case "section":
      return anyNode([sectionAt(path, names), ...orWords]);
    case "list":
      return { type: "array", items: sectionAt(`${path}[]`, names), minItems: 1 };
    case "word":
      return wordNode(words);
    case "words":
      return { anyOf: [wordNode(words), { type: "array", items: wordNode(words), minItems: 1, uniqueItems: true }] };
    case "names":
      return { type: "array", items: nameOf(key, names), minItems: 1, uniqueItems: true };
    case "quantity":
      return anyNode([exact(key), ...instead(key)]);
    case "requirement":
      return { anyOf: [exact(key), windowOf(key)] };
    case "window":
      return anyNode([windowOf(key), ...orWords]);
    default:
      return key.catalog === undefined ? textNode : nameOf(key, names);
  }
}

function exact({ dimension = "number", sign }: BriefKey): SchemaNode {
  return quantityNode(dimension, sign);
}

/** What may stand in place of a quantity of the key's own dimension. */
function instead({ or, sign }: BriefKey): readonly SchemaNode[] {
  if (or === undefined) return [];
  return [or === "share" ? quantityNode("share", sign) : { type: "string", pattern: "^\\s*[^-+.\\d\\s].*\\s\\S" }];
}

function windowOf(key: BriefKey): SchemaNode {
  return { ...sectionNode({ min: exact(key), max: exact(key) }, []), minProperties: 1 };
}

/** A name in a catalog, or the path of a file. */
function nameOf({ catalog = "wires" }: BriefKey, names: CatalogNames): SchemaNode {
  return { anyOf: [{ enum: names[catalog] }, { type: "string", pattern: "/|\\.(csv|yaml)$" }] };
}
