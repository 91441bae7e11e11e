import { briefSchema } from "../brief/schema.ts";
import { readEnds } from "../catalog/ends.ts";
import { endsSchema, materialSchema, wiresSchema } from "../catalog/schema.ts";
import { printOut, readShelf } from "../disk/files.ts";
import { nearestNames, ProblemError } from "../problem.ts";

const schemas = { brief: shippedBriefSchema, material: materialSchema, wires: wiresSchema, ends: endsSchema } as const;

/**
 * Prints the JSON Schema of a kind of file.
 *
 * @param kind  as typed
 * @throws ProblemError `unknownName` for a kind that is none
 */
export async function runSchema(kind: string): Promise<void> {
  const schema = new Map<string, () => string>(Object.entries(schemas)).get(kind);
  if (schema !== undefined) return printOut(schema());
  const [nearest] = nearestNames(kind, Object.keys(schemas));
  const want = nearest === undefined ? `it takes ${Object.keys(schemas).join(", ")}` : `did you mean ${nearest}?`;
  throw new ProblemError([{ code: "unknownName", key: "schema", got: `no schema "${kind}"`, want }]);
}

/** The JSON Schema of a brief, with the names of the shipped catalogs. */
export function shippedBriefSchema(): string {
  const { wires, materials, ends } = readShelf();
  return briefSchema({
    wires: [...wires.keys()],
    materials: [...materials.keys()],
    ends: readEnds(ends).map(({ name }) => name),
  });
}
