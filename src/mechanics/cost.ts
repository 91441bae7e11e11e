/**
 * Cost proxy of a spring, to rank designs by: wire by mass and kind, and what is done to it. It is no price.
 *
 *   cost = m c + grind + set + peen + relieve
 *
 * @param mass         m, kg
 * @param costPerMass  c, pure number per kg: relative to hard-drawn carbon wire, or a price
 * @param operations   weights of the operations that this spring gets, pure numbers in the unit of the product m c
 * @returns pure number
 * @range weights of one brief are in one unit
 * @source Shigley eq. 10-22 for the wire; no weights of operations are published, so they are nothing unless stated
 */
export function costProxy(
  mass: number,
  costPerMass: number,
  operations: { readonly grind: number; readonly set: number; readonly peen: number; readonly relieve: number },
): number {
  const { grind, set, peen, relieve } = operations;
  return mass * costPerMass + grind + set + peen + relieve;
}
