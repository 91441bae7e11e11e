import type { Brief, Design } from "../../model.ts";
import { generalCautions, practiceWords, screeningWords } from "../text/labels.ts";
import { memoryWords } from "../text/material-data.ts";
import { cautionSentence } from "../text/spring-summary.ts";
import { heatSteps } from "./at-temperature.ts";
import { coilSteps, roomSteps } from "./coil.ts";
import { fatigueSteps } from "./fatigue.ts";
import { lengthSteps } from "./lengths.ts";
import { loadSteps, motionSteps } from "./loads.ts";
import { marginSteps } from "./margins.ts";
import { costSteps, materialSteps } from "./material.ts";
import { type Calculation, Steps } from "./steps.ts";
import { toleranceSteps } from "./tolerances.ts";
import { type WorkedSpring, workedSpringOf } from "./worked-spring.ts";

/**
 * The calculation sheet of one design, in the order in which a person would work. Its figures are the engine's own; each equation
 * stands beside the one that the engine runs, and a test holds the two together.
 *
 * @param brief   the brief that the design answers, or with its own design the one that judges it; left unchanged
 * @param design  a design of that brief
 * @returns steps in the brief's units
 * @throws Error where the design is none of the brief's
 */
export function calculationOf(brief: Brief, design: Design): Calculation {
  const worked = workedSpringOf(brief, design);
  const steps = new Steps(brief.units);
  for (const write of [materialSteps, coilSteps, lengthSteps]) write(steps, worked);
  // Of a given spring that is solid before it is pressed, nothing that bears a load is a figure.
  if (design.freeLength > design.solidLength) for (const write of UNDER_LOAD) write(steps, worked);
  else
    steps.note(
      "The free length leaves no room to the solid length: the spring cannot be pressed, and nothing more is worked out.",
    );
  return {
    title: brief.title,
    subject: subjectWords(worked),
    units: brief.units,
    chapters: steps.written,
    tables: steps.tables,
    cautions: [
      ...design.cautions.map((name) => cautionSentence(name, [design], brief.units)),
      ...generalCautions,
      screeningWords,
    ],
  };
}

const UNDER_LOAD = [loadSteps, motionSteps, fatigueSteps, heatSteps, roomSteps, toleranceSteps, costSteps, marginSteps] as const;

function subjectWords({ design, brief, given, material }: WorkedSpring): string {
  const { rank, wire, series, ends } = design;
  const place = given !== undefined ? "The given spring" : rank > 0 ? `Rank ${rank}` : "One of the springs that fit";
  const drawn = given === undefined ? `wire ${wire} of ${series}` : `wire ${wire}`;
  const spring = `${place}: ${drawn} in ${material.name}, ${ends} ends; by ${practiceWords[brief.practice]}.`;
  return `${spring} ${memoryWords(brief, [material])}`;
}
