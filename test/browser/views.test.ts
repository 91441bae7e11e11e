import type { Locator, Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import type { Brief } from "../../src/model.ts";
import { massSentence } from "../../src/report/charts/mass.ts";
import { relaxationSentence, sensitivityBars, sensitivitySentences } from "../../src/report/charts/sensitivity.ts";
import { wireFields, wireSentence, wireSizes, wiresSentence } from "../../src/report/charts/wires.ts";
import { relax } from "../../src/studies/relax.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { brief as whole } from "../report/fixture.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { asRead } from "./as-read.ts";
import { openPage, placedPoints, settled } from "./open-page.ts";
import { browser } from "./own-browser.ts";
import { coarse, writePage } from "./page-file.ts";
import { sharedPage, shownIn } from "./shared-page.ts";

/** One end style, so that all that fit are drawn. */
const brief = asRead({ ...coarse(whole), sweep: { ...coarse(whole).sweep, ends: whole.sweep.ends.slice(3) } });
const swept = (of: Brief) => sweep(of, { sample: 1000, byWire: true });
const result = swept(brief);
const tight = asRead({ ...brief, envelope: { ...brief.envelope, bore: 0.0155 } });

let address: string;
let addressOfNothing: string;

const shared = sharedPage(() => address);
const withNothing = sharedPage(() => addressOfNothing);

beforeAll(async () => {
  address = await writePage(result);
  addressOfNothing = await writePage(swept(tight));
});

/** What a Vega view in the page draws of a named data set. */
function drawn<Row>(page: Page, chart: string, name: string): Promise<Row[]> {
  return page.evaluate(
    ([id, data]) => {
      const host = document.getElementById(id as string) as HTMLElement & { view: { data(name: string): object[] } };
      return host.view.data(data as string).map((row) => ({ ...row }));
    },
    [chart, name],
  ) as Promise<Row[]>;
}

const idsOf = async (page: Page, chart: string, name: string) =>
  (await drawn<{ id: number }>(page, chart, name)).map(({ id }) => id);

/** A point of a chart in the window, by the view's own scales. */
async function pointOf(page: Page, chart: string, id: number): Promise<{ readonly x: number; readonly y: number }> {
  await page.locator(`#${chart}`).scrollIntoViewIfNeeded();
  return page.evaluate(
    ([name, wanted]) => {
      interface Item {
        readonly datum?: { id?: number };
        readonly bounds: { x1: number; x2: number; y1: number; y2: number };
        readonly items?: readonly Item[];
        readonly x?: number;
        readonly y?: number;
      }
      interface Shown {
        origin(): [number, number];
        padding(): { left: number; top: number };
        scenegraph(): { root: Item };
      }
      const host = document.getElementById(name as string) as HTMLElement & { view: Shown };
      const find = (item: Item): Item | undefined => {
        if (item.datum?.id === wanted && item.items === undefined) return item;
        for (const child of item.items ?? []) {
          const found = find(child);
          if (found) return found;
        }
        return undefined;
      };
      const item = find(host.view.scenegraph().root) as Item;
      const box = (host.querySelector("canvas") as HTMLElement).getBoundingClientRect();
      const [left, top] = host.view.origin();
      const padding = host.view.padding();
      return { x: box.left + left + padding.left + (item.x ?? 0), y: box.top + top + padding.top + (item.y ?? 0) };
    },
    [chart, id] as const,
  );
}

const pricesDone = (page: Page) =>
  page.waitForFunction(() => !document.getElementById("prices-words")?.textContent?.includes("being worked out"));
const texts = (items: Locator) => items.evaluateAll((all) => all.map((item) => item.textContent));

describe("which limits stop which wire", () => {
  it("is told in a sentence, drawn as the sweep counted it, and stands as a table", async () => {
    const { page, said, violations } = await shared();
    const sizes = wireSizes(result.wires ?? [], brief.units, null);
    expect(await page.locator("#wires-words").textContent()).toBe(wiresSentence(sizes));
    expect(await drawn(page, "wires-chart", "fields")).toEqual(wireFields(sizes).map((field) => expect.objectContaining(field)));
    await page.locator("#wires-details summary").click();
    expect(await page.locator("#wires-table tbody tr").count()).toBe(sizes.length);
    expect(said).toEqual([]);
    expect(await violations()).toEqual([]);
  });

  it("a keyboard reads one wire after another, and one material or all together", async () => {
    const { page } = await shared();
    const sizes = wireSizes(result.wires ?? [], brief.units, null);
    await page.locator("#wire-size").selectOption(sizes[0]!.label);
    expect(await page.locator("#wire-words").textContent()).toBe(wireSentence(sizes[0]!));
    await page.locator("#wire-size").focus();
    await page.keyboard.press("ArrowDown");
    expect(await page.locator("#wire-words").textContent()).toBe(wireSentence(sizes[1]!));
    const [outlined] = await drawn<{ size: string }>(page, "wires-chart", "chosen");
    expect(outlined?.size).toBe(sizes[1]!.label);
    const { name } = brief.sweep.materials[1]!;
    await page.locator("#wire-material").selectOption(name);
    const alone = wireSizes(result.wires ?? [], brief.units, name);
    expect(await page.locator("#wires-words").textContent()).toBe(wiresSentence(alone));
    expect(await page.locator("#wire-words").textContent()).toBe(wireSentence(alone[1]!));
    await page.locator("#wire-material").selectOption("");
  });

  it("a click on a row reads that wire, and choosing a spring reads the wire that it is made of", async () => {
    const { page } = await shared();
    const sizes = wireSizes(result.wires ?? [], brief.units, null);
    await page.locator("#wires-chart").scrollIntoViewIfNeeded();
    const canvas = await page.locator("#wires-chart canvas").boundingBox();
    // The last row lies above the lower edge, whose padding is 5 pixels.
    await page.mouse.click(canvas!.x + canvas!.width / 2, canvas!.y + canvas!.height - 12);
    const chosen = await page.locator("#wire-size").inputValue();
    expect(chosen).toBe(sizes.at(-1)?.label);
    expect(await page.locator("#wire-words").textContent()).toBe(wireSentence(sizes.at(-1)!));

    await page.locator('#ranked button[data-spring="0"]').click();
    const best = result.designs[0]!;
    expect(await page.locator("#wire-words").textContent()).toContain(`${1000 * best.wireDiameter} mm: `);
  });
});

describe("both charts of springs and the ranked table", () => {
  it("draw the same springs, and say the lightest of each material", async () => {
    const { page } = await shared();
    const ids = await idsOf(page, "chart", "designs");
    expect(ids.length).toBe(result.feasible);
    expect(await idsOf(page, "mass-chart", "designs")).toEqual(ids);
    const words = await page.locator("#mass-words").textContent();
    const everything = sweep(brief, { top: result.feasible }).designs;
    expect(words).toBe(massSentence(everything, brief));
  });

  it("light the spring that a reader points at in any of them", async () => {
    const { page } = await shared();
    const row = page.locator("#ranked tbody tr").nth(3);
    const id = Number(await row.getAttribute("data-spring"));
    await row.hover();
    expect(await idsOf(page, "chart", "pointed")).toEqual([id]);
    expect(await idsOf(page, "mass-chart", "pointed")).toEqual([id]);

    const place = await pointOf(page, "mass-chart", id);
    await page.mouse.move(place.x, place.y);
    await page.waitForSelector("#tip:not([hidden])");
    const [pointed] = await idsOf(page, "chart", "pointed");
    expect(await idsOf(page, "mass-chart", "pointed")).toEqual([pointed]);
    const marked = await page
      .locator("#ranked tr.pointed")
      .evaluateAll((rows) => rows.map((one) => (one as HTMLElement).dataset.spring));
    expect(marked.every((one) => one === String(pointed))).toBe(true);

    await page.mouse.move(5, 5);
    expect(await idsOf(page, "chart", "pointed")).toEqual([]);
    expect(await page.locator("#ranked tr.pointed").count()).toBe(0);
    expect(await page.locator("#tip").isHidden()).toBe(true);
  });

  it("a keyboard that reaches a row lights its spring in both charts", async () => {
    const { page } = await shared();
    await page.locator('#ranked button[data-spring="2"]').focus();
    expect(await idsOf(page, "chart", "pointed")).toEqual([2]);
    expect(await idsOf(page, "mass-chart", "pointed")).toEqual([2]);
  });

  it("a click in the mass chart chooses in all", async () => {
    const { page } = await shared();
    const ids = await idsOf(page, "mass-chart", "designs");
    const place = await pointOf(page, "mass-chart", ids.at(-1) as number);
    await page.mouse.click(place.x, place.y);
    const chosen = Number(await page.locator("#ranked tr[aria-current]").getAttribute("data-spring"));
    expect(chosen).not.toBe(0);
    expect(await idsOf(page, "chart", "chosen")).toEqual([chosen]);
    expect(await idsOf(page, "mass-chart", "chosen")).toEqual([chosen]);
  });

  it("a brush in the scatter dims the mass chart outside it", async () => {
    const { page } = await shared();
    const points = await placedPoints(page);
    const middle = points[Math.floor(points.length / 2)]!;
    await page.mouse.move(middle.x - 60, middle.y - 50);
    await page.mouse.down();
    await page.mouse.move(middle.x + 60, middle.y + 50, { steps: 3 });
    await page.mouse.up();
    const inside = points.filter(({ x, y }) => Math.abs(x - middle.x) < 60 && Math.abs(y - middle.y) < 50).length;
    const opacities = await page.evaluate(() => {
      interface Item {
        readonly opacity?: number;
        readonly datum?: { id?: number };
        readonly items?: readonly Item[];
      }
      const host = document.getElementById("mass-chart") as HTMLElement & { view: { scenegraph(): { root: Item } } };
      const marks = (item: Item): Item[] => (item.items ? item.items.flatMap(marks) : item.datum?.id === undefined ? [] : [item]);
      return marks(host.view.scenegraph().root).map(({ opacity }) => opacity ?? 1);
    });
    expect(inside).toBeGreaterThan(10);
    // The rings are marks too: those of the chosen spring and of the one under the pointer.
    const bright = opacities.filter((opacity) => opacity > 0.8).length;
    expect(bright - inside).toBeGreaterThanOrEqual(0);
    expect(bright - inside).toBeLessThanOrEqual(2);
    expect(opacities.filter((opacity) => opacity < 0.2)).toHaveLength(result.feasible - inside);
  });
});

describe("the scatter on any two figures", () => {
  it("draws the springs and the front of those two, and lifts a brush of others", async () => {
    const { page, said } = await openPage(browser, address);
    await page.locator("#axis-across").selectOption("mass");
    await page.locator("#axis-up").selectOption("solidSafety");
    // Another front is another sweep.
    await settled(page);
    const swapped = sweep(brief, { top: 1, frontAxes: ["mass", "solidSafety"] }).front;
    const front = await drawn<{ mass: number; solidSafety: number }>(page, "chart", "front");
    expect(front.map(({ mass }) => mass)).toEqual(swapped.map(({ mass }) => Number((1000 * mass).toPrecision(9))));
    expect(front.map(({ solidSafety }) => solidSafety)).toEqual(swapped.map((one) => Number(one.solidSafety.toPrecision(9))));
    const titles = await page.evaluate(() => {
      const { view } = document.getElementById("chart") as HTMLElement & { view: { signal(name: string): string } };
      return [view.signal("acrossTitle"), view.signal("upTitle")];
    });
    expect(titles).toEqual(["mass, g", "safety at solid"]);
    expect(await page.locator("#listed").textContent()).toContain("springs drawn are listed");
    expect(said).toEqual([]);
    await page.context().close();
  });

  it("keeps numbers, titles and legends inside the chart, however wide the numbers of another figure are", async () => {
    const { page } = await openPage(browser, address);
    for (const name of ["mass", "solidSafety", "relativeCost"]) {
      await page.locator("#axis-up").selectOption(name);
      const spilt = await page.evaluate(() => {
        interface Shown {
          origin(): [number, number];
          padding(): { left: number; top: number };
          scenegraph(): { root: { bounds: { x1: number; x2: number; y1: number; y2: number } } };
        }
        return ["chart", "mass-chart"].map((id) => {
          const host = document.getElementById(id) as HTMLElement & { view: Shown };
          const { clientWidth, clientHeight } = host.querySelector("canvas") as HTMLCanvasElement;
          const { x1, x2, y1, y2 } = host.view.scenegraph().root.bounds;
          const [across, down] = host.view.origin();
          const { left, top } = host.view.padding();
          const [x, y] = [across + left, down + top];
          return Math.max(-(x + x1), x + x2 - clientWidth, -(y + y1), y + y2 - clientHeight);
        });
      });
      for (const pixels of spilt) expect(pixels).toBeLessThanOrEqual(1);
    }
    await page.context().close();
  });

  it("changes the places of two figures where one is chosen that stands on the other axis", async () => {
    const { page } = await openPage(browser, address);
    await page.locator("#axis-across").selectOption("freeLength");
    expect(await page.locator("#axis-up").inputValue()).toBe("outsideDiameter");
    await page.context().close();
  });
});

describe("what each limit costs", () => {
  it("is what the prices of the brief say, as bars and in sentences", async () => {
    const { page, said } = await shared();
    await pricesDone(page);
    const prices = relax(brief);
    await expect.poll(() => texts(page.locator("#prices-list li"))).toEqual(sensitivitySentences(prices, brief.units));
    const bars = sensitivityBars(prices).map((bar) => expect.objectContaining(bar));
    await expect.poll(() => drawn(page, "prices-chart", "bars")).toEqual(bars);
    expect(said).toEqual([]);
  });

  it("says what would have to give where nothing fits, beside the map of wires", async () => {
    const { page, said } = await withNothing();
    await pricesDone(page);
    const { concessions } = relax(tight);
    const first = async () => (await texts(page.locator("#prices-list li")))[0];
    await expect.poll(first).toBe(relaxationSentence(concessions[0]!, tight, tight.units));
    expect(await page.locator("#prices-chart").isHidden()).toBe(true);
    expect(await page.locator("#wires-words").textContent()).toContain("Nothing fits in any of 5 wire sizes.");
    expect(said).toEqual([]);
  });
});

describe("what a sweep proves", () => {
  it("stands near the top where every family is taken at its best", async () => {
    const exact = sweep({ ...brief, sweep: { ...brief.sweep, meanDiameter: "exact" } }, { sample: 50 });
    const { page } = await openPage(browser, await writePage(exact));
    expect(await page.locator("#proof").textContent()).toContain(
      `Proof, among the sizes that the tables at hand cover: all ${exact.proof?.families.toLocaleString("en")} combinations of material, wire, ends and turns`,
    );
    await page.context().close();
  });
});

describe("the views for everyone", () => {
  it.each(["light", "dark"] as const)("have no accessibility fault on %s ground, with the table open", async (colorScheme) => {
    for (const one of [shared, withNothing]) {
      const { page } = await one();
      await shownIn(page, 1280, colorScheme);
      await pricesDone(page);
      await page.locator("#wires-details summary").click();
      expect(await accessibilityFaults(page)).toEqual([]);
      await page.locator("#wires-details summary").click();
    }
  });

  it.each([390, 768])("scroll only up and down at a width of %i", async (width) => {
    const { page } = await shared();
    await shownIn(page, width);
    await pricesDone(page);
    await page.locator("#wires-details summary").click();
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await page.locator("#wires-details summary").click();
  });
});
