import type { Page } from "playwright-core";

/** How many sheets of paper a page takes as it stands now. */
export async function sheetsOf(page: Page, format: string): Promise<number> {
  const pdf = await page.pdf({ format });
  return pdf.toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}
