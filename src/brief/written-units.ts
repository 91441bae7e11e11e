import type { Asked, Units } from "../model.ts";
import { readQuantity } from "../units/read.ts";

const inchUnit = /(?:^|[\d\s])(?:in|inch|inches|ft|foot|feet|mil|mils|yd)\b/;
const poundUnit = /(?:^|[\d\s])(?:lbf|kip|kips|ozf|poundforce)\b/;

/** The units in which the load is written, by its first length and first force; a rate counts for both. mm and N where neither shows. */
export function writtenUnits(asked: readonly Asked[]): Units {
  const load = asked.filter(({ key }) => key.startsWith("load."));
  const first = (dimension: "length" | "force", part: 0 | 1) => {
    const found = load.find((one) => one.dimension === dimension || one.dimension === "rate");
    if (found === undefined) return "";
    return found.dimension === "rate" ? (found.text.split(/[±+]/)[0]?.split("/")[part] ?? "") : found.text;
  };
  return {
    length: inchUnit.test(first("length", 1)) ? "in" : "mm",
    force: poundUnit.test(first("force", 0)) ? "lbf" : "N",
  };
}

/** A length or rate in the units in which the load is written, for a message. */
export function asWritten(value: number, dimension: "length" | "rate", asked: readonly Asked[]): string {
  const units = writtenUnits(asked);
  const unit = dimension === "length" ? units.length : `${units.force}/${units.length}`;
  const one = readQuantity(`1 ${unit}`, dimension);
  return "value" in one ? `${Number((value / one.value).toPrecision(6))} ${unit}` : "";
}
