import { starterBrief } from "../brief/starter-brief.ts";
import { checkWritable, pathBeside, printError, printOut, readText, writeText } from "../disk/files.ts";
import { isThere } from "../disk/folders.ts";
import { oneLine, ProblemError } from "../problem.ts";
import { shippedBriefSchema } from "./schema.ts";

/** What may be typed after `start`, as commander hands it over. */
export interface StartCommandOptions {
  readonly schema?: true;
}

/** What the schema is called beside a new brief. */
const schemaFile = "brief.schema.json";

/**
 * Writes the starter brief to a new file, or prints it where none is named; with `schema` also the JSON Schema beside it, named
 * in the brief's first line, where editors look for it.
 *
 * @throws ProblemError `there` rather than overwrite, or `missing` where the schema has no file to stand beside
 */
export async function runStart(file: string | undefined, { schema }: StartCommandOptions): Promise<void> {
  if (file === undefined && schema) throw startProblem("missing", "--schema without a file", "name the new brief");
  if (file === undefined) return printOut(starterBrief());
  if (isThere(file)) throw startProblem("there", `${file} is there already`, "name a new file");
  checkWritable(file, "start");
  if (schema) writeSchema(pathBeside(schemaFile, file));
  writeText(file, starterBrief(schema && schemaFile), "start");
  return printError(`wrote ${oneLine(file)}; next: coilsieve sweep ${oneLine(file)}\n`);
}

function writeSchema(file: string): void {
  const text = shippedBriefSchema();
  if (isThere(file) && readText(file) !== text) {
    throw startProblem(
      "there",
      `${file} is there already and is another`,
      "`coilsieve schema brief` prints the one of this version",
    );
  }
  writeText(file, text, "--schema");
}

function startProblem(code: string, got: string, want: string): ProblemError {
  return new ProblemError([{ code, key: "start", got, want }]);
}
