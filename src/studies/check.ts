import { isSold, madeSizes, wirePropertiesAt } from "../constrain/candidate/wire-properties.ts";
import { candidateAt, describer } from "../constrain/design.ts";
import { resolveRequirements } from "../constrain/requirements/requirements.ts";
import { tableEndsOf } from "../constrain/table-ends.ts";
import { activeTurns } from "../mechanics/ends.ts";
import { activeTurnsForRate, springRate } from "../mechanics/rate.ts";
import type {
  CheckBrief,
  CheckNoteName,
  CheckResult,
  Choice,
  Design,
  Disagreement,
  GivenDesign,
  Load,
  QuotedRate,
} from "../model.ts";
import { ProblemError } from "../problem.ts";
import { runPlan } from "../search/task-runner.ts";
import { show } from "../units/show.ts";
import { limitEntries, loadEntries, materialEntries } from "./check-entries.ts";
import { warningsOf } from "./sweep.ts";
import { ToleranceSampling } from "./yield.ts";

/**
 * Judge the one spring of a brief by everything that the brief asks, with the figures and limits of a sweep.
 *
 *   data ─▶ settle: one diameter, turns, rate ─▶ design ─▶ against the load and every limit ─▶ verdict
 *             └─▶ data that disagree
 *
 * @param brief  with its design; left unchanged
 * @returns plain SI data; a figure that a spring without room to deflect does not have is not finite
 * @throws ProblemError `notMade`, without a file, where the material is not made in the wire's size, for then it has no figures
 */
export function check(brief: CheckBrief): CheckResult {
  const { design: given } = brief;
  const { material, wire } = given;
  const wireProperties = wirePropertiesAt(material, wire.diameter, brief.service.strength);
  if (wireProperties === null) throw new ProblemError([notMade(given, brief)]);

  // 1. the spring that the data describe
  const requirements = resolveRequirements(brief, true);
  const settled = settle(given, wireProperties.shearModulus);
  const { meanDiameter, totalTurns } = settled;
  const freeLength = given.freeLength === undefined ? {} : { freeLength: given.freeLength };
  const choice: Choice = { material: 0, wire, ends: 0, totalTurns, meanDiameter, ...freeLength };
  const described: Design = { ...describer(brief, requirements)(choice), rank: 1 };
  const sampling = ToleranceSampling.forBrief(brief, 1);
  const design = sampling === null ? described : runPlan(brief, sampling.sample(choice, described));
  const disagreements = [...settled.disagreements, ...withoutRoom(design)];

  // 2. its figures against every bound
  const entries = [
    ...loadEntries(brief, design),
    ...materialEntries(given, brief, requirements),
    ...limitEntries(candidateAt(brief, requirements, choice), brief),
  ];
  return {
    brief,
    practice: brief.practice,
    passes: disagreements.length === 0 && entries.every(({ passes }) => passes),
    design,
    entries,
    quotedRate: quotedRate(given, settled, design),
    disagreements,
    tableEnds: tableEndsOf(material, brief.service.strength, wire.diameter),
    notes: notesOf(brief, settled),
    warnings: warningsOf(brief, requirements, [design]),
  };
}

function notMade({ material, wire }: GivenDesign, { service, units }: CheckBrief) {
  const { min, max } = madeSizes(material, service.strength);
  const covered = `${show(min, "length", units)} to ${show(max, "length", units)}`;
  const got = `${wire.label} is outside the sizes that the tables at hand cover for ${material.name}, ${covered}, so it has no strength to judge by`;
  return { code: "notMade", key: "design.wire", got, want: "name another wire or material (`coilsieve catalog materials`)" };
}

/** A spring that is solid before it is pressed at all. */
function withoutRoom({ freeLength, solidLength }: Design): Disagreement[] {
  return freeLength > solidLength ? [] : [{ figure: "freeLength", given: freeLength, follows: solidLength }];
}

function quotedRate({ rate, wire }: GivenDesign, { turnsFromRate, ...settled }: Settled, design: Design): QuotedRate | null {
  if (rate === undefined || turnsFromRate) return null;
  return {
    rate,
    difference: rate / settled.rate - 1,
    activeTurns: activeTurnsForRate(design.shearModulus, wire.diameter, settled.meanDiameter, rate),
    forces: design.points.map(({ deflection }) => Math.max(0, rate * deflection)),
  };
}

function notesOf({ design: { material, wire, freeLength }, load }: CheckBrief, { turnsFromRate }: Settled): CheckNoteName[] {
  const notes: CheckNoteName[] = [];
  if (freeLength === undefined) notes.push("freeLengthByLoad");
  if (turnsFromRate) notes.push("turnsFromRate");
  if (!isSold(wire, material)) notes.push("notSold");
  if (asksExactly(load)) notes.push("exactLoad");
  return notes;
}

/** True where some force or rate is asked without tolerance. */
function asksExactly(load: Load): boolean {
  switch (load.kind) {
    case "forceAtDeflection":
      return load.force.min === load.force.max;
    case "points":
      return load.points.some(({ force }) => force.min === force.max);
    case "rateAndPoint":
      return [load.rate, load.point.force].some(({ min, max }) => min === max);
    case "rateAndLargestForce":
      return load.rate.min === load.rate.max;
  }
}

/** Diameters that differ by less than this share say the same; common practice, no source. */
const SAME_DIAMETER = 0.005;
/** Turns that differ by less than this say the same. */
const SAME_TURNS = 0.01;
/** A measured rate may be off by this share: about what a maker may miss by; common practice, no source. */
const SAME_RATE = 0.05;
/** Room for rounding at these boundaries. */
const ROUNDING = 1e-9;

/** What settles a given spring. */
interface Settled {
  readonly meanDiameter: number;
  readonly totalTurns: number;
  /** Rate as wire, diameter and turns give it, N/m. */
  readonly rate: number;
  /** True where no turns are given, so that they follow from the rate. */
  readonly turnsFromRate: boolean;
  readonly disagreements: readonly Disagreement[];
}

/**
 * The dimensions of a spring from data that may say one thing twice: the mean diameter wins over the outside one and that over
 * the inside one, total turns win over active ones, and turns over the rate.
 *
 * @param given         with one diameter at least, and turns or a rate
 * @param shearModulus  of its wire, Pa
 * @returns what settles it, and the data that contradict that; does not throw
 */
function settle(given: GivenDesign, shearModulus: number): Settled {
  const { diameter } = given.wire;
  const { deadTurns } = given.ends;
  const meanDiameter =
    given.meanDiameter ??
    (given.outsideDiameter === undefined ? (given.insideDiameter as number) + diameter : given.outsideDiameter - diameter);
  const active =
    given.totalTurns === undefined
      ? (given.activeTurns ?? activeTurnsForRate(shearModulus, diameter, meanDiameter, given.rate as number))
      : activeTurns(given.totalTurns, deadTurns);
  const rate = springRate(shearModulus, diameter, meanDiameter, active);

  const relative = (quantity: number, follows: number) => Math.abs(quantity / follows - 1);
  const compared = [
    { figure: "outsideDiameter", follows: meanDiameter + diameter, off: relative, same: SAME_DIAMETER },
    { figure: "insideDiameter", follows: meanDiameter - diameter, off: relative, same: SAME_DIAMETER },
    { figure: "activeTurns", follows: active, off: (a: number, b: number) => Math.abs(a - b), same: SAME_TURNS },
    { figure: "rate", follows: rate, off: relative, same: SAME_RATE },
  ] as const;
  const disagreements = compared.flatMap(({ figure, follows, off, same }): Disagreement[] => {
    const quantity = given[figure];
    if (quantity === undefined || off(quantity, follows) <= same + ROUNDING) return [];
    return [{ figure, given: quantity, follows }];
  });
  return {
    meanDiameter,
    totalTurns: given.totalTurns ?? active + deadTurns,
    rate,
    turnsFromRate: given.totalTurns === undefined && given.activeTurns === undefined,
    disagreements,
  };
}
