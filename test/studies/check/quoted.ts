import { readCheckBrief } from "../../../src/brief/read.ts";
import type { CheckEntry, CheckResult } from "../../../src/model.ts";
import { check } from "../../../src/studies/check.ts";
import { shipped } from "../../catalog/shipped.ts";

/** Parts of a brief that judges one spring; those left out are the spring below, of which every limit holds. */
export interface QuotedParts {
  readonly practice?: string;
  readonly load?: string;
  readonly envelope?: string;
  readonly service?: string;
  readonly limits?: string;
  readonly design?: string;
}

/** The spring whose other data each test gives; invented. */
export const spring = "wire: 2 mm, material: astm-a228, ends: squared-ground";

const sound: Required<QuotedParts> = {
  practice: "practice: handbook",
  load: "load: { points: [{ name: open, length: 36 mm, force: 40 N ± 10 % }, { name: closed, length: 26 mm, force: 89 N ± 10 % }] }",
  envelope: "envelope: { bore: 20 mm, freeLength: { max: 55 mm } }",
  service: "",
  limits: "",
  design: `design: { ${spring}, meanDiameter: 16 mm, totalTurns: 10, freeLength: 44 mm }`,
};

/** Text of a brief, a line to a part. */
export function quotedText(parts: QuotedParts): string {
  return `${Object.values({ ...sound, ...parts }).join("\n")}\n`;
}

/** The check of a spring by the shipped catalogs. */
export function checkOf(parts: QuotedParts): CheckResult {
  return check(readCheckBrief(quotedText(parts), "quoted.yaml", shipped));
}

/** The check of other data of the spring, written as in a brief. */
export function checkOfData(data: string, parts: QuotedParts = {}): CheckResult {
  return checkOf({ ...parts, design: `design: { ${spring}, ${data} }` });
}

/** The entries that fail, by what they judge. */
export function failing({ entries }: CheckResult): string[] {
  const name = ({ limit, point, figure, sense }: CheckEntry) => [limit, point, figure, sense].filter(Boolean).join(" ");
  return entries.filter(({ passes }) => !passes).map(name);
}
