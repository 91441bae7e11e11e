import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import type { Brief } from "../../src/model.ts";
import { pairSolid, pairStates } from "../../src/report/solid/body.ts";
import { stepFile } from "../../src/report/solid/step.ts";
import { nestedSweep } from "../../src/studies/nested.ts";
import { small } from "../studies/nested/briefs.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { openPage } from "./open-page.ts";
import { browser } from "./own-browser.ts";
import { writePage } from "./page-file.ts";
import { sharedPage, shownIn } from "./shared-page.ts";
import { sheetsOf } from "./sheets.ts";

const HOSTILE = '<img src=x onerror="document.title=`taken`">';
const result = nestedSweep(small);
const narrow: Brief = { ...small, envelope: { ...small.envelope, bore: 0.012 } };

let address: string;

const shared = sharedPage(() => address);
const nothing = nestedSweep(narrow);
const withNothing = sharedPage(() => writePage(nothing));

beforeAll(async () => {
  address = await writePage(result);
});

describe("a page of nested pairs opened from a file", () => {
  it("asks for nothing but itself, says nothing on the console and keeps its policy", async () => {
    const { said, asked, violations } = await shared();
    expect([asked, said, await violations()]).toEqual([[address], [], []]);
  });

  it("shows the best pair first, both springs drawn in one another, and their shares of each force", async () => {
    const { page } = await shared();
    const { outer, inner } = result.pairs[0]!;
    expect(await page.locator("#chosen-name").textContent()).toBe(
      `Rank 1: outer of wire ${outer.wire} of ${outer.series} in ${outer.material}, ` +
        `inner of wire ${inner.wire} of ${inner.series} in ${inner.material}`,
    );
    expect(await page.locator("svg.spring title").textContent()).toContain("the outer cut open");
    const rows = await page
      .getByRole("region", { name: "How they share the load" })
      .locator("tbody tr")
      .evaluateAll((lines) => lines.map((line) => [...line.children].slice(1).map((cell) => Number(cell.textContent))));
    expect(rows).toHaveLength(2);
    for (const [i, [length, outerForce, innerForce, together, share]] of rows.entries()) {
      expect(length! / 1000).toBeCloseTo(outer.points[i]!.length, 6);
      expect(outerForce).toBeCloseTo(outer.points[i]!.force, 1);
      expect(innerForce! + outerForce!).toBeCloseTo(together!, 1);
      expect(share).toBeCloseTo(100 * result.pairs[0]!.share, 1);
    }
  });

  it("ranks the pairs as the sweep ranked them, and a click on a row shows that pair above", async () => {
    const { page } = await shared();
    expect(await page.locator("#ranked tbody tr").count()).toBe(result.pairs.length);
    await page.locator("#ranked tbody tr").nth(1).click();
    expect(await page.locator("#chosen-name").textContent()).toContain("Rank 2:");
    expect(await page.locator("#ranked tr[aria-current]").getAttribute("data-pair")).toBe("2");
  });

  it("gives both springs away as one file for CAD, as the command line writes it", async () => {
    const { page } = await openPage(browser, address);
    const [came] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "solid, STEP" }).click()]);
    expect(came.suggestedFilename()).toMatch(/-rank-1-free\.step$/);
    const [best] = result.pairs;
    expect(readFileSync(await came.path(), "utf8")).toBe(stepFile(pairSolid(small, best!, pairStates(small, best!)[0]!)));
    await page.context().close();
  });

  it("a keyboard reaches a row, chooses its pair and stays on it", async () => {
    const { page } = await shared();
    await page.getByRole("button", { name: "Rank 3:" }).focus();
    await page.keyboard.press("Enter");
    expect(await page.locator("#chosen-name").textContent()).toContain("Rank 3:");
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset.pair)).toBe("3");
  });

  it("counts where the springs of either place fell", async () => {
    const { page } = await shared();
    const cells = await page
      .locator("#funnel tbody tr")
      .evaluateAll((lines) =>
        lines.map((line) => [...line.children].slice(2).map((cell) => Number(cell.textContent?.replaceAll(",", "")))),
      );
    const sum = (counts: object) => Object.values(counts).reduce((a: number, b: number) => a + b, 0);
    for (const [column, role] of (["outer", "inner"] as const).entries())
      expect(cells.reduce((total, row) => total + row[column]!, 0)).toBe(sum(result.roles[role].rejected));
  });

  it.each(["light", "dark"] as const)(
    "has no accessibility fault on %s ground, nor with no pair that fits",
    async (colorScheme) => {
      expect(nothing.pairsFit).toBe(0);
      for (const one of [shared, withNothing]) {
        const { page } = await one();
        await shownIn(page, 1280, colorScheme);
        expect(await accessibilityFaults(page)).toEqual([]);
      }
    },
  );

  it.each(["outer", "inner"] as const)(
    "opens the sheets of the %s, wound in its hand, at its share of the force",
    async (role) => {
      const { page, violations } = await shared();
      const spring = result.pairs[0]![role];
      await page.getByRole("button", { name: `Data sheet of the ${role}` }).click();
      expect(await page.getByRole("dialog").textContent()).toContain(`Drawn to scale, ${spring.hand}-hand.`);
      expect(await accessibilityFaults(page)).toEqual([]);
      expect(await sheetsOf(page, "A4")).toBe(1);
      await page.getByRole("button", { name: "Close" }).click();
      await page.getByRole("button", { name: `Calculation sheet of the ${role}` }).click();
      expect(await page.getByRole("dialog").textContent()).toMatch(
        new RegExp(`\\b${Number(spring.points[1]!.force.toPrecision(6))}\\sN`),
      );
      expect(await violations()).toEqual([]);
    },
  );

  it.each([390, 768, 1280])("scrolls only up and down at a width of %i", async (width) => {
    const { page } = await shared();
    await shownIn(page, width);
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  });

  it.each(["A4", "Letter"])("prints on %s in three to six pages, nothing cut off at the side", async (format) => {
    const { page } = await shared();
    await shownIn(page, 690, "dark");
    const pages = await sheetsOf(page, format);
    expect(pages).toBeGreaterThanOrEqual(3);
    expect(pages).toBeLessThanOrEqual(6);
    await page.emulateMedia({ media: "print" });
    const cut = await page
      .locator("#chosen .box")
      .evaluateAll((boxes) => boxes.filter((box) => box.scrollWidth > box.clientWidth).map((box) => box.ariaLabel));
    expect(cut).toEqual([]);
  });

  it("a title that is markup stays text", async () => {
    const hostile = await writePage({ ...result, brief: { ...small, title: HOSTILE } });
    const { page, asked, violations } = await openPage(browser, hostile);
    expect(await page.locator("h1").textContent()).toBe(HOSTILE);
    expect(await page.locator("img").count()).toBe(0);
    expect([asked, await violations()]).toEqual([[hostile], []]);
    await page.context().close();
  });
});
