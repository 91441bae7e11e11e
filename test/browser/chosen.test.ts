import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import type { Brief } from "../../src/model.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { read } from "../brief/reading.ts";
import { brief as fine } from "../report/fixture.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { openPage } from "./open-page.ts";
import { browser } from "./own-browser.ts";
import { coarse, writePage } from "./page-file.ts";
import { sharedPage, shownIn } from "./shared-page.ts";
import { sheetsOf } from "./sheets.ts";

const HOSTILE = '<img src=x onerror="document.title=`taken`">';
const brief = coarse(fine);
const demo = (name: string): Brief => coarse(read(readFileSync(`reports/${name}.yaml`, "utf8"), `reports/${name}.yaml`));
const shuttle = sweep(demo("shuttle-return"), { sample: 200, byWire: true });
const notJudged = sweep({ ...brief, service: { ...brief.service, cycles: 1e6 } }, { sample: 50, byWire: true });

let cyclic: string;

const shared = sharedPage(() => cyclic);

beforeAll(async () => {
  cyclic = await writePage(shuttle);
});

/** The figures and tables under one heading of the chosen spring, each line as label and texts. */
function linesUnder(page: Page, heading: string): Promise<string[][]> {
  return page
    .locator(".facts section", { has: page.getByRole("heading", { name: heading, exact: true }) })
    .evaluate((section) => [
      ...[...section.querySelectorAll("dt")].map((term) => [term.textContent ?? "", term.nextElementSibling?.textContent ?? ""]),
      ...[...section.querySelectorAll("tbody tr")].map((row) => [...row.children].map((cell) => cell.textContent ?? "")),
    ]);
}

const headings = (page: Page) => page.locator(".facts h3").allTextContents();

describe("what the chosen spring does in its duty", () => {
  it("cyclic: forces, both stresses and the safety that the sweep gave it, with the line that judged it", async () => {
    const { page } = await shared();
    const best = shuttle.designs[0]!;
    const lines = new Map((await linesUnder(page, "Cyclic duty")).map(([label, text]) => [label, text]));
    expect(lines.get("cycles asked")).toBe("10,000,000");
    expect(lines.get("least force")).toBe(`${Number((best.cyclic!.leastForce / 4.4482216152605).toPrecision(4))} lbf`);
    expect(lines.get("fatigue safety")).toBe(String(Number(best.fatigueSafety!.toPrecision(4))));
    expect(await page.locator(".facts").textContent()).toContain("by a Goodman line; at least 1.3 is asked.");
  });

  it("hot: moduli, rate and forces beside those as tested, and that relaxation is not known", async () => {
    const { page } = await shared();
    const lines = await linesUnder(page, "At 150 °F");
    expect(lines.map(([label]) => label)).toEqual([
      "load lost in time (relaxation)",
      "shear modulus",
      "Young's modulus",
      "rate",
      "force at home",
      "force at struck",
    ]);
    expect(lines[0]?.[1]).toMatch(
      /^not known for this material: ask for the percent lost at 150 °F and .* after the hours in service$/,
    );
    const [cold = "", warm = ""] = lines[3]?.slice(1) ?? [];
    expect(Number.parseFloat(warm)).toBeLessThan(Number.parseFloat(cold));
  });

  it("tolerances: each point's force by grade and at worst, which is said to be no likelihood", async () => {
    const { page } = await shared();
    const lines = await linesUnder(page, "Manufacturing tolerances");
    const [home] = shuttle.designs[0]!.tolerance.points;
    const force = (newtons: number) => Number((newtons / 4.4482216152605).toPrecision(4));
    expect(lines.find(([label]) => label === "force at home")?.[2]).toBe(
      `${force(home!.leastForce!)} lbf to ${force(home!.greatestForce!)} lbf`,
    );
    expect(await page.locator(".facts").textContent()).toContain("It says what is possible, not what is likely.");
  });

  it("cost: parts that add up, where operations weigh something", async () => {
    const { page } = await shared();
    const lines = await linesUnder(page, "Parts of the relative cost");
    const numbers = lines.map(([, text]) => Number(text));
    expect(lines.at(-1)?.[0]).toBe("together");
    expect(numbers.slice(0, -1).reduce((a, b) => a + b)).toBeCloseTo(numbers.at(-1)!, 4);
  });

  it("shows none of these where nothing is asked of it but the free length and the maker's tolerances", async () => {
    const { page } = await openPage(browser, await writePage(sweep(brief, { sample: 50, byWire: true })));
    expect(await headings(page)).toEqual(["Free length", "Manufacturing tolerances"]);
    await page.context().close();
  });

  it("says in place of a safety that fatigue was not judged, and warns of it near the top", async () => {
    expect(notJudged.warnings).toContain("fatigueNotJudged");
    const { page } = await openPage(browser, await writePage(notJudged));
    expect(await linesUnder(page, "Cyclic duty")).toContainEqual(["fatigue safety", "not judged"]);
    const warnings = page.getByRole("list", { name: "Warnings" });
    expect(await warnings.textContent()).toContain("fatigue was not judged");
    expect((await warnings.boundingBox())?.y).toBeLessThan(400);
    await page.context().close();
  });
});

describe("the sheets of the chosen spring", () => {
  it.each([
    ["Data sheet for the maker", "Compression spring: data sheet"],
    ["Calculation sheet", "Working: Shuttle check return spring"],
  ])("%s opens by keyboard with no accessibility fault, and Escape gives the page back", async (name, heading) => {
    const { page, said, asked, violations } = await shared();
    await shownIn(page, 1280, "dark");
    const button = page.getByRole("button", { name });
    await button.focus();
    await page.keyboard.press("Enter");
    const dialog = page.getByRole("dialog", { name });
    expect(await dialog.locator("h1").textContent()).toContain(heading);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.keyboard.press("Escape");
    expect(await dialog.count()).toBe(0);
    expect(await button.evaluate((one) => one === document.activeElement)).toBe(true);
    expect([said, asked, await violations()]).toEqual([[], [cyclic], []]);
  });

  it("are of the spring that is chosen", async () => {
    const { page } = await shared();
    await page.locator("#ranked tbody tr").nth(2).click();
    await page.getByRole("button", { name: "Calculation sheet" }).click();
    expect(await page.getByRole("dialog").textContent()).toContain("Rank 3: wire");
  });

  it.each(["A4", "Letter"])(
    "print on %s by themselves: the data sheet on one sheet, without the page behind it",
    async (format) => {
      const { page } = await shared();
      await shownIn(page, 1280, "dark");
      await page.getByRole("button", { name: "Data sheet for the maker" }).click();
      expect(await sheetsOf(page, format)).toBe(1);
      await page.emulateMedia({ media: "print" });
      expect(await page.locator("main").isVisible()).toBe(false);
      expect(await page.locator("#paper-close").isVisible()).toBe(false);
    },
  );

  it("keep a brief's markup text", async () => {
    const hostile = await writePage(sweep({ ...brief, title: HOSTILE }, { sample: 50, byWire: true }));
    const { page, asked, violations } = await openPage(browser, hostile);
    for (const name of ["Data sheet for the maker", "Calculation sheet"]) {
      await page.getByRole("button", { name }).click();
      expect(await page.getByRole("dialog").textContent()).toContain(HOSTILE);
      await page.keyboard.press("Escape");
    }
    expect(await page.title()).toBe(HOSTILE);
    expect(await page.locator("img").count()).toBe(0);
    expect([asked, await violations()]).toEqual([[hostile], []]);
    await page.context().close();
  });

  it.each([390, 768])("scroll only up and down at a width of %i", async (width) => {
    const { page } = await shared();
    await shownIn(page, width);
    for (const name of ["Data sheet for the maker", "Calculation sheet"]) {
      await page.getByRole("button", { name }).click();
      const [content, shown] = await page.locator("#paper").evaluate((paper) => [paper.scrollWidth, paper.clientWidth]);
      expect(content, name).toBeLessThanOrEqual(shown!);
      await page.keyboard.press("Escape");
    }
  });
});
