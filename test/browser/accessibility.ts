import axe from "axe-core";
import type { Page } from "playwright-core";

/** What keeps readers out of a page as it stands now: each rule broken, with the markup that breaks it. */
export async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  // A page that several tests share gets the rules once: to read them takes as long as to judge by them.
  if (await page.evaluate(() => !("axe" in window))) await page.evaluate(axe.source);
  return page.evaluate(async () => {
    // What passes is not told: to name each of its elements takes long too.
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run({ resultTypes: ["violations"] });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
  });
}
