import type { Browser } from "playwright-core";
import { launchBrowser } from "./browser.ts";

/** The browser of this process, for all test files that it runs; it ends with the process. */
export const browser: Browser = await launchBrowser();
