import type { Brief, Envelope, Load, NestedRole, Quantity } from "./model.ts";

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
