import type { Brief, Design, FatigueLine, MaterialClass, Units } from "../../model.ts";
import { type EnduredFatigue, lifeFractions } from "../../practice/choices.ts";
import { practices } from "../../practice/practices.ts";
import { unitLabel } from "../../units/show.ts";
import { ticks } from "./load-curve.ts";

/** Room about the plot for numbers and names, in units of the picture. */
const MARGIN = { left: 48, right: 14, top: 26, bottom: 38 };

/** Pieces of a curve. */
const STEPS = 40;

interface Stress {
  /** Pa, across and up. */
  readonly across: number;
  readonly up: number;
}

/** The stresses of one spring beside those that bound them. */
export interface FatiguePlot {
  readonly across: string;
  readonly up: string;
  /** The line that judged the spring, from left to right. */
  readonly bound: readonly Stress[];
  /** The points that it is drawn through. */
  readonly data: readonly Stress[];
  /** The spring. */
  readonly duty: Stress;
  /** Where the spring's duty begins to grow, and where it would meet the line. */
  readonly growth: readonly [from: Stress, to: Stress];
}

/**
 * How the fatigue of a spring was judged, as a plot: amplitude over mean stress where the practice holds springs against what
 * others endured, upper over lower stress where it reads the material's own diagram.
 *
 * @param brief   the brief that the spring answers
 * @param design  the spring
 * @returns null in static duty, and where fatigue was not judged; does not throw
 */
export function fatiguePlot(brief: Brief, design: Design): FatiguePlot | null {
  const { cyclic, fatigueSafety } = design;
  const { limits, practice, service, sweep } = brief;
  if (cyclic === null || fatigueSafety === null || limits.fatigue === "off") return null;
  const amplitude = cyclic.stressAmplitude;
  const mean = cyclic.meanStress;
  const { fatigue } = practices[practice];
  if (fatigue.kind === "endured") {
    const end = { across: mean, up: amplitude * fatigueSafety };
    // By Sines the mean stress has no part in it; else both stresses grow together.
    const isLevel = limits.fatigue.line === "sines";
    return {
      across: "mean stress",
      up: "amplitude",
      ...enduredLine(
        fatigue,
        limits.fatigue.line,
        enduredBy(fatigue, brief, design, limits.fatigue.line),
        design.tensileStrength,
      ),
      duty: { across: mean, up: amplitude },
      growth: isLevel
        ? [{ across: mean, up: 0 }, end]
        : [
            { across: 0, up: 0 },
            { ...end, across: mean * fatigueSafety },
          ],
    };
  }
  const rows = sweep.materials.find(({ name }) => name === design.material)?.fatigue?.[service.surface];
  if (rows === undefined) return null;
  const data = rows.map(([lower, upper]) => ({ across: lower, up: upper }));
  const lower = mean - amplitude;
  const [first, last] = [data[0], data.at(-1)];
  if (first === undefined || last === undefined) return null;
  return {
    across: "lower stress",
    up: "upper stress",
    // Beyond its points a diagram is read level.
    bound: [{ ...first, across: 0 }, ...data, { ...last, across: Math.max(last.across, lower) }],
    data,
    duty: { across: lower, up: mean + amplitude },
    growth: [
      { across: lower, up: lower },
      { across: lower, up: lower + 2 * amplitude * fatigueSafety },
    ],
  };
}

/** How each line falls from the axis to the ultimate shear strength, over the share of it that the mean stress is. */
const FALLS: Readonly<Record<FatigueLine, (fraction: number) => number>> = {
  goodman: (fraction) => 1 - fraction,
  gerber: (fraction) => 1 - fraction ** 2,
  sines: () => 1,
  life: (fraction) => 1 - fraction,
};

/** The amplitude and mean stress that springs endured: for the life asked those of a stress from nothing. */
function enduredBy(fatigue: EnduredFatigue, { service, sweep }: Brief, design: Design, line: FatigueLine): Endured {
  if (line !== "life") return fatigue.strengths.value[service.surface];
  const kind = sweep.materials.find(({ name }) => name === design.material)?.class as MaterialClass;
  const half = (lifeFractions(fatigue, service)[kind] * design.tensileStrength) / 2;
  return { amplitude: half, mean: half };
}

interface Endured {
  readonly amplitude: number;
  readonly mean: number;
}

/** The line through what springs endured. */
function enduredLine(
  { ultimateShear }: EnduredFatigue,
  line: FatigueLine,
  { amplitude, mean }: Endured,
  tensileStrength: number,
): Pick<FatiguePlot, "bound" | "data"> {
  const ultimate = ultimateShear.value * tensileStrength;
  const falls = FALLS[line];
  const bound = Array.from({ length: STEPS + 1 }, (_, step) => {
    const fraction = step / STEPS;
    return { across: ultimate * fraction, up: (amplitude * falls(fraction)) / falls(mean / ultimate) };
  });
  return { bound, data: [{ across: mean, up: amplitude }] };
}

/**
 * The plot as a picture. Every colour is a presentation attribute for paper; a page may set others by the classes.
 *
 * @param brief   the brief that the spring answers
 * @param design  the spring
 * @param width   width of the picture
 * @param height  its height
 * @returns an SVG document element as text; null where there is nothing to plot
 */
export function fatigueDiagram(brief: Brief, design: Design, width = 400, height = 220): string | null {
  const plot = fatiguePlot(brief, design);
  if (plot === null) return null;
  const { bound, data, duty, growth } = plot;
  const all = [...bound, duty, ...growth];
  const most = (of: keyof Stress) => 1.04 * Math.max(...all.map((stress) => stress[of]));
  const [right, bottom] = [width - MARGIN.right, height - MARGIN.bottom];
  const x = ({ across }: Stress) => n(MARGIN.left + ((right - MARGIN.left) * across) / most("across"));
  const y = ({ up }: Stress) => n(bottom - ((bottom - MARGIN.top) * up) / most("up"));
  const path = (stresses: readonly Stress[]) =>
    stresses.map((stress, i) => `${i === 0 ? "M" : "L"}${x(stress)} ${y(stress)}`).join("");
  const { units } = brief;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" class="fatigue" role="img" width="${width}" height="${height}" `,
    `viewBox="0 0 ${width} ${height}" font-family="system-ui, sans-serif" font-size="11" fill="none">`,
    `<title>How fatigue was judged: ${plot.up} over ${plot.across}, the spring beside the line that bounds it</title>`,
    ...ticks(0, most("up"), "stress", units, 5).map(({ value, text }) => {
      const at = y({ across: 0, up: value });
      return `<path class="hair" stroke="#d9dee2" d="M${MARGIN.left} ${at}H${right}"/>${label(MARGIN.left - 6, Number(at) + 4, text, "end")}`;
    }),
    ...ticks(0, most("across"), "stress", units, 6).map(({ value, text }) => {
      const at = x({ across: value, up: 0 });
      return `<path class="rule" stroke="#4a525b" d="M${at} ${bottom}v4"/>${label(Number(at), bottom + 16, text, "middle")}`;
    }),
    `<path class="rule" stroke="#4a525b" d="M${MARGIN.left} ${MARGIN.top}V${bottom}H${right}"/>`,
    label(4, MARGIN.top - 11, nameOf(plot.up, units), "start"),
    label(right, height - 6, nameOf(plot.across, units), "end"),
    `<path class="line" stroke="#2a3138" stroke-width="1.4" d="${path(bound)}"/>`,
    ...data.map((stress) => `<circle class="dot" fill="#fdfdfc" stroke="#2a3138" cx="${x(stress)}" cy="${y(stress)}" r="3"/>`),
    `<path class="duty" stroke="#0b5a75" stroke-dasharray="4 3" d="${path(growth)}"/>`,
    `<circle class="duty-dot" fill="#0b5a75" cx="${x(duty)}" cy="${y(duty)}" r="4.5"/>`,
    "</svg>",
  ].join("");
}

function nameOf(words: string, units: Units): string {
  return `${words}, ${unitLabel("stress", units)}`;
}

function label(x: number, y: number, text: string, anchor: "start" | "middle" | "end"): string {
  return `<text fill="#1d2329" x="${n(x)}" y="${n(y)}" text-anchor="${anchor}">${text}</text>`;
}

function n(value: number): string {
  return String(Number(value.toFixed(2)));
}
