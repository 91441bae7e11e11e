import type { Brief, CheckBrief, Design, EndStyle, GivenDesign, Material, Sweep, Wire } from "../model.ts";

/**
 * A design of a sweep as a brief that `check` judges by the same load, envelope, service and limits.
 *
 * @param brief   the brief that was swept
 * @param design  one of its designs
 * @returns the brief with that design; `writeBrief` makes text of it that reads back to the same figures
 */
export function designToBrief(brief: Brief, design: Design): CheckBrief {
  const { wires, materials, ends } = brief.sweep;
  const named = <Thing extends { readonly name: string }>(list: readonly Thing[], name: string) =>
    list.find((one) => one.name === name) as Thing;
  const series = named(wires, design.series);
  const wire = series.wires.find(({ label }) => label === design.wire) as Wire;
  const { meanDiameter, totalTurns, freeLength } = design;
  const given: GivenDesign = {
    wire: { ...wire, series: series.path ?? series.name },
    material: named<Material>(materials, design.material),
    ends: named<EndStyle>(ends, design.ends),
    meanDiameter,
    totalTurns,
    freeLength,
  };
  return { ...brief, sweep: sweepOf(given), design: given };
}

/** What a walk over one given spring would try, for the rooms that read a brief's lists. */
export function sweepOf({ material, wire, ends }: GivenDesign): Sweep {
  const series = { name: wire.series, source: "the brief's design", wires: [wire] };
  return { wires: [series], materials: [material], ends: [ends], turns: "any", meanDiameter: "exact" };
}
