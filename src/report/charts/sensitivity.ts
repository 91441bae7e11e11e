import type { Brief, Concession, EasedBest, LimitPrice, LimitTerms, MeritName, RelaxResult, Units } from "../../model.ts";
import { figureWords, limitWords, showFigure } from "../text/labels.ts";
import { upperFirst } from "../text/layout.ts";
import { gainOf, gainTitle, percentWords, sensitivitiesByGain, termsTexts } from "../text/relaxation.ts";
import { chartConfig, PAINT, type Theme } from "./scatter.ts";

/** One bar: what the best design gains with one limit relaxed by one step. */
export interface SensitivityBar {
  /** The limit by its label. */
  readonly limit: string;
  /** Place of the limit, the most valuable first. */
  readonly row: number;
  /** How it is relaxed, in words. */
  readonly step: string;
  readonly place: number;
  /** Share of the first figure of the ranking that is gained. */
  readonly gain: number;
}

/** Height of the bars of one limit, pixels: the page sets the height of the chart to that of its limits. */
export const PRICE_ROW = 46;

/** The more a limit is relaxed, the fainter. */
const FILLS = {
  light: ["#0b5a75", "#6aa3b7", "#dcebf0"],
  dark: ["#7cc8e4", "#3f7d95", "#1f3f4d"],
} as const;

/**
 * What the best design gains by relaxing each limit, as bars. Vega-Lite with named data: `bars`, rows of `SensitivityBar`; the
 * signal `gainTitle` heads the axis.
 *
 * @param theme  colours for light or dark ground
 * @param steps  how limits are relaxed, in words
 * @returns a plain object without data of its own
 */
export function sensitivitySpec(theme: Theme, steps: readonly string[]): object {
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: "container",
    height: PRICE_ROW,
    autosize: { type: "fit-x", contains: "padding" },
    params: [{ name: "gainTitle", value: "" }],
    data: { name: "bars" },
    mark: { type: "bar", stroke: PAINT[theme].accent, strokeWidth: 1 },
    encoding: {
      x: { field: "gain", type: "quantitative", axis: { title: { expr: "gainTitle" }, format: ".0%", tickCount: 6 } },
      y: { field: "limit", type: "nominal", sort: { field: "row", op: "min" }, axis: { title: null, ticks: false } },
      yOffset: { field: "step", type: "nominal", sort: steps },
      color: {
        field: "step",
        type: "nominal",
        sort: steps,
        scale: { domain: steps, range: FILLS[theme] },
        legend: { title: null, symbolType: "square" },
      },
    },
    config: chartConfig(theme),
  };
}

/** How limits are relaxed, in the order of a price's steps. */
export const PRICE_STEPS = ["relaxed by 5 %", "relaxed by 10 %", "removed"] as const;

/** Limits of which some step gains, the most valuable at the larger share first, then with the limit removed. */
function valuable(result: RelaxResult): LimitPrice[] {
  return sensitivitiesByGain(result).filter(({ steps }) =>
    steps.some(({ best }) => best !== null && gainOf(best, result.merit) > 0),
  );
}

/** The chart's bars: every step that gains, of each limit that has one. */
export function sensitivityBars(result: RelaxResult): SensitivityBar[] {
  return valuable(result).flatMap(({ limit, steps }, row) =>
    steps.flatMap(({ best }, place) => {
      const gain = best === null ? 0 : gainOf(best, result.merit);
      return gain > 0 ? [{ limit: limitWords[limit].label, row, step: PRICE_STEPS[place] as string, place, gain }] : [];
    }),
  );
}

/**
 * What each limit costs the best design, a sentence for each that costs something, in the terms of the brief; one for all others.
 *
 * @param result  finished prices of which something fits
 * @param units   the reader's units
 */
export function sensitivitySentences(result: RelaxResult, units: Units): string[] {
  const costly = valuable(result);
  const names = new Set(costly.map(({ limit }) => limit));
  const idle = result.prices.filter(({ limit }) => !names.has(limit)).map(({ limit }) => limitWords[limit].label);
  return [
    ...costly.map((price) => sensitivitySentence(price, result.merit, { ...result.brief, units })),
    ...(idle.length === 0
      ? []
      : [`${costly.length === 0 ? "No limit" : "None of the others"} holds the best design back: ${idle.join(", ")}.`]),
  ];
}

function sensitivitySentence({ limit, steps }: LimitPrice, merit: MeritName, brief: Brief): string {
  const told: { readonly best: EasedBest; readonly gone: boolean }[] = [];
  for (const { share: fraction, best } of steps) {
    if (best === null || gainOf(best, merit) <= 0) continue;
    // A larger step that gains no more says nothing new.
    if (told.some((one) => one.best.merit === best.merit)) continue;
    told.push({ best, gone: fraction === null });
  }
  const { label } = limitWords[limit];
  const parts = told.map(({ best, gone }, i) => {
    const change = `${percentWords(gainOf(best, merit))}${i === 0 ? ` ${gainTitle(merit, brief)}` : ""}`;
    const without = i === 0 ? `without ${label} there is` : "without the limit there is";
    const how = best.terms === null || gone ? without : `${termsInBrief(best.terms, brief, i > 0)} gives`;
    return `${how} ${change} (${showFigure(merit, best.merit, brief)})`;
  });
  return `${upperFirst(parts.join("; "))}.`;
}

/**
 * What must give where nothing fits, in the terms of the brief.
 *
 * @returns such as "3.4 mm more bore (12.4 mm instead of 9 mm): 37.4 %."
 */
export function relaxationSentence({ limits, share: fraction, terms }: Concession, brief: Brief, units: Units): string {
  const needs = terms.map((one) => termsInBrief(one, { ...brief, units }));
  const what = needs.length > 0 ? needs.join(" and ") : limits.map((limit) => limitWords[limit].label).join(" and ");
  return `${upperFirst(what)}: ${percentWords(fraction)}${limits.length > 1 ? " each" : ""}.`;
}

/** What a limit would have to be, beside what the brief gives: "0.53 mm more bore (13.43 mm instead of 12.9 mm)"; or that alone. */
function termsInBrief(terms: LimitTerms, brief: Brief, alone = false): string {
  const { words, asked, needed } = inBrief(terms, brief);
  const { dimension } = terms;
  const [need, was, step] = termsTexts(needed, asked, dimension, brief.units);
  if (alone) return need;
  const isMeasured = dimension === "length" || dimension === "rate";
  return isMeasured
    ? `${step} ${needed > asked ? "more" : "less"} ${words} (${need} instead of ${was})`
    : `${words} ${need} instead of ${was}`;
}

/** A diameter that bore and clearance allow is the bore to who wrote the brief, and one over a rod the rod. */
function inBrief(
  { limit, limitValue, needed, sense }: LimitTerms,
  { envelope }: Brief,
): { readonly words: string; readonly asked: number; readonly needed: number } {
  const { bore, rod, clearance, outsideDiameter, insideDiameter } = envelope;
  const part = (words: string, asked: number) => {
    const scaled = clearance !== undefined && "share" in clearance;
    return { words, asked, needed: scaled ? (needed * asked) / limitValue : needed + asked - limitValue };
  };
  if (limit === "outsideDiameter" && sense === "most" && bore !== undefined && outsideDiameter?.max === undefined)
    return part("bore", bore);
  if (limit === "insideDiameter" && sense === "least" && rod !== undefined && insideDiameter?.min === undefined)
    return part("rod", rod);
  const words =
    limit === "solidStress"
      ? figureWords.solidSafety.label
      : limit === "turns"
        ? figureWords.activeTurns.label
        : limitWords[limit].label;
  return { words, asked: limitValue, needed };
}
