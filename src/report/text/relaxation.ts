import type {
  Brief,
  Concession,
  Dimension,
  EasedBest,
  LimitName,
  LimitPrice,
  LimitTerms,
  MeritName,
  RelaxResult,
  Units,
} from "../../model.ts";
import { show } from "../../units/show.ts";
import { figureWordsIn, showFigure } from "./labels.ts";

/** Changes below this are rounding. */
const NOTHING = 1e-9;

/** What keeps the wire from breaking or yielding. */
const STRESS_LIMITS: readonly LimitName[] = ["workingStress", "solidStress", "fatigue"];

/** What relaxing means, beside all prices. */
export const RELAXING =
  "Relaxed by 5 % moves each bound of that limit outward by 5 % (a safety factor: the allowed stress rises by 5 %). All other limits stay. " +
  "A price says what a limit costs, not that a spring may exceed it.";

/** What a step gains, as a share of the merit as asked; below zero where springs made otherwise lose. */
export function gainOf({ change }: EasedBest, merit: MeritName): number {
  const gain = merit === "solidSafety" ? change : -change;
  return Math.abs(gain) < NOTHING ? 0 : gain;
}

/** What a gain is of: "less mass", "more safety at solid". */
export function gainTitle(merit: MeritName, brief: Brief): string {
  return `${merit === "solidSafety" ? "more" : "less"} ${figureWordsIn(merit, brief).label}`;
}

/** Limits by what relaxing them gains: the larger share decides, then the limit removed. */
export function sensitivitiesByGain({ prices, merit }: RelaxResult): LimitPrice[] {
  const gain = ({ steps }: LimitPrice, step: number) => {
    const best = steps[step]?.best ?? null;
    return best === null ? 0 : gainOf(best, merit);
  };
  return [...prices].sort((a, b) => gain(b, 1) - gain(a, 1) || gain(b, 2) - gain(a, 2));
}

/**
 * What a limit would have to be, what it is, and the step between them, with digits enough that a small step does not print as
 * none.
 */
export function termsTexts(
  needed: number,
  asked: number,
  dimension: Dimension,
  units: Units,
): readonly [needed: string, asked: string, step: string] {
  const texts = (digits: number) => {
    const [need, was, step] = [needed, asked, Math.abs(needed - asked)].map((value) => show(value, dimension, units, digits));
    return [need, was, step] as [string, string, string];
  };
  return [4, 5, 6, 8].map(texts).find(([need, was]) => need !== was) ?? texts(10);
}

/** A share in per cent with as many digits as tell it from none, its sign where it is a change. */
export function percentWords(fraction: number, signed = false): string {
  const percent = 100 * fraction;
  const text = Math.abs(percent) < 0.1 && percent !== 0 ? percent.toPrecision(1) : percent.toFixed(1);
  return `${signed && percent > 0 ? "+" : ""}${text} %`;
}

/**
 * What a design needs of a limit beside what the brief gives.
 *
 * @returns such as "outsideDiameter 11.75 mm (limit 10.45 mm)"
 */
export function termsWords({ limit, needed, limitValue, dimension }: LimitTerms, units: Units): string {
  const [need, asked] = termsTexts(needed, limitValue, dimension, units);
  return `${limit} ${need} (limit ${asked})`;
}

/** The step of all prices that gains most, at the larger share; where none gains so, with a limit removed. */
export function mostValuable({
  prices,
  merit,
}: RelaxResult): { readonly limit: LimitPrice["limit"]; readonly best: EasedBest } | null {
  for (const wanted of [0.1, null]) {
    const steps = prices.flatMap(({ limit, steps }) =>
      steps.flatMap(({ share: fraction, best }) =>
        fraction === wanted && best !== null && gainOf(best, merit) > 0 ? [{ limit, best }] : [],
      ),
    );
    const [first, ...others] = steps;
    if (first !== undefined) return others.reduce((a, b) => (gainOf(b.best, merit) > gainOf(a.best, merit) ? b : a), first);
  }
  return null;
}

/**
 * The limit that costs most, and what relaxing it gains.
 *
 * @param result  a finished pricing of which something fits
 */
export function valueSentence(result: RelaxResult): string {
  const { brief, merit } = result;
  const found = mostValuable(result);
  if (found === null)
    return `No limit alone holds the best design back: none gains ${figureWordsIn(merit, brief).label}, relaxed or removed.`;
  const { limit, best } = found;
  const gain = `${percentWords(gainOf(best, merit))} ${gainTitle(merit, brief)}`;
  const how = best.terms === null ? `Without ${limit}` : `With ${termsWords(best.terms, brief.units)}`;
  const last = STRESS_LIMITS.includes(limit) ? " A limit of stress is the last to relax." : "";
  return `${limit} costs most. ${how} the best design has ${gain}, ${showFigure(merit, best.merit, brief)}.${last}`;
}

/**
 * What must give, in one line.
 *
 * @returns such as "outsideDiameter by 12.4 %: outsideDiameter 11.75 mm (limit 10.45 mm)"
 */
export function requiredRelaxationText({ limits, share: fraction, terms }: Concession, units: Units): string {
  const needs = terms.map((one) => termsWords(one, units)).join(", ");
  return `${limits.join(" and ")} by ${percentWords(fraction)}: ${needs}`;
}
