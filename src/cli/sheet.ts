import { checkWritable, printError, writeText } from "../files.ts";
import type { Brief, Design, EndStyle } from "../model.ts";
import { ProblemError } from "../problem.ts";
import { drawnHand, springDrawing } from "../report/drawing.ts";
import { sheetPage } from "../report/sheet-page.ts";

/** The files that show one spring. */
export interface SpringFiles {
  /** The data sheet, HTML. */
  readonly sheet?: string;
  /** The drawing, SVG. */
  readonly drawing?: string;
}

/** Each option with what a file of it is named. */
const examples = { sheet: "sheet.html", drawing: "spring.svg" } as const;

/**
 * Make sure that the files asked for can be written.
 *
 * @throws ProblemError `pageOnStdout`, or as `checkWritable`
 */
export function checkSpringFiles(files: SpringFiles): void {
  for (const name of ["sheet", "drawing"] as const) {
    const path = files[name];
    if (path === undefined) continue;
    const problem = { code: "pageOnStdout", key: `--${name}`, got: "it is not printed" };
    if (path === "-") throw new ProblemError([{ ...problem, want: `name a file, such as ${examples[name]}` }]);
    checkWritable(path, `--${name}`);
  }
}

/**
 * Write the files asked for of one spring, or say why there are none.
 *
 * @param brief    the brief that it answers
 * @param design   the spring; undefined where there is none to show
 * @param without  why there is none
 * @param files    the files asked for
 * @throws ProblemError `unwritable`
 */
export async function writeSpringFiles(
  brief: Brief,
  design: Design | undefined,
  without: string,
  files: SpringFiles,
): Promise<void> {
  const { sheet, drawing } = files;
  const asked = springOptions(files);
  if (asked.length === 0) return;
  if (design === undefined) return printError(`${asked.join(", ")}: ${without}\n`);
  if (sheet !== undefined) writeText(sheet, await sheetPage(brief, design), "--sheet");
  if (drawing === undefined) return;
  const ends = brief.sweep.ends.find(({ name }) => name === design.ends) as EndStyle;
  writeText(drawing, `${springDrawing(design, ends, brief.units, 640, drawnHand(brief))}\n`, "--drawing");
}

/** The options given of those that show one spring, as a message names them. */
export function springOptions(files: SpringFiles): string[] {
  return (["sheet", "drawing"] as const).filter((name) => files[name] !== undefined).map((name) => `--${name}`);
}
