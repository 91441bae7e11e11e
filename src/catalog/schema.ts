import { quantityNode, type SchemaNode, schemaText, sectionNode, textNode, wordNode } from "../document/json-schema.ts";
import { type CatalogKey, endKeys, materialKeys, type QuantityRule, wireColumns } from "./keys.ts";

/** The JSON Schema of a material's file, from the keys that its reader knows. */
export function materialSchema(): string {
  const material = sectionAt("", materialKeys);
  const described = "A wire material, for coilsieve. Comments at the head of the file say where its figures are from.";
  return schemaText("Material", described, { ...material, anyOf: [{ required: ["class"] }, { required: ["allowable"] }] });
}

/** The JSON Schema of a file of end styles, from the keys that its reader knows. */
export function endsSchema(): string {
  const described = "End styles of compression springs, for coilsieve. A file that a brief names holds one.";
  return schemaText("End styles", described, { type: "array", items: sectionAt("", endKeys), minItems: 1 });
}

/** The JSON Schema of the rows of a wire series, each with the cells of its line of CSV under their columns. */
export function wiresSchema(): string {
  const described =
    "The rows of a table of wires, for coilsieve: CSV with these columns, after lines with # that say its source. " +
    "An empty cell is left out here.";
  return schemaText("Wire series", described, { type: "array", items: sectionAt("", wireColumns), minItems: 1 });
}

function sectionAt(path: string, all: readonly CatalogKey[]): SchemaNode {
  const prefix = path === "" ? "" : `${path}.`;
  const keys = all
    .filter((key) => key.path.startsWith(prefix))
    .map((key) => ({ key, name: key.path.slice(prefix.length) }))
    .filter(({ name }) => !name.includes("."));
  const properties = keys.map(({ key, name }) => [name, { description: key.sentence, ...formOf(key, all) }] as const);
  return sectionNode(
    Object.fromEntries(properties),
    keys.filter(({ key }) => key.required).map(({ name }) => name),
  );
}

function formOf({ path, kind, quantity, pair, words = [] }: CatalogKey, all: readonly CatalogKey[]): SchemaNode {
  switch (kind) {
    case "section":
      return sectionAt(path, all);
    case "sections":
      return { anyOf: [sectionAt(path, all), { type: "array", items: sectionAt(path, all), minItems: 1 }] };
    case "list":
      return { type: "array", items: sectionAt(path, all) };
    case "pairs":
      return {
        type: "array",
        items: { type: "array", items: (pair ?? []).map(quantityOf), minItems: 2, maxItems: 2 },
        minItems: 1,
      };
    case "texts":
      return { type: "array", items: textNode };
    case "word":
      return wordNode(words);
    case "quantity":
      return quantityOf(quantity as QuantityRule);
    default:
      return textNode;
  }
}

function quantityOf({ dimension, least }: QuantityRule): SchemaNode {
  return quantityNode(dimension, least === "zero or more" ? "notNegative" : "positive");
}
