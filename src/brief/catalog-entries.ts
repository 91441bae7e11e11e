import type { Material, Wire, WireSeries } from "../model.ts";
import { type Problem, ProblemError, quoted } from "../problem.ts";
import type { Listed, Section } from "./section.ts";

/** One of the finders of a `Lookup`. */
export type Find<Thing> = (name: string, from: string) => Thing;

/**
 * The catalog entry that a brief names, with the path that it stands at where that is a file of the user's own; undefined where
 * there is none. A file that is not there, and problems of a name, which have no file, are noted where the brief names it.
 *
 * @param section  where the name stands
 * @param key      its key there
 * @param listed   the name with its line
 * @param find     looks it up
 */
export function findNamed<Thing extends { readonly name: string }>(
  section: Section,
  key: string,
  { name, line }: Listed,
  find: Find<Thing>,
): Thing | undefined {
  const { file, problems } = section.reading;
  try {
    const found = find(name, file);
    return found.name === name ? found : { ...found, path: name };
  } catch (error) {
    if (!(error instanceof ProblemError)) throw error;
    const here = { file, line, key: section.pathOf(key) };
    const placed = (problem: Problem): Problem => {
      if (problem.code === "missing") return { ...problem, ...here, got: `there is no file ${quoted(problem.file ?? "")}` };
      return problem.file === undefined ? { ...problem, ...here } : problem;
    };
    for (const problem of error.problems) problems.push(placed(problem));
    return undefined;
  }
}

/**
 * A wire series with what it is sold in settled for the materials of a brief's own files, which no shipped series can name: such a
 * material is drawn in every series, unless its file names those it is sold in, or a stock of one's own says what it holds.
 *
 * @param series     as its file has it
 * @param materials  of the brief
 * @returns the same where no material is of an own file
 */
export function withOwnMaterials(series: WireSeries, materials: readonly Material[]): WireSeries {
  const own = materials.filter(({ path }) => path !== undefined);
  if (own.length === 0) return series;
  const shipped = materials.filter(({ path }) => path === undefined).map(({ name }) => name);
  return { ...series, wires: series.wires.map((wire) => settled(wire, series, own, shipped)) };
}

function settled(wire: Wire, series: WireSeries, own: readonly Material[], shipped: readonly string[]): Wire {
  const sold = own.filter((material) => isSoldIn(wire, series, material)).map(({ name }) => name);
  if (wire.soldIn === undefined && sold.length === own.length) return wire;
  const others = (wire.soldIn ?? shipped).filter((name) => !own.some((material) => material.name === name));
  return { ...wire, soldIn: [...others, ...sold] };
}

function isSoldIn({ soldIn }: Wire, { name, path }: WireSeries, material: Material): boolean {
  if (material.series !== undefined) return material.series.includes(path ?? name) || material.series.includes(name);
  return path === undefined || soldIn === undefined || soldIn.includes(material.name);
}
