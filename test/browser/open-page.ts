import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import type { Session } from "../../src/explorer/session/session.ts";

/** A page that is drawn, and everything it did that a quiet page does not. */
export interface OpenPage {
  readonly page: Page;
  /** Console messages and errors of its script. */
  readonly said: string[];
  /** Addresses it asked for, itself first; its worker, which it makes of its own script, is none. */
  readonly asked: string[];
  /** Directives of its policy that something ran against. */
  readonly violations: () => Promise<readonly string[]>;
}

/** The window of a page, in pixels, where a test wants no other. */
export const WINDOW = { width: 1280, height: 900 } as const;

/** Open a page in a window of its own and wait until it is drawn. */
export async function openPage(browser: Browser, address: string, options: BrowserContextOptions = {}): Promise<OpenPage> {
  const context = await browser.newContext({ viewport: WINDOW, ...options });
  context.setDefaultTimeout(60_000);
  const page = await context.newPage();
  const said: string[] = [];
  const asked: string[] = [];
  page.on("console", (message) => said.push(message.text()));
  page.on("pageerror", (error) => said.push(error.message));
  page.on("request", (request) => request.url().startsWith("blob:") || asked.push(request.url()));
  await page.addInitScript(() => {
    const seen: string[] = [];
    Object.assign(window, { violations: seen });
    document.addEventListener("securitypolicyviolation", (event) => seen.push(event.violatedDirective));
  });
  await page.goto(address);
  await page.waitForSelector("body[data-ready]");
  return { page, said, asked, violations: () => page.evaluate(() => (window as unknown as { violations: string[] }).violations) };
}

/** Every change is swept and shown. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => !(document.getElementById("run") as HTMLElement & { readonly session: Session }).session.busy);
}

/** A point of the scatter and where it stands in the window. */
export interface PlacedPoint {
  readonly id: number;
  readonly outsideDiameter: number;
  readonly freeLength: number;
  readonly x: number;
  readonly y: number;
}

/** Where every point of the scatter stands now; the chart must be in sight. */
export async function placedPoints(page: Page): Promise<readonly PlacedPoint[]> {
  await page.locator("#springs").scrollIntoViewIfNeeded();
  await page.evaluate(() => document.getElementById("springs")?.scrollIntoView());
  return page.evaluate(() => {
    interface Shown {
      scale(name: string): (value: number) => number;
      origin(): [number, number];
      padding(): { left: number; top: number };
      data(name: string): { id: number; outsideDiameter: number; freeLength: number }[];
    }
    const host = document.getElementById("chart") as HTMLElement & { view: Shown };
    const canvas = host.querySelector("canvas")?.getBoundingClientRect() ?? { left: 0, top: 0 };
    const [left, top] = host.view.origin();
    const across = host.view.scale("x");
    const up = host.view.scale("y");
    return host.view.data("designs").map(({ id, outsideDiameter, freeLength }) => ({
      id,
      outsideDiameter,
      freeLength,
      x: canvas.left + left + host.view.padding().left + across(outsideDiameter),
      y: canvas.top + top + host.view.padding().top + up(freeLength),
    }));
  });
}
