import { pinnedRate } from "../../brief/fixed-rate.ts";
import type { Brief, Design, LimitName } from "../../model.ts";
import { inUnits, unitLabel } from "../../units/show.ts";
import { limitWords } from "../text/labels.ts";

/** One limit of a chosen spring, ready to show. */
export interface MarginRow {
  readonly limit: LimitName;
  readonly label: string;
  /** Share of the limit that is left; 0 at the limit. */
  readonly margin: number;
  /** The margin in words. */
  readonly words: string;
}

/**
 * The margins of a spring, in the order in which candidates fall.
 *
 * @param design  the spring
 * @param brief   the brief that it answers
 */
export function marginRows(design: Design, brief: Brief): MarginRow[] {
  return (Object.keys(limitWords) as LimitName[]).flatMap((limit) => {
    const margin = design.margins[limit];
    if (margin === undefined) return [];
    return [
      { limit, label: limitWords[limit].label, margin, words: words(limit, margin, brief) + degreesLeft(limit, design, brief) },
    ];
  });
}

/** The limit with the least room that the choice of design could change; undefined where every one is met by construction. */
export function tightest(rows: readonly MarginRow[], brief: Brief): MarginRow | undefined {
  return rows.filter(({ limit }) => !metByConstruction(limit, brief)).sort((a, b) => a.margin - b.margin)[0];
}

function words(limit: LimitName, margin: number, brief: Brief): string {
  if (margin === 0) return metByConstruction(limit, brief) ? "met by construction" : "at the limit";
  return `${(100 * margin).toFixed(margin < 0.0995 ? 1 : 0)} %`;
}

/** Beside the share, how many degrees a material still bears. */
function degreesLeft(limit: LimitName, design: Design, { service, sweep, units }: Brief): string {
  const material = sweep.materials.find(({ name }) => name === design.material);
  if (limit !== "temperature" || material === undefined || service.temperature === undefined) return "";
  const left = inUnits(material.temperature.max, "temperature", units) - inUnits(service.temperature, "temperature", units);
  return left > 0 ? `, ${left.toFixed(0)} ${unitLabel("temperature", units)} left` : "";
}

/** The rate where the loads pin it; the clash allowance where the free length is the shortest that clears it. */
function metByConstruction(limit: LimitName, { load }: Brief): boolean {
  if (limit === "clash") return load.kind === "forceAtDeflection" || load.kind === "rateAndLargestForce";
  return limit === "rate" && pinnedRate(load) !== null;
}
