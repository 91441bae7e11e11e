import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { launchBrowser } from "./browser.ts";
import { openPage } from "./open-page.ts";

/**
 * The pictures of the README, taken anew from the built program: `npm run pictures`. Run from the root of the checkout, where
 * npm runs it.
 */

/** Where the README looks for them. */
const folder = path.join("reports", "pictures");

/** A window on a demo brief's page, with the part that bears this id at its top. */
interface Picture {
  readonly name: string;
  readonly brief: string;
  readonly part: string;
  /** Pixels. */
  readonly height: number;
}

const width = 1200;

const pictures: readonly Picture[] = [
  { name: "springs", brief: "latch-plunger", part: "springs", height: 860 },
  { name: "chosen", brief: "vent-flap", part: "chosen", height: 1150 },
];

const pages = mkdtempSync(path.join(tmpdir(), "coilsieve-pictures-"));
mkdirSync(folder, { recursive: true });
const browser = await launchBrowser();
try {
  for (const { name, brief, part, height } of pictures) {
    const file = path.join(pages, `${brief}.html`);
    execFileSync(process.execPath, [path.join("dist", "cli.js"), "sweep", path.join("reports", `${brief}.yaml`), "--html", file]);
    const viewport = { width, height };
    const { page } = await openPage(browser, pathToFileURL(file).href, { viewport, colorScheme: "light" });
    await page.evaluate((id) => document.getElementById(id)?.scrollIntoView(), part);
    await page.screenshot({ path: path.join(folder, `${name}.png`) });
    await page.context().close();
  }
} finally {
  await browser.close();
  rmSync(pages, { recursive: true });
}
