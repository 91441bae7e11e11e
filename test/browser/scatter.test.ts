import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, it } from "vitest";
import { sweep } from "../../src/studies/sweep.ts";
import { read } from "../brief/reading.ts";
import { accessibilityFaults } from "./accessibility.ts";
import { writePage } from "./page-file.ts";
import { sharedPage } from "./shared-page.ts";

const path = "reports/gauge-plunger.yaml";
const result = sweep(read(readFileSync(path, "utf8"), path), { sample: 60, top: 10, byWire: true });

let address: string;

const shared = sharedPage(() => address);

beforeAll(async () => {
  address = await writePage(result);
});

describe("a page of springs that vary", () => {
  it("shows the sweep's own yields in the ranked table, a dash beyond the ranked ones, and among how many it ranks", async () => {
    const { page, said } = await shared();
    const rows = await page
      .locator("#ranked tbody tr")
      .evaluateAll((lines) => lines.map((line) => [line.children[0]?.textContent, line.lastElementChild?.textContent]));
    const ranked = rows.filter(([rank]) => rank !== "–");
    expect(ranked.map(([rank, share]) => [Number(rank), Number(share)])).toEqual(
      result.designs.map(({ rank, scatter }) => [rank, expect.closeTo(100 * (scatter?.share as number), 2)]),
    );
    expect(rows.filter(([rank]) => rank === "–").every(([, share]) => share === "–")).toBe(true);
    expect(await page.locator("#ranked thead").textContent()).toMatch(/yield%$/);
    expect(await page.locator("#springs").textContent()).toMatch(/Ranked by yield among 200 springs/);
    expect(said).toEqual([]);
  });

  it("tells of the chosen spring how springs of it vary, where they were drawn", async () => {
    const { page } = await shared();
    const heading = page.getByRole("heading", { name: "Variation" });
    expect(await heading.count()).toBe(1);
    expect(await page.locator(".facts").textContent()).toMatch(/of 2,000 drawn \(standard error/);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.locator("#ranked tbody tr button", { hasText: "–" }).first().click();
    expect(await heading.count()).toBe(0);
  });
});
