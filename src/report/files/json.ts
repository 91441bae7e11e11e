import type { Brief, CheckBrief, CheckResult, Design, NestedResult, RelaxResult, SweepResult } from "../../model.ts";
import { jsonText } from "../../problem.ts";
import { fromMemory } from "../text/material-data.ts";

/**
 * A sweep as JSON for other programs: SI, the names of the model, catalog entries by name and source.
 *
 * @param result  a finished sweep
 * @returns keys in a fixed order, two spaces, ended by a line break; a figure that is not finite is null; does not throw
 */
export function resultJson({ sample, wires, ...told }: SweepResult): string {
  return jsonOf(told, compactBrief(told.brief));
}

/**
 * One design of a sweep as JSON: its brief and its figures, in the form that they have in the whole result.
 *
 * @param brief   the brief that it answers
 * @param design  the spring
 * @returns two spaces, ended by a line break; a figure that is not finite is null; does not throw
 */
export function designJson(brief: Brief, design: Design): string {
  return jsonOf({ brief, practice: brief.practice, design }, compactBrief(brief));
}

/**
 * A feasible spring as a line of NDJSON: SI, the names of the model; without a rank, for it has none.
 *
 * @param design  one spring
 * @returns one line, ended by a line break; a figure that is not finite is null; does not throw
 */
export function survivorLine({ rank, ...figures }: Design): string {
  return `${jsonText(figures)}\n`;
}

/** A result in the order of its own keys, with its brief in few words. */
function jsonOf<Result extends { readonly brief: Brief }>(result: Result, brief: object): string {
  return `${jsonText({ ...result, brief }, 2)}\n`;
}

/** The brief with catalog entries by name, their rows standing in the catalogs, and with what its figures rest on from memory. */
function compactBrief(brief: Brief): object {
  const { title, practice, load, envelope, sweep, service, limits, cost, rank, yieldFirst, order, units, asked, defaults } =
    brief;
  const named = ({ name, source }: { readonly name: string; readonly source: string }) => ({ name, source });
  return {
    title,
    practice,
    load,
    envelope,
    sweep: {
      wires: sweep.wires.map((series) => ({ ...named(series), ...(series.currency ? { currency: series.currency } : {}) })),
      materials: sweep.materials.map(named),
      ends: sweep.ends.map(({ name }) => name),
      turns: sweep.turns,
      meanDiameter: sweep.meanDiameter,
      ...(sweep.freeLength && { freeLength: sweep.freeLength }),
    },
    service,
    limits,
    cost,
    rank,
    ...(yieldFirst && { yieldFirst }),
    ...(order && { order }),
    units,
    asked,
    defaults,
    fromMemory: fromMemory(brief),
  };
}

/**
 * A check as JSON for other programs: SI, the names of the model, catalog entries by name.
 *
 * @param result  a finished check
 * @returns keys in a fixed order, two spaces, ended by a line break; a figure that is not finite is null; does not throw
 */
export function checkJson(result: CheckResult): string {
  return jsonOf(result, { ...compactBrief(result.brief), ...givenOf(result.brief) });
}

/** The data of the spring in place of a sweep and a rank, which a check has no use for. */
function givenOf({ design }: CheckBrief): object {
  const { material, wire, ends, ...data } = design;
  return {
    sweep: undefined,
    rank: undefined,
    yieldFirst: undefined,
    design: { material: material.name, wire, ends: ends.name, ...data },
  };
}

/**
 * The prices of limits as JSON for other programs: SI, the names of the model, catalog entries by name and source.
 *
 * @param result  finished prices
 * @returns keys in a fixed order, two spaces, ended by a line break; a figure that is not finite is null; does not throw
 */
export function relaxJson(result: RelaxResult): string {
  return jsonOf(result, compactBrief(result.brief));
}

/**
 * A sweep of nested pairs as JSON for other programs: SI, the names of the model, catalog entries by name and source.
 *
 * @param result  a finished sweep of nested pairs
 * @returns keys in a fixed order, two spaces, ended by a line break; a figure that is not finite is null; does not throw
 */
export function pairsJson(result: NestedResult): string {
  return jsonOf(result, compactBrief(result.brief));
}
