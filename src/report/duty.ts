import type { Brief, Design, ToleranceGrade } from "../model.ts";
import { show } from "../units/show.ts";
import { currencyOf, showFigure } from "./cost-words.ts";
import { freeLengthSentences } from "./free-length-words.ts";
import { lossWords } from "./heat-facts.ts";
import { scatterSentences } from "./scatter-words.ts";
import { gradeWords } from "./sheet-tolerances.ts";

/**
 * What one spring does in cyclic duty, at temperature and at the ends of its tolerances, and what it costs by parts: sentences for
 * a terminal and a page. Only what the brief asks or what is known.
 *
 * @param brief   the requirement
 * @param design  one of its springs
 * @returns none or several sentences; does not throw
 */
export function dutySentences(brief: Brief, design: Design): string[] {
  return [
    ...freeLengthSentences(brief, design),
    ...cyclicSentence(brief, design),
    ...heatSentences(brief, design),
    ...toleranceSentences(brief, design),
    ...scatterSentences(brief, design),
    ...costSentence(brief, design),
  ];
}

function cyclicSentence({ units, limits }: Brief, { cyclic, fatigueSafety }: Design): string[] {
  if (cyclic === null) return [];
  const { leastForce, greatestForce, stressAmplitude, meanStress } = cyclic;
  const forces = `${show(leastForce, "force", units)} to ${show(greatestForce, "force", units)}`;
  const stresses = `${show(stressAmplitude, "stress", units)} about ${show(meanStress, "stress", units)}, corrected`;
  const line = limits.fatigue === "off" || !("line" in limits.fatigue) ? "" : ` (asked ${limits.fatigue.safety})`;
  const verdict =
    fatigueSafety === null ? "fatigue was not judged" : `fatigue safety ${show(fatigueSafety, "number", units)}${line}`;
  return [`Cyclic duty: ${forces}, stress ${stresses}; ${verdict}.`];
}

function heatSentences({ units }: Brief, { hot, points }: Design): string[] {
  if (hot === null) return [];
  const at = show(hot.temperature, "temperature", units);
  const { rate, shearModulus } = hot;
  const forces = hot.forces.flatMap((force, i) =>
    force === null ? [] : [`${show(force, "force", units)} at ${points[i]?.name}`],
  );
  const moduli =
    rate === null || shearModulus === null
      ? "how its moduli fall is not known for this material"
      : `shear modulus ${show(shearModulus / 1e3, "stress", units)
          .replace("MPa", "GPa")
          .replace("ksi", "Mpsi")}, rate ${show(rate, "rate", units)}, ${forces.join(", ")}`;
  const loss = lossWords(hot, units);
  const relaxation = loss === null ? "relaxation is not known for this material" : `of its load it loses ${loss}`;
  return [`At ${at}: ${moduli}; ${relaxation}.`];
}

function toleranceSentences({ units }: Brief, { tolerance }: Design): string[] {
  const plusMinus = (value: number | null) => (value === null ? null : `± ${show(value, "length", units)}`);
  const parts = [
    ["wire", plusMinus(tolerance.wireDiameter)],
    ["coil diameter", plusMinus(tolerance.coilDiameter)],
    ["free length", plusMinus(tolerance.freeLength)],
    ...tolerance.points.map(({ name, force }) => [
      `force at ${name}`,
      force === null ? null : `± ${show(force, "force", units)}`,
    ]),
  ];
  const known = parts.flatMap(([label, text]) => (text === null ? [] : [`${label} ${text}`]));
  if (known.length === 0) return [];
  const worst = tolerance.points.flatMap(({ name, leastForce, greatestForce }) =>
    leastForce === null || greatestForce === null
      ? []
      : [`${show(leastForce, "force", units)} to ${show(greatestForce, "force", units)} at ${name}`],
  );
  return [
    `Tolerances ${ofGrade(tolerance.grade)}: ${known.join(", ")}.`,
    ...(worst.length > 0
      ? [`Worst case, every dimension at its wrong end at once, which is no likely spread: ${worst.join(", ")}.`]
      : []),
    ...(tolerance.coarsestGrade === undefined || tolerance.coarsestGrade === null || tolerance.coarsestGrade === "notKnown"
      ? []
      : [`The coarsest tolerances that keep the force windows are those ${ofGrade(tolerance.coarsestGrade)}.`]),
  ];
}

/** A grade as part of a sentence. */
function ofGrade(grade: ToleranceGrade): string {
  return grade === "commercial" ? "of the commercial tables" : `of ${gradeWords(grade)}`;
}

function costSentence(brief: Brief, { costParts, relativeCost }: Design): string[] {
  const { wire, ...operations } = costParts;
  const weights = Object.entries(operations).filter(([, weight]) => weight > 0);
  if (weights.length === 0) return [];
  const number = (value: number) => String(Number(value.toPrecision(4)));
  const added = weights.map(([name, weight]) => `${name} ${number(weight)}`);
  const label = currencyOf(brief) === null ? "Relative cost" : "Cost";
  return [`${label} ${showFigure("relativeCost", relativeCost, brief)}: wire ${number(wire)}, ${added.join(", ")}.`];
}
