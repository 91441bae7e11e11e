import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import type { SweepResult } from "../../src/model.ts";
import { reportPage } from "../../src/report/page.ts";

let bundled: Promise<string> | undefined;

/** The page's script, bundled as the build bundles it. */
function pageScript(): Promise<string> {
  bundled ??= build({
    entryPoints: [fileURLToPath(new URL("../../src/explorer/main.ts", import.meta.url))],
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    legalComments: "none",
    write: false,
  }).then(({ outputFiles }) => outputFiles[0]?.text ?? "");
  return bundled;
}

/**
 * Write a result's page to a folder of the system's own for temporary files.
 *
 * @param result  the sweep to report
 * @param spoil   a change to the finished page, for tests of what it withstands
 * @returns the address of the file
 */
export async function writePage(result: SweepResult, spoil: (page: string) => string = (page) => page): Promise<string> {
  const file = path.join(mkdtempSync(path.join(tmpdir(), "coilsieve-page-")), "report.html");
  writeFileSync(file, spoil(await reportPage(result, await pageScript())));
  return pathToFileURL(file).href;
}
