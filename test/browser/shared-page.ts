import type { BrowserContextOptions, Page } from "playwright-core";
import { afterAll, afterEach } from "vitest";
import type { Session } from "../../src/explorer/session/session.ts";
import type { Units } from "../../src/model.ts";
import { type OpenPage, openPage, WINDOW } from "./open-page.ts";
import { browser } from "./own-browser.ts";

/** Let a shared page stand in another window, on another ground, until the next test. */
export async function shownIn(page: Page, width: number, colorScheme: "light" | "dark" = "light"): Promise<void> {
  await page.setViewportSize({ width, height: 800 });
  await page.emulateMedia({ colorScheme });
}

/**
 * A page that tests of a file share, for to open one costs more than most of them. Each gets it as it was opened, by what the page has
 * for that: the brief as asked, no brush, no spring kept, rank 1 chosen and drawn free, no sheet open. A test that changes more, such as
 * the units or what an axis shows, puts that back or opens a page of its own. After a test that failed it is opened anew.
 *
 * @param address  of the page, asked for when the first test wants it
 * @param options  of its window
 */
export function sharedPage(
  address: () => string | Promise<string>,
  options: BrowserContextOptions = {},
): () => Promise<OpenPage> {
  let opened: OpenPage | undefined;
  const close = async () => {
    await opened?.page.context().close();
    opened = undefined;
  };
  afterEach(async ({ task }) => {
    if (task.result?.state === "fail") await close();
  });
  afterAll(close);
  return async () => {
    if (opened === undefined) opened = await openPage(browser, await address(), options);
    else await putBack(opened, options);
    return opened;
  };
}

async function putBack(
  { page, said, asked }: OpenPage,
  { colorScheme = "light", viewport }: BrowserContextOptions,
): Promise<void> {
  await page.emulateMedia({ media: null, colorScheme });
  await page.setViewportSize(viewport ?? WINDOW);
  await page.mouse.up();
  await page.mouse.move(0, 0);
  await page.evaluate(async () => {
    const press = (selector: string) => document.querySelector<HTMLElement>(selector)?.click();
    const { session } = (document.getElementById("run") as { readonly session?: Session } | null) ?? {};
    press("#paper-close");
    while (document.querySelector("#beside thead button") !== null) press("#beside thead button");
    if (session !== undefined) {
      const settled = new Promise<void>((resolve) => session.listen(() => !session.busy && resolve()));
      session.asAsked();
      await settled;
      // Other units lift a brush.
      const { units } = session.shown.brief;
      const other: Units = units.length === "mm" ? { length: "in", force: "lbf" } : { length: "mm", force: "N" };
      if (document.getElementById("listed")?.textContent?.includes("in the brush"))
        for (const one of [other, units]) session.useUnits(one);
    }
    press("#ranked tbody button");
    press("#chosen-spring input[type=radio]");
    (document.activeElement as HTMLElement | null)?.blur();
    window.scrollTo(0, 0);
    (window as unknown as { violations: string[] }).violations.length = 0;
  });
  said.length = 0;
  asked.length = 1;
}
