import { namedFiguresReader } from "../../constrain/figures.ts";
import { checkWritable, fontFile, printError, writeText } from "../../disk/files.ts";
import type { SweepResult } from "../../model.ts";
import { ProblemError, printable } from "../../problem.ts";
import { chartRow, colourFigures, scatterSpec } from "../../report/charts/scatter.ts";
import { paperChart } from "../../report/charts/scatter-picture.ts";
import { choicesOf, frontChoicesOf, pageData } from "../../report/page/page-data.ts";
import { drawnSentence } from "../../report/text/verdict.ts";

/** The files that show the scatter. */
export interface ChartFiles {
  readonly svg?: string;
  readonly png?: string;
}

/** Pixels of a PNG in one of the chart. */
const PIXELS = 2;

/** The family of the font that the package ships. */
const FAMILY = "DejaVu Sans";

/**
 * Make sure that the files asked for can be made here, before the work whose result they are to show.
 *
 * @throws ProblemError `pageOnStdout`, `noRaster`, or as `checkWritable`
 */
export async function checkChartFiles({ svg, png }: ChartFiles): Promise<void> {
  for (const [option, path, example] of [
    ["--svg", svg, "chart.svg"],
    ["--png", png, "chart.png"],
  ] as const) {
    if (path === undefined) continue;
    const problem = { code: "pageOnStdout", key: option, got: "it is not printed" };
    if (path === "-") throw new ProblemError([{ ...problem, want: `name a file, such as ${example}` }]);
    checkWritable(path, option);
  }
  if (png !== undefined) await raster();
}

/**
 * Write the files asked for of the scatter, or say why there are none.
 *
 * @param result  a sweep with its sample
 * @throws ProblemError `unwritable`
 */
export async function writeChartFiles(result: SweepResult, files: ChartFiles): Promise<void> {
  const asked = chartOptions(files);
  if (asked.length === 0) return;
  if (result.feasible === 0) return printError(`${asked.join(", ")}: nothing fits, so there is no spring to draw\n`);
  const picture = await chartSvg(result);
  if (files.svg !== undefined) writeText(files.svg, `${picture}\n`, "--svg");
  if (files.png !== undefined) writeText(files.png, await rastered(picture), "--png");
}

/** The options given of those that show the scatter, as a message names them. */
function chartOptions(files: ChartFiles): string[] {
  return (["svg", "png"] as const).filter((name) => files[name] !== undefined).map((name) => `--${name}`);
}

/** Vega draws without a browser; it and Vega-Lite are loaded when a chart is asked for. */
async function chartSvg(result: SweepResult): Promise<string> {
  const [{ parse, resetSVGDefIds, View }, { compile }] = await Promise.all([import("vega"), import("vega-lite")]);
  const { brief, frontAxes } = result;
  const data = pageData(result);
  const figuresOf = namedFiguresReader(brief);
  const rows = choicesOf(data).map((choice, id) => chartRow(figuresOf(choice), id, brief.units, frontAxes));
  const spec = scatterSpec(result, rows.length, "light") as Parameters<typeof compile>[0];
  const words = { colour: colourFigures[0], drawn: drawnSentence(result, rows.length) };
  const view = new View(parse(paperChart(compile(spec).spec, brief, words)), { renderer: "none" });
  const front = frontChoicesOf(data).map((choice, i) =>
    chartRow(figuresOf(choice), data.front[i] as number, brief.units, frontAxes),
  );
  view.data("designs", rows).data("front", front);
  await view.runAsync();
  // Vega counts the parts of pictures on: each is to be the same bytes, whichever was drawn before it.
  resetSVGDefIds();
  const picture = await view.toSVG();
  view.finalize();
  return printable(picture);
}

/** Letters come from the font that the package ships: with none a picture would be drawn without any. */
async function rastered(picture: string): Promise<Uint8Array> {
  const { Resvg } = await raster();
  const font = { loadSystemFonts: false, fontFiles: [fontFile()], defaultFontFamily: FAMILY, sansSerifFamily: FAMILY };
  return new Resvg(picture, { background: "white", fitTo: { mode: "zoom", value: PIXELS }, font }).render().asPng();
}

/** The one part of the program that is native, which not every machine can load. */
async function raster(): Promise<typeof import("@resvg/resvg-js")> {
  try {
    fontFile();
    return await import("@resvg/resvg-js");
  } catch {
    const got = "what draws PNG is not installed here or was made for another kind of machine";
    throw new ProblemError([{ code: "noRaster", key: "--png", got, want: "write --svg, which needs no such part" }]);
  }
}
