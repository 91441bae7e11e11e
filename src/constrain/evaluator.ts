import type { Brief, Choice, EndStyle, LimitName, Material, Wire } from "../model.ts";
import { Candidate } from "./candidate/candidate.ts";
import { isSold, wirePropertiesAt } from "./candidate/wire-properties.ts";
import { FreeLengthRange } from "./free-length-range.ts";
import { limitsFor } from "./limits/limits.ts";
import { RejectionCounts, slotOf } from "./rejection-counts.ts";
import { type Requirements, resolveRequirements } from "./requirements/requirements.ts";

/** Called with a material, by its index in the brief's list, and a wire. */
export type PairListener = (order: number, wire: Wire) => void;

/** Sets, evaluates and counts the candidates of a search: one reused record, and the rejection counts. */
export class Evaluator {
  readonly candidate: Candidate;
  readonly rejections = new RejectionCounts();
  private readonly brief: Brief;
  private readonly requirements: Requirements;
  private readonly onPair: PairListener;

  /** @param onPair  is told of each material and wire before it is taken, when all that came before is counted */
  constructor(brief: Brief, requirements: Requirements, onPair: PairListener = () => {}) {
    this.brief = brief;
    this.requirements = requirements;
    this.onPair = onPair;
    this.candidate = new Candidate(requirements);
  }

  /**
   * Take a material and wire.
   *
   * @returns the slot of the limit that refuses the pair (`wire`: not made in this size, or nobody sells it; `temperature`: the
   *   service is hotter than the material bears), or null
   */
  enter(order: number, wire: Wire): number | null {
    this.onPair(order, wire);
    const refusal = this.refusal(order, wire);
    return refusal === null ? null : slotOf(refusal);
  }

  setActiveTurns(activeTurns: number): void {
    this.candidate.activeTurns = activeTurns;
  }

  setEnds(order: number, totalTurns: number): void {
    this.candidate.setEnds(this.brief.sweep.ends[order] as EndStyle, order, totalTurns);
  }

  reject(slot: number, candidates: number): void {
    this.rejections.reject(slot, candidates);
  }

  private refusal(order: number, wire: Wire): LimitName | null {
    const material = this.brief.sweep.materials[order] as Material;
    const wireProperties = wirePropertiesAt(material, wire.diameter, this.brief.service.strength);
    if (wireProperties === null || !(isSold(wire, material) || this.requirements.lifted.has("wire"))) return "wire";
    if (this.requirements.temperature !== null && this.requirements.temperature > material.temperature.max) return "temperature";
    this.candidate.setWire(material, order, wire, wireProperties);
    return null;
  }
}

/**
 * Whether one spring passes every limit of a brief at some free length, by the limits that its search prunes by.
 *
 * @param brief   a resolved brief
 * @param choice  a spring of its lists, with counted turns; on the grid of the search or not
 */
export function isFeasible(brief: Brief, choice: Choice): boolean {
  const requirements = resolveRequirements(brief);
  const evaluator = new Evaluator(brief, requirements);
  if (evaluator.enter(choice.material, choice.wire) !== null) return false;
  evaluator.setEnds(choice.ends, choice.totalTurns);
  evaluator.candidate.setMeanDiameter(choice.meanDiameter);
  return new FreeLengthRange(evaluator.candidate, limitsFor(requirements)).settle();
}
