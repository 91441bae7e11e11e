import { starterBrief } from "../brief/start.ts";
import { checkWritable, isThere, printError, printOut, writeText } from "../files.ts";
import { ProblemError } from "../problem.ts";

/** Writes the starter brief to a new file, or prints it where none is named. Throws ProblemError `there` rather than overwrite. */
export async function runStart(file: string | undefined): Promise<void> {
  if (file === undefined) return printOut(starterBrief());
  if (isThere(file)) {
    throw new ProblemError([{ code: "there", key: "start", got: `${file} is there already`, want: "name a new file" }]);
  }
  checkWritable(file, "start");
  writeText(file, starterBrief(), "start");
  return printError(`wrote ${file}; next: coilsieve sweep ${file}\n`);
}
