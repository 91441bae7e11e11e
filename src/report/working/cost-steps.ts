import { kilograms, massFactor, times } from "./sheet-units.ts";
import type { Steps } from "./steps.ts";
import type { Subject } from "./subject.ts";

const OPERATIONS = [
  ["grind", "og", "grindingCost", "grinding"],
  ["set", "os", "settingCost", "removing set"],
  ["peen", "op", "peeningCost", "shot peening"],
  ["relieve", "or", "relievingCost", "stress relief"],
] as const;

/** Length of wire, mass and the cost proxy. */
export function costSteps(steps: Steps, { design, candidate, wire, material, brief }: Subject): void {
  const { units } = steps;
  steps.chapter("Mass and cost proxy");
  steps.derived(["l", "wireLength", "wire length"], "length", "pi * D * Nt", "Shigley section 10-5", design.wireLength);
  const mass = `${times(massFactor(units))}ρ * pi / 4 * d^2 * l`;
  steps.derived(["m", "mass", "mass"], "mass", mass, "Shigley eq. 10-22", design.mass);
  const priced = wire.price !== undefined;
  const source = priced ? `price in ${wire.series}` : material.source;
  const label = priced ? "price for each kilogram" : "cost for each kilogram relative to hard-drawn carbon wire";
  steps.given(["c", "costPerKilogram", label], "number", candidate.costPerMass, source);
  const terms = OPERATIONS.flatMap(([operation, symbol, name, label]) => {
    const weight = design.costParts[operation];
    if (weight === 0) return [];
    const from = brief.cost[operation] === undefined ? material.source : `brief, cost.${operation}`;
    steps.given([symbol, name, `weight of ${label}`], "number", weight, from);
    return [` + ${symbol}`];
  });
  const cost = `${times(kilograms(units))}m * c${terms.join("")}`;
  steps.derived(
    ["cp", "relativeCost", priced ? "cost at the price of the wire" : "cost proxy, which is no price"],
    "number",
    cost,
    "mass times cost, and operations",
    design.relativeCost,
  );
}
