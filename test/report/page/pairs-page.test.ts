import { describe, expect, it } from "vitest";
import { pairDrawing } from "../../../src/report/drawing/nested-pair.ts";
import { pairsPage } from "../../../src/report/page/pairs-page.ts";
import { nestedSweep } from "../../../src/studies/nested.ts";
import { small } from "../../studies/nested/briefs.ts";

const SCRIPT = "document.title;";
const hostile = '<img src=x onerror="alert(1)">';
const result = nestedSweep(small);
const pair = result.pairs[0]!;

describe("the page of nested pairs", () => {
  it("says how the load is shared, how many pairs fit and what holds for every pair", async () => {
    const page = await pairsPage(result, SCRIPT);
    expect(page).toContain("share this load by their rates at every length");
    expect(page).toContain("opposite hands");
    expect(page).toMatch(/pairs? fits? in one another/);
  });

  it("has no inline style, no handler and nothing to fetch", async () => {
    const markup = (await pairsPage(result, SCRIPT)).replace(/<script[\s\S]*?<\/script>/g, "");
    expect(markup).not.toMatch(/\sstyle="|\son[a-z]+="|\ssrc=|<link|@import|url\(/i);
  });

  it("keeps every text of the brief text", async () => {
    const page = await pairsPage({ ...result, brief: { ...small, title: `</script>${hostile}` } }, SCRIPT);
    expect(page).not.toContain("<img");
    expect(page.match(/<\/script>/g)?.length).toBe(2);
  });

  it("with no pair that fits says what lacks, and carries no data to draw", async () => {
    const page = await pairsPage({ ...result, pairsFit: 0, pairs: [], lacking: 0.0012 }, SCRIPT);
    expect(page).toContain("the nearest lacks 1.2 mm between its springs");
    expect(page).toContain('id="page-pairs">null<');
    expect(page).not.toContain('id="ranked"');
  });

  it("refuses a script that would end its own element", async () => {
    await expect(pairsPage(result, "'</script>'")).rejects.toThrow("end its own element");
  });
});

describe("the drawing of a pair", () => {
  const drawn = pairDrawing(pair, small.sweep.ends, small.units);

  it("names both outside diameters, the common free length and the shortest length of work", () => {
    const millimetres = (value: number) => String(Number((1000 * value).toPrecision(4)));
    expect(drawn).toContain(`>Ø ${millimetres(pair.outer.outsideDiameter)} mm<`);
    expect(drawn).toContain(`>Ø ${millimetres(pair.inner.outsideDiameter)} mm<`);
    expect(drawn).toContain(`>free ${millimetres(pair.outer.freeLength)} mm<`);
    expect(drawn).toContain(">pressed to 50 mm<");
  });

  it("cuts the outer's wire at both crowns of every turn, in both views, and leaves the inner whole", () => {
    const crowns = Math.floor(2 * pair.outer.totalTurns + 1e-9) + 1;
    expect(drawn.match(/class="wire-cut"/g)).toHaveLength(2 * crowns);
    expect(drawn.match(/class="section /g)).toHaveLength(2);
    expect(drawn.match(/class="view /g)).toHaveLength(2);
  });

  it("draws both to one scale: the cut wires are in the proportion of wire to coil", () => {
    const radius = Number(/class="wire-cut"[^>]* r="([\d.]+)"/.exec(drawn)?.[1]) + 0.5;
    const across = [...drawn.matchAll(/<path class="dimension"[^>]* d="M([\d.]+) ([\d.]+)V([\d.]+)"/g)].map(
      ([, , from, to]) => Number(to) - Number(from),
    );
    const [outer, inner] = across;
    expect(outer! / inner!).toBeCloseTo(pair.outer.outsideDiameter / pair.inner.outsideDiameter, 2);
    expect((2 * radius) / outer!).toBeCloseTo(pair.outer.wireDiameter / pair.outer.outsideDiameter, 2);
  });
});
