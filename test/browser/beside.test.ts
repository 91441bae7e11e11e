import { readFileSync } from "node:fs";
import type { Download, Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { readCheckBrief } from "../../src/brief/read.ts";
import { springStates } from "../../src/report/drawing/lengths-shown.ts";
import { springsCsv } from "../../src/report/files/csv.ts";
import { springSolid } from "../../src/report/solid/body.ts";
import { springDxf } from "../../src/report/solid/dxf.ts";
import { glbFile } from "../../src/report/solid/glb.ts";
import { stepFile } from "../../src/report/solid/step.ts";
import { check } from "../../src/studies/check.ts";
import { sweep } from "../../src/studies/sweep.ts";
import { read } from "../brief/reading.ts";
import { shipped } from "../catalog/shipped.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { drag } from "./drag.ts";
import { openPage, placedPoints } from "./open-page.ts";
import { browser } from "./own-browser.ts";
import { coarse, writePage } from "./page-file.ts";
import { sharedPage, shownIn } from "./shared-page.ts";
import { sheetsOf } from "./sheets.ts";

const HOSTILE = '<img src=x onerror="document.title=`taken`">';
const demo = coarse(read(readFileSync("reports/latch-plunger.yaml", "utf8"), "reports/latch-plunger.yaml"));
const latch = sweep(demo, { sample: 1000, byWire: true });

let address: string;

const shared = sharedPage(() => address);

beforeAll(async () => {
  address = await writePage(latch);
});

const chooseRow = (page: Page, row: number) => page.locator("#ranked tbody tr").nth(row).click();
const keep = (page: Page) => page.locator("#keep").click();
const beside = (page: Page) => page.locator("#beside");

/** The texts of one row of the comparison, its label left out. */
async function compared(page: Page, label: string): Promise<string[]> {
  const row = beside(page).locator(".compared tbody tr", { has: page.getByRole("rowheader", { name: label, exact: true }) });
  return row.locator("td").allTextContents();
}

describe("the drawing of the chosen spring", () => {
  const title = (page: Page) => page.locator("#chosen-spring .screen-only .spring title").textContent();
  const coilTop = (page: Page) =>
    page.locator("#chosen-spring .screen-only .spring").evaluate((svg) => {
      const [seat, coil] = [".seat", ".view"].map((part) => svg.querySelector(part)!.getBoundingClientRect());
      return { seat: seat!.top, coil: coil!.top };
    });

  it("is chosen among free, the load points by their names, and solid, by keyboard, and shortens towards its seat", async () => {
    const { page, said } = await shared();
    const group = page.locator("#chosen-spring").getByRole("group", { name: "Drawn at length" });
    expect(await group.locator("label").allTextContents()).toEqual(["free", "latched", "withdrawn", "solid"]);
    await group.getByRole("radio", { name: "free" }).focus();
    const tops: number[] = [];
    const seats: number[] = [];
    const best = latch.designs[0]!;
    for (const name of ["free", "latched", "withdrawn", "solid"]) {
      expect(await title(page)).toContain(`drawn to scale, ${name}: length`);
      const { seat, coil } = await coilTop(page);
      tops.push(coil);
      seats.push(seat);
      await page.keyboard.press("ArrowDown");
    }
    expect(tops).toEqual([...tops].sort((a, b) => a - b));
    expect(new Set(tops).size).toBe(4);
    expect(new Set(seats).size).toBe(1);
    await group.getByRole("radio", { name: "solid" }).check();
    expect(await title(page)).toContain(`outside diameter ${Number((1000 * best.outsideDiameterAtSolid).toPrecision(4))} mm`);
    expect(said).toEqual([]);
  });

  it("stays at its length when another spring is chosen", async () => {
    const { page } = await shared();
    await page.locator("#chosen-spring").getByRole("radio", { name: "withdrawn" }).check();
    await chooseRow(page, 4);
    expect(await title(page)).toContain("drawn to scale, withdrawn: length 32 mm");
  });
});

describe("springs kept beside one another", () => {
  it("are not there until one is kept, and three at most are", async () => {
    const { page } = await shared();
    expect(await beside(page).isVisible()).toBe(false);
    for (const row of [0, 5, 10]) {
      await chooseRow(page, row);
      await keep(page);
    }
    await chooseRow(page, 15);
    expect(await page.locator("#keep").getAttribute("aria-disabled")).toBe("true");
    await page.locator("#keep").press("Enter");
    expect(await beside(page).locator(".compared thead th").count()).toBe(3);
  });

  it("show the sweep's own figures in columns, the best of each marked in words, whatever is chosen then", async () => {
    const { page, said, asked, violations } = await shared();
    const places = [0, 8];
    for (const row of places) {
      await chooseRow(page, row);
      await keep(page);
    }
    await chooseRow(page, 3);
    const masses = places.map((place) => latch.designs[place]!.mass);
    const shown = masses.map(
      (mass) => `${Number((1000 * mass).toPrecision(4))} g${mass === Math.min(...masses) ? " least" : ""}`,
    );
    expect(await compared(page, "mass")).toEqual(shown);
    expect(await beside(page).locator(".spring .view").count()).toBe(2);
    expect(await beside(page).locator(".load-lines .dot-solid").count()).toBe(2);
    expect(await beside(page).locator(".margins tbody tr").first().locator(".bar").count()).toBe(2);
    expect([said, asked, await violations()]).toEqual([[], [address], []]);
  });

  it("are removed one by one, from their column or from the chosen spring, and a place that is free is taken again", async () => {
    const { page } = await shared();
    for (const row of [0, 5]) {
      await chooseRow(page, row);
      await keep(page);
    }
    expect(await page.locator("#keep").textContent()).toBe("Remove B");
    await beside(page).getByRole("button", { name: "remove A" }).click();
    expect(await beside(page).locator(".compared thead th").allTextContents()).toEqual(["Bremove"]);
    await keep(page);
    expect(await beside(page).isVisible()).toBe(false);
    await keep(page);
    expect(await page.locator("#keep").textContent()).toBe("Remove A");
    expect(await page.locator("#keep").evaluate((button) => button === document.activeElement)).toBe(true);
  });

  it("are drawn at the length that is chosen for all of them", async () => {
    const { page } = await shared();
    await keep(page);
    await beside(page).getByRole("radio", { name: "latched" }).check();
    await chooseRow(page, 6);
    await keep(page);
    expect(await beside(page).locator(".spring title").textContent()).toBe("Springs A, B drawn to one scale, latched");
  });

  it.each([
    [1280, "light"],
    [390, "dark"],
  ] as const)("have no accessibility fault at a width of %i on %s ground, and widen nothing", async (width, colorScheme) => {
    const { page, said } = await shared();
    await shownIn(page, width, colorScheme);
    for (const row of [0, 5, 10]) {
      await chooseRow(page, row);
      await keep(page);
    }
    expect(await accessibilityFaults(page)).toEqual([]);
    await expect.poll(() => page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(said).toEqual([]);
  });

  it("are printed with the page, without what is only of use on a screen", async () => {
    const { page } = await shared();
    const alone = await sheetsOf(page, "A4");
    await keep(page);
    await chooseRow(page, 5);
    await keep(page);
    expect(await sheetsOf(page, "A4")).toBeGreaterThan(alone);
    await page.emulateMedia({ media: "print" });
    for (const part of ["#keep", ".lengths", ".take"]) expect(await page.locator(part).first().isVisible(), part).toBe(false);
    // On paper the chosen spring stands free and solid, for nothing there can be chosen.
    expect(await page.locator("#chosen-spring .paper-only .spring").isVisible()).toBe(true);
  });
});

describe("what a reader takes away", () => {
  /** Press a button of the page and read the file that comes of it. */
  async function taken(page: Page, name: string | RegExp): Promise<{ readonly file: string; readonly bytes: Buffer }> {
    const [came] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name }).click()]);
    const download: Download = came;
    return { file: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
  }

  it("is the chart as SVG and PNG, in the colours of paper on a dark screen too", async () => {
    const { page, said, asked, violations } = await shared();
    await shownIn(page, 1280, "dark");
    const svg = await taken(page, "chart, SVG");
    expect(svg.file).toBe("latch-plunger-spring-invented-example-chart.svg");
    const text = svg.bytes.toString("utf8");
    for (const words of ["Latch plunger spring (invented example)", "outside diameter, mm", "Screening only", 'fill="#ffffff"'])
      expect(text).toContain(words);
    const png = await taken(page, "chart, PNG");
    expect(png.file).toMatch(/-chart\.png$/);
    expect(png.bytes.subarray(1, 4).toString()).toBe("PNG");
    expect(png.bytes.length).toBeGreaterThan(20_000);
    expect([said, asked, await violations()]).toEqual([[], [address], []]);
  });

  it("is every spring drawn as CSV, or those inside the brush, as its button says", async () => {
    const { page } = await shared();
    const all = await taken(page, `springs, CSV (all ${latch.feasible.toLocaleString("en-US")} drawn)`);
    expect(all.file).toMatch(/-springs\.csv$/);
    const lines = all.bytes.toString("utf8").split("\r\n");
    expect(lines).toHaveLength(latch.feasible + 2);
    expect(lines.slice(0, 21)).toEqual(springsCsv(latch.designs, latch.brief.units).split("\r\n").slice(0, 21));

    const points = await placedPoints(page);
    const middle = points[Math.floor(points.length / 2)]!;
    await drag(page, [middle.x - 60, middle.y - 50], [middle.x + 60, middle.y + 50]);
    const button = page.getByRole("button", { name: /springs, CSV \(the [\d,]+ inside the brush\)/ });
    const count = Number(/[\d,]+(?= inside)/.exec((await button.textContent()) ?? "")?.[0].replaceAll(",", ""));
    expect(count).toBeGreaterThan(0);
    expect(count).toBeLessThan(latch.feasible);
    const some = await taken(page, /springs, CSV/);
    expect(some.bytes.toString("utf8").split("\r\n")).toHaveLength(count + 2);
  });

  it("is the chosen spring: its drawing at the length looked at, its figures, and itself as a brief that passes a check", async () => {
    const { page, said, asked, violations } = await shared();
    await chooseRow(page, 2);
    await page.locator("#chosen-spring").getByRole("radio", { name: "latched" }).check();
    const drawing = await taken(page, "drawing, SVG");
    expect(drawing.file).toMatch(/-rank-3-drawing\.svg$/);
    expect(drawing.bytes.toString("utf8")).toMatch(/^<svg [\s\S]*<title>Spring drawn to scale, latched: length 46 mm/);

    const design = latch.designs[2]!;
    const { file, bytes } = await taken(page, "figures, JSON");
    expect(file).toMatch(/-rank-3\.json$/);
    expect(JSON.parse(bytes.toString("utf8")).design).toEqual(JSON.parse(JSON.stringify(design)));

    const yaml = await taken(page, "brief to check, YAML");
    expect(yaml.file).toMatch(/-rank-3-check\.yaml$/);
    const result = check(readCheckBrief(yaml.bytes.toString("utf8"), "latch.yaml", shipped));
    expect(result.passes).toBe(true);
    expect(result.design.mass).toBeCloseTo(design.mass, 12);
    expect([said, asked, await violations()]).toEqual([[], [address], []]);
  });

  it("is the chosen spring for CAD, at the length looked at, as the command line writes it", async () => {
    const { page, said, asked, violations } = await shared();
    await chooseRow(page, 2);
    await page.locator("#chosen-spring").getByRole("radio", { name: "withdrawn" }).check();
    const design = latch.designs[2]!;
    const solid = springSolid(demo, design, springStates(demo, design).find(({ name }) => name === "withdrawn")!);
    const step = await taken(page, "solid, STEP");
    expect(step.file).toMatch(/-rank-3-withdrawn\.step$/);
    expect(step.bytes.toString("utf8")).toBe(stepFile(solid));
    const glb = await taken(page, "mesh, GLB");
    expect(glb.file).toMatch(/-rank-3-withdrawn\.glb$/);
    expect(glb.bytes.equals(glbFile(solid))).toBe(true);
    const dxf = await taken(page, "drawing, DXF");
    expect(dxf.file).toMatch(/-rank-3-drawing\.dxf$/);
    expect(dxf.bytes.toString("utf8")).toBe(springDxf(demo, design));
    expect([said, asked, await violations()]).toEqual([[], [address], []]);
  });

  it("keeps a title's markup text, in the file and in its name", async () => {
    const hostile = await writePage(sweep({ ...demo, title: HOSTILE }, { sample: 100, byWire: true }));
    const { page, asked, violations } = await openPage(browser, hostile);
    await keep(page);
    const svg = await taken(page, "chart, SVG");
    expect(svg.file).toBe("img-src-x-onerror-document-title-taken-chart.svg");
    expect(svg.bytes.toString("utf8")).toContain("&lt;img src=x");
    expect(svg.bytes.toString("utf8")).not.toContain("<img");
    expect(await page.title()).toBe(HOSTILE);
    expect([asked, await violations()]).toEqual([[hostile], []]);
    await page.context().close();
  });
});
