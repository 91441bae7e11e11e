import { deviation, max, mean, min } from "d3-array";
import type { Candidate } from "../constrain/candidate/candidate.ts";
import { candidateAt, designPoints } from "../constrain/design.ts";
import type { Limit } from "../constrain/limits/limits.ts";
import { type Requirements, resolveRequirements } from "../constrain/requirements/requirements.ts";
import type { Brief, Choice, Design, LimitName, Scatter, ScatterFigures, ScatterTolerances, Spread } from "../model.ts";
import { ProblemError } from "../problem.ts";
import type { TaskPlan } from "../search/tasks.ts";
import { acceptanceLimits, firstViolated, scatterTolerances, sideOf, unitDeviates, VARYING, windowAt } from "./samples.ts";

/** Springs drawn at most for all designs of one result: more is minutes. */
const MOST_SAMPLES = 2e7;

/** Springs drawn between two moments at which the drawing may be stopped: some milliseconds. */
const BATCH = 4096;

/**
 * Springs drawn about designs, each judged by the limits of a sweep as a given spring of its own wire, diameter, turns, length and
 * modulus. Dimensions vary independently. Every design meets the same deviations, so that a share depends on nothing but the
 * brief and the design, and chance weighs on all alike.
 */
export class ToleranceSampling {
  private readonly brief: Brief;
  private readonly scatter: Scatter;
  private readonly requirements: Requirements;
  private readonly limits: readonly Limit[];
  private readonly deviates: Float64Array;
  /** Springs to be drawn for all designs, and those drawn so far. */
  private readonly forBrief: number;
  private sampled = 0;

  private constructor(brief: Brief, scatter: Scatter, designs: number) {
    this.brief = brief;
    this.forBrief = designs * scatter.draws;
    this.scatter = scatter;
    // A clash allowance is kept for such deviations: a drawn spring must only not be solid in work.
    this.requirements = { ...resolveRequirements(brief, true), clash: null };
    this.limits = acceptanceLimits(brief, this.requirements);
    this.deviates = unitDeviates(scatter);
  }

  /**
   * For a brief that asks for scatter, else null.
   *
   * @param designs  how many it will be asked of at most
   * @throws ProblemError `tooManyDraws`, without a file, where that is more than can be drawn
   */
  static forBrief(brief: Brief, designs: number): ToleranceSampling | null {
    const { scatter } = brief.service;
    if (scatter === undefined) return null;
    if (designs * scatter.draws > MOST_SAMPLES) throw new ProblemError([tooManyDraws(designs, scatter)]);
    return new ToleranceSampling(brief, scatter, designs);
  }

  /** A design with what springs drawn about it do; null where the tables do not reach its tolerances. */
  *sample(choice: Choice, design: Design): TaskPlan<Design> {
    const { totalTurns, meanDiameter, freeLength } = design;
    const given: Choice = { ...choice, totalTurns, meanDiameter, freeLength };
    const candidate = candidateAt(this.brief, this.requirements, given);
    const tolerances = scatterTolerances(candidate, this.scatter);
    return { ...design, scatter: tolerances && (yield* this.figures(candidate, tolerances)) };
  }

  private *figures(candidate: Candidate, tolerances: ScatterTolerances): TaskPlan<ScatterFigures> {
    const { load } = this.brief;
    const { draws } = this.scatter;
    // A load that presses to a force has none that varies.
    const points = load.kind === "rateAndLargestForce" ? [] : designPoints(load, candidate);
    const windows = points.map((point) => ({ name: point.name, window: windowAt(point, this.requirements), below: 0, above: 0 }));
    const forces = points.map(() => new Float64Array(draws));
    const rates = new Float64Array(draws);
    const rejections = new Map<LimitName | "load", number>();

    const setSample = this.sampler(candidate, tolerances);
    for (let draw = 0; draw < draws; draw++) {
      setSample(draw);
      rates[draw] = candidate.rate;
      let missed = false;
      for (const [i, { force }] of (points.length > 0 ? designPoints(load, candidate) : []).entries()) {
        const at = windows[i] as (typeof windows)[number];
        (forces[i] as Float64Array)[draw] = force;
        const side = at.window === undefined ? 0 : sideOf(force, at.window);
        if (side < 0) at.below++;
        if (side > 0) at.above++;
        missed ||= side !== 0;
      }
      const rejectedBy = missed ? "load" : firstViolated(this.limits, candidate);
      if (rejectedBy !== undefined) rejections.set(rejectedBy, (rejections.get(rejectedBy) ?? 0) + 1);
      if (++this.sampled % BATCH === 0) yield { kind: "sampling", sampled: this.sampled, total: this.forBrief };
    }

    const acceptance = (draws - [...rejections.values()].reduce((sum, count) => sum + count, 0)) / draws;
    const order = ["load" as const, ...this.limits.map(({ name }) => name)];
    return {
      share: acceptance,
      standardError: Math.sqrt((acceptance * (1 - acceptance)) / draws),
      draws,
      falls: Object.fromEntries(order.flatMap((name) => (rejections.has(name) ? [[name, rejections.get(name)]] : []))),
      rate: spreadOf(rates),
      forces: windows.map(({ name, window, below, above }, i) => ({
        name,
        ...spreadOf(forces[i] as Float64Array),
        ...(window === undefined ? {} : { below, above }),
      })),
      tolerances,
    };
  }

  /** What sets the record to one drawn spring after the other. */
  private sampler(candidate: Candidate, tolerances: ScatterTolerances): (draw: number) => void {
    const { wireDiameter, meanDiameter, totalTurns, freeLength, shearModulus, youngsModulus, endsOrder } = candidate;
    const ends = candidate.ends as NonNullable<Candidate["ends"]>;
    const { deviates } = this;
    // A drawn spring has its own wire, which is then also its largest.
    candidate.wireDeviation = 0;
    return (draw) => {
      const at = draw * VARYING.length;
      const off = (i: number) => tolerances[VARYING[i] as keyof ScatterTolerances] * (deviates[at + i] as number);
      const stiffness = 1 + off(4);
      candidate.wireDiameter = wireDiameter + off(0);
      // Poisson's ratio is kept, so the other modulus moves in proportion.
      candidate.shearModulus = shearModulus * stiffness;
      candidate.youngsModulus = youngsModulus * stiffness;
      candidate.setEnds(ends, endsOrder, totalTurns + off(2));
      candidate.setDimensions(meanDiameter + off(1), freeLength + off(3));
    };
  }
}

/**
 * Designs in the order of their yield, the largest first; equal ones stay as they are, and those whose yield is not known come
 * last.
 */
export function byYield<T extends { readonly design: Design }>(pool: readonly T[]): T[] {
  const yieldOf = ({ design: { scatter } }: T) => scatter?.share ?? -1;
  return [...pool].sort((a, b) => yieldOf(b) - yieldOf(a));
}

function spreadOf(values: Float64Array): Spread {
  return {
    mean: mean(values) as number,
    standardDeviation: deviation(values) as number,
    least: min(values) as number,
    greatest: max(values) as number,
  };
}

function tooManyDraws(designs: number, { draws }: Scatter) {
  const shown = (count: number) => count.toLocaleString("en");
  const got = `${shown(draws)} springs for each of ${shown(designs)} designs are too many to draw`;
  const want = `ask fewer draws, or keep fewer designs, to ${shown(MOST_SAMPLES)} at most in all`;
  return { code: "tooManyDraws", key: "service.scatter.draws", got, want };
}
