import type { Candidate } from "../constrain/candidate/candidate.ts";
import { describer } from "../constrain/design.ts";
import { Evaluator } from "../constrain/evaluator.ts";
import { PASSES } from "../constrain/limits/bound.ts";
import { limitsFor } from "../constrain/limits/limits.ts";
import { RejectionCounts, slotOf } from "../constrain/rejection-counts.ts";
import { nominalFreeLengthOf } from "../constrain/requirements/load.ts";
import { clearanceOf, type Requirements, resolveRequirements } from "../constrain/requirements/requirements.ts";
import type {
  Brief,
  Envelope,
  Funnel,
  LimitName,
  Load,
  NestedResult,
  NestedRole,
  Pair,
  Quantity,
  SweepOptions,
} from "../model.ts";
import { MERITS } from "../score/merit.ts";
import { BestPairs, type FittingPair, type NestingSpring } from "../score/pairs.ts";
import { traverse } from "../search/traversal.ts";
import { sweep, warningsOf } from "./sweep.ts";

/** The outer's shares of the load that are tried, per cent: whole numbers, so that no rounding gathers. */
const SHARES = { least: 10, greatest: 90, step: 2 };

/** Pairs kept where nothing else is asked. */
const DEFAULT_TOP = 20;

/**
 * Walk both springs of a nested pair at every share of the load, rank the pairs that fit in one another.
 *
 *   Brief ─▶ for each share s ─┬─▶ brief of the outer: s of each force, the bore     ─▶ walk ─┬─▶ pairs that fit ─▶ best N
 *                              └─▶ brief of the inner: the rest of it,  the rod      ─▶ walk ─┘
 *
 * Both have the one free length that the load sets, so they share it by their rates at every length; tolerances on force are
 * shared alike. All other limits are asked of each spring alone. Beside the pairs stands the best single spring, if any.
 *
 * @param brief    a resolved brief with `nested`, whose load fixes rate and free length; left unchanged
 * @param options  how many pairs to keep
 * @returns plain SI data; the same brief and options give the same bytes
 */
export function nestedSweep(brief: Brief, { top = DEFAULT_TOP }: Pick<SweepOptions, "top"> = {}): NestedResult {
  // 1. both springs at each share of the load
  const pairs = new BestPairs(brief.rank, (insideDiameter) => roomIn(brief, insideDiameter) * (1 - PASSES), top);
  const rejections = { outer: new RejectionCounts(), inner: new RejectionCounts() };
  for (let percent = SHARES.least; percent <= SHARES.greatest; percent += SHARES.step) {
    const share = percent / 100;
    const springs = (role: NestedRole) => feasibleSprings(roleBrief(brief, role, share), rejections[role]);
    pairs.offer(share, springs("outer"), springs("inner"));
  }

  // 2. the figures of what was kept
  const best = pairs.best.map(({ item }, i) => pairOf(brief, item, i + 1));
  const all = new RejectionCounts();
  add(all, rejections.outer);
  add(all, rejections.inner);
  return {
    brief,
    practice: brief.practice,
    nested: 2,
    shares: { least: SHARES.least / 100, greatest: SHARES.greatest / 100, step: SHARES.step / 100 },
    ...funnelOf(all),
    roles: { outer: funnelOf(rejections.outer), inner: funnelOf(rejections.inner) },
    pairsFit: pairs.fitting,
    lacking: pairs.fitting > 0 || !Number.isFinite(pairs.lacking) ? null : pairs.lacking,
    pairs: best,
    alone: sweep(aloneBrief(brief), { top: 1 }).designs[0] ?? null,
    warnings: warningsOf(
      brief,
      resolveRequirements(brief),
      best.flatMap(({ outer, inner }) => [outer, inner]),
    ),
  };
}

/** What one spring would have to answer in place of both. */
function aloneBrief({ nested: _, ...brief }: Brief): Brief {
  return brief;
}

/** The diameter that an outer leaves for the inner, m. */
function roomIn({ envelope }: Brief, insideDiameter: number): number {
  return insideDiameter - clearanceOf(envelope.clearance, insideDiameter);
}

function feasibleSprings(brief: Brief, rejections: RejectionCounts): NestingSpring[] {
  const requirements = atNominals(brief);
  const evaluator = new Evaluator(brief, requirements);
  const springs: NestingSpring[] = [];
  traverse(brief, evaluator, limitsFor(requirements), {
    onFeasible: (candidate) => {
      evaluator.rejections.feasible++;
      springs.push(nestingSpring(candidate));
    },
    objective: MERITS.mass,
  });
  add(rejections, evaluator.rejections);
  return springs;
}

/** What a spring of a pair is asked: both have one free length, that at which each force has its nominal. */
function atNominals(brief: Brief): Requirements {
  return { ...resolveRequirements(brief), freeLengthRule: nominalFreeLengthOf(brief), freeLengthAim: { kind: "shortest" } };
}

/** What is kept of the reused record. */
function nestingSpring(c: Candidate): NestingSpring {
  return {
    mass: c.mass,
    outsideDiameter: c.outsideDiameter,
    relativeCost: c.relativeCost,
    freeLength: c.freeLength,
    solidSafety: c.solidSafety,
    wireDiameter: c.wireDiameter,
    totalTurns: c.totalTurns,
    meanDiameter: c.meanDiameter,
    materialOrder: c.materialOrder,
    endsOrder: c.endsOrder,
    insideDiameter: c.insideDiameter,
    outsideDiameterAtSolid: c.outsideDiameterAtSolid,
    choice: { ...c.choice, freeLength: c.freeLength },
  };
}

function pairOf(brief: Brief, { share, ...springs }: FittingPair, rank: number): Pair {
  const describe = (role: NestedRole) => ({ ...describer(roleBrief(brief, role, share))(springs[role].choice), rank });
  const outer = { ...describe("outer"), hand: "right" } as const;
  const inner = { ...describe("inner"), hand: "left" } as const;
  const left = roomIn(brief, outer.insideDiameter) - inner.outsideDiameterAtSolid;
  const deviations = [outer.tolerance.coilDiameter, inner.tolerance.coilDiameter];
  return {
    rank,
    share,
    mass: outer.mass + inner.mass,
    relativeCost: outer.relativeCost + inner.relativeCost,
    rate: outer.rate + inner.rate,
    // What lies within the pass tolerance of the boundary is the boundary.
    clearance: Math.max(0, left),
    toleranceRoom: deviations.reduce<number | null>((room, by) => (room === null || by === null ? null : room - by), left),
    outer,
    inner,
  };
}

function add(total: RejectionCounts, { rejected, feasible }: RejectionCounts): void {
  for (const [limit, count] of Object.entries(rejected)) total.reject(slotOf(limit as LimitName), count);
  total.feasible += feasible;
}

function funnelOf({ walked, rejected, feasible }: RejectionCounts): Funnel {
  return { walked, rejected, feasible };
}

/**
 * The brief that one spring of a pair answers alone.
 *
 * @param brief  a nested brief
 * @param role   which of the two; the outer works in the bore, the inner over the rod
 * @param share  the outer's share of the load, pure number
 */
export function roleBrief(brief: Brief, role: NestedRole, share: number): Brief {
  const { bore, rod, outsideDiameter, insideDiameter, ...common } = brief.envelope;
  const own: Envelope =
    role === "outer"
      ? { ...(bore === undefined ? {} : { bore }), ...(outsideDiameter && { outsideDiameter }) }
      : { ...(rod === undefined ? {} : { rod }), ...(insideDiameter && { insideDiameter }) };
  return { ...brief, load: shareOf(brief.load, role === "outer" ? share : 1 - share), envelope: { ...common, ...own } };
}

function shareOf(load: Load, share: number): Load {
  const part = (quantity: Quantity): Quantity =>
    Object.fromEntries(Object.entries(quantity).map(([end, value]) => [end, share * value]));
  switch (load.kind) {
    case "points":
      return { ...load, points: load.points.map((point) => ({ ...point, force: part(point.force) })) };
    case "rateAndPoint":
      return { ...load, rate: part(load.rate), point: { ...load.point, force: part(load.point.force) } };
    default:
      throw new Error(`a load of kind ${load.kind} fixes no free length: the brief's reader lets none through`);
  }
}
