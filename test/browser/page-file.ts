import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { readPageScript } from "../../src/disk/files.ts";
import type { Brief, NestedResult, SweepResult } from "../../src/model.ts";
import { pairsPage } from "../../src/report/page/pairs-page.ts";
import { reportPage } from "../../src/report/page/springs-page.ts";

/**
 * Write a result's page, with the script that the build made, to a folder of the system's own for temporary files.
 *
 * @param result  the sweep to report, of single springs or of nested pairs
 * @param spoil   a change to the finished page, for tests of what it withstands
 * @returns the address of the file
 */
export async function writePage(
  result: SweepResult | NestedResult,
  spoil: (page: string) => string = (page) => page,
): Promise<string> {
  const file = path.join(mkdtempSync(path.join(tmpdir(), "coilsieve-page-")), "report.html");
  const page = await ("nested" in result
    ? pairsPage(result, readPageScript("pairs"))
    : reportPage(result, readPageScript("springs")));
  writeFileSync(file, spoil(page));
  return pathToFileURL(file).href;
}

/** The brief with mean diameters half a millimetre apart: its page has a fifth of the work, and all that a page shows. */
export function coarse(brief: Brief): Brief {
  return {
    ...brief,
    sweep: { ...brief.sweep, meanDiameter: { step: 0.0005 } },
    // The page reads its brief again, as its author wrote it.
    asked: brief.asked.filter(({ key }) => !key.startsWith("sweep.meanDiameter")),
  };
}
