import type { Brief } from "../model.ts";
import { show } from "../units/show.ts";
import type { ChartSpring } from "./charts.ts";

/**
 * The lightest drawn spring of each material, lightest first, in one or two sentences.
 *
 * @param designs  the springs that are drawn
 * @param brief    the brief that they answer, with the reader's units
 */
export function massSentence(designs: readonly ChartSpring[], { sweep, units }: Brief): string {
  const lightest = new Map<string, ChartSpring>();
  for (const design of designs) {
    const known = lightest.get(design.material);
    if (known === undefined || design.mass < known.mass) lightest.set(design.material, design);
  }
  const found = [...lightest.values()]
    .sort((a, b) => a.mass - b.mass)
    .map(({ mass, material, wireDiameter }) => {
      return `${show(mass, "mass", units)} in ${show(wireDiameter, "length", units)} ${material}`;
    });
  const without = sweep.materials.map(({ name }) => name).filter((name) => !lightest.has(name));
  const none = without.length === 0 ? "" : ` No spring drawn is of ${without.join(", ")}.`;
  if (found.length === 0) return "";
  return `Lightest of each material: ${found.join("; ")}.${none}`;
}
