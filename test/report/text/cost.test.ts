import { describe, expect, it } from "vitest";
import type { Brief, SweepResult } from "../../../src/model.ts";
import { resultJson } from "../../../src/report/files/json.ts";
import { costFacts } from "../../../src/report/page/spring-facts.ts";
import { sweepTable } from "../../../src/report/terminal/sweep-table.ts";
import { figureWords, figureWordsIn, showFigure } from "../../../src/report/text/labels.ts";
import { proofWords } from "../../../src/report/text/verdict.ts";

import { brief, result, series, spring } from "../fixture.ts";

/** The brief with a price on each wire but the first few. */
function priced(unpriced = 0, currency?: string): Brief {
  const wires = series.wires.map((wire, i) => (i < unpriced ? wire : { ...wire, price: 4 }));
  const stock = { ...series, wires, ...(currency === undefined ? {} : { currency }) };
  return { ...brief, rank: ["relativeCost"], sweep: { ...brief.sweep, wires: [stock] } };
}

const inCrowns = priced(0, "crowns");
const tableOf = (given: Brief) => sweepTable({ ...result, brief: given }, { width: 100, colour: false });

describe("cost, where every wire has a price", () => {
  it("is money in the table, under its currency", () => {
    const table = tableOf(inCrowns);
    expect(table).toMatch(/ cost\n.* crowns\n/);
    expect(table).not.toMatch(/relative/);
  });

  it("is money without a unit where the stock names no currency", () => {
    expect(figureWordsIn("relativeCost", priced())).toMatchObject({ label: "cost", unit: "" });
    expect(showFigure("relativeCost", 0.0157, priced())).toBe("0.0157");
  });

  it("is money in sentences", () => {
    expect(showFigure("relativeCost", 0.0157, inCrowns)).toBe("0.0157 crowns");
    expect(showFigure("mass", 0.0157, inCrowns)).toBe("15.7 g");
    const proof = { families: 2, empty: {}, merit: "relativeCost", optimum: 1, runnerUp: 2, gap: 1, nearestEmpty: null } as const;
    expect(proofWords({ ...proof, caveats: [] }, inCrowns)).toMatch(/None has a smaller cost than/);
    expect(proofWords({ ...proof, gap: 1e-15, caveats: [] }, inCrowns)).toContain(
      "the best of another combination has the same.",
    );
    const parts = { wire: 0.01, grind: 0.0057, set: 0, peen: 0, relieve: 0 };
    expect(costFacts(inCrowns, spring({ costParts: parts }))).toMatchObject({ heading: "Parts of the cost, crowns" });
  });

  it("keeps its name in JSON, which says the currency of the stock", () => {
    const read = JSON.parse(resultJson({ ...result, brief: inCrowns })) as SweepResult;
    expect(read.designs[0]?.relativeCost).toBe(0.0157);
    expect(read.brief.sweep.wires).toEqual([{ name: "shop-wire", source: "invented, for tests", currency: "crowns" }]);
  });

  it("cannot act on a terminal by the name of its currency", () => {
    expect(tableOf(priced(0, "\u001b[31m"))).not.toContain("\u001b");
  });
});

describe("cost, where a wire has none", () => {
  it("is the proxy that it is", () => {
    expect(figureWordsIn("relativeCost", brief)).toEqual({ ...figureWords.relativeCost, unit: "" });
    expect(figureWordsIn("relativeCost", priced(1, "crowns")).label).toBe("relative cost");
    expect(tableOf({ ...brief, rank: ["relativeCost"] })).toMatch(/relative\n.* cost\n/);
  });
});
