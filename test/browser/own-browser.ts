import type { Browser } from "playwright-core";
import { afterAll, beforeAll } from "vitest";
import { launchBrowser } from "./browser.ts";

/** The browser of the test file that imports this: launched before its first test, closed after its last. */
export let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(async () => {
  await browser?.close();
});
