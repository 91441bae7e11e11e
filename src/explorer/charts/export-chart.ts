import { parse, type Spec, View } from "vega";
import { expressionInterpreter } from "vega-interpreter";
import type { Brief } from "../../model.ts";
import type { ChartRow, ColourFigure } from "../../report/charts/scatter.ts";
import { paperChart } from "../../report/charts/scatter-picture.ts";
import { springsCsv } from "../../report/files/csv.ts";
import { fileName } from "../../report/files/file-name.ts";
import { countWords } from "../../report/text/rejections.ts";
import { type Download, exportLine } from "../parts/download.ts";
import type { Spring } from "../session/springs.ts";
import type { Scattered } from "./scatter-chart.ts";

/** What the chart and the table show now. */
export interface ShownSprings {
  readonly brief: Brief;
  /** The light scatter, compiled. */
  readonly spec: Spec;
  readonly colour: ColourFigure;
  readonly scattered: () => Scattered;
  /** How many springs fit, drawn or not. */
  readonly feasible: number;
  /** Those that lie inside the brush, or all that are drawn, best first. */
  readonly inside: readonly Spring[];
  readonly brushed: boolean;
}

/** Pixels of a PNG in one of the chart. */
const PIXELS = 2;

/** Buttons that take away the chart as a picture on white, and the springs as a table. */
export function exportChart(shown: ShownSprings): HTMLElement {
  const { brief, brushed } = shown;
  const count = countWords(shown.inside.length);
  const which = brushed ? `the ${count} inside the brush` : `all ${count} drawn`;
  const name = (what: string, ending: string) => fileName(brief.title, what, ending);
  return exportLine("Take away:", [
    [
      "chart, SVG",
      async () => ({ name: name("chart", "svg"), type: "image/svg+xml", content: await drawn(shown, (view) => view.toSVG()) }),
    ],
    ["chart, PNG", () => chartPng(shown, name("chart", "png"))],
    [
      `springs, CSV (${which})`,
      () => ({
        name: name("springs", "csv"),
        type: "text/csv",
        content: springsCsv(
          shown.inside.map(({ design }) => design),
          brief.units,
        ),
      }),
    ],
  ]);
}

async function chartPng(shown: ShownSprings, name: string): Promise<Download | null> {
  const canvas = await drawn(shown, (view) => view.toCanvas(PIXELS));
  const content = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, "image/png"));
  return content && { name, type: "image/png", content };
}

/** Draw the chart of paper out of sight, whatever the screen's colours and the brush are. */
async function drawn<Picture>(shown: ShownSprings, take: (view: View) => Promise<Picture>): Promise<Picture> {
  const { brief, spec, colour, feasible } = shown;
  const { rows, front, axes } = shown.scattered();
  const some = rows.length >= feasible ? `All ${countWords(feasible)}` : `${countWords(rows.length)} of ${countWords(feasible)}`;
  const paper = paperChart(spec, brief, { colour, drawn: `${some} springs that fit are drawn.` });
  const view = new View(parse(paper, undefined, { ast: true }), { expr: expressionInterpreter, renderer: "none" });
  // A chart writes its own figures into rows, so each gets rows of its own.
  const copied = (list: readonly ChartRow[]) => list.map((row) => ({ ...row }));
  for (const [signal, value] of Object.entries(axes)) view.signal(signal, value);
  await view.data("designs", copied(rows)).data("front", copied(front)).runAsync();
  try {
    return await take(view);
  } finally {
    view.finalize();
  }
}
