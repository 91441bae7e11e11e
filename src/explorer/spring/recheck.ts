import { designToBrief, sweepOf } from "../../brief/design-to-brief.ts";
import { clashAllowanceOf } from "../../constrain/design.ts";
import type { Brief, CheckBrief, CheckResult, Design } from "../../model.ts";
import { ProblemError } from "../../problem.ts";
import { entryLabel } from "../../report/text/check.ts";
import { check } from "../../studies/check.ts";

/** A spring that a reader keeps beside others, with the brief that it was chosen under. */
export interface Compared {
  /** What it goes by: A, B, C. */
  readonly name: string;
  readonly brief: Brief;
  readonly design: Design;
}

/** A compared spring, judged by a brief as it now stands. */
export interface Judged {
  readonly compared: Compared;
  /** The same spring, with load points, margins and cautions of that brief. */
  readonly design: Design;
  /** The brief with this spring's own wire, material and ends in its lists. */
  readonly brief: Brief;
  /** Room that it must leave before solid, m. */
  readonly clashAllowance: number;
  /** What it breaks, in words, and what of it is no longer swept; empty where it fits. */
  readonly breaks: readonly string[];
  readonly unswept: readonly string[];
}

/**
 * Judge a compared spring by a brief and the limits of the engine: the wire as wound, at the free length that it was added with.
 *
 * @param compared  the spring
 * @param brief     as it now stands, which may ask other loads and limits than the one that it was chosen under
 * @returns what it is and breaks under that brief; does not throw
 */
export function judge(compared: Compared, brief: Brief): Judged {
  const given = designToBrief(compared.brief, compared.design).design;
  const asked: CheckBrief = { ...brief, sweep: sweepOf(given), design: given };
  const unswept = [
    ...(brief.sweep.wires.some(({ wires }) => wires.some(isWire(compared.design))) ? [] : [`wire ${compared.design.wire}`]),
    ...(brief.sweep.materials.some(({ name }) => name === compared.design.material)
      ? []
      : [`material ${compared.design.material}`]),
    ...(brief.sweep.ends.some(({ name }) => name === compared.design.ends) ? [] : [`${compared.design.ends} ends`]),
  ];
  const result = checked(asked);
  if (result === null) return { compared, design: compared.design, brief: asked, clashAllowance: 0, breaks: ["wire"], unswept };
  const { meanDiameter, totalTurns, freeLength } = compared.design;
  const choice = { material: 0, wire: given.wire, ends: 0, totalTurns, meanDiameter, freeLength };
  return {
    compared,
    design: { ...result.design, series: compared.design.series, rank: compared.design.rank },
    brief: asked,
    clashAllowance: clashAllowanceOf(asked, choice),
    breaks: [...new Set(result.entries.filter(({ passes }) => !passes).map(entryLabel))],
    unswept,
  };
}

/** Whether a compared spring still fits, in words; empty where it does. */
export function misfitWords({ breaks, unswept }: Judged): string {
  return [
    ...(breaks.length > 0 ? [`Does not fit any more: breaks ${breaks.join(", ")}.`] : []),
    ...(unswept.length > 0 ? [`No longer swept: ${unswept.join(", ")}.`] : []),
  ].join(" ");
}

const isWire =
  ({ wire, wireDiameter }: Design) =>
  (one: { readonly label: string; readonly diameter: number }) =>
    one.label === wire && one.diameter === wireDiameter;

/** null where the brief reads the strength of this material in a way that does not reach this wire. */
function checked(brief: CheckBrief): CheckResult | null {
  try {
    return check(brief);
  } catch (error) {
    if (error instanceof ProblemError) return null;
    throw error;
  }
}
