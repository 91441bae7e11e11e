import type { Lookup } from "../model.ts";
import { nearestNames, type Problem, ProblemError, quoted } from "../problem.ts";
import { readEnds } from "./ends.ts";
import { readMaterial } from "./materials.ts";
import type { CatalogText } from "./source-text.ts";
import { readWireSeries } from "./wires.ts";

/** The kinds of catalog, as `coilsieve catalog KIND` names them. */
export type CatalogKind = "wires" | "materials" | "ends";

/** The shipped catalogs as texts: a series and a material go by the name of their file, without its ending. */
export interface Shelf {
  readonly wires: ReadonlyMap<string, CatalogText>;
  readonly materials: ReadonlyMap<string, CatalogText>;
  readonly ends: CatalogText;
}

/**
 * A thing by its name, or what is wrong with the name (`unknownName`), without a file: the caller adds where it stands.
 *
 * @param kind    what is looked for
 * @param name    as typed
 * @param things  by name
 */
export function findNamed<Thing>(
  kind: CatalogKind,
  name: string,
  things: ReadonlyMap<string, Thing>,
): { readonly found: Thing } | Problem {
  const found = things.get(name);
  if (found !== undefined) return { found };
  const singular = { wires: "wire series", materials: "material", ends: "end style" }[kind];
  const nearest = nearestNames(name, [...things.keys()]);
  const list = `\`coilsieve catalog ${kind}\` lists all`;
  const want = nearest.length === 0 ? list : `nearest ${nearest.length > 1 ? "are" : "is"} ${nearest.join(", ")} (${list})`;
  return { code: "unknownName", key: kind, got: `no ${singular} "${quoted(name)}"`, want };
}

/**
 * What a brief's names resolve to: a name on the shelf, or, where it has a slash or ends in .csv or .yaml, a file beside the
 * brief. An entry is read when it is first named, and a text that is the same object is read once. The lookup throws a
 * `ProblemError`: `unknownName`, without a file; `severalEnds`, where a file that is named as one end style holds another number
 * of them; and what the readers find.
 *
 * @param shelf  the shipped catalogs
 * @param open   the text of a file whose path is relative to the file that names it; throws a `ProblemError` where it cannot
 */
export function lookupOn(shelf: Shelf, open: (path: string, from: string) => CatalogText): Lookup {
  const textOf = (kind: "wires" | "materials", name: string, from: string): CatalogText =>
    isPath(name) ? open(name, from) : foundOrThrown(findNamed(kind, name, shelf[kind]));
  const [seriesIn, materialIn, endsIn] = [once(readWireSeries), once(readMaterial), once(readEnds)];
  return {
    // A file's name is the series', so one text has one.
    series: (name, from) => seriesIn(textOf("wires", name, from), baseName(name)),
    material: (name, from) => materialIn(textOf("materials", name, from)),
    ends: (name, from) => {
      const catalog = isPath(name) ? open(name, from) : shelf.ends;
      const styles = endsIn(catalog);
      if (!isPath(name)) return foundOrThrown(findNamed("ends", name, new Map(styles.map((style) => [style.name, style]))));
      const [style, ...more] = styles;
      if (style !== undefined && more.length === 0) return style;
      const got = `${styles.length} end styles came`;
      throw new ProblemError([
        { code: "severalEnds", file: catalog.file, key: "file", got, want: "a file named in a brief holds one" },
      ]);
    },
  };
}

/** A reader that reads each text once; what it throws it throws every time. */
function once<Rest extends readonly unknown[], Thing>(
  read: (catalog: CatalogText, ...rest: Rest) => Thing,
): (catalog: CatalogText, ...rest: Rest) => Thing {
  const known = new WeakMap<CatalogText, Thing>();
  return (catalog, ...rest) => {
    const thing = known.get(catalog) ?? read(catalog, ...rest);
    known.set(catalog, thing);
    return thing;
  };
}

function foundOrThrown<Thing>(result: { readonly found: Thing } | Problem): Thing {
  if ("found" in result) return result.found;
  throw new ProblemError([result]);
}

function isPath(name: string): boolean {
  return name.includes("/") || /\.(csv|yaml)$/.test(name);
}

/** A path's last part without its ending. */
function baseName(name: string): string {
  return name.replace(/^.*\//, "").replace(/\.csv$/, "");
}
