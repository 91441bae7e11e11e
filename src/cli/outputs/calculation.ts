import { checkWritable, writeText } from "../../disk/files.ts";
import type { Brief, Design } from "../../model.ts";
import { ProblemError } from "../../problem.ts";
import { calculationOf } from "../../report/calculation/calculation.ts";
import { calculationText } from "../../report/calculation/text.ts";
import { thisTerminal } from "./terminal.ts";

/** What may stand after `--worked`: nothing or - prints the sheet; a file gets it in the form that its ending names. */
export type CalculationOption = true | string;

const KEY = "--worked";

/**
 * Make sure that a calculation sheet can go where it is asked for, before the work whose result it is to show.
 *
 * @param option        as typed; undefined where it is not asked
 * @param otherOutputs  options that put something else alone on stdout
 * @throws ProblemError `ending`, `twoOutputs`, or as `checkWritable`
 */
export function checkCalculation(option: CalculationOption | undefined, otherOutputs: readonly string[]): void {
  if (option === undefined) return;
  const fail = (code: string, got: string, want: string): never => {
    throw new ProblemError([{ code, key: KEY, got, want }]);
  };
  if (isPrinted(option)) {
    if (otherOutputs.length === 0) return;
    fail("twoOutputs", `stdout is to hold ${otherOutputs.join(", ")} alone`, "name a file for the sheet");
  }
  const file = option as string;
  if (!/\.(xlsx|html|txt)$/i.test(file)) {
    fail("ending", `${file} is no .xlsx, .html or .txt`, "end its name in one of these, and put the brief before --worked");
  }
  checkWritable(file, KEY);
}

/**
 * Write the calculation sheet of a design where it is asked for.
 *
 * @param option  as checked
 * @param color   whether bold may be printed
 * @returns the sheet where it is to be printed below the result, else nothing
 * @throws ProblemError `unwritable`
 */
export async function calculation(
  option: CalculationOption | undefined,
  brief: Brief,
  design: Design,
  color: boolean,
): Promise<string> {
  if (option === undefined) return "";
  if (isPrinted(option)) return `\n${calculationText(calculationOf(brief, design), thisTerminal(color))}`;
  const file = option as string;
  if (/\.xlsx$/i.test(file)) {
    const { calculationWorkbook } = await import("../../report/calculation/workbook.ts");
    writeText(file, await calculationWorkbook(brief, design), KEY);
  } else if (/\.html$/i.test(file)) {
    const { calculationPage } = await import("../../report/calculation/page.ts");
    writeText(file, await calculationPage(brief, design), KEY);
  } else {
    writeText(file, calculationText(calculationOf(brief, design), { width: 100, colour: false }), KEY);
  }
  return "";
}

/** True where no file is named. */
export function isPrinted(option: CalculationOption | undefined): boolean {
  return typeof option !== "string" || option === "-";
}
