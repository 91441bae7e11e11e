import { readBrief } from "../../src/brief/read.ts";
import { lookupOn } from "../../src/catalog/find.ts";
import { readShelf, readTextBeside } from "../../src/disk/files.ts";
import type { Brief } from "../../src/model.ts";
import { type Problem, ProblemError } from "../../src/problem.ts";

const lookup = lookupOn(readShelf(), readTextBeside);

/** The sections of a brief, each written on one line; those left out take the smallest that reads. */
export interface Parts {
  readonly practice?: string;
  readonly load?: string;
  readonly envelope?: string;
  readonly sweep?: string;
  readonly service?: string;
  readonly limits?: string;
  readonly rank?: string;
}

const smallest: Required<Parts> = {
  practice: "practice: handbook",
  load: "load: { force: 20 N, deflection: 10 mm }",
  envelope: "",
  sweep: "sweep: { wires: [iso-r20], materials: [astm-a228], ends: [squared-ground] }",
  service: "",
  limits: "",
  rank: "",
};

/** The line on which each part stands in the text that `briefText` makes. */
export const lineOf = Object.fromEntries(Object.keys(smallest).map((name, index) => [name, index + 1])) as Record<
  keyof Parts,
  number
>;

/** The text of a brief, one line to a section, in the order of `Parts`. */
export function briefText(parts: Parts): string {
  return `${Object.values({ ...smallest, ...parts }).join("\n")}\n`;
}

/** Reads with the shipped catalogs. */
export function read(text: string, file = "test.yaml"): Brief {
  return readBrief(text, file, lookup);
}

/** The problems of a text; empty where it reads. */
export function problemsOf(text: string, file = "test.yaml"): readonly Problem[] {
  try {
    read(text, file);
    return [];
  } catch (error) {
    if (error instanceof ProblemError) return error.problems;
    throw error;
  }
}
