import { readdirSync, readFileSync } from "node:fs";
import { readEnds } from "../catalog/ends.ts";
import { materialFaults, seriesFaults } from "../catalog/faults.ts";
import { readMaterial } from "../catalog/materials.ts";
import type { CatalogText } from "../catalog/source-text.ts";
import { readWireSeries } from "../catalog/wires.ts";

/** Run by the build, from the root of the checkout: reads every shipped catalog, and stops where one has a fault. */

function textsOf(folder: string, ending: string): readonly CatalogText[] {
  const files = readdirSync(folder).filter((file) => file.endsWith(ending));
  return files.map((file) => ({ file: `${folder}/${file}`, text: readFileSync(`${folder}/${file}`, "utf8") }));
}

const nameOf = ({ file }: CatalogText) => file.replace(/^.*\/|\.csv$/g, "");

readEnds({ file: "catalogs/ends.yaml", text: readFileSync("catalogs/ends.yaml", "utf8") });
const faults = [
  ...textsOf("catalogs/materials", ".yaml").flatMap((text) => materialFaults(readMaterial(text))),
  ...textsOf("catalogs/wires", ".csv").flatMap((text) => seriesFaults(readWireSeries(text, nameOf(text)))),
];
if (faults.length > 0) throw new Error(`faults in the shipped catalogs:\n${faults.join("\n")}`);
