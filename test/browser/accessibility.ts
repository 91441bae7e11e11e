import axe from "axe-core";
import type { Page } from "playwright-core";

/** What keeps readers out of a page as it stands now: each rule broken, with the markup that breaks it. */
export async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    const { violations } = await (window as unknown as { axe: typeof axe }).axe.run();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`);
  });
}
