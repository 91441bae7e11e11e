import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import type { Choice, SweepResult } from "../../../src/model.ts";
import { choicesOf, pageData } from "../../../src/report/page/page-data.ts";
import { reportPage } from "../../../src/report/page/springs-page.ts";
import { drawnSentence } from "../../../src/report/text/verdict.ts";
import { brief, nothing, result, series } from "../fixture.ts";

const SCRIPT = "document.title;";
const hostile = '<img src=x onerror="alert(1)">';

describe("the page's data", () => {
  const choice = (wire: number, meanDiameter: number): Choice => ({
    material: 0,
    wire: series.wires[wire]!,
    ends: 3,
    totalTurns: 9,
    meanDiameter,
  });
  const sampled: SweepResult = { ...result, feasible: 4, sample: [choice(2, 0.016), choice(4, 0.02)] };

  it("holds the ranked springs first, then the front, then the sample, each once", () => {
    const data = pageData(sampled);
    expect(data.ranked).toBe(3);
    expect(data.front).toEqual([0]);
    expect(data.springs.meanDiameter).toEqual([0.016, 0.0172, 0.0148, 0.02]);
  });

  it("gives every spring back as the choice that it was", () => {
    const choices = choicesOf(JSON.parse(JSON.stringify(pageData(sampled))));
    expect(choices[3]).toEqual(choice(4, 0.02));
    expect(choices[2]).toMatchObject({ material: 1, ends: 3, wire: series.wires[1] });
  });

  it("says in words how many are drawn of how many", () => {
    expect(drawnSentence(sampled, 4)).toBe("All 4 springs that fit are drawn.");
    expect(drawnSentence({ ...sampled, feasible: 39_530 }, 4)).toBe(
      "2 of 39,530 survivors are drawn, evenly through the walk, and the whole front.",
    );
    expect(drawnSentence({ ...result, feasible: 39_530 }, 3)).toContain("the best 3 and the whole front");
  });
});

describe("the report page", () => {
  it("lets run only the script it was given, by its hash", async () => {
    const page = await reportPage(result, SCRIPT);
    const digest = createHash("sha256").update(SCRIPT, "utf8").digest("base64");
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1] ?? "";
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain(`script-src 'sha256-${digest}';`);
    expect(policy).toContain("base-uri 'none'");
    expect(policy).toContain("form-action 'none'");
    expect(policy).not.toContain("unsafe");
    const styles = /<style>([\s\S]*?)<\/style>/.exec(page)?.[1] ?? "";
    expect(policy).toContain(`style-src 'sha256-${createHash("sha256").update(styles, "utf8").digest("base64")}'`);
  });

  it("has no inline style, no handler and nothing to fetch", async () => {
    const page = await reportPage(result, SCRIPT);
    const markup = page.replace(/<script[\s\S]*?<\/script>/g, "");
    expect(markup).not.toMatch(/\sstyle="|\son[a-z]+="|\ssrc=|<link|@import|url\(/i);
  });

  it("says what was asked and taken in a reader's words, with the key for those who know it", async () => {
    const page = await reportPage(result, SCRIPT);
    expect(page).toContain('title="load.points[1].length">length at closed<');
    expect(page).toContain('title="limits.index: { min: 4, max: 12 }">index</th><td class="wrap">4 to 12<');
  });

  it("warns before it shows anything", async () => {
    const page = await reportPage(result, SCRIPT);
    const warned = page.indexOf('aria-label="Warnings"><li>More cycles are asked than');
    expect(warned).toBeGreaterThan(0);
    expect(warned).toBeLessThan(page.indexOf('id="asked"'));
    expect(await reportPage({ ...result, warnings: [] }, SCRIPT)).not.toContain('aria-label="Warnings"');
  });

  it("keeps every text of the brief text", async () => {
    const spoilt = {
      ...brief,
      title: hostile,
      asked: [{ key: hostile, text: `</script>${hostile}`, dimension: "length", value: 1 } as const],
      defaults: [{ key: "limits.index", text: hostile, source: hostile }],
      sweep: {
        ...brief.sweep,
        materials: brief.sweep.materials.map((material) => ({ ...material, source: hostile, notes: [hostile] })),
      },
    };
    const page = await reportPage({ ...result, brief: spoilt }, SCRIPT);
    expect(page).not.toContain("<img");
    expect(page).toContain("&lt;img src=x onerror=&quot;alert(1)&quot;&gt;</h1>");
    expect(page.match(/<\/script>/g)?.length).toBe(page.match(/<script[ >]/g)?.length);
  });

  it("escapes line separators inside its data", async () => {
    const page = await reportPage({ ...result, brief: { ...brief, title: "a\u2028b" } }, SCRIPT);
    const data = /id="page-data">([\s\S]*?)<\/script>/.exec(page)?.[1] ?? "";
    expect(data).toContain("a\\u2028b");
    expect(data).not.toContain("\u2028");
  });

  it("refuses a script that would end its own element", async () => {
    await expect(reportPage(result, "'</script>'")).rejects.toThrow("end its own element");
  });

  it("shows what to relax where nothing fits, and hides the parts that a change may fill", async () => {
    const page = await reportPage(nothing, SCRIPT);
    expect(page).toContain("What to relax");
    expect(page).toContain("needs 68 mm (limit 60 mm), nothing else broken");
    expect(page).toContain('<section hidden class="part" id="springs"');
    expect(page).not.toContain('<section hidden class="part" id="nearest"');
    expect(await reportPage(result, SCRIPT)).toContain('<section hidden class="part" id="nearest"');
  });

  it("scales its charts over the springs that are drawn and the front, whichever of them is marked", async () => {
    const page = await reportPage(result, SCRIPT);
    const block = (id: string) => JSON.parse(new RegExp(`id="${id}">([\\s\\S]*?)</script>`).exec(page)?.[1] ?? "");
    for (const { data, scales } of [block("page-charts").scatter.light, block("page-charts").mass.dark]) {
      const sources = new Map(data.map(({ name, source }: { name: string; source?: string }) => [name, source]));
      const rootOf = (name: string): string => (sources.get(name) === undefined ? name : rootOf(sources.get(name) as string));
      const names = [...sources.keys()].filter((name) => ["designs", "front"].includes(rootOf(name as string)));
      // A domain in words, such as the end styles or materials, is not reached over springs at all.
      const reached = scales.flatMap(({ domain }: { domain: { data?: string; fields?: { data: string }[] } | string[] }) =>
        Array.isArray(domain) ? [] : domain.fields ? domain.fields.map((field) => field.data) : [domain.data],
      );
      expect(reached.length).toBeGreaterThanOrEqual(2);
      expect(names).toEqual(expect.arrayContaining(reached));
    }
  });

  it("lets the pointer reach the points: the brush is painted under them", async () => {
    const page = await reportPage(result, SCRIPT);
    const charts = JSON.parse(/id="page-charts">([\s\S]*?)<\/script>/.exec(page)?.[1] ?? "").scatter;
    for (const theme of ["light", "dark"]) {
      const names = charts[theme].marks.map(({ name }: { name: string }) => name);
      expect(names.indexOf("brush_brush")).toBe(names.indexOf("brush_brush_bg") + 1);
      expect(names.indexOf("brush_brush")).toBeLessThan(names.indexOf("layer_0_marks"));
      const over = charts[theme].marks.filter(({ name }: { name: string }) => /front|chosen|pointed/.test(name));
      expect(over.map(({ interactive }: { interactive?: boolean }) => interactive)).toEqual(over.map(() => false));
      expect(over.length).toBeGreaterThanOrEqual(3);
    }
  });
});
