import type { Brief } from "../../model.ts";
import { askedSentence } from "../text/brief-summary.ts";
import { screeningWords } from "../text/labels.ts";
import { wrap } from "../text/layout.ts";
import { frontWords } from "../text/verdict.ts";
import { type ColourFigure, figureTitle } from "./scatter.ts";

/** Size of the plot, CSS pixels. */
const PLOT = { width: 760, height: 460 };

/** Characters to a line of title and of words below it; without a browser Vega takes letters for wider than they are. */
const LINE = { title: 62, words: 84 };

/** The parts of a compiled chart that paper sets. */
interface Compiled {
  readonly signals?: readonly { readonly name: string }[];
  readonly legends?: readonly object[];
}

/** What the chart says besides its points. */
export interface PaperWords {
  /** What colours the points. */
  readonly colour: ColourFigure;
  /** How many of how many springs are drawn. */
  readonly drawn: string;
}

/**
 * The scatter as a picture that stands by itself: of a fixed size on white, with a title, what was asked, what colour and line mean,
 * and that it screens only.
 *
 * @param spec   the light scatter, compiled to Vega
 * @param brief  the brief whose springs it draws
 * @param words  what else it says
 * @returns a Vega spec; the one given is left as it was
 */
export function paperChart<Spec extends object>(spec: Spec, brief: Brief, { colour, drawn }: PaperWords): Spec {
  const { signals = [], legends = [] }: Compiled = spec;
  const fixed: Readonly<Record<string, unknown>> = { width: PLOT.width, colourBy: colour };
  const lines = [askedSentence(brief), `${drawn} ${frontWords}`, screeningWords].flatMap((text) => wrap(text, LINE.words, 0));
  return {
    ...spec,
    background: "#ffffff",
    padding: 12,
    autosize: { type: "pad" },
    height: PLOT.height,
    title: {
      text: wrap(brief.title, LINE.title, 0),
      subtitle: lines,
      anchor: "start",
      frame: "bounds",
      color: "#1c2227",
      subtitleColor: "#5b656e",
      fontSize: 16,
      subtitleFontSize: 12,
      subtitlePadding: 6,
      offset: 14,
      limit: 2 * PLOT.width,
    },
    signals: signals.map((signal) => (signal.name in fixed ? { name: signal.name, value: fixed[signal.name] } : signal)),
    legends: [...legends.map((legend) => ({ ...legend, title: figureTitle(colour, brief) })), endsLegend],
  };
}

/** What the page's own legend says of the marks; a picture has none beside it. */
const endsLegend = { shape: "shape", title: "ends", symbolFillColor: "#5b656e", symbolStrokeColor: "transparent" };
