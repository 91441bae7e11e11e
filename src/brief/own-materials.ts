import type { Material, Wire, WireSeries } from "../model.ts";

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
