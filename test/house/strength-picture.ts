import { loader, parse, View } from "vega";
import { compile, type TopLevelSpec } from "vega-lite";
import { madeSizes, wirePropertiesAt } from "../../src/constrain/candidate/wire-properties.ts";
import type { Material } from "../../src/model.ts";
import { shelf, shipped } from "../catalog/shipped.ts";

/** One strength of one material, for the picture. */
interface Mark {
  readonly material: string;
  readonly diameter: number;
  readonly strength: number;
  /** How the line to this size is drawn. */
  readonly read: "read in print" | "inferred or from memory";
}

/** Strengths of a material at its own rows, or where it has none at preferred sizes within its range; millimetres and MPa. */
function marksOf(material: Material): Mark[] {
  const { min, max } = madeSizes(material, "minimum");
  const preferred = shipped.series("iso-r20", "").wires.map(({ diameter }) => diameter);
  const rows = material.strength.minimum?.rows.map(({ diameter }) => diameter);
  const sizes = rows ?? [min, ...preferred.filter((size) => size > min && size < max), max];
  return sizes.flatMap((diameter) => {
    const wireProperties = wirePropertiesAt(material, diameter, "minimum");
    if (wireProperties === null) return [];
    const read = wireProperties.strengthFlag === undefined ? "read in print" : "inferred or from memory";
    return [
      { material: material.name, diameter: 1000 * diameter, strength: Math.round(wireProperties.tensileStrength / 1e6), read },
    ];
  });
}

/** A line changes its dash at a size: there the marks of both dashes meet. */
function joined(marks: readonly Mark[]): Mark[] {
  return marks.flatMap((mark, i) => {
    const before = marks[i - 1];
    return before !== undefined && before.read !== mark.read ? [{ ...before, read: mark.read }, mark] : [mark];
  });
}

const COLOURS = ["#0b5a75", "#c1440e", "#3a7d2c", "#7b3f9d", "#b08900", "#1c2227", "#2a9d8f", "#d1495b", "#6d6875"];

/** The standard's body and the class of a material, which share a panel: `EN, cold drawn`. */
function panelOf({ name, class: kind }: Material): string {
  return `${name.split("-")[0]?.toUpperCase()}, ${kind}`;
}

function panel(title: string, materials: readonly Material[], firstOfRow: boolean): object {
  const names = materials.map(({ name }) => name);
  return {
    title: { text: title, fontSize: 12, anchor: "start" },
    width: 230,
    height: 170,
    data: { values: materials.flatMap((material) => joined(marksOf(material))) },
    mark: { type: "line", strokeWidth: 1.4, clip: true },
    encoding: {
      x: {
        field: "diameter",
        type: "quantitative",
        scale: { type: "log", domain: [0.05, 20], nice: false },
        axis: {
          title: "wire diameter, mm",
          values: [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20],
          format: "~g",
          grid: true,
          labelOverlap: false,
        },
      },
      y: {
        field: "strength",
        type: "quantitative",
        scale: { domain: [0, 3300] },
        axis: { title: firstOfRow ? "least strength, MPa" : null, values: [0, 1000, 2000, 3000] },
      },
      color: { field: "material", scale: { domain: names, range: COLOURS.slice(0, names.length) }, legend: { title: null } },
      strokeDash: {
        field: "read",
        scale: {
          domain: ["read in print", "inferred or from memory"],
          range: [
            [1, 0],
            [4, 3],
          ],
        },
        legend: null,
      },
      detail: { field: "read" },
    },
  };
}

/** Strength over wire size of every shipped material, as an SVG document: a panel for each class of each standard's wire. */
export async function strengthPicture(): Promise<string> {
  const materials = [...shelf.materials.keys()].map((name) => shipped.material(name, ""));
  const titles = [...new Set(materials.map(panelOf))];
  const columns = 3;
  const spec = {
    background: "#ffffff",
    padding: 10,
    columns,
    spacing: 18,
    concat: titles.map((title, i) =>
      panel(
        title,
        materials.filter((material) => panelOf(material) === title),
        i % columns === 0,
      ),
    ),
    resolve: { scale: { color: "independent", strokeDash: "independent" } },
    config: {
      font: "sans-serif",
      legend: { symbolType: "stroke", labelFontSize: 10, labelLimit: 200 },
      axis: { gridColor: "#e4e8eb" },
    },
  };
  const view = new View(parse(compile(spec as TopLevelSpec).spec), { renderer: "none", loader: loader() });
  return `${await view.toSVG()}\n`;
}
