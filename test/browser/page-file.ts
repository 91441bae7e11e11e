import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "esbuild";
import type { NestedResult, SweepResult } from "../../src/model.ts";
import { reportPage } from "../../src/report/page.ts";
import { pairsPage } from "../../src/report/pairs-page.ts";

const bundled = new Map<string, Promise<string>>();

/** The script of a page, bundled as the build bundles it. */
function pageScript(main: "main" | "main-pairs"): Promise<string> {
  const script = bundled.get(main) ?? bundle(main);
  bundled.set(main, script);
  return script;
}

function bundle(main: string): Promise<string> {
  return build({
    entryPoints: [fileURLToPath(new URL(`../../src/explorer/${main}.ts`, import.meta.url))],
    bundle: true,
    minify: true,
    format: "iife",
    target: "es2022",
    legalComments: "none",
    write: false,
  }).then(({ outputFiles }) => outputFiles[0]?.text ?? "");
}

/**
 * Write a result's page to a folder of the system's own for temporary files.
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
    ? pairsPage(result, await pageScript("main-pairs"))
    : reportPage(result, await pageScript("main")));
  writeFileSync(file, spoil(page));
  return pathToFileURL(file).href;
}
