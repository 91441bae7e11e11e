import { cpSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { editBrief } from "../../src/brief/edit.ts";
import type { Session } from "../../src/explorer/session/session.ts";
import type { SweepResult, Units } from "../../src/model.ts";
import { resultJson } from "../../src/report/files/json.ts";
import { newFolder, run } from "../cli/run.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { type OpenPage, openPage } from "./open-page.ts";
import { browser } from "./own-browser.ts";
import { sharedPage } from "./shared-page.ts";

const REPORTS = fileURLToPath(new URL("../../reports/", import.meta.url));
const demo = (name: string) => readFileSync(path.join(REPORTS, name), "utf8");
const demos = readdirSync(REPORTS).filter(
  (name) => /\.yaml$/.test(name) && /^sweep:/m.test(demo(name)) && !/^nested:/m.test(demo(name)),
);
/** The latch with mean diameters half a millimetre apart, and half turns: a tenth of the work for the same page. */
const LATCH = editBrief(editBrief(demo("latch-plunger.yaml"), "sweep.meanDiameter.step", "0.5 mm"), "sweep.turns", "half");
/** Its wires in one material with one end style, where a test asks of the page itself and not of its springs. */
const SMALL = [
  ["sweep.wires", ["en-10270"]],
  ["sweep.materials", ["en-sm"]],
  ["sweep.ends", ["squared-ground"]],
].reduce((text, [key, names]) => editBrief(text, key as string, names as string[]), LATCH);
const NOTHING = editBrief(SMALL, "envelope.bore", "9.5 mm");

/** A folder with the brief, what the demos name beside it, and its page; the address of that. */
function written(text: string, more: readonly string[] = []): { readonly folder: string; readonly address: string } {
  const folder = newFolder();
  for (const named of ["dosing-wire.yaml", "stock"])
    cpSync(path.join(REPORTS, named), path.join(folder, named), { recursive: true });
  writeFileSync(path.join(folder, "brief.yaml"), text);
  const { stderr, status } = run(["sweep", "brief.yaml", "--html", "page.html", ...more], folder);
  if (status === 2) throw new Error(stderr);
  return { folder, address: pathToFileURL(path.join(folder, "page.html")).href };
}

/** The page of each brief, written when the first test wants it and shared by all that do. */
const pages = new Map<string, { readonly folder: () => string; readonly open: () => Promise<OpenPage> }>();
const texts = [
  ...demos.map((name) => [name, demo(name)] as const),
  ["latch", LATCH] as const,
  ["exact", editBrief(LATCH, "sweep.meanDiameter", "exact")] as const,
];
for (const [name, text] of texts) {
  let made: ReturnType<typeof written> | undefined;
  const write = () => {
    made ??= written(text);
    return made;
  };
  pages.set(name, { folder: () => write().folder, open: sharedPage(() => write().address) });
}
const pageOf = (name: string) => pages.get(name) as NonNullable<ReturnType<typeof pages.get>>;
const latch = pageOf("latch").open;

/** What is done in the page with its session. */
type InPage = HTMLElement & { readonly session: Session };

/** Put a value, and wait until the page shows what came of it. */
async function put(page: Page, key: string, value: string | readonly string[] | undefined): Promise<void> {
  await page.evaluate(
    async ([key, value]) => {
      const { session } = document.getElementById("run") as InPage;
      const done = new Promise<void>((resolve) => session.listen(() => !session.busy && resolve()));
      session.put(key, value);
      await done;
    },
    [key, value] as const,
  );
}

const back = (page: Page) => page.getByRole("button", { name: "As asked" });

/** The run that the page shows, as the command line would print it. */
async function shownJson(page: Page): Promise<string> {
  const result = await page.evaluate(() => (document.getElementById("run") as InPage).session.shown.result);
  return resultJson(result as SweepResult);
}

/** The brief that the page's button saves. */
async function savedText(page: Page): Promise<{ readonly name: string; readonly text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save this brief" }).click(),
  ]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), "utf8") };
}

describe("a live page", () => {
  it.each([...demos, "exact"])("is as the command line has it when it is opened: %s", async (name) => {
    const { page, said } = await pageOf(name).open();
    expect(await shownJson(page)).toBe(run(["sweep", "brief.yaml", "--json", "-"], pageOf(name).folder()).stdout);
    expect(said).toEqual([]);
  });

  it.each([
    ["latch", "envelope.bore", "17 mm"],
    ["latch", "sweep.meanDiameter", "exact"],
    ["vent-flap.yaml", "envelope.outsideDiameter.max", "1.4 in"],
    ["shuttle-return.yaml", "limits.fatigue.safety", "1.1"],
    ["dosing-plunger.yaml", "envelope.bore", "36 mm"],
  ])("sweeps %s with %s changed to %s as the command line sweeps the brief that it saves", async (name, key, value) => {
    const { page, said, violations } = await pageOf(name).open();
    const folder = pageOf(name).folder();
    await put(page, key, value);
    const saved = await savedText(page);
    expect(saved.name).toBe("brief-changed.yaml");
    writeFileSync(path.join(folder, saved.name), saved.text);
    expect(await shownJson(page)).toBe(run(["sweep", saved.name, "--json", "-"], folder).stdout);
    expect(await page.locator("#changes").textContent()).toContain(`${value}`);
    expect(said).toEqual([]);
    expect(await violations()).toEqual([]);
  });

  it("keeps the title of a brief that is called by its file", async () => {
    const { folder, address } = written(editBrief(SMALL, "title", undefined));
    const { page } = await openPage(browser, address);
    await put(page, "envelope.bore", "17 mm");
    const { name, text } = await savedText(page);
    writeFileSync(path.join(folder, name), text);
    expect(JSON.parse(run(["sweep", name, "--json", "-"], folder).stdout).brief.title).toBe("brief");
    await page.context().close();
  });

  it("says what is changed and what was asked, and brings back the bytes of the brief", async () => {
    const { page } = await latch();
    await put(page, "envelope.bore", "17 mm");
    await put(page, "limits.index.min", "5");
    expect(await page.locator("#changes").textContent()).toBe(
      "Changed from the brief: bore 17 mm instead of 16 mm; index, least 5, where the brief is silent.",
    );
    expect(await page.locator("#asked").textContent()).toContain("17 mm");
    await back(page).click();
    await expect.poll(() => page.locator("#changes").textContent()).toBe("As the brief asks: nothing is changed.");
    expect((await savedText(page)).text).toBe(LATCH);
  });

  it("writes every part that depends on the run as a page written anew has it", async () => {
    const { page } = await latch();
    await put(page, "envelope.bore", "17 mm");
    await put(page, "sweep.materials", ["en-sh"]);
    const edited = (await savedText(page)).text;
    const { page: anew } = await openPage(browser, written(edited).address);
    for (const id of ["asked-sentence", "verdict", "warnings", "asked", "practice", "springs-sentence", "strength", "sources"]) {
      expect(await page.locator(`#${id}`).innerHTML()).toBe(await anew.locator(`#${id}`).innerHTML());
    }
    // Fields beside the counts tell what is changed, which a page written anew cannot.
    const fell = (one: Page) => one.locator("#funnel .fell").allTextContents();
    expect(await fell(page)).toEqual(await fell(anew));
    expect(await page.locator("#ranked tbody").textContent()).toBe(await anew.locator("#ranked tbody").textContent());
    await anew.context().close();
  });

  it("keeps the chosen spring over a run in which it fits, and says where it does not", async () => {
    const { page } = await latch();
    await page.locator("#ranked tbody tr").nth(3).click();
    const wound = () =>
      page.evaluate(() => document.querySelector("#ranked tr[aria-current]")?.textContent?.replace(/^\s*[\d–]+/, ""));
    const before = await wound();
    await put(page, "envelope.bore", "17 mm");
    expect(await wound()).toBe(before);
    await put(page, "sweep.ends", [before?.includes("ground") ? "squared" : "squared-ground"]);
    expect(await page.locator("#chosen-name").textContent()).toContain(
      "The spring that was chosen fits no more; the best is shown",
    );
    expect(await page.locator("#chosen-name").textContent()).toContain("Rank 1");
  });

  it("shows the newest run out of sight too, once changes pause, and on paper at once", async () => {
    const { page } = await latch();
    const outside = () => page.locator("#chosen-spring .chosen dl").textContent();
    await page.evaluate(() => document.getElementById("cautions")?.scrollIntoView());
    await put(page, "sweep.materials", ["astm-a313-302"]);
    const ofBest = () =>
      page.evaluate(() => {
        const [best] = (document.getElementById("run") as InPage).session.shown.result.designs;
        return `outside diameter${Number((1000 * (best?.outsideDiameter ?? 0)).toPrecision(4))} mm`;
      });
    const stainless = await ofBest();
    await expect.poll(outside).toContain(stainless);
    await put(page, "sweep.materials", ["en-sh"]);
    await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
    expect(await ofBest()).not.toBe(stainless);
    expect(await outside()).toContain(await ofBest());
  });

  it("says what to relax where nothing fits any more, and shows springs again where some do", async () => {
    const { page, said } = await latch();
    await put(page, "envelope.bore", "9.5 mm");
    expect(await page.locator("#nearest").isVisible()).toBe(true);
    expect(await page.locator("#nearest").textContent()).toContain("Nothing fits. For each limit");
    // The chart stays, for the handles on its axes that lead back.
    expect(await page.locator("#springs-sentence").textContent()).toContain("Nothing fits. Relax a bound by its handle");
    expect(await page.locator("#ranked").isVisible()).toBe(false);
    expect(await page.locator("#verdict").textContent()).toContain("none fit");
    expect(await accessibilityFaults(page)).toEqual([]);
    await put(page, "envelope.bore", "16 mm");
    expect(await page.locator("#nearest").isVisible()).toBe(false);
    expect(await page.locator("#ranked tbody tr").count()).toBeGreaterThan(10);
    expect(said).toEqual([]);
  });

  it("is live where it was written with nothing that fits", async () => {
    const { page, said } = await openPage(browser, written(NOTHING).address);
    expect(await page.locator("#chosen").isVisible()).toBe(false);
    await put(page, "envelope.bore", "16 mm");
    expect(await page.locator("#chosen-name").textContent()).toContain("Rank 1");
    const canvas = await page.locator("#chart canvas").boundingBox();
    expect(canvas?.width).toBeGreaterThan(400);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it("shows a problem in the reader's words and keeps the last good run", async () => {
    const { page } = await latch();
    const verdict = await page.locator("#verdict").textContent();
    await put(page, "envelope.bore", "6 mm");
    expect(await page.locator("#problems").textContent()).toContain("no spring fits between them");
    expect(await page.locator("#problems").textContent()).toContain("What stands below is the last run that could be made.");
    expect(await page.locator("#verdict").textContent()).toBe(verdict);
    expect(await page.getByRole("button", { name: "Save this brief" }).isDisabled()).toBe(true);
    expect(await accessibilityFaults(page)).toEqual([]);
    await put(page, "envelope.bore", "17 mm");
    expect(await page.locator("#problems").textContent()).toBe("");
  });

  it("shows other units in every part, and lifts a brush that was drawn in the old ones", async () => {
    const { page, said } = await latch();
    const all = await page.locator("#listed").textContent();
    await page.locator("#chart").scrollIntoViewIfNeeded();
    const box = (await page.locator("#chart canvas").boundingBox()) as { x: number; y: number; width: number; height: number };
    await page.mouse.move(box.x + 0.3 * box.width, box.y + 0.4 * box.height);
    await page.mouse.down();
    await page.mouse.move(box.x + 0.6 * box.width, box.y + 0.7 * box.height, { steps: 4 });
    await page.mouse.up();
    expect(await page.locator("#listed").textContent()).toContain("lie in the brush");
    const use = (units: Units) =>
      page.evaluate((units) => (document.getElementById("run") as InPage).session.useUnits(units), units);
    await use({ length: "in", force: "lbf" });
    expect(await page.locator("#listed").textContent()).toBe(all);
    expect(await page.locator("#asked-sentence").textContent()).toContain("in a bore of 0.6299\u00a0in");
    expect(await page.locator("#ranked thead").textContent()).toContain("outside diameterin");
    expect(await page.locator("#changes").textContent()).toBe("As the brief asks: nothing is changed.");
    await use({ length: "mm", force: "N" });
    expect(said).toEqual([]);
  });

  it("says which files a saved brief is read beside", async () => {
    const { page } = await pageOf("dosing-plunger.yaml").open();
    expect(await page.locator("#run").textContent()).toContain("read beside ./dosing-wire.yaml");
  });

  it("holds as many designs as the page was written with, ranked as was typed", async () => {
    const { address } = written(SMALL, ["--top", "5", "--rank", "freeLength,mass"]);
    const { page } = await openPage(browser, address);
    await put(page, "envelope.bore", "17 mm");
    const { result } = await page.evaluate(() => (document.getElementById("run") as InPage).session.shown);
    expect(result.designs.length).toBe(5);
    expect(result.brief.rank).toEqual(["freeLength", "mass"]);
    expect((await savedText(page)).text).toContain("rank: [freeLength, mass]");
    await page.context().close();
  });
});

/** What a test sees of the workers of a page that sweep: those, and what they were told to sweep. */
interface Workers {
  readonly workers: Set<Worker>;
  readonly posted: unknown[];
}

/** Let a page keep its workers, and what they are told, for the test to see. */
function watchWorkers(): void {
  const seen: Workers = { workers: new Set(), posted: [] };
  const Real = window.Worker;
  class Watched extends Real {
    override postMessage(message: unknown): void {
      if (Array.isArray(message) && message[0] === "sweep") {
        seen.workers.add(this);
        seen.posted.push(message[1]);
      }
      super.postMessage(message);
    }
  }
  Object.assign(window, { Worker: Watched, seen });
}

/** A page of the latch whose window was changed before its script ran. */
async function opened(address: string, change: () => void): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const page = await context.newPage();
  await page.addInitScript(change);
  await page.goto(address);
  await page.waitForSelector("body[data-ready]");
  return page;
}

/** A brief of which a run takes seconds once 100,000 springs are drawn for each design, and a moment before. */
const GAUGE = editBrief(demo("gauge-plunger.yaml"), "service.scatter.draws", "100");

describe("a run that takes long", () => {
  let address: string;
  beforeAll(() => {
    ({ address } = written(GAUGE));
  });
  /** Put a value without waiting for what comes of it. */
  const begin = (page: Page, draws: string) =>
    page.evaluate((draws) => (document.getElementById("run") as InPage).session.put("service.scatter.draws", draws), draws);
  const stop = (page: Page) => page.getByRole("button", { name: "Stop" });

  it("can be stopped after a second: the last run stays, and the next change runs", async () => {
    const { page, said } = await openPage(browser, address);
    expect(await stop(page).isHidden()).toBe(true);
    const shown = await shownJson(page);
    await begin(page, "100000");
    await expect
      .poll(() => page.locator("#run-notice").textContent(), { timeout: 20_000 })
      .toMatch(/^Drawing springs: .+ % done$/);
    await stop(page).click();
    expect(await stop(page).isHidden()).toBe(true);
    expect(await page.locator("#run-notice").textContent()).toContain("Stopped before its end");
    expect(await shownJson(page)).toBe(shown);
    await put(page, "service.scatter.draws", "200");
    expect(await page.evaluate(() => (document.getElementById("run") as InPage).session.shown.brief.service.scatter?.draws)).toBe(
      200,
    );
    expect(await page.locator("#run-notice").isHidden()).toBe(true);
    expect(said).toEqual([]);
    await page.context().close();
  });

  it("is ended for a newer one, which runs in another worker", async () => {
    const page = await opened(address, watchWorkers);
    await put(page, "service.scatter.draws", "200");
    const workers = () => page.evaluate(() => (window as unknown as { seen: Workers }).seen.workers.size);
    const before = await workers();
    await begin(page, "100000");
    await put(page, "service.scatter.draws", "300");
    expect(await workers()).toBe(before + 1);
    expect(await page.evaluate(() => (document.getElementById("run") as InPage).session.shown.brief.service.scatter?.draws)).toBe(
      300,
    );
    await page.context().close();
  });
});

it("a page that is swept again and again keeps nothing of its runs", { timeout: 300_000 }, async () => {
  const { page } = await openPage(browser, written(SMALL).address);
  const devtools = await page.context().newCDPSession(page);
  // What waits until changes pause holds what it will show: the prices of the limits are the last of it.
  const used = async () => {
    await page.waitForFunction(() => !document.getElementById("prices-words")?.textContent?.includes("being worked out"));
    await devtools.send("HeapProfiler.collectGarbage");
    return (await devtools.send("Runtime.getHeapUsage")).usedSize;
  };
  const sweeps = async (count: number) => {
    for (let i = 0; i < count; i++) await put(page, "envelope.bore", `${16 + (i % 40) / 20} mm`);
  };
  await sweeps(20);
  const before = await used();
  await sweeps(60);
  // It kept 57 kB of each.
  await expect.poll(async () => (await used()) - before).toBeLessThan(1.5e6);
  await page.context().close();
});

describe("the worker of a page", () => {
  let address: string;
  beforeAll(() => {
    ({ address } = written(SMALL));
  });
  const seen = (page: Page) => page.evaluate(() => (window as unknown as { seen: Workers }).seen.posted.length);
  const notice = (page: Page) => page.locator("#run-notice");

  it("is started and warmed while the page is idle, before anything is changed", async () => {
    const page = await opened(address, watchWorkers);
    const shown = await page.locator("#verdict").textContent();
    // The brief as asked, whose answer tells nothing new.
    await expect.poll(() => seen(page)).toBe(1);
    expect(await page.locator("#verdict").textContent()).toBe(shown);
    expect(await notice(page).isHidden()).toBe(true);
    await page.context().close();
  });

  it("runs the first of many changes and the last, and none between", async () => {
    const page = await opened(address, watchWorkers);
    await put(page, "envelope.bore", "15 mm");
    const before = await seen(page);
    await page.evaluate(async () => {
      const { session } = document.getElementById("run") as InPage;
      const done = new Promise<void>((resolve) => session.listen(() => !session.busy && resolve()));
      for (let tenth = 1; tenth <= 30; tenth++) session.put("envelope.bore", `${16 + tenth / 10} mm`);
      await done;
    });
    expect(await seen(page)).toBe(before + 2);
    expect(await page.locator("#changes").textContent()).toContain("bore 19 mm instead of 16 mm");
    await page.context().close();
  });

  it.each([
    ["there is no worker", () => Object.assign(window, { Worker: undefined })],
    [
      "a worker is refused after it was made",
      () => {
        class Refused extends EventTarget {
          constructor() {
            super();
            setTimeout(() => this.dispatchEvent(new Event("error")));
          }
          postMessage(): void {}
          terminate(): void {}
        }
        Object.assign(window, { Worker: Refused });
      },
    ],
  ])("where %s the page says so and runs by itself", async (_, change) => {
    const page = await opened(address, change);
    await put(page, "envelope.bore", "17 mm");
    expect(await page.locator("#asked").textContent()).toContain("17 mm");
    expect(await notice(page).textContent()).toContain("the sweep runs on the page's own thread");
    await page.context().close();
  });

  it("is started once more where it dies, and then no more", async () => {
    const page = await opened(address, watchWorkers);
    await put(page, "envelope.bore", "17 mm");
    const die = () =>
      page.evaluate(() => [...(window as unknown as { seen: Workers }).seen.workers].at(-1)?.dispatchEvent(new Event("error")));
    const started = () => page.evaluate(() => (window as unknown as { seen: Workers }).seen.workers.size);
    // One that takes long to warm up may have been ended for the first change.
    const first = await started();
    await die();
    await put(page, "envelope.bore", "18 mm");
    expect(await started()).toBe(first + 1);
    expect(await notice(page).isHidden()).toBe(true);
    await die();
    await put(page, "envelope.bore", "19 mm");
    expect(await started()).toBe(first + 1);
    expect(await notice(page).isVisible()).toBe(true);
    expect(await page.locator("#asked").textContent()).toContain("19 mm");
    await page.context().close();
  });

  it("leaves the policy of the page as it was: a script put into it does not run", async () => {
    const { page, violations } = await openPage(browser, address);
    await put(page, "envelope.bore", "17 mm");
    expect(await violations()).toEqual([]);
    await page.evaluate(() => {
      const script = document.createElement("script");
      script.textContent = "document.title = 'taken'";
      document.body.append(script);
    });
    expect(await page.title()).not.toBe("taken");
    expect(await violations()).toContain("script-src-elem");
    await page.context().close();
  });

  it("prices the limits of the shown run beside the sweep", async () => {
    const { page } = await pageOf("dosing-plunger.yaml").open();
    const prices = await page.evaluate(async () => {
      const { session } = document.getElementById("run") as InPage;
      const priced = new Promise<void>((resolve) => session.listen(() => session.relaxed && resolve()));
      session.wantRelaxed();
      if (session.relaxed === undefined) await priced;
      return session.relaxed?.prices.length;
    });
    expect(prices).toBeGreaterThan(3);
  });
});
