import type { Brief, Design, LimitName, Scatter, ScatterFigures, SweepResult, Units } from "../../model.ts";
import { show } from "../../units/show.ts";
import { limitWords, meritWords } from "./labels.ts";
import { columnNumbers } from "./layout.ts";
import { countWords } from "./rejections.ts";

/** Label of the share of drawn springs that meet all, and what it is. */
export const yieldColumn = {
  label: "yield",
  sentence: "Share of the springs drawn within their tolerances that meet every force window and limit.",
};

/**
 * The column of yields, for outputs that line numbers up.
 *
 * @param designs  of one result
 * @param units    the reader's units
 * @returns a text for each design, in per cent; null where springs were drawn about none of them
 */
export function yieldTexts(designs: readonly Design[], units: Units): string[] | null {
  if (designs.every(({ scatter }) => scatter === undefined)) return null;
  return columnNumbers(
    designs.map(({ scatter }) => scatter?.share ?? null),
    "share",
    units,
  );
}

/** Where drawn springs fall first: a limit, or what the load asks. */
export function fallLabel(name: LimitName | "load"): string {
  return name === "load" ? "force windows" : limitWords[name].label;
}

/** How many of the drawn springs meet all, in words that claim no more than was drawn. */
export function yieldWords({ share: fraction, standardError, draws }: ScatterFigures, units: Units): string {
  if (fraction === 1) return `all of ${countWords(draws)} drawn`;
  if (fraction === 0) return `none of ${countWords(draws)} drawn`;
  return `${show(fraction, "share", units)} of ${countWords(draws)} drawn (standard error ${show(standardError, "share", units, 2)})`;
}

/** What springs were drawn within, and how. */
export function drawnWords({ shape, seed }: Scatter, { tolerances }: ScatterFigures, units: Units): string {
  const length = (name: "wireDiameter" | "coilDiameter" | "freeLength") => show(tolerances[name], "length", units);
  const within = [
    `wire ± ${length("wireDiameter")}`,
    `mean diameter ± ${length("coilDiameter")}`,
    `turns ± ${show(tolerances.turns, "number", units)}`,
    `free length ± ${length("freeLength")}`,
    `modulus ± ${show(tolerances.modulus, "share", units)}`,
  ].join(", ");
  const how = shape === "normal" ? "normal, the tolerance being three standard deviations with none beyond" : "uniform";
  return `Drawn within ${within}: ${how}, each by itself, seed ${seed}.`;
}

/** What to know before a yield is believed. */
export function yieldCautions({ forces }: ScatterFigures): string[] {
  return [
    "A maker who adjusts one dimension to meet the force does better.",
    "Turns, index and a clash allowance are rules of design: a drawn spring must only not be solid in work.",
    ...(forces.some(({ below }) => below === undefined) ? ["A force asked without a window holds no drawn spring."] : []),
  ];
}

/** What stands where the tables do not reach. */
export const yieldUnknown = "not drawn, for its tolerances are in no table at hand; state them in service.scatter";

/**
 * What springs drawn about a design do, in sentences for a terminal.
 *
 * @param brief   the requirement
 * @param design  one of its springs
 * @returns none where no springs are drawn
 */
export function scatterSentences({ service, units }: Brief, { scatter }: Design): string[] {
  if (service.scatter === undefined || scatter === undefined) return [];
  if (scatter === null) return [`Yield: ${yieldUnknown}.`];
  const { falls, draws, forces, rate } = scatter;
  const others = Object.entries(falls).map(
    ([name, count]) => `${fallLabel(name as LimitName)} ${show(count / draws, "share", units)}`,
  );
  const spreads = [
    ...forces.map(({ name, ...spread }) => ({ label: `force at ${name}`, dimension: "force" as const, ...spread })),
    { label: "rate", dimension: "rate" as const, ...rate },
  ].map(
    ({ label, dimension, mean, standardDeviation }) =>
      `${label} ${show(mean, dimension, units)}, standard deviation ${show(standardDeviation, dimension, units, 3)}`,
  );
  return [
    `Yield: ${yieldWords(scatter, units)} meet every force window and limit${others.length > 0 ? `; the others fall first at ${others.join(", ")}` : ""}.`,
    `Of those drawn: ${spreads.join("; ")}.`,
    [drawnWords(service.scatter, scatter, units), ...yieldCautions(scatter)].join(" "),
  ];
}

/** Among which springs a ranking by yield chose; empty where it was not asked. */
export function rankedAgainWords({
  brief,
  ranksAgain,
  feasible,
}: Pick<SweepResult, "brief" | "ranksAgain" | "feasible">): string {
  if (ranksAgain === undefined) return "";
  const figures = brief.rank.map((name) => meritWords[name].label).join(", then ");
  const drawn = `Ranked by yield among ${countWords(ranksAgain)} springs, the best by ${figures}`;
  return ranksAgain < feasible ? `${drawn}; one of the others may have a larger yield.` : `${drawn}: all that fit.`;
}
