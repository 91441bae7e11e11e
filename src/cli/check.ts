import { checkWritable, printError, printOut, writeText } from "../disk/files.ts";
import { loadCheckBrief } from "../disk/load-brief.ts";
import { checkJson } from "../report/files/json.ts";
import { checkTable } from "../report/terminal/check-table.ts";
import { warningWords } from "../report/text/labels.ts";
import { check } from "../studies/check.ts";
import { aboutFile } from "./briefs.ts";
import { type CalculationOption, calculation, checkCalculation } from "./outputs/calculation.ts";
import { checkAt, checkSpringFiles, type SpringFiles, writeSpringFiles } from "./outputs/datasheet.ts";
import { checkApart, notingLookup, outputsOf, placedForEach, withFolders } from "./outputs/output-paths.ts";
import { checkSolidFiles, solidOutputs } from "./outputs/solid.ts";
import { thisTerminal } from "./outputs/terminal.ts";

/** What may be typed after `check`, as commander hands it over. */
export interface CheckCommandOptions extends SpringFiles {
  readonly json?: string;
  readonly worked?: CalculationOption;
  readonly color: boolean;
}

/**
 * One brief with a design -> the verdict on stdout.
 *
 * @returns exit status: 0 where the design passes, 1 where it fails a limit or its data disagree
 * @throws ProblemError for what is wrong in the brief, options and files
 */
export async function runCheck(path: string, typed: CheckCommandOptions): Promise<number> {
  const [options = typed] = placedForEach([path], typed);
  const { json, color } = options;
  const result = await withFolders(typed, async () => {
    if (json !== undefined && json !== "-") checkWritable(json, "--json");
    checkSpringFiles(options);
    checkCalculation(options.worked, json === "-" ? ["--json"] : []);
    const { lookup, read } = notingLookup();
    const brief = loadCheckBrief(path, lookup);
    checkAt(brief, options);
    checkSolidFiles(brief, options);
    checkApart(
      [...outputsOf(options, ["json", "sheet", "drawing", "dxf", "worked"]), ...solidOutputs(brief, options)],
      [path, ...read],
    );
    return aboutFile(path, () => check(brief));
  });
  for (const warning of result.warnings) await printError(`warning: ${warningWords[warning]}\n`);
  if (json !== undefined && json !== "-") writeText(json, checkJson(result), "--json");
  const passing = result.passes ? result.design : undefined;
  await writeSpringFiles(result.brief, passing, "the design does not pass, so it is not shown to a maker", options);
  const below = await calculation(options.worked, result.brief, result.design, color);
  await printOut((json === "-" ? checkJson(result) : checkTable(result, thisTerminal(color))) + below);
  return result.passes ? 0 : 1;
}
