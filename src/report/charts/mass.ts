import type { Brief, SweepResult } from "../../model.ts";
import { show } from "../../units/show.ts";
import { type ChartSpring, chartConfig, markedSpring, PAINT, type Theme } from "./scatter.ts";

/** Colours that readers with any colour vision tell apart, dark enough for a light ground and light enough for a dark one. */
const HUES = {
  light: ["#0072b2", "#b34700", "#00795a", "#9a4f86", "#6b5d00", "#3f4b9e", "#1c2227", "#2f7ea8"],
  dark: ["#56b4e9", "#e69f00", "#3fbf97", "#cc79a7", "#f0e442", "#9aa5ff", "#e6e9eb", "#ff8c5a"],
} as const;

/** One fewer than the colours, so that materials beyond them still differ in colour or shape. */
const SHAPES = ["circle", "square", "triangle-up", "diamond", "cross", "triangle-down", "triangle-right"] as const;

/**
 * Mass against wire diameter, material as colour and shape. Vega-Lite with named data of the rows that the scatter draws:
 * `designs`, `chosen`, `pointed`. Signals dim what lies outside the brush of the scatter, `brushed` being the two spans or null,
 * and head the axes.
 *
 * @param theme  colours for light or dark ground
 * @returns a plain object without data of its own
 */
export function massSpec(theme: Theme): object {
  const paint = PAINT[theme];
  const position = {
    x: {
      field: "wireDiameter",
      type: "ordinal",
      axis: {
        title: { expr: "wireDiameterTitle" },
        format: ".4~r",
        labelAngle: 0,
        labelOverlap: true,
        grid: true,
        tickBand: "extent",
      },
    },
    // Materials of one density weigh the same in one wire: side by side they do not cover each other.
    xOffset: { field: "material", type: "nominal" },
    y: { field: "mass", type: "quantitative", axis: { title: { expr: "massTitle" } }, scale: { zero: false } },
  };
  const inside = "brushed === null || (inrange(datum[acrossFigure], brushed[0]) && inrange(datum[upFigure], brushed[1]))";
  return {
    $schema: "https://vega.github.io/schema/vega-lite/v6.json",
    width: "container",
    height: 300,
    autosize: { type: "fit-x", contains: "padding" },
    params: [
      ...["wireDiameterTitle", "massTitle", "acrossFigure", "upFigure"].map((name) => ({ name, value: "" })),
      { name: "brushed", value: null },
    ],
    layer: [
      {
        data: { name: "designs" },
        mark: { type: "point", filled: true, size: 30 },
        encoding: {
          ...position,
          color: {
            field: "material",
            type: "nominal",
            scale: { range: HUES[theme] },
            legend: { title: null, columns: 2 },
          },
          shape: { field: "material", type: "nominal", scale: { range: SHAPES } },
          opacity: { condition: { test: inside, value: 0.85 }, value: 0.1 },
        },
      },
      ...markedSpring(paint.accent, paint.ink).map((layer) => ({ ...layer, encoding: position })),
    ],
    config: chartConfig(theme),
  };
}

/** What of a compiled chart tells materials apart. */
interface Placed {
  readonly scales?: { readonly name: string; domain?: unknown }[];
}

/** Scales of a material's colour, its shape, and its place beside the others in one wire. */
const OF_MATERIALS: readonly string[] = ["color", "shape", "xOffset"];

/**
 * Let each material keep its colour, shape and place, whichever others fit. It is done to the compiled chart: Vega-Lite would write the
 * names, which may hold anything, into an expression to sort by.
 *
 * @param chart   of `massSpec`, as Vega-Lite compiled it; changed in place
 * @param result  the sweep whose materials keep their places
 */
export function keepMaterials({ scales = [] }: Placed, { brief }: Pick<SweepResult, "brief">): void {
  for (const scale of scales) {
    if (OF_MATERIALS.includes(scale.name)) scale.domain = brief.sweep.materials.map(({ name }) => name);
  }
}

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
