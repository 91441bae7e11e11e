import type { Brief, Design, Material, Service, TableEnd, Wire } from "../model.ts";
import { endOfSizes, isSold, madeSizes, wirePropertiesAt } from "./candidate/wire-properties.ts";

/** Two sizes closer than this, as a fraction, are the same size. */
const SAME_SIZE = 1e-9;

/**
 * The ends of the tables at hand that took part in an answer: beyond them the brief's series go on, and no wire was tried.
 *
 * @param brief    a resolved brief
 * @param answers  the best designs; where nothing fits none, and every end of every material is asked
 * @returns in the order of the brief's materials, the thin end first; none where the series themselves end
 */
export function tableEnds(brief: Brief, answers: readonly Pick<Design, "material" | "wireDiameter">[]): TableEnd[] {
  return brief.sweep.materials.flatMap((material) => {
    const standing = answers.filter((answer) => answer.material === material.name).map(({ wireDiameter }) => wireDiameter);
    if (answers.length > 0 && standing.length === 0) return [];
    const ends = endsOfSweep(brief, material);
    return answers.length === 0 ? ends : ends.filter(({ size }) => standing.some((diameter) => isSame(diameter, size)));
  });
}

/** The end of a material's tables at which one given spring stands, if any. */
export function tableEndsOf(material: Material, basis: Service["strength"], wireDiameter: number): TableEnd[] {
  const { min, max } = madeSizes(material, basis);
  const ends = [
    ["thinnest", min],
    ["thickest", max],
  ] as const;
  return ends
    .filter(([, size]) => isSame(size, wireDiameter))
    .map(([end, size]) => ({ material: material.name, end, size, because: endOfSizes(material, basis, end) }));
}

function endsOfSweep(brief: Brief, material: Material): TableEnd[] {
  const basis = brief.service.strength;
  const all = brief.sweep.wires.flatMap(({ wires }) => wires);
  const isMade = ({ diameter }: Wire) => wirePropertiesAt(material, diameter, basis) !== null;
  const isFree = (wire: Wire) => brief.limits.lifted.includes("wire") || isSold(wire, material);
  const tried = all.filter((wire) => isMade(wire) && isFree(wire)).map(({ diameter }) => diameter);
  const wanting = (end: "thinnest" | "thickest", size: number, next: number): TableEnd => {
    const made = all.some((wire) => isSame(wire.diameter, next) && isMade(wire));
    return { material: material.name, end, size, next, because: made ? "soldIn" : endOfSizes(material, basis, end) };
  };
  if (tried.length === 0) return all.length === 0 ? [] : [noneTried(all, wanting, madeSizes(material, basis))];
  const [thinnest, thickest] = [Math.min(...tried), Math.max(...tried)];
  const thinner = Math.max(...all.map(({ diameter }) => diameter).filter((diameter) => diameter < thinnest * (1 - SAME_SIZE)));
  const thicker = Math.min(...all.map(({ diameter }) => diameter).filter((diameter) => diameter > thickest * (1 + SAME_SIZE)));
  return [
    ...(Number.isFinite(thinner) ? [wanting("thinnest", thinnest, thinner)] : []),
    ...(Number.isFinite(thicker) ? [wanting("thickest", thickest, thicker)] : []),
  ];
}

/** No size of a material is in the series: the nearest of theirs to what its tables cover. */
function noneTried(
  all: readonly Wire[],
  wanting: (end: "thinnest" | "thickest", size: number, next: number) => TableEnd,
  { min, max }: { readonly min: number; readonly max: number },
): TableEnd {
  const within = (diameter: number) => Math.min(max, Math.max(min, diameter));
  const off = ({ diameter }: Wire) => Math.abs(Math.log(diameter / within(diameter)));
  const { diameter } = all.reduce((nearest, wire) => (off(wire) < off(nearest) ? wire : nearest));
  return { ...wanting(diameter < min ? "thinnest" : "thickest", within(diameter), diameter), end: "all" };
}

function isSame(one: number, other: number): boolean {
  return Math.abs(one / other - 1) <= SAME_SIZE;
}
