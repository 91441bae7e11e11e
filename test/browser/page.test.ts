import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { sweep } from "../../src/studies/sweep.ts";
import { brief as fine } from "../report/fixture.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { drag } from "./drag.ts";
import { openPage, placedPoints } from "./open-page.ts";
import { browser } from "./own-browser.ts";
import { coarse, writePage } from "./page-file.ts";
import { sharedPage, shownIn } from "./shared-page.ts";

const HOSTILE = '<img src=x onerror="document.title=`taken`">';
const brief = coarse(fine);
const result = sweep(brief, { sample: 1000, byWire: true });

let address: string;

const shared = sharedPage(() => address);
const nothing = sweep({ ...brief, envelope: { ...brief.envelope, freeLength: { max: 0.052 } } });
const withNothing = sharedPage(() => writePage(nothing));

beforeAll(async () => {
  address = await writePage(result);
});

/** The first number of a sentence, its thousands grouped. */
const firstCount = (text: string | null) => Number(/[\d,]+/.exec(text ?? "")?.[0]?.replaceAll(",", ""));
const chosenRow = (page: Page) => page.locator("#ranked tr[aria-current]").getAttribute("data-spring");

describe("a report page opened from a file", () => {
  it("asks for nothing but itself, says nothing on the console and keeps its policy", async () => {
    const { said, asked, violations } = await shared();
    expect(asked).toEqual([address]);
    expect(said).toEqual([]);
    expect(await violations()).toEqual([]);
  });

  it("shows the best spring first, with the figures that the sweep gave it", async () => {
    const { page } = await shared();
    const best = result.designs[0]!;
    expect(await page.locator("#chosen-name").textContent()).toContain(
      `Rank 1: wire ${best.wire} of ${best.series} in ${best.material}`,
    );
    expect(await page.locator("#chosen-spring .chosen dl").textContent()).toContain(
      `free length${Number((1000 * best.freeLength).toFixed(2))} mm`,
    );
    expect(await page.locator("#chosen-spring .screen-only svg.spring title").textContent()).toContain("Spring drawn to scale");
  });

  it("ranks the springs as the sweep ranked them", async () => {
    const { page } = await shared();
    const rows = await page
      .locator("#ranked tbody tr")
      .evaluateAll((lines) => lines.map((line) => [...line.children].map((cell) => cell.textContent)));
    expect(rows.length).toBeGreaterThanOrEqual(result.designs.length);
    for (const [i, { wire, material, ends }] of result.designs.entries())
      expect(rows[i]?.slice(0, 4)).toEqual([String(i + 1), wire, material, ends]);
  });

  it("a brush keeps only the springs inside it, and says how many of how many", async () => {
    const { page } = await shared();
    const points = await placedPoints(page);
    expect(await page.locator("#listed").textContent()).toContain(
      `of ${points.length.toLocaleString("en")} springs drawn are listed`,
    );
    const xs = points.map(({ x }) => x).sort((a, b) => a - b);
    const ys = points.map(({ y }) => y).sort((a, b) => a - b);
    const at = (sorted: readonly number[], share: number) => (sorted[Math.floor(share * sorted.length)] ?? 0) + 0.37;
    const [left, right, top, bottom] = [at(xs, 0.1), at(xs, 0.5), at(ys, 0.2), at(ys, 0.8)].map(Math.round) as [
      number,
      number,
      number,
      number,
    ];
    await drag(page, [left, top], [right, bottom]);
    const inside = points.filter(({ x, y }) => x >= left && x <= right && y >= top && y <= bottom);
    const listed = await page.locator("#listed").textContent();
    expect(inside.length).toBeGreaterThan(10);
    expect(inside.length).toBeLessThan(points.length);
    expect(firstCount(listed)).toBe(inside.length);
    expect(listed).toContain(`of ${points.length.toLocaleString("en")} springs drawn lie in the brush`);
    const ids = new Set(inside.map(({ id }) => String(id)));
    const rows = await page
      .locator("#ranked tbody tr:not([aria-current])")
      .evaluateAll((lines) => lines.map((line) => (line as HTMLElement).dataset.spring));
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.every((id) => ids.has(id ?? ""))).toBe(true);
  });

  it("a point inside the brush has its tooltip, and a click on it chooses it and keeps the brush", async () => {
    const { page } = await shared();
    const points = await placedPoints(page);
    const middle = points[Math.floor(points.length / 2)]!;
    await drag(page, [middle.x - 60, middle.y - 50], [middle.x + 60, middle.y + 50]);
    const before = await page.locator("#listed").textContent();
    await page.mouse.move(middle.x, middle.y);
    await page.waitForSelector("#tip:not([hidden])");
    expect(await page.locator("#tip").textContent()).toContain("outside diameter, mm");
    await page.mouse.click(middle.x, middle.y);
    const chosen = Number(await chosenRow(page));
    // Springs may share a place: whichever was on top, its place is the one that was clicked.
    const [a, b] = [points.find(({ id }) => id === chosen)!, middle];
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(6);
    expect(chosen).not.toBe(0);
    expect(await page.locator("#listed").textContent()).toBe(before);
    expect(await page.locator("#chosen-spring .chosen dl").textContent()).toContain(
      `outside diameter${Number(a.outsideDiameter.toPrecision(4))} mm`,
    );
  });

  it("a click beside the points lifts the brush", async () => {
    const { page } = await shared();
    const points = await placedPoints(page);
    const middle = points[Math.floor(points.length / 2)]!;
    await drag(page, [middle.x - 60, middle.y - 50], [middle.x + 60, middle.y + 50]);
    expect(await page.locator("#listed").textContent()).toContain("lie in the brush");
    const right = Math.max(...points.map(({ x }) => x));
    const top = Math.min(...points.map(({ y }) => y));
    const free = Array.from({ length: 40 }, (_, i) => [right - 4 * i, top + 4 * i] as const).find(([x, y]) =>
      points.every((point) => Math.hypot(point.x - x, point.y - y) > 8),
    )!;
    await page.mouse.click(...free);
    expect(await page.locator("#listed").textContent()).toContain("are listed");
  });

  it("a click on a row shows that spring above and rings it in the chart", async () => {
    const { page } = await shared();
    await page.locator("#ranked tbody tr").nth(2).click();
    expect(await page.locator("#chosen-name").textContent()).toContain("Rank 3:");
    expect(await chosenRow(page)).toBe("2");
    const ringed = await page.evaluate(() => {
      const host = document.getElementById("chart") as HTMLElement & { view: { data(name: string): { id: number }[] } };
      return host.view.data("chosen").map(({ id }) => id);
    });
    expect(ringed).toEqual([2]);
  });

  it("a keyboard reaches a row, chooses its spring and stays on it", async () => {
    const { page } = await shared();
    await page.locator("#ranked").evaluate((table) => table.parentElement?.focus());
    await page.keyboard.press("Tab");
    await page.keyboard.press("Tab");
    await page.keyboard.press("Enter");
    expect(await page.locator("#chosen-name").textContent()).toContain("Rank 2:");
    expect(await page.evaluate(() => (document.activeElement as HTMLElement).dataset.spring)).toBe("1");
  });

  it("one choice changes what colour shows", async () => {
    const { page, said } = await shared();
    const colour = page.locator("#colour-by");
    const before = { value: await colour.inputValue(), chart: await page.locator("#chart canvas").screenshot() };
    await colour.selectOption("mass");
    await expect.poll(async () => (await page.locator("#chart canvas").screenshot()).equals(before.chart)).toBe(false);
    await colour.selectOption(before.value);
    expect(said).toEqual([]);
  });

  it.each(["light", "dark"] as const)(
    "has no accessibility violation on %s ground, nor with nothing that fits",
    async (colorScheme) => {
      expect(nothing.feasible).toBe(0);
      for (const one of [shared, withNothing]) {
        const { page } = await one();
        await shownIn(page, 1280, colorScheme);
        expect(await accessibilityFaults(page)).toEqual([]);
      }
    },
  );

  it("follows the system from light to dark and keeps its brush", async () => {
    const { page, said } = await shared();
    const points = await placedPoints(page);
    const middle = points[Math.floor(points.length / 2)]!;
    await drag(page, [middle.x - 60, middle.y - 50], [middle.x + 60, middle.y + 50]);
    const before = await page.locator("#listed").textContent();
    await page.emulateMedia({ colorScheme: "dark" });
    const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    await expect.poll(ground).toBe("rgb(20, 25, 29)");
    expect(await page.locator("#listed").textContent()).toBe(before);
    expect(said).toEqual([]);
  });

  it.each([390, 768, 1280])("scrolls only up and down at a width of %i", async (width) => {
    const { page } = await shared();
    await shownIn(page, width);
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    const right = async () => {
      const chart = await page.locator("#chart canvas").boundingBox();
      return (chart?.x ?? 0) + (chart?.width ?? width);
    };
    await expect.poll(right).toBeLessThanOrEqual(width);
  });

  it.each(["A4", "Letter"])("prints on %s in four to eight pages", async (format) => {
    const { page, said } = await shared();
    await shownIn(page, 1280, "dark");
    const pdf = (await page.pdf({ format })).toString("latin1");
    const pages = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThanOrEqual(4);
    expect(pages).toBeLessThanOrEqual(8);
    expect(said).toEqual([]);
  });
});

describe("a hostile brief or page", () => {
  it("a title that is markup stays text", async () => {
    const hostile = await writePage(sweep({ ...brief, title: HOSTILE }, { sample: 100, byWire: true }));
    const { page, asked, violations } = await openPage(browser, hostile);
    expect(await page.locator("h1").textContent()).toBe(HOSTILE);
    expect(await page.title()).toBe(HOSTILE);
    expect(await page.locator("img").count()).toBe(0);
    expect(asked).toEqual([hostile]);
    expect(await violations()).toEqual([]);
    await page.context().close();
  });

  it("a script that someone adds to the file does not run", async () => {
    const spoilt = await writePage(result, (page) => page.replace("</main>", "</main><script>document.title='taken'</script>"));
    const { page, violations } = await openPage(browser, spoilt);
    expect(await page.title()).toBe(brief.title);
    expect(await violations()).toEqual(["script-src-elem"]);
    await page.context().close();
  });
});
