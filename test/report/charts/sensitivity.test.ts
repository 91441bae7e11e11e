import { describe, expect, it } from "vitest";
import type { Brief, EasedBest, LimitPrice, LimitTerms, RelaxResult } from "../../../src/model.ts";
import { relaxationSentence, sensitivityBars, sensitivitySentences } from "../../../src/report/charts/sensitivity.ts";
import { gainTitle } from "../../../src/report/text/relaxation.ts";
import { relax } from "../../../src/studies/relax.ts";
import { brief, spring, result as swept } from "../fixture.ts";

const { units } = brief;

const best = (mass: number, terms: LimitTerms | null): EasedBest => ({
  design: spring({ mass }),
  merit: mass,
  change: mass / 0.01 - 1,
  terms,
});
const terms = (limit: LimitTerms["limit"], limitValue: number, needed: number, more: Partial<LimitTerms> = {}): LimitTerms => ({
  limit,
  limitValue,
  needed,
  sense: "most",
  dimension: "length",
  ...more,
});

/** Bore 24 mm less 5 % is 22.8 mm: what the limit says of it. */
const bore = (needed: number) => terms("outsideDiameter", 0.0228, needed);
const price = (limit: LimitPrice["limit"], ...bests: readonly (EasedBest | null)[]): LimitPrice => ({
  limit,
  margin: 0,
  steps: bests.map((one, i) => ({ share: [0.05, 0.1, null][i] as number | null, best: one })),
});

const priced = (prices: readonly LimitPrice[], of: Brief = brief): RelaxResult => ({
  ...swept,
  brief: of,
  merit: "mass",
  best: spring({ mass: 0.01 }),
  prices,
  concessions: [],
});

describe("the prices of limits in sentences", () => {
  it("speak of bore and rod where the brief gives these, with their clearance", () => {
    const result = priced([
      price("outsideDiameter", best(0.009, bore(0.02375)), best(0.008, bore(0.0247)), best(0.008, bore(0.0247))),
    ]);
    // 23.75 / 0.95 = 25, 24.7 / 0.95 = 26
    expect(sensitivitySentences(result, units)).toEqual([
      "1 mm more bore (25 mm instead of 24 mm) gives 10.0 % less mass (9 g); 26 mm gives 20.0 % (8 g).",
    ]);
    const clear = { ...brief, envelope: { rod: 0.011, clearance: { length: 0.001 } } };
    const rod = best(0.009, terms("insideDiameter", 0.012, 0.0105, { sense: "least" }));
    expect(sensitivitySentences(priced([price("insideDiameter", rod, null, null)], clear), units)).toEqual([
      "1.5 mm less rod (9.5 mm instead of 11 mm) gives 10.0 % less mass (9 g).",
    ]);
  });

  it("speak of the diameter itself where the brief states one", () => {
    const stated = { ...brief, envelope: { ...brief.envelope, outsideDiameter: { max: 0.0228 } } };
    expect(
      sensitivitySentences(priced([price("outsideDiameter", best(0.009, bore(0.0238)), null, null)], stated), units),
    ).toEqual(["1 mm more outside diameter (23.8 mm instead of 22.8 mm) gives 10.0 % less mass (9 g)."]);
  });

  it("name a limit that costs something only removed, and those that cost nothing", () => {
    const result = priced([
      price("index", best(0.01, null), best(0.01, null), best(0.01, null)),
      price("buckling", best(0.01, null), best(0.01, null), best(0.009, null)),
      price("rate", null, null, null),
    ]);
    expect(sensitivitySentences(result, units)).toEqual([
      "Without buckling there is 10.0 % less mass (9 g).",
      "None of the others holds the best design back: index, rate.",
    ]);
    expect(sensitivitySentences(priced([price("index", best(0.01, null))]), units)).toEqual([
      "No limit holds the best design back: index.",
    ]);
  });

  it("speak of money where every wire has a price", () => {
    const { sweep } = brief;
    const wires = sweep.wires.map((series) => ({
      ...series,
      currency: "crowns",
      wires: series.wires.map((wire) => ({ ...wire, price: 3 })),
    }));
    const result: RelaxResult = {
      ...priced([price("index", best(0.009, null), null, null)], { ...brief, sweep: { ...sweep, wires } }),
      merit: "relativeCost",
    };
    expect(sensitivitySentences(result, units)).toEqual(["Without index there is 10.0 % less cost (0.009 crowns)."]);
    expect(gainTitle(result.merit, result.brief)).toBe("less cost");
  });

  it("put the most valuable limit first, as the bars do, and never a loss", () => {
    const result = priced([
      price("index", best(0.0099, null), best(0.0098, null), best(0.005, null)),
      price("solidStress", best(0.009, null), best(0.008, null), best(0.0008, null)),
      price("clash", best(0.011, null), best(0.012, null), null),
    ]);
    const bars = sensitivityBars(result);
    expect(bars.map(({ limit, step }) => `${limit} ${step}`)).toEqual([
      "solid stress relaxed by 5 %",
      "solid stress relaxed by 10 %",
      "solid stress removed",
      "index relaxed by 5 %",
      "index relaxed by 10 %",
      "index removed",
    ]);
    expect(bars.map(({ gain }) => Number(gain.toFixed(9)))).toEqual([0.1, 0.2, 0.92, 0.01, 0.02, 0.5]);
    expect(gainTitle("mass", brief)).toBe("less mass");
    expect(gainTitle("solidSafety", brief)).toBe("more safety at solid");
  });

  it("say what must give where nothing fits, in the terms of the brief", () => {
    const tight = { ...brief, envelope: { ...brief.envelope, bore: 0.0155 } };
    const result = relax(tight);
    expect(result.best).toBeNull();
    const [first] = result.concessions;
    const words = relaxationSentence(first!, tight, units);
    expect(words).toMatch(/^[\d.]+ mm more bore \([\d.]+ mm instead of 15.5 mm\): [\d.]+ %\.$/);
  });
});
