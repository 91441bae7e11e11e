import type { BrowserContextOptions, Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import type { Brief } from "../../src/model.ts";
import { countWords } from "../../src/report/text/rejections.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { brief as fixture } from "../report/fixture.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { asRead } from "./as-read.ts";
import { type OpenPage, openPage, placedPoints, settled } from "./open-page.ts";
import { browser } from "./own-browser.ts";
import { coarse, writePage } from "./page-file.ts";
import { sharedPage, shownIn } from "./shared-page.ts";

const brief = asRead(coarse(fixture));

const METRES = { mm: 0.001, in: 0.0254 } as const;

let address: string;

beforeAll(async () => {
  address = await writePage(sweep(brief, { sample: 1000, byWire: true }));
});

const shared = sharedPage(() => address);
const open = (options?: BrowserContextOptions) => openPage(browser, address, options);
const close = ({ page }: OpenPage) => page.context().close();
const grip = (page: Page, name: string) => page.getByRole("slider", { name, exact: true });
const field = (page: Page, name: string) => page.getByRole("spinbutton", { name, exact: true });
const verdict = (page: Page) => page.locator("#verdict").textContent();

/** How many fit once the envelope is another, as the page words it. */
const fitting = (envelope: Brief["envelope"], changes: Partial<Brief> = {}) => {
  const { feasible } = sweep({ ...brief, ...changes, envelope });
  expect(feasible).toBeGreaterThan(1);
  return `${countWords(feasible)} fit`;
};

/** Move a handle by so many pixels, in a few steps, and leave it held. */
async function pull(page: Page, name: string, right: number, down: number): Promise<void> {
  await grip(page, name).scrollIntoViewIfNeeded();
  const box = (await grip(page, name).boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (const share of [0.3, 0.6, 1]) await page.mouse.move(x + share * right, y + share * down);
}

const axisEnds = (page: Page, name: string) =>
  page.evaluate((scale) => {
    const host = document.getElementById("chart") as HTMLElement & { view: { scale(name: string): { domain(): number[] } } };
    return host.view.scale(scale).domain();
  }, name);

describe("a handle on an axis of the chart", () => {
  it("puts a round text into the brief while it is dragged, and the sweep follows", async () => {
    const { page, said, violations } = await shared();
    const before = await axisEnds(page, "x");
    await pull(page, "bore", -60, 0);
    const text = (await grip(page, "bore").getAttribute("aria-valuetext")) ?? "";
    expect(text).toMatch(/^\d+(\.\d)? mm$/);
    const millimetres = Number.parseFloat(text);
    expect(millimetres).toBeLessThan(24);
    await expect.poll(() => verdict(page)).toContain(fitting({ ...brief.envelope, bore: millimetres / 1000 }));
    expect(await axisEnds(page, "x")).toEqual(before);
    await page.mouse.up();
    expect(await field(page, "bore").inputValue()).toBe(text);
    expect(said).toEqual([]);
    expect(await violations()).toEqual([]);
  });

  it("moves by keys, in the same round steps, ten at once with Page Up and Page Down", async () => {
    const { page } = await shared();
    const handle = grip(page, "free length, largest");
    await handle.focus();
    const values = [70];
    for (const key of ["ArrowDown", "ArrowLeft", "PageDown", "ArrowRight"]) {
      await page.keyboard.press(key);
      values.push(Number.parseFloat((await handle.getAttribute("aria-valuetext")) ?? ""));
    }
    const step = values[0]! - values[1]!;
    expect(step).toBeGreaterThan(0);
    expect(values.map((value) => Number(((value - 70) / step).toFixed(6)))).toEqual([0, -1, -2, -12, -11]);
    await expect.poll(() => verdict(page)).toContain(fitting({ ...brief.envelope, freeLength: { max: values[4]! / 1000 } }));
    expect(await page.evaluate(() => document.activeElement?.getAttribute("role"))).toBe("slider");
  });

  it("stands where its axis says, with room beyond it", async () => {
    const { page } = await shared();
    const [low = 0, high = 0] = await axisEnds(page, "x");
    expect(high).toBeGreaterThan(24);
    const canvas = (await page.locator("#chart canvas").boundingBox())!;
    const points = await placedPoints(page);
    const [a, b] = [
      points[0]!,
      points.find(({ outsideDiameter }) => Math.abs(outsideDiameter - points[0]!.outsideDiameter) > 1)!,
    ];
    const perMillimetre = (b.x - a.x) / (b.outsideDiameter - a.outsideDiameter);
    const box = (await grip(page, "bore").boundingBox())!;
    expect(Math.abs(box.x + box.width / 2 - (a.x + perMillimetre * (24 - a.outsideDiameter)))).toBeLessThan(1.5);
    expect(box.x).toBeGreaterThan(canvas.x);
    expect(low).toBeLessThan(points.reduce((least, point) => Math.min(least, point.outsideDiameter), high));
  });

  it("can be pulled back from where nothing fits", async () => {
    const { page } = await shared();
    await grip(page, "bore").focus();
    await field(page, "bore").fill("14 mm");
    await page.keyboard.press("Tab");
    await field(page, "bore").press("Enter");
    await expect.poll(() => verdict(page)).toContain("none fit");
    await grip(page, "bore").focus();
    for (let i = 0; i < 4; i++) await page.keyboard.press("PageUp");
    await expect.poll(() => verdict(page)).not.toContain("none fit");
  });
});

describe("the field of a bound", () => {
  it("takes a typed value in any unit, as the brief would", async () => {
    const { page } = await shared();
    await field(page, "bore").fill("0.9 in");
    await field(page, "bore").press("Enter");
    await expect.poll(() => verdict(page)).toContain(fitting({ ...brief.envelope, bore: 0.9 * METRES.in }));
    await expect.poll(() => field(page, "bore").inputValue()).toBe("22.86 mm");
  });

  it.each([
    ["0,65 in", "write 0.65 in"],
    ["abc", "does not begin with a number; a length is wanted, such as 12 mm"],
    ["12", "12 has no unit; write 12 mm (or in)"],
    ["-4 mm", "-4 mm is not above zero"],
  ])("answers %s with the reader's own sentence, and the last good run stays", async (typed, sentence) => {
    const { page } = await shared();
    const before = await verdict(page);
    const bore = field(page, "bore");
    await bore.fill(typed);
    await bore.press("Enter");
    await expect.poll(() => bore.getAttribute("aria-invalid")).toBe("true");
    const told = await bore.evaluate((input) => {
      const ids = (input.getAttribute("aria-describedby") ?? "").split(" ");
      return ids.map((id) => document.getElementById(id)?.textContent).join(" ");
    });
    expect(told).toContain(sentence);
    expect(await bore.inputValue()).toBe(typed);
    expect(await verdict(page)).toBe(before);
    await page.getByRole("button", { name: "put back bore" }).click();
    await expect.poll(() => bore.getAttribute("aria-invalid")).toBeNull();
    expect(await bore.inputValue()).toBe("24 mm");
  });

  it("gives up on Escape what was refused, for what the last good run was made with", async () => {
    const { page } = await shared();
    const bore = field(page, "bore");
    await bore.fill("23 mm");
    await bore.press("Enter");
    await expect.poll(() => verdict(page)).toContain(fitting({ ...brief.envelope, bore: 0.023 }));
    await bore.fill("abc");
    await bore.press("Enter");
    await expect.poll(() => bore.getAttribute("aria-invalid")).toBe("true");
    await bore.press("Escape");
    await expect.poll(() => bore.getAttribute("aria-invalid")).toBeNull();
    expect(await bore.inputValue()).toBe("23 mm");
  });

  it("shows at the field that was changed what is refused elsewhere", async () => {
    const { page } = await shared();
    await field(page, "bore").fill("10 mm");
    await field(page, "bore").press("Tab");
    const error = page.locator(".bound:has([aria-label='bore']) .bound-error");
    await expect.poll(() => error.textContent()).toContain("is not below the bore");
  });

  it("steps by keys and by its slider, and says what was asked until it is put back", async () => {
    const { page } = await shared();
    const index = field(page, "index, largest");
    await index.focus();
    await page.keyboard.press("ArrowUp");
    const up = Number(await index.inputValue());
    expect(up).toBeGreaterThan(12);
    expect(Number((up * 50).toFixed(6)) % 1).toBe(0);
    await page.getByRole("slider", { name: "rod, slider" }).fill("10");
    expect(await field(page, "rod").inputValue()).toBe("10 mm");
    const note = page.locator(".bound:has([aria-label='rod']) .bound-note");
    expect(await note.textContent()).toContain("changed, asked: 11 mm");
    await page.getByRole("button", { name: "put back rod" }).click();
    expect(await field(page, "rod").inputValue()).toBe("11 mm");
    expect(await note.textContent()).not.toContain("changed");
    await page.getByRole("button", { name: "As asked" }).click();
    await expect.poll(() => index.inputValue()).toBe("12");
    await expect.poll(() => verdict(page)).toContain(fitting(brief.envelope));
  });

  it("sets a bound that the brief has not, and takes it out when it is emptied", async () => {
    const { page } = await shared();
    const solid = field(page, "solid length, largest");
    expect(await solid.inputValue()).toBe("");
    await solid.fill("26 mm");
    await solid.press("Enter");
    await expect.poll(() => verdict(page)).toContain(fitting({ ...brief.envelope, solidLength: { max: 0.026 } }));
    await solid.fill("");
    await solid.press("Enter");
    await expect.poll(() => verdict(page)).toContain(fitting(brief.envelope));
  });

  it("stands beside how many its limit rejects", async () => {
    const { page } = await shared();
    const { rejected } = sweep(brief);
    const row = page.locator(".limit").filter({ has: page.getByRole("heading", { name: "outside diameter", exact: true }) });
    expect(await row.locator(".fell").textContent()).toContain(countWords(rejected.outsideDiameter ?? 0));
  });
});

describe("the legend of the chart", () => {
  it("puts a material out and in again, and its springs with it", async () => {
    const { page } = await shared();
    const entry = page.getByRole("button", { name: "shop-steel-hard", exact: true });
    expect(await entry.getAttribute("aria-pressed")).toBe("true");
    await entry.click();
    const { sweep: walk } = brief;
    const one = { sweep: { ...walk, materials: walk.materials.slice(0, 1) } };
    await expect.poll(() => verdict(page)).toContain(fitting(brief.envelope, one));
    expect(await entry.getAttribute("aria-pressed")).toBe("false");
    await entry.click();
    await expect.poll(() => verdict(page)).toContain(fitting(brief.envelope));
  });

  it("keeps the last of a kind in, and says why", async () => {
    const { page } = await shared();
    const only = page.getByRole("button", { name: "shop-wire", exact: true });
    await only.click();
    expect(await only.getAttribute("aria-pressed")).toBe("true");
    expect(await page.locator(".legend-why").textContent()).toBe(
      "shop-wire stays: without it there is no series of wires left to try.",
    );
  });
});

describe("the switch of units", () => {
  it("shows everything in inches and leaves what is asked as written", async () => {
    const { page, said } = await shared();
    await page.getByRole("radio", { name: "in, lbf" }).check();
    expect(await field(page, "bore").inputValue()).toBe("0.94488 in");
    expect(await page.locator("#ranked thead").textContent()).toContain("free lengthin");
    expect(await page.locator("#chosen-spring .chosen dl").textContent()).toMatch(/free length[\d.]+ in/);
    const title = await page.evaluate(() => {
      const host = document.getElementById("chart") as HTMLElement & { view: { signal(name: string): string } };
      return host.view.signal("acrossTitle");
    });
    expect(title).toBe("outside diameter, in");
    expect((await axisEnds(page, "x"))[1]).toBeLessThan(2);
    expect(await grip(page, "bore").getAttribute("aria-valuetext")).toBe("0.94488 in");
    expect(await page.locator("#changes").textContent()).toContain("nothing is changed");
    await grip(page, "bore").focus();
    await page.keyboard.press("ArrowDown");
    expect(await field(page, "bore").inputValue()).toMatch(/^0\.9\d? in$/);
    await page.getByRole("radio", { name: "mm, N" }).check();
    expect(await field(page, "free length, largest").inputValue()).toBe("70 mm");
    expect(said).toEqual([]);
  });
});

/** Make a change on the page and wait for what comes of it. */
const STATES: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  fresh: async () => {},
  changed: async (page) => {
    await grip(page, "bore").focus();
    await page.keyboard.press("ArrowDown");
    await page.getByRole("button", { name: "plain", exact: true }).click();
    await page.getByRole("button", { name: "shop-wire", exact: true }).click();
    await settled(page);
  },
  refused: async (page) => {
    await field(page, "bore").fill("abc");
    await field(page, "bore").press("Enter");
    await page.waitForSelector("[aria-invalid]");
  },
  "nothing fits": async (page) => {
    await field(page, "bore").fill("14 mm");
    await field(page, "bore").press("Enter");
    await expect.poll(() => verdict(page)).toContain("none fit");
  },
};

describe("for everyone", () => {
  const windows = [
    ["light", 1280],
    ["dark", 390],
    ["light", 360],
  ] as const;
  for (const [state, make] of Object.entries(STATES)) {
    it.each(windows)(
      `${state}: no accessibility violation and no sideways scroll, %s, %i px wide`,
      async (colorScheme, width) => {
        const { page } = await shared();
        await shownIn(page, width, colorScheme);
        await make(page);
        expect(await accessibilityFaults(page)).toEqual([]);
        await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
      },
    );
  }

  it("a keyboard alone changes a limit from the title on, and chooses a spring, with its place in sight", async () => {
    const opened = await open();
    const { page } = opened;
    const at = () =>
      page.evaluate(() => {
        const focused = document.activeElement as HTMLElement;
        const { outlineStyle } = getComputedStyle(focused);
        const beside = focused.nextElementSibling;
        const isSeen = outlineStyle !== "none" || (beside !== null && getComputedStyle(beside).outlineStyle !== "none");
        return {
          name: focused.getAttribute("aria-label") ?? focused.textContent ?? "",
          role: focused.role ?? focused.tagName,
          isSeen,
        };
      });
    const go = async (isThere: (focus: Awaited<ReturnType<typeof at>>) => boolean) => {
      for (let i = 0; i < 60; i++) {
        await page.keyboard.press("Tab");
        const focus = await at();
        expect(focus.isSeen, focus.name).toBe(true);
        if (isThere(focus)) return;
      }
      throw new Error("not reached by the tabulator");
    };
    await go(({ name, role }) => name === "bore" && role === "slider");
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => page.locator("#changes").textContent()).toContain("bore");
    await settled(page);
    await go(({ name }) => name.startsWith("Rank 2:"));
    await page.keyboard.press("Enter");
    expect(await page.locator("#chosen-name").textContent()).toContain("Rank 2:");
    await go(({ name, role }) => name === "bore" && role === "spinbutton");
    await close(opened);
  });

  it("handles, fields and legend are large enough to touch", async () => {
    const opened = await open({ viewport: { width: 360, height: 700 }, hasTouch: true, isMobile: true });
    const { page } = opened;
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>(".handle-grip, .bound input, .legend button, .units label")]
        .filter((one) => one.offsetParent !== null)
        .map((one) => ({ name: one.className || one.tagName, ...one.getBoundingClientRect().toJSON() }))
        .filter(({ width, height }) => width < 24 || height < 24),
    );
    expect(small).toEqual([]);
    await close(opened);
  });

  it("a result is spoken once a drag has ended, not on the way", async () => {
    const { page } = await shared();
    const live = () => page.locator("#listed").getAttribute("aria-live");
    await pull(page, "bore", -60, 0);
    expect(await live()).toBe("off");
    await page.mouse.up();
    await expect.poll(live).toBe("polite");
    await expect.poll(() => page.locator("main > .unseen").textContent()).toContain("candidates walked");
  });

  it("prints fields as plain values and no handles, in three to seven pages", async () => {
    const { page } = await shared();
    await page.emulateMedia({ media: "print" });
    for (const part of [".handles", ".units", ".bound input[type=range]"]) {
      expect(await page.locator(part).first().isVisible(), part).toBe(false);
    }
    expect(await field(page, "bore").evaluate((input) => getComputedStyle(input).borderBottomWidth)).toBe("0px");
    const pages = (await page.pdf({ format: "A4" })).toString("latin1").match(/\/Type\s*\/Page\b/g)?.length ?? 0;
    expect(pages).toBeGreaterThanOrEqual(3);
    expect(pages).toBeLessThanOrEqual(7);
  });
});
