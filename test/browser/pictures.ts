import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { launchBrowser } from "./browser.ts";
import { openPage } from "./open-page.ts";

/**
 * The pictures of the README and the tour, taken anew from the built program: `npm run pictures`. Run from the root of the checkout, where
 * npm runs it.
 */

/** Where they look for them. */
const folder = path.join("reports", "pictures");

/** A window on a demo brief's page, with the part that bears this id at its top. */
interface Picture {
  readonly name: string;
  /** Its place in the demo briefs, without its ending. */
  readonly brief: string;
  /** What the page is asked for besides. */
  readonly options?: readonly string[];
  readonly part: string;
  /** Pixels. */
  readonly height: number;
}

const width = 1200;

const pictures: readonly Picture[] = [
  { name: "springs", brief: "latch-plunger", part: "springs", height: 860 },
  { name: "chosen", brief: "vent-flap", part: "chosen", height: 1150 },
  { name: "tour-springs", brief: "tour/pedal-set", options: ["--front", "mass,solidSafety"], part: "springs", height: 820 },
];

/** The drawing of the best design of a demo brief. */
const drawings = [{ name: "tour-chosen", brief: "tour/pedal-set" }] as const;

const sweepOf = (brief: string, ...options: readonly string[]) =>
  execFileSync(process.execPath, [path.join("dist", "cli.js"), "sweep", path.join("reports", `${brief}.yaml`), ...options]);

const pages = mkdtempSync(path.join(tmpdir(), "coilsieve-pictures-"));
mkdirSync(folder, { recursive: true });
const browser = await launchBrowser();
try {
  for (const { name, brief } of drawings) sweepOf(brief, "--drawing", path.join(folder, `${name}.svg`));
  for (const { name, brief, options = [], part, height } of pictures) {
    const file = path.join(pages, `${name}.html`);
    sweepOf(brief, "--html", file, ...options);
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
