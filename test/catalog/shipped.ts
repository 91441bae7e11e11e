import { readdirSync, readFileSync } from "node:fs";
import { type CatalogKind, lookupOn, type Shelf } from "../../src/catalog/find.ts";
import type { CatalogText } from "../../src/catalog/source-text.ts";
import type { Lookup } from "../../src/model.ts";

const root = new URL("../../catalogs/", import.meta.url);

function textOf(file: string): CatalogText {
  return { file: `catalogs/${file}`, text: readFileSync(new URL(file, root), "utf8") };
}

function folder(kind: Exclude<CatalogKind, "ends">): Map<string, CatalogText> {
  const files = readdirSync(new URL(kind, root))
    .filter((file) => !file.endsWith(".md"))
    .sort();
  return new Map(files.map((file) => [file.replace(/\.\w+$/, ""), textOf(`${kind}/${file}`)]));
}

/** The shipped catalogs as they stand in the tree. */
export const shelf: Shelf = { wires: folder("wires"), materials: folder("materials"), ends: textOf("ends.yaml") };

/** The shipped catalogs by name; no other file is opened. */
export const shipped: Lookup = lookupOn(shelf, (path) => {
  throw new Error(`the shipped catalogs name no file, so not ${path}`);
});
