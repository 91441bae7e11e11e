import type { Brief, Design, Dimension, FatigueLine, Limits, MaterialClass } from "../model.ts";
import { lifeShares, practices } from "../practice/practice.ts";
import { show } from "../units/show.ts";
import type { Facts } from "./facts.ts";
import { fatigueDiagram } from "./fatigue-diagram.ts";
import { countWords } from "./funnel.ts";
import { figureWords, warningWords } from "./words.ts";

const LINES: Readonly<Record<Exclude<FatigueLine, "life">, string>> = {
  goodman: "a Goodman line",
  gerber: "a Gerber line",
  sines: "Sines's rule",
};

/** The stresses of a spring between its least and its greatest force, and how fatigue was judged; null in static duty. */
export function cyclicFacts(brief: Brief, design: Design): Facts | null {
  const { cyclic, fatigueSafety } = design;
  const { units, limits } = brief;
  if (cyclic === null) return null;
  const entry = (label: string, value: number, dimension: Dimension) => [label, show(value, dimension, units)] as const;
  const judged = fatigueSafety !== null && limits.fatigue !== "off";
  const picture = fatigueDiagram(brief, design);
  return {
    heading: "Cyclic duty",
    entries: [
      ...(brief.service.cycles === undefined ? [] : [["cycles asked", countWords(brief.service.cycles)] as const]),
      entry("least force", cyclic.leastForce, "force"),
      entry("greatest force", cyclic.greatestForce, "force"),
      entry("stress amplitude", cyclic.stressAmplitude, "stress"),
      entry("mean stress", cyclic.meanStress, "stress"),
      judged ? entry(figureWords.fatigueSafety.label, fatigueSafety, "number") : [figureWords.fatigueSafety.label, "not judged"],
    ],
    ...(picture === null ? {} : { picture }),
    notes: [
      "Both stresses carry the factor for the curvature of the wire.",
      judged ? judgedSentence(brief, design, limits.fatigue) : warningWords.fatigueNotJudged,
      ...(picture === null
        ? []
        : ["In the picture the dot is this spring, rings are the data, and the broken line is how its stress may grow."]),
    ],
  };
}

function judgedSentence(
  { practice, service, sweep, units }: Brief,
  { material }: Design,
  { safety, line }: Exclude<Limits["fatigue"], "off">,
): string {
  const least = `at least ${show(safety, "number", units)} is asked`;
  const { fatigue } = practices[practice];
  if (fatigue.kind === "endured") {
    if (line === "life") {
      const kind = sweep.materials.find(({ name }) => name === material)?.class as MaterialClass;
      const share = show(lifeShares(fatigue, service)[kind], "share", units);
      const endured = `${share} of tensile strength, which ${service.surface} springs endure from nothing for these cycles`;
      return `Held against ${endured} (${fatigue.life.source}), by a Goodman line; ${least}.`;
    }
    const endured = "what springs endured (Zimmerli, as quoted in Shigley eq. 10-28 and 10-29)";
    return `Held against ${endured}, ${service.surface}, by ${LINES[line]}; ${least}.`;
  }
  const source = sweep.materials.find(({ name }) => name === material)?.fatigue?.source;
  const data = source === undefined ? "the material's own data" : `the material's own data (${source})`;
  return `Held against the diagram of ${data}, ${service.surface}; ${least}.`;
}
